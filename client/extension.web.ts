// Entry in the browser: the language server is a web worker.
import { sinceLoadingBegan } from './own-time.ts';
import { Uri, type ExtensionContext } from 'vscode';
import type { WorkerStart } from '../server/lsp/worker-start.ts';
import { activate as start } from './activate.ts';

export const activate = (context: ExtensionContext) =>
  start(context, loading, async ({ extensionUri }, options) => {
    const inDist = (file: string) => Uri.joinPath(extensionUri, 'dist', file).toString(true);
    // It loads the server while the library is loaded here.
    const worker = new Worker(inDist('web/server.js'));
    worker.postMessage({ allAnswers: inDist('all-answers.js') } satisfies WorkerStart);
    const { LanguageClient } = await import('vscode-languageclient/browser');
    return new LanguageClient('setwright', 'Setwright', worker, options);
  });

const loading = sinceLoadingBegan();
