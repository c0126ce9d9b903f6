// Entry in the browser: the language server is a web worker.
import { sinceLoadingBegan } from './own-time.ts';
import { Uri, type ExtensionContext } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { activate as start } from './activate.ts';

export const activate = (context: ExtensionContext) =>
  start(context, loading, ({ extensionUri }, options) => {
    const worker = new Worker(Uri.joinPath(extensionUri, 'dist/web/server.js').toString(true));
    return new LanguageClient('setwright', 'Setwright', worker, options);
  });

const loading = sinceLoadingBegan();
