// The extension, the same on the desktop and in the browser; only the way the language server starts differs.
import { commands, languages, window, type ExtensionContext, type LanguageStatusItem } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';

export const language = 'setwright';

/** What `activate` hands to tests and to other extensions. */
export interface Setwright {
  readonly client: BaseLanguageClient;
}

export type CreateClient = (context: ExtensionContext, options: LanguageClientOptions) => BaseLanguageClient;

export async function activate(context: ExtensionContext, createClient: CreateClient): Promise<Setwright> {
  const log = window.createOutputChannel('Setwright', { log: true });
  const client = createClient(context, { documentSelector: [{ language }], outputChannel: log });
  context.subscriptions.push(
    log,
    client,
    commands.registerCommand('setwright.showLog', () => log.show()),
  );
  await client.start();
  context.subscriptions.push(sayReady(client));
  return { client };
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
