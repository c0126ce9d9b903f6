// Entry on the desktop and on a remote machine: the language server is a process of its own.
import { sinceLoadingBegan } from './own-time.ts';
import { Uri, type ExtensionContext } from 'vscode';
import { activate as start } from './activate.ts';

export const activate = (context: ExtensionContext) =>
  start(context, loading, async ({ extensionUri }, options) => {
    const { LanguageClient, TransportKind } = await import('vscode-languageclient/node');
    const module = Uri.joinPath(extensionUri, 'dist/node/server.cjs').fsPath;
    return new LanguageClient('setwright', 'Setwright', { module, transport: TransportKind.ipc }, options);
  });

const loading = sinceLoadingBegan();
