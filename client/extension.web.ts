// Entry in the browser: the language server is a web worker.
import { sinceLoadingBegan } from './own-time.ts';
import { Uri, type ExtensionContext } from 'vscode';
import { activate as start } from './activate.ts';

export const activate = (context: ExtensionContext) =>
  start(context, loading, async ({ extensionUri }, options) => {
    // It loads the server while the library is loaded here.
    const worker = new Worker(Uri.joinPath(extensionUri, 'dist/web/server.js').toString(true));
    const { LanguageClient } = await import('vscode-languageclient/browser');
    return new LanguageClient('setwright', 'Setwright', worker, options);
  });

const loading = sinceLoadingBegan();
