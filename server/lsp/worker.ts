// The language server in a web worker, for VS Code in the browser.
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { version } from '../../package.json';
import { ownClock } from './host.ts';
import { createServer } from './server.ts';

const port = self as DedicatedWorkerGlobalScope;
const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
createServer(connection, { place: 'web worker', version, ...ownClock }).listen();
