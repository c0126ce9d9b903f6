// The extension, the same on the desktop and in the browser; only the way the language server starts differs.
import { commands, type ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { openLog } from './language-client.ts';

/** What `activate` hands to tests and to other extensions. */
export interface Setwright {
  readonly client: BaseLanguageClient;
}

export type CreateClient = (context: ExtensionContext, options: LanguageClientOptions) => BaseLanguageClient;

export async function activate(context: ExtensionContext, createClient: CreateClient): Promise<Setwright> {
  const log = openLog();
  const client = createClient(context, log.clientOptions);
  context.subscriptions.push(
    log.channel,
    client,
    commands.registerCommand('setwright.showLog', () => log.channel.show()),
  );
  await client.start();
  const server = client.initializeResult?.serverInfo;
  log.channel.info(`${server?.name} ${server?.version} is ready`);
  return { client };
}
