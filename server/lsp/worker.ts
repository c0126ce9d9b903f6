// The language server in a web worker, for VS Code in the browser.
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { version } from '../../package.json';
import { later, type Host } from './host.ts';
import { createServer } from './server.ts';

// A timer of a browser waits four milliseconds when it was set by a timer; a message to oneself does not.
const { port1, port2 } = new MessageChannel();
const works: (() => void)[] = [];
port1.onmessage = () => works.shift()?.();
const turn: Host['turn'] = (work) => {
  works.push(work);
  port2.postMessage(undefined);
};

const port = self as DedicatedWorkerGlobalScope;
const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
createServer(connection, { place: 'web worker', version, turn, later }).listen();
