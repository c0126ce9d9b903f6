// The language server: one object on a connection and a host, so that tests need no process and no socket. It adds no
// knowledge: it reads requests, asks the core and answers in the protocol's terms, one file a feature.
import {
  DidChangeConfigurationNotification, TextDocumentSyncKind,
  type ClientCapabilities, type Connection, type Diagnostic, type InitializeResult, type TextDocumentContentChangeEvent,
} from 'vscode-languageserver';
import { blockAtLine, blockOfKey, type TextEdit } from '../../language/book/book.ts';
import { createKeeper, type Compiled } from '../../language/compile.ts';
import type { Asking } from './asking.ts';
import { answerUnlessCancelled } from './cancelling.ts';
import { diagnosticOf } from './diagnostics.ts';
import { openDocuments, type Documents, type OpenDocument } from './documents.ts';
import { soon, type Host } from './host.ts';
import { filesOfClient, readPlayFiles, type FileAccess } from './play-files.ts';
import { overview, serveOverview } from './serve-overview.ts';
import { servePlaybook } from './serve-playbook.ts';
import { servePlays } from './serve-plays.ts';
import { pointing, servePointing } from './serve-pointing.ts';
import { serveWriting, writing } from './serve-writing.ts';
import { readOptions, readSettings, usualSettings, type Options } from './settings.ts';
import { startSettling } from './settling.ts';

/** Turns to wait before checking: the picture of the same text is on its way by then. */
const afterTheFrames = 4;

export interface Server {
  readonly documents: Documents;
  /** Starts to answer; nothing is read from the connection before. */
  listen(): void;
}

export function createServer(connection: Connection, host: Host): Server {
  const documents = openDocuments();
  const keeper = createKeeper();
  let options: Options = { settings: usualSettings };
  let client: ClientCapabilities = {};

  const findingsOf = (uri: string) => keeper.findingsOf(documents.book(), uri);
  const compileKey = ({ uri, file }: OpenDocument, key: string): Compiled | undefined => {
    const block = blockOfKey(file, key);
    return block?.kind === 'play' ? keeper.compile(documents.book(), uri, block) : undefined;
  };
  const compileAt = (document: OpenDocument, line: number): Compiled | undefined => compileKey(document, blockAtLine(document.file, line).block.key);

  const asking: Asking = {
    connection, host, documents, keeper, findingsOf, compileKey, compileAt,
    options: () => options,
    client: () => client,
    answer: (token, uri, work) =>
      answerUnlessCancelled(host, token, () => {
        const document = documents.get(uri);
        return document === undefined ? null : work(document);
      }),
    answerAll: (token, work) => answerUnlessCancelled(host, token, work),
  };
  servePointing(asking);
  serveWriting(asking);
  const seen = serveOverview(asking);
  const shown = servePlays(asking);
  let folders: readonly string[] = [];
  const files = readPlayFiles(documents, () => (options.files ? filesOfClient(connection) : (host.files?.(folders) ?? noFiles)));
  servePlaybook(asking, files);

  const settling = startSettling<Diagnostic>(
    host,
    () => options.settings.settle,
    ({ code, range }) => ({ code: String(code), line: range.start.line }),
    (uri, version, diagnostics) => void connection.sendDiagnostics({ uri, version, diagnostics: [...diagnostics] }),
  );

  /** Checks a document after the messages that are already here; the newest text only. */
  const checking = new Map<string, { readonly callOff: () => void; readonly typed: number | undefined }>();
  function check(uri: string, typed: number | undefined) {
    checking.get(uri)?.callOff();
    const callOff = soon(host, () => {
      checking.delete(uri);
      const document = documents.get(uri);
      if (document !== undefined) settling.next(uri, document.version, diagnosticsOf(document), typed);
    }, afterTheFrames);
    checking.set(uri, { callOff, typed });
  }

  function diagnosticsOf({ uri, file }: OpenDocument): Diagnostic[] {
    return findingsOf(uri).flatMap((finding) => {
      const block = blockOfKey(file, finding.block);
      return block === undefined ? [] : [diagnosticOf(uri, block, finding.firstLine, finding, options.manual)];
    });
  }

  connection.onInitialize((params): InitializeResult => {
    options = readOptions(params.initializationOptions);
    client = params.capabilities;
    folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri === null ? [] : [params.rootUri]);
    return {
      capabilities: { positionEncoding: 'utf-16', textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental }, ...pointing, ...writing, ...overview },
      serverInfo: { name: `Setwright language server (${host.place})`, version: host.version },
    };
  });

  connection.onInitialized(() => {
    if (!hasSettings()) return;
    void connection.client.register(DidChangeConfigurationNotification.type, { section: 'setwright' }).catch(() => undefined);
    void fetchSettings();
  });
  connection.onDidChangeConfiguration(({ settings }) => {
    if (hasSettings()) return void fetchSettings();
    take((settings as { setwright?: unknown } | null)?.setwright);
  });
  const hasSettings = () => client.workspace?.configuration === true;
  async function fetchSettings() {
    take(await connection.workspace.getConfiguration('setwright').catch(() => undefined));
  }
  function take(value: unknown) {
    const { hints } = options.settings;
    options = { ...options, settings: readSettings(value) };
    if (JSON.stringify(hints) !== JSON.stringify(options.settings.hints) && client.workspace?.inlayHint?.refreshSupport === true) void connection.languages.inlayHint.refresh();
  }

  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    documents.open(uri, version, text);
    shown.changed(uri);
    checkAll(uri, undefined);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    if (documents.get(uri) === undefined) return;
    documents.change(uri, version, contentChanges.map(editOf));
    const typed = lastLineOf(contentChanges);
    // First what is seen moving, then what is wrong.
    shown.changed(uri, typed);
    checkAll(uri, typed);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    documents.close(uri);
    shown.closed(uri);
    seen.closed(uri);
    checking.get(uri)?.callOff();
    checking.delete(uri);
    settling.close(uri);
    void connection.sendDiagnostics({ uri, diagnostics: [] });
  });

  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) void files.changed(uri).then(() => checkUsers(uri));
  });

  /** The document itself, then those that may look up names in it. */
  function checkAll(uri: string, typed: number | undefined) {
    const fetching = files.fetchUsed(uri);
    if (fetching === undefined) check(uri, typed);
    else
      void fetching.then(() => {
        shown.changed(uri);
        check(uri, typed);
      });
    checkUsers(uri);
  }

  function checkUsers(uri: string) {
    for (const other of documents.all()) if (other.uri !== uri && uses(other)) check(other.uri, undefined);
  }

  return {
    documents,
    listen() {
      connection.listen();
    },
  };
}

const noFiles: FileAccess = { list: async () => [], read: async () => undefined };

function editOf(change: TextDocumentContentChangeEvent): TextEdit {
  return 'range' in change ? { range: change.range, text: change.text } : { text: change.text };
}

/** The line the last of the edits ends on: where the coach is typing. */
function lastLineOf(changes: readonly TextDocumentContentChangeEvent[]): number | undefined {
  const last = changes.at(-1);
  if (last === undefined || !('range' in last)) return undefined;
  return last.range.start.line + (last.text.match(/\r\n|\n|\r/g)?.length ?? 0);
}

function uses({ file }: OpenDocument): boolean {
  return file.blocks[0]?.lines.some(({ parsed }) => parsed.tree?.$type === 'Use') === true;
}
