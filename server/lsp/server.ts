// The language server: one object on a connection and a host, so that tests need no process and no socket. It adds no
// knowledge: it reads requests, asks the core and answers in the protocol's terms, one file a feature.
import {
  CodeActionKind, DidChangeConfigurationNotification, TextDocumentSyncKind,
  type CancellationToken, type Connection, type Diagnostic, type InitializeResult, type TextDocumentContentChangeEvent,
} from 'vscode-languageserver';
import { blockAtLine, blockOfKey, type TextEdit } from '../../language/book/book.ts';
import { createKeeper, type Compiled } from '../../language/compile.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { answerUnlessCancelled } from './cancelling.ts';
import { codeActions } from './code-actions.ts';
import { completion, documented, readItemData } from './completion/completion.ts';
import { diagnosticOf } from './diagnostics.ts';
import { openDocuments, type Documents, type OpenDocument } from './documents.ts';
import { soon, type Host } from './host.ts';
import { hover } from './hover.ts';
import { lenses } from './lenses.ts';
import { manualText } from './manual.ts';
import * as protocol from './protocol.ts';
import { readOptions, readSettings, usualSettings, type Options } from './settings.ts';
import { startSettling } from './settling.ts';
import { showPlays } from './shown-plays.ts';
import { foldings, symbols } from './symbols.ts';
import { partAtPosition, rangeOfPart } from './text-and-time.ts';

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
  let clientHasSettings = false;

  const findingsOf = (uri: string) => keeper.findingsOf(documents.book(), uri);
  const compileKey = ({ uri, file }: OpenDocument, key: string): Compiled | undefined => {
    const block = blockOfKey(file, key);
    return block?.kind === 'play' ? keeper.compile(documents.book(), uri, block) : undefined;
  };
  const compileAt = (document: OpenDocument, line: number): Compiled | undefined => compileKey(document, blockAtLine(document.file, line).block.key);

  const shown = showPlays(
    host,
    {
      document: documents.get,
      playbackOf(uri, key) {
        const document = documents.get(uri);
        const compiled = document && compileKey(document, key);
        return compiled && playbackOf(compiled);
      },
    },
    (frame) => void connection.sendNotification(protocol.frameMethod, frame),
  );

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
    clientHasSettings = params.capabilities.workspace?.configuration === true;
    return {
      capabilities: {
        positionEncoding: 'utf-16',
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        hoverProvider: true,
        completionProvider: { triggerCharacters: [' ', '"', '“', ':', ',', '-'], resolveProvider: true },
        documentSymbolProvider: { label: 'Setwright' },
        foldingRangeProvider: true,
        codeLensProvider: { resolveProvider: false },
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
      },
      serverInfo: { name: `Setwright language server (${host.place})`, version: host.version },
    };
  });

  connection.onInitialized(() => {
    if (!clientHasSettings) return;
    void connection.client.register(DidChangeConfigurationNotification.type, { section: 'setwright' }).catch(() => undefined);
    void fetchSettings();
  });
  connection.onDidChangeConfiguration(({ settings }) => {
    if (clientHasSettings) return void fetchSettings();
    options = { ...options, settings: readSettings((settings as { setwright?: unknown } | null)?.setwright) };
  });
  async function fetchSettings() {
    const settings: unknown = await connection.workspace.getConfiguration('setwright').catch(() => undefined);
    options = { ...options, settings: readSettings(settings) };
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
    checking.get(uri)?.callOff();
    checking.delete(uri);
    settling.close(uri);
    void connection.sendDiagnostics({ uri, diagnostics: [] });
  });

  /** The document itself, then those that may look up names in it. */
  function checkAll(uri: string, typed: number | undefined) {
    check(uri, typed);
    for (const other of documents.all()) if (other.uri !== uri && uses(other)) check(other.uri, undefined);
  }

  const answer = <Answer>(token: CancellationToken, uri: string, work: (document: OpenDocument) => Answer): Promise<Answer | null> =>
    answerUnlessCancelled(host, token, () => {
      const document = documents.get(uri);
      return document === undefined ? null : work(document);
    });

  connection.onHover((params, token) =>
    answer(token, params.textDocument.uri, (document) => hover(document, compileAt(document, params.position.line), findingsOf(document.uri), params.position)),
  );
  connection.onCompletion((params, token) => answer(token, params.textDocument.uri, (document) => completion(documents.book(), document, params.position)));
  connection.onCompletionResolve((item, token) =>
    answerUnlessCancelled(host, token, () => {
      const data = readItemData(item.data);
      return data === undefined ? item : documented(item, data);
    }),
  );
  connection.onCodeAction((params, token) =>
    answer(token, params.textDocument.uri, (document) => codeActions(document, findingsOf(document.uri), params.range, params.context.diagnostics, params.context.only)),
  );

  connection.onDocumentSymbol((params, token) => answer(token, params.textDocument.uri, symbols));
  connection.onFoldingRanges((params, token) => answer(token, params.textDocument.uri, foldings));
  connection.onCodeLens((params, token) => answer(token, params.textDocument.uri, (document) => lenses(document, keeper.playsOf(documents.book(), document.uri))));

  connection.onNotification(protocol.showMethod, (value: unknown) => {
    const wanted = protocol.readShow(value);
    if (wanted !== undefined) shown.show(wanted);
  });
  connection.onNotification(protocol.hideMethod, (value: unknown) => {
    const wanted = protocol.readHide(value);
    if (wanted !== undefined) shown.hide(wanted.panel);
  });
  connection.onRequest(protocol.partAtMethod, (value: unknown, token) => {
    const question = protocol.readPartAtQuestion(value);
    return question === undefined ? null : answer(token, question.uri, (document) => partAtPosition(document, compileAt, question.position));
  });
  connection.onRequest(protocol.rangeOfMethod, (value: unknown, token) => {
    const question = protocol.readRangeOfQuestion(value);
    return question === undefined
      ? null
      : answer(token, question.uri, (document) => {
          const compiled = compileKey(document, question.playKey);
          return compiled === undefined ? null : rangeOfPart(document, compiled, question);
        });
  });
  connection.onRequest(protocol.manualMethod, (value: unknown) => manualText(typeof value === 'string' ? value : ''));

  return {
    documents,
    listen() {
      connection.listen();
    },
  };
}

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
