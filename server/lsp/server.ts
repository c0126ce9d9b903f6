// The language server: one object on a connection and a host, so that tests need no process and no socket. It adds no
// knowledge: it reads requests, asks the core and answers in the protocol's terms, one file a feature.
import { TextDocumentSaveReason, type ClientCapabilities, type Connection, type InitializeParams, type TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { blockAtLine, blockOfKey, type TextEdit } from '../../language/book/book.ts';
import { sayWith, type Say } from '../../language/message/message.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper } from '../../language/keeper.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { abilities } from './abilities.ts';
import type { Asking } from './asking.ts';
import { followWriting } from './being-written.ts';
import { answerUnlessCancelled, whatIsHere } from './cancelling.ts';
import { openDocuments, type Documents, type OpenDocument } from './documents.ts';
import { guarded } from './guarded.ts';
import { atMost, type Host } from './host.ts';
import { compileOneByOne, inBackground } from './one-by-one.ts';
import { filesOfClient, longestRead, readPlayFiles, type FileAccess } from './play-files.ts';
import { cursorMethod, readCursor } from './protocol.ts';
import { serveFindings, type Typed } from './serve-findings.ts';
import { serveOverview } from './serve-overview.ts';
import { servePlaybook } from './serve-playbook.ts';
import { servePlays } from './serve-plays.ts';
import { servePointing } from './serve-pointing.ts';
import { serveWriting } from './serve-writing.ts';
import { serveWorkspace } from './serve-workspace.ts';
import { readOptions, usualSettings, type Options } from './settings.ts';
import { typingFirst } from './typing-first.ts';
import { reaches } from './users.ts';

/** Milliseconds after which the coach may begin to type. */
const quietAfterOpening = 1000;
/** Turns in which what has been found is told. */
const turnsToTell = 8;

export interface Server {
  readonly documents: Documents;
  /** Starts to answer; nothing is read from the connection before. */
  listen(): void;
}

/** `asked`: what the editor asked first, where that is answered already. */
export function createServer(unguarded: Connection, place: Host, asked?: InitializeParams): Server {
  let options: Options = { settings: usualSettings };
  const say: Say = (words) => sayWith(options.words)(words);
  const { connection, host } = guarded(unguarded, place, say);
  const typing = typingFirst(host);
  const documents = openDocuments();
  const keeper = createKeeper();
  const written = followWriting(documents);
  let client: ClientCapabilities = {};

  const findingsOf: Asking['findingsOf'] = (uri, from, to) => keeper.findingsOf(documents.book(), uri, from, to);
  const compileKey = ({ uri, file }: OpenDocument, key: string): Compiled | undefined => {
    const block = blockOfKey(file, key);
    return block?.kind === 'play' ? keeper.compile(documents.book(), uri, block) : undefined;
  };
  const compileAt = (document: OpenDocument, line: number): Compiled | undefined => compileKey(document, blockAtLine(document.file, line).block.key);

  const fromOpen = <Answer>(uri: string, work: (document: OpenDocument) => Answer): Answer | null => {
    const document = documents.get(uri);
    return document === undefined ? null : work(document);
  };
  const asking: Asking = {
    connection, host, documents, keeper, written, findingsOf, compileKey, compileAt,
    options: () => options,
    say,
    client: () => client,
    answer: (token, uri, work) => answerUnlessCancelled(host, token, () => fromOpen(uri, work)),
    answerTyping: (token, uri, work) => typing.waitedFor(answerUnlessCancelled(host, token, () => fromOpen(uri, work), whatIsHere)),
    behindTyping: typing.behind,
    answerAll: (token, work) => answerUnlessCancelled(host, token, work),
    withAllFiles: () => atMost(host, longestRead, files.fetchAll(false)),
  };
  servePointing(asking);
  serveWriting(asking);
  const seen = serveOverview(asking);
  const shown = servePlays(asking);
  const workspace = serveWorkspace(asking, {
    files: () => files,
    take: (some) => void (options = { ...options, ...some }),
    changed(uris) {
      uris.forEach(usersDiffer);
      findings.filesChanged();
    },
  });
  const files = readPlayFiles(documents, {
    folders: workspace.folders,
    access: () => (options.files === true ? filesOfClient(connection) : (host.files?.(workspace.folders()) ?? noFiles)),
    leaveOut: () => options.settings.leaveOut,
  }, () => documents.all().forEach(({ uri }) => shown.changed(uri)));
  servePlaybook(asking, files);
  const findings = serveFindings(asking, files);

  const begin = (params: InitializeParams) => {
    options = readOptions(params.initializationOptions);
    client = params.capabilities;
    workspace.begin(params);
  };
  if (asked !== undefined) begin(asked);
  connection.onInitialize((params) => {
    begin(params);
    return abilities(client, host);
  });

  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    documents.open(uri, version, text);
    written.typed(uri, undefined);
    readyForTyping(uri);
    shown.changed(uri);
    checkAll(uri, undefined);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    if (documents.get(uri) === undefined) return;
    documents.change(uri, version, contentChanges.map(editOf));
    const typed = typedIn(contentChanges);
    written.typed(uri, typed?.line);
    // First what is seen moving, then what is wrong.
    shown.changed(uri, typed?.line);
    checkAll(uri, typed);
  });
  const wentTo = (uri: string, line: number | undefined) => {
    if (!written.wentTo(uri, line)) return;
    shown.left(uri);
    findings.mayDiffer(uri);
  };
  connection.onNotification(cursorMethod, (value: unknown) => {
    const cursor = readCursor(value);
    if (cursor !== undefined) wentTo(cursor.uri, cursor.line);
  });
  // An editor that saves by itself does so in the middle of a line; a coach who saves has written it.
  connection.onWillSaveTextDocument(({ textDocument: { uri }, reason }) => {
    if (reason !== TextDocumentSaveReason.AfterDelay) wentTo(uri, undefined);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    documents.close(uri);
    written.closed(uri);
    shown.closed(uri);
    seen.closed(uri);
    findings.closed(uri);
    // What lies on the disk counts again, also for those that use it.
    void files.closed(uri).then(() => usersDiffer(uri));
  });

  let readied = false;
  /** The first line that is only half there asks for the whole grammar: its tables are made in the quiet after the first text was opened and told of, not at the first letter. */
  function readyForTyping(uri: string) {
    if (readied) return;
    readied = true;
    const makeTables = () => void parseLine('1 pases to');
    host.later(quietAfterOpening, () => inBackground(host, compileOneByOne(asking, uri).then(() => void typing.behind(makeTables, turnsToTell))));
  }

  /** The document itself, then those that may look up names in it. */
  function checkAll(uri: string, typed: Typed | undefined) {
    const reading = files.fetchUsed(uri);
    findings.changed(uri, typed, reading);
    if (reading !== undefined) void reading.then(() => shown.changed(uri));
    usersDiffer(uri);
  }

  const hasBook = (uri: string): boolean => documents.book().files.get(uri)?.blocks.some(({ kind }) => kind === 'book') === true;

  function usersDiffer(uri: string) {
    for (const other of documents.all()) {
      if (other.uri === uri) continue;
      const uses = reaches(documents.book(), other.uri, uri);
      // A book gives the players of its plays their names.
      if (uses || hasBook(uri)) shown.changed(other.uri);
      if (uses) findings.mayDiffer(other.uri);
    }
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
function typedIn(changes: readonly TextDocumentContentChangeEvent[]): Typed | undefined {
  const last = changes.at(-1);
  if (last === undefined || !('range' in last)) return undefined;
  const moved = changes.some((one) => !('range' in one) || one.range.start.line !== one.range.end.line || linesIn(one.text) > 0);
  return { line: last.range.start.line + linesIn(last.text), moved };
}

const linesIn = (text: string): number => text.match(/\r\n|\n|\r/g)?.length ?? 0;
