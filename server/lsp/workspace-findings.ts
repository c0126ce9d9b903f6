// What is wrong in the whole workspace, for an editor that asks: file by file as they are read, with progress; then, as long as nothing
// has changed, the question stays open instead of being asked again and again.
import { DocumentDiagnosticReportKind, type CancellationToken, type ResultProgressReporter, type WorkDoneProgressReporter } from 'vscode-languageserver';
import type { Diagnostic, WorkspaceDiagnosticParams, WorkspaceDiagnosticReport, WorkspaceDiagnosticReportPartialResult, WorkspaceDocumentDiagnosticReport } from 'vscode-languageserver-protocol';
import type { Asking } from './asking.ts';
import { atMost, type CallOff } from './host.ts';
import { compileOneByOne } from './one-by-one.ts';
import { longestRead, type PlayFiles } from './play-files.ts';
import { calledOff } from './cancelling.ts';
import { message } from '../../language/message/message.ts';
import type { Told } from './told.ts';

/** Milliseconds without a change after which the whole workspace is looked at again. The document in hand is asked for on its own. */
const quiet = 1000;

export interface WorkspaceFindings {
  readonly answer: (params: WorkspaceDiagnosticParams, token: CancellationToken, progress: WorkDoneProgressReporter, partial?: ResultProgressReporter<WorkspaceDiagnosticReportPartialResult>) => Promise<WorkspaceDiagnosticReport>;
  /** Something has changed anywhere. */
  readonly changed: () => void;
}

export interface WorkspaceTelling extends Pick<Asking, 'host' | 'behindTyping' | 'documents' | 'keeper' | 'say'> {
  readonly files: Pick<PlayFiles, 'fetchAll'>;
  readonly told: Told;
  readonly readyOf: (uri: string) => readonly Diagnostic[];
}

export function tellWorkspace({ host, behindTyping, documents, keeper, say, files, told, readyOf }: WorkspaceTelling): WorkspaceFindings {
  const waiting = new Set<() => void>();
  let count = 0;
  let timer: CallOff | undefined;

  const turn = () => new Promise<void>((resolve) => host.turn(resolve));
  const nextChange = (since: number, token: CancellationToken) =>
    new Promise<void>((resolve) => {
      if (token.isCancellationRequested || count !== since) return resolve();
      const wake = () => {
        waiting.delete(wake);
        resolve();
      };
      waiting.add(wake);
      token.onCancellationRequested(wake);
    });

  async function reportOf(uri: string, previous: string | undefined): Promise<WorkspaceDocumentDiagnosticReport | undefined> {
    await compileOneByOne({ behindTyping, documents, keeper }, uri);
    await turn();
    if (!documents.book().files.has(uri)) return undefined;
    const items = readyOf(uri);
    const resultId = told.idOf(uri, items);
    const version = documents.get(uri)?.version ?? null;
    if (resultId === previous) return { kind: DocumentDiagnosticReportKind.Unchanged, uri, version, resultId };
    return { kind: DocumentDiagnosticReportKind.Full, uri, version, resultId, items: [...items] };
  }

  function changed(): void {
    count++;
    timer?.();
    timer = host.later(quiet, () => [...waiting].forEach((wake) => wake()));
  }

  return {
    async answer({ previousResultIds }, token, progress, partial) {
      const previous = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
      progress.begin(say(message('Checking the plays')), 0, undefined, true);
      try {
        let read = false;
        const reading = files.fetchAll(false).finally(() => (read = true));
        await atMost(host, longestRead, reading);
        // What takes longer to read is told once it is there.
        if (!read) void reading.then(changed, changed);
        for (;;) {
          const since = count;
          const uris = [...documents.book().files.keys()].sort();
          const gone = [...previous.keys()].filter((uri) => !documents.book().files.has(uri)).map((uri): WorkspaceDocumentDiagnosticReport => ({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, items: [] }));
          const items: WorkspaceDocumentDiagnosticReport[] = [];
          let news = gone.length > 0;
          const tell = (report: WorkspaceDocumentDiagnosticReport) => {
            if (partial === undefined) return void items.push(report);
            if (report.kind === DocumentDiagnosticReportKind.Unchanged) return;
            news = true;
            partial.report({ items: [report] });
          };
          gone.forEach(tell);
          for (const [at, uri] of uris.entries()) {
            const report = await reportOf(uri, previous.get(uri));
            if (token.isCancellationRequested) throw calledOff();
            if (report !== undefined) tell(report);
            progress.report((100 * (at + 1)) / uris.length, say(message('{nth} of {all}', { nth: at + 1, all: uris.length })));
          }
          // Who cannot take the answer in parts cannot wait for it either.
          if (news || partial === undefined) return { items };
          progress.done();
          await nextChange(since, token);
          if (token.isCancellationRequested) throw calledOff();
        }
      } finally {
        progress.done();
      }
    },
    changed,
  };
}
