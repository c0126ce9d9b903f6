// All that the language server answers but, in Node, the editor's first question. Node (node-first-answer.ts) and a worker (worker.ts) load
// this file, which knows neither, and bring the protocol's library.
export { createServer as serveAll } from './server.ts';
