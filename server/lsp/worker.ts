// The language server in a web worker, for VS Code in the browser: the protocol's library. The rest (all-answers.ts) is the same file as Node's.
import * as protocol from 'vscode-languageserver/browser';
import { version } from '../../package.json';
import { later, type Host } from './host.ts';
import { readStart } from './worker-start.ts';

/** What the loaded file asks for, and what it leaves. */
declare const self: DedicatedWorkerGlobalScope & { require: () => typeof protocol; readonly allAnswers: typeof import('./all-answers.ts') };

// A timer of a browser waits four milliseconds when it was set by a timer; a message to oneself does not.
const { port1, port2 } = new MessageChannel();
const works: (() => void)[] = [];
port1.onmessage = () => works.shift()?.();
const turn: Host['turn'] = (work) => {
  works.push(work);
  port2.postMessage(undefined);
};

// What the client says next waits until this turn is over, and its reader listens.
self.onmessage = ({ data }: MessageEvent<unknown>) => {
  const start = readStart(data);
  if (start === undefined) return;
  self.require = () => protocol;
  importScripts(start.allAnswers);
  const connection = protocol.createConnection(new protocol.BrowserMessageReader(self), new protocol.BrowserMessageWriter(self));
  self.allAnswers.serveAll(connection, { place: 'web worker', version, turn, later }).listen();
};
