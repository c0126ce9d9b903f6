// What is wrong, told to the editor. One that asks for it (pull diagnostics) is answered and never sent any unasked; any other is sent
// each version of an open document once, whole, swapped for what stood there.
import { DocumentDiagnosticReportKind, type CancellationToken, type DocumentDiagnosticReport } from 'vscode-languageserver';
import type { Diagnostic } from 'vscode-languageserver-types';
import { blockAtLine } from '../../language/book/book.ts';
import type { Finding } from '../../language/checks/finding.ts';
import type { Asking } from './asking.ts';
import { calledOff } from './cancelling.ts';
import { diagnosticOf } from './diagnostics.ts';
import { atMost, soon, type CallOff } from './host.ts';
import { compileOneByOne, inBackground } from './one-by-one.ts';
import type { PlayFiles } from './play-files.ts';
import type { Options } from './settings.ts';
import { startSettling, type Lines } from './settling.ts';
import { equal, keepTold } from './told.ts';
import { tellWorkspace } from './workspace-findings.ts';

/** Turns to wait before checking: the picture of the same text is on its way by then. */
const afterTheFrames = 4;
/** Milliseconds that findings wait for files on their way. What comes later is looked at then. */
const longestWait = 1000;

export interface Typed {
  /** Of the last edit. */
  readonly line: number;
  /** Lines have come or gone. */
  readonly moved: boolean;
}

export interface Findings {
  /** A document's text is another. `reading`: files that it uses are on their way. */
  readonly changed: (uri: string, typed: Typed | undefined, reading: Promise<void> | undefined) => void;
  /** What it means may be another, through a file that it uses. */
  readonly mayDiffer: (uri: string) => void;
  /** Files have come or gone, or what they say has changed. */
  readonly filesChanged: () => void;
  readonly closed: (uri: string) => void;
}

export function serveFindings(asking: Asking, files: PlayFiles): Findings {
  const { connection, host, behindTyping, documents, keeper, written, client, options } = asking;
  const asks = (): boolean => client().textDocument?.diagnostic !== undefined;
  const canRefresh = (): boolean => client().workspace?.diagnostics?.refreshSupport === true;
  // One who asks, and cannot be told to ask again, would never hear of what waits.
  const settling = startSettling<Diagnostic>(
    host,
    () => (asks() && !canRefresh() ? 0 : options().settings.settle),
    ({ code, range }) => ({ code: String(code), line: range.start.line }),
    (uri) => (asks() ? refresh() : publish(uri)),
  );

  /** What has been told of a block, as the editor's squiggles: told again as it stands while the block stays where it is. */
  const asTold = new WeakMap<readonly Finding[], { readonly options: Options; readonly firstLine: number; readonly items: readonly Diagnostic[] }>();

  function diagnosticsOf(uri: string): Diagnostic[] {
    const now = options();
    return keeper.toldIn(documents.book(), uri).flatMap(({ block, firstLine, findings }) => {
      const told = written.quieter(uri, block, firstLine, findings);
      const known = asTold.get(told);
      if (known?.options === now && known.firstLine === firstLine) return known.items;
      const items = told.map((finding) => diagnosticOf(uri, block, firstLine, finding, now.manual ?? host.manual, asking.say));
      asTold.set(told, { options: now, firstLine, items });
      return items;
    });
  }
  /** The play that a line stands in, where that line cannot be read. */
  function unreadablePlay(uri: string, line: number): Lines | undefined {
    const file = documents.get(uri)?.file;
    if (file === undefined) return undefined;
    const { block, firstLine } = blockAtLine(file, line);
    return block.lines[line - firstLine]?.parsed.fault === undefined ? undefined : { from: firstLine, to: firstLine + block.lines.length - 1 };
  }

  const readyOf = (uri: string): readonly Diagnostic[] => settling.ready(uri, diagnosticsOf(uri));

  // ---- sent unasked ---------------------------------------------------------------------------------------------------------------

  const published = new Map<string, { readonly version: number; readonly items: readonly Diagnostic[] }>();
  /** Documents to look at after the messages that are already here, in their newest text. */
  const due = new Map<string, CallOff>();

  function publish(uri: string) {
    const document = documents.get(uri);
    if (document === undefined) return;
    const { version } = document;
    const items = readyOf(uri);
    const before = published.get(uri);
    if (before?.version === version && equal(before.items, items)) return;
    published.set(uri, { version, items });
    void connection.sendDiagnostics({ uri, version, diagnostics: [...items] });
  }

  function lookAt(uri: string) {
    due.get(uri)?.();
    let off = false;
    const callOff = behindTyping(() => inBackground(host, compileOneByOne(asking, uri, () => off).then((done) => done && tell())), afterTheFrames);
    const tell = () => {
      due.delete(uri);
      if (!asks()) publish(uri);
      else if (!told.same(uri, readyOf(uri))) refresh();
    };
    due.set(uri, () => {
      off = true;
      callOff();
    });
  }

  // ---- asked for ------------------------------------------------------------------------------------------------------------------

  const told = keepTold();
  let refreshing = false;
  /** Several documents that differ are one question to the editor. */
  function refresh() {
    if (refreshing || !canRefresh()) return;
    refreshing = true;
    soon(host, () => {
      refreshing = false;
      void connection.languages.diagnostics.refresh().catch(() => undefined);
    });
  }

  async function answer(uri: string, previous: string | undefined, token: CancellationToken): Promise<DocumentDiagnosticReport> {
    await new Promise<void>((resolve) => void behindTyping(resolve, afterTheFrames));
    const reading = files.fetchUsed(uri);
    if (reading !== undefined) {
      await atMost(host, longestWait, reading);
      void reading.then(() => lookAt(uri));
    }
    await compileOneByOne(asking, uri, () => token.isCancellationRequested);
    if (token.isCancellationRequested) throw calledOff();
    const items = readyOf(uri);
    const resultId = told.idOf(uri, items);
    return resultId === previous ? { kind: DocumentDiagnosticReportKind.Unchanged, resultId } : { kind: DocumentDiagnosticReportKind.Full, resultId, items: [...items] };
  }

  const { diagnostics } = connection.languages;
  diagnostics.on(({ textDocument: { uri }, previousResultId }, token) => answer(uri, previousResultId, token));
  const workspace = tellWorkspace({ ...asking, files, told, readyOf });
  diagnostics.onWorkspace(workspace.answer);

  return {
    changed(uri, typed, reading) {
      settling.typed(uri, typed?.line, { play: typed && unreadablePlay(uri, typed.line), moved: typed?.moved ?? true });
      workspace.changed();
      // One who asks does so by himself after an edit of his own.
      if (asks()) return;
      if (reading === undefined) lookAt(uri);
      else {
        void atMost(host, longestWait, reading).then(() => lookAt(uri));
        void reading.then(() => lookAt(uri));
      }
    },
    mayDiffer: lookAt,
    filesChanged: workspace.changed,
    closed(uri) {
      settling.close(uri);
      due.get(uri)?.();
      due.delete(uri);
      published.delete(uri);
      told.forget(uri);
      workspace.changed();
      if (!asks()) void connection.sendDiagnostics({ uri, diagnostics: [] });
    },
  };
}
