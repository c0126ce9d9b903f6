// Starts the language server in a Node process.
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { version } from '../../package.json';
import { ownClock } from './host.ts';
import { createServer } from './server.ts';

/** Over the channel the command line names (`--stdio`, `--node-ipc`, `--socket`, `--pipe`). */
export function startServer(): void {
  createServer(createConnection(ProposedFeatures.all), { place: 'Node', version, ...ownClock }).listen();
}

/** Over standard input and output, whatever the command line says: for `setwright lsp`. */
export function startOnStdio(): void {
  const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
  createServer(connection, { place: 'Node', version, ...ownClock }).listen();
}
