// The extension, the same on the desktop and in the browser; only the way the language server starts differs.
import { commands, languages, window, type CompletionItem, type ExtensionContext, type LanguageStatusItem } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { manualLink, registerManual } from './manual.ts';
import { registerPlayPanels } from './play-panels.ts';

export const language = 'setwright';

/** What `activate` hands to tests and to other extensions. */
export interface Setwright {
  readonly client: BaseLanguageClient;
}

export type CreateClient = (context: ExtensionContext, options: LanguageClientOptions) => BaseLanguageClient;

export async function activate(context: ExtensionContext, createClient: CreateClient): Promise<Setwright> {
  const log = window.createOutputChannel('Setwright', { log: true });
  const client = createClient(context, {
    documentSelector: [{ language }],
    outputChannel: log,
    initializationOptions: { manual: manualLink },
    middleware: {
      async provideCompletionItem(document, position, how, token, next) {
        const answer = await next(document, position, how, token);
        const items = Array.isArray(answer) ? answer : (answer?.items ?? []);
        items.forEach(openNextList);
        return answer;
      },
    },
  });
  const running = client.start();
  context.subscriptions.push(
    log,
    client,
    commands.registerCommand('setwright.showLog', () => log.show()),
    registerManual(client, running),
    ...registerPlayPanels(context, client, running),
  );
  await running;
  context.subscriptions.push(sayReady(client));
  return { client };
}

/** After a word that something has to follow, the list of what can follow opens by itself. */
function openNextList(item: CompletionItem) {
  const { data } = item as CompletionItem & { readonly data?: { readonly more?: unknown } };
  if (data?.more === true) item.command = { title: 'What can follow', command: 'editor.action.triggerSuggest' };
}

/** What the braces in the status bar tell about the open play. */
function sayReady(client: BaseLanguageClient): LanguageStatusItem {
  const server = client.initializeResult?.serverInfo;
  const item = languages.createLanguageStatusItem('setwright.server', { language });
  item.name = 'Setwright';
  item.text = 'Setwright is ready';
  item.detail = `${server?.name} ${server?.version}`;
  item.command = { title: 'Show log', command: 'setwright.showLog' };
  return item;
}
