// All that the language server answers in a Node process but the editor's first question: what node-first-answer.ts loads behind that.
import type { Connection, InitializeParams } from 'vscode-languageserver';
import { nodeHost } from './node-host.ts';
import { createServer } from './server.ts';

/** `asked`: the first question, where it has come. */
export function serveAll(connection: Connection, asked: InitializeParams | undefined): void {
  createServer(connection, nodeHost, asked);
}
