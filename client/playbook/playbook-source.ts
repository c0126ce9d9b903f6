// The newest playbook, asked for again when a play changes and somebody looks at it.
import { EventEmitter, Uri, window, workspace, type Disposable, type Event } from 'vscode';
import { watchPlayFiles } from '../files-for-server.ts';
import * as protocol from '../../server/lsp/playbook-protocol.ts';
import type { ServerLine } from '../server-line.ts';

export interface PlaybookSource extends Disposable {
  readonly newest: () => protocol.Playbook | undefined;
  readonly onDidChange: Event<void>;
  /** Asks now; `again` looks for files that have come. */
  readonly refresh: (again?: boolean) => Promise<void>;
  /** A view of it can be seen: it is kept up to date from now on, while one can. */
  readonly watch: (visible: () => boolean) => void;
  /** A view has come into sight. */
  readonly wake: () => void;
  readonly playsOf: (uri: Uri) => Promise<readonly protocol.PlayEntry[]>;
}

/** After a key the plays are timed again, but not for every key. */
const pause = 400;

export function openPlaybook({ ask }: Pick<ServerLine, 'ask'>, language: string): PlaybookSource {
  const changed = new EventEmitter<void>();
  const watcher = watchPlayFiles();
  const views: (() => boolean)[] = [];
  let playbook: protocol.Playbook | undefined;
  let before: string | undefined;
  let stale = true;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;

  async function refresh(again = false): Promise<void> {
    const number = ++asked;
    stale = false;
    const answer = await ask(protocol.playbookMethod, again ? { again } : {}, protocol.readPlaybook);
    if (number !== asked || answer === undefined) return;
    if (answer.unread === true) outdated();
    // A list that is drawn anew forgets for a moment which row is chosen or dragged: not where nothing has changed.
    const text = JSON.stringify(answer);
    if (text === before) return;
    before = text;
    playbook = answer;
    changed.fire();
  }

  function wake() {
    if (!stale || !views.some((visible) => visible())) return;
    clearTimeout(timer);
    timer = setTimeout(() => void refresh(), playbook === undefined ? 0 : pause);
  }
  function outdated() {
    stale = true;
    wake();
  }

  const disposables: Disposable[] = [
    changed,
    watcher,
    watcher.onDidCreate(outdated),
    watcher.onDidChange(outdated),
    watcher.onDidDelete(outdated),
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (document.languageId === language && contentChanges.length > 0) outdated();
    }),
    workspace.onDidOpenTextDocument(({ languageId }) => {
      if (languageId === language) outdated();
    }),
    workspace.onDidCloseTextDocument(({ languageId }) => {
      if (languageId === language) outdated();
    }),
    workspace.onDidChangeWorkspaceFolders(() => void refresh(true)),
    window.onDidChangeVisibleTextEditors(wake),
  ];

  return {
    newest: () => playbook,
    onDidChange: changed.event,
    refresh,
    watch: (visible) => void views.push(visible),
    wake,
    playsOf: async (uri) => (await ask(protocol.playbookMethod, { uri: uri.toString() }, protocol.readPlaybook))?.plays ?? [],
    dispose() {
      clearTimeout(timer);
      disposables.forEach((one) => one.dispose());
    },
  };
}
