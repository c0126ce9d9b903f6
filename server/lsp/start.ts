// Starts the language server in a Node process.
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { version } from '../../package.json';
import { later, type Host } from './host.ts';
import { filesOnDisk } from './node-files.ts';
import { manualBeside } from './node-manual.ts';
import { createServer } from './server.ts';

export const nodeHost: Host = { place: 'Node', version, turn: (work) => void setImmediate(work), later, files: filesOnDisk, ...manual() };

function manual(): Pick<Host, 'manual'> {
  const page = manualBeside(process.argv[1]);
  return page === undefined ? {} : { manual: page };
}

/** Over the channel the command line names (`--stdio`, `--node-ipc`, `--socket`, `--pipe`). */
export function startServer(): void {
  const connection = createConnection(ProposedFeatures.all);
  // The last resort behind guarded.ts: Node would end the process, and with it every feature.
  for (const event of ['uncaughtException', 'unhandledRejection']) process.on(event, (error: unknown) => connection.console.error(`Nobody caught ${error instanceof Error ? error.stack : String(error)}`));
  createServer(connection, nodeHost).listen();
}
