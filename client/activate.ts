// The extension, the same on the desktop and in the browser; only the way the language server starts differs.
import { commands, l10n, languages, window, type ExtensionContext, type LanguageStatusItem } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { registerCallTime } from './call-time.ts';
import { registerKeepPlay } from './keep-play.ts';
import { registerKeepPlaybook } from './keep-playbook.ts';
import { registerChangePlay } from './change-play.ts';
import { manualLink, registerManual } from './manual.ts';
import { serveFiles, watchPlayFiles } from './files-for-server.ts';
import { registerNewPlay } from './new-play.ts';
import { registerNewcomer } from './newcomer.ts';
import { keepPictures, picturesNow } from './pictures.ts';
import { ownTime } from './own-time.ts';
import { registerPlayPanels } from './panel/panels.ts';
import { registerBenchView } from './playbook/bench-view.ts';
import { openPlaybook } from './playbook/playbook-source.ts';
import { registerPlaybookView } from './playbook/playbook-view.ts';
import { openNextList } from './open-next-list.ts';
import { openServerLine } from './server-line.ts';
import { setAsTyped } from './set-as-typed.ts';
import { tellOfCursor } from './told-of-cursor.ts';

export const language = 'setwright';

/** What `activate` hands to tests and to other extensions. */
export interface Setwright {
  /** The language server answers from then on. */
  readonly ready: Promise<BaseLanguageClient>;
  /** Own milliseconds that loading the extension's code took. */
  readonly loading: number;
  /** Own milliseconds that `activate` took; the protocol's library is loaded, and the server started, behind it: nothing waits for them. */
  readonly activation: number;
}

/** Loads the library that speaks the protocol, nine tenths of the extension's code. */
export type LoadClient = (context: ExtensionContext, options: LanguageClientOptions) => Promise<BaseLanguageClient>;

export function activate(context: ExtensionContext, loading: number, loadClient: LoadClient): Setwright {
  const began = ownTime();
  const log = window.createOutputChannel('Setwright', { log: true });
  const watcher = watchPlayFiles();
  const typing = setAsTyped();
  const client = atNextTurn().then(() =>
    loadClient(context, {
      documentSelector: [{ language }],
      outputChannel: log,
      initializationOptions: { manual: manualLink, pages: manualLink, files: true, commands: true, pictures: picturesNow(), ...(l10n.bundle !== undefined && { words: l10n.bundle }) },
      synchronize: { fileEvents: watcher },
      middleware: { ...openNextList, ...typing.middleware },
    }),
  );
  const files = client.then(serveFiles);
  const server = openServerLine(client);
  const { running } = server;
  const playbook = openPlaybook(server, language);
  const panels = registerPlayPanels(context, server, playbook, language);
  const newcomer = registerNewcomer(context.globalState);
  context.subscriptions.push(
    log,
    watcher,
    { dispose: () => client.then((one) => one.dispose()) },
    playbook,
    typing.disposable,
    { dispose: () => files.then((some) => some.forEach((one) => one.dispose())) },
    commands.registerCommand('setwright.showLog', () => log.show()),
    registerManual(running),
    ...registerKeepPlay(context, server, { inHand: panels.inHand, playsOf: playbook.playsOf }),
    ...registerKeepPlaybook(context, server, playbook),
    keepPictures(running),
    ...panels.disposables,
    ...registerChangePlay(server, playbook, panels.inHand),
    ...registerPlaybookView(server, playbook),
    ...registerBenchView(playbook, context.workspaceState),
    ...newcomer.disposables,
    ...registerNewPlay(server, newcomer, language),
    ...registerCallTime(playbook, panels, language),
    ...tellOfCursor(server, language),
  );
  void running.then((one) => context.subscriptions.push(sayReady(one)));
  const activation = ownTime() - began;
  log.info(`Loaded in ${loading.toFixed(0)} ms, started in ${activation.toFixed(0)} ms`);
  return { ready: running, loading, activation };
}

/** The editor goes on as soon as `activate` has returned. */
const atNextTurn = () => new Promise<void>((resolve) => setTimeout(resolve));

/** What the braces in the status bar tell about the open play. */
function sayReady(client: BaseLanguageClient): LanguageStatusItem {
  const server = client.initializeResult?.serverInfo;
  const item = languages.createLanguageStatusItem('setwright.server', { language });
  item.name = 'Setwright';
  item.text = l10n.t('Setwright is ready');
  item.detail = `${server?.name} ${server?.version}`;
  item.command = { title: l10n.t('Show the log'), command: 'setwright.showLog' };
  return item;
}
