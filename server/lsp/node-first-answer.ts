// The language server, started: what node.ts loads. The editor's first question, what this server can do, is answered from here, from a
// tenth of the program; the rest (all-answers.ts) stands in a file of its own and is loaded once that answer is written.
import { createConnection, Message, ProposedFeatures, type InitializeParams } from 'vscode-languageserver/node';
import { abilities } from './abilities.ts';
import { soon } from './host.ts';
import { nodeHost } from './node-host.ts';

// The rest takes the protocol's library from here: of two copies neither would know the other's errors.
export * from 'vscode-languageserver/node';

/** Of the program this file becomes: what it loads is kept compiled as well. */
declare const require: (file: string) => unknown;

/** Turns until the answer to the first question has been written: one to stand in line, one to be sure. */
const turnsToWrite = 2;

let asked: InitializeParams | undefined;
let loaded = false;
function loadTheRest() {
  if (loaded) return;
  loaded = true;
  const { serveAll } = require('../all-answers.js') as typeof import('./all-answers.ts');
  serveAll(connection, nodeHost, asked);
}

const connection = createConnection(ProposedFeatures.all, {
  messageStrategy: {
    handleMessage(message, next) {
      if (Message.isRequest(message) && message.method === 'initialize') soon(nodeHost, loadTheRest, turnsToWrite);
      // Whatever else comes needs the rest, also where it has not waited for the first answer.
      else loadTheRest();
      return next(message);
    },
  },
});
// The last resort behind guarded.ts: Node would end the process, and with it every feature.
for (const event of ['uncaughtException', 'unhandledRejection']) process.on(event, (error: unknown) => connection.console.error(`Nobody caught ${error instanceof Error ? error.stack : String(error)}`));
connection.onInitialize((params) => {
  asked = params;
  return abilities(params.capabilities, nodeHost);
});
connection.listen();
