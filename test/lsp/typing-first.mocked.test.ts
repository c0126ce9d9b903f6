// What a coach waits for while he types is on the wire before the check of the same text begins.
import { PassThrough, Writable } from 'node:stream';
import { createConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { afterEach, expect, test, vi } from 'vitest';
import { createServer } from '../../server/lsp/server.ts';
import { nodeHost } from '../../server/lsp/node-host.ts';
import { typingFirst } from '../../server/lsp/typing-first.ts';
import { until, uri } from './talking.ts';

const { order } = vi.hoisted(() => ({ order: [] as string[] }));
vi.mock('../../language/checks/check-play.ts', async (original) => {
  const real = await original<typeof import('../../language/checks/check-play.ts')>();
  return { ...real, checkPlay: (...args: Parameters<typeof real.checkPlay>) => (order.push('check'), real.checkPlay(...args)) };
});
afterEach(() => void (order.length = 0));

const text = 'play "Pier"\n  from horns, ball with 1\n\n  step "Go"\n    1 passes to \n';
const framed = (message: object) => {
  const body = JSON.stringify({ jsonrpc: '2.0', ...message });
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
};
const ask = (id: number, character: number) => framed({ id, method: 'textDocument/completion', params: { textDocument: { uri }, position: { line: 4, character } } });
const typed = (version: number, letters: string) => framed({ method: 'textDocument/didChange', params: { textDocument: { uri, version }, contentChanges: [{ range: { start: { line: 4, character: 15 }, end: { line: 4, character: 15 } }, text: letters }] } });

/** Until nothing more is done: what was begun at the opening is not to count as the answer to an edit. */
async function quiet() {
  for (let done = -1; done !== order.length; ) {
    done = order.length;
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
}

/** A server whose writing is noted in the order it happens, not in the order a client comes to read it. */
async function server() {
  const there = new PassThrough();
  const wire = new Writable({
    write(data: Buffer, _, done) {
      for (const [, id] of data.toString().matchAll(/"id":(\d+),"result"/g)) order.push(`answer ${id}`);
      done();
    },
  });
  createServer(createConnection(new StreamMessageReader(there), new StreamMessageWriter(wire)), nodeHost).listen();
  there.write(framed({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } }));
  there.write(framed({ method: 'initialized', params: {} }));
  there.write(framed({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'setwright', version: 1, text } } }));
  await until(() => order.includes('check'));
  await quiet();
  order.length = 0;
  return there;
}

test('an edit and the question what can follow, in one breath: the answer is written, then the play is checked', async () => {
  const there = await server();
  there.write(typed(2, '2') + ask(2, 16));
  await until(() => order.includes('check') && order.includes('answer 2'));
  expect(order).toEqual(['answer 2', 'check']);
});

test('so are the answers to two questions', async () => {
  const there = await server();
  there.write(typed(2, '2') + ask(2, 16) + ask(3, 15));
  await until(() => order.length === 3);
  expect(order).toEqual(['answer 2', 'answer 3', 'check']);
});

test('without a question the check does not wait, and one that is called off never comes', () => {
  const turns: (() => void)[] = [];
  const turn = () => turns.splice(0).forEach((work) => work());
  const { behind } = typingFirst({ turn: (work) => void turns.push(work) });
  const done: string[] = [];
  behind(() => done.push('first'), 2);
  behind(() => done.push('second'), 2)();
  turn();
  turn();
  expect(done).toEqual(['first']);
});

test('work that waits for an answer is called off as well, and a question that fails holds nothing up', async () => {
  const turns: (() => void)[] = [];
  const turn = () => turns.splice(0).forEach((work) => work());
  const { behind, waitedFor } = typingFirst({ turn: (work) => void turns.push(work) });
  const done: string[] = [];
  let fail = (): void => undefined;
  const answer = waitedFor(new Promise<void>((_, reject) => (fail = () => reject(new Error('no')))));
  behind(() => done.push('stays'), 1);
  const off = behind(() => done.push('goes'), 1);
  for (let count = 0; count < 5; count++) turn();
  expect(done).toEqual([]);
  off();
  fail();
  await expect(answer).rejects.toThrow('no');
  for (let count = 0; count < 5; count++) turn();
  expect(done).toEqual(['stays']);
});
