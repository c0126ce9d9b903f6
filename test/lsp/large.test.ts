// Texts and workspaces that no coach means to make, and an evening's typing: the server stays usable.
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import * as lsp from 'vscode-languageserver-protocol';
import { afterEach, describe, expect, test } from 'vitest';
import { listFilesMethod, playbookMethod, readFileMethod, readReadFile, type Playbook } from '../../server/lsp/playbook-protocol.ts';
import { PROTOCOL_VERSION } from '../../server/lsp/protocol.ts';
import { place, playOf } from '../support/typed-play.ts';
import { talk, until, uri, type Client } from './talking.ts';

const atOnce = { settings: { checks: { settle: 0 } } };
const textDocument = { uri };
const million = 1_000_000;

let client: Client;
afterEach(() => client.close());

/** Bytes of any kind, always the same. */
function anyBytes(count: number): Buffer {
  let seed = 1;
  return Buffer.from(Array.from({ length: count }, () => (seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0) >>> 24));
}

describe('a text that is no play', () => {
  test.each([
    ['one endless word', `play "Pier" ${'x'.repeat(million)}`],
    ['one endless line of passes', `play "Pier"\n  ${'1 passes to 2, '.repeat(million / 15)}`],
    ['a picture somebody named .play, read as UTF-8', anyBytes(million / 3).toString('utf8')],
    ['the same read as Latin-1', anyBytes(million / 3).toString('latin1')],
  ])('%s is told to be none, and edited and asked about like any other', { timeout: 150_000 }, async (_, text) => {
    client = await talk({ options: atOnce });
    // Processor time, of the server too: the machine may be busy with something else.
    const began = process.cpuUsage();
    await client.open(uri, text);
    expect((await client.diagnosticsOf(uri, 1)).length).toBeGreaterThan(0);
    await client.change(uri, 2, [{ range: { start: { line: 0, character: 3 }, end: { line: 0, character: 3 } }, text: '🏀' }]);
    await client.diagnosticsOf(uri, 2);
    for (const method of ['hover', 'completion', 'documentHighlight', 'definition']) await client.connection.sendRequest(`textDocument/${method}`, { textDocument, position: { line: 0, character: 5 } });
    for (const method of ['semanticTokens/full', 'documentSymbol', 'foldingRange', 'codeLens']) await client.connection.sendRequest(`textDocument/${method}`, { textDocument });
    await client.connection.sendRequest(lsp.DocumentFormattingRequest.type, { textDocument, options: { tabSize: 2, insertSpaces: true } });
    const { user, system } = process.cpuUsage(began);
    // Some 2 s on a quick machine, 8 on a slow one alone, twice that beside other tests; what grows with the square of the text takes minutes.
    expect((user + system) / 1000).toBeLessThan(40_000);
  });
});

describe('while a long file is checked for the first time', () => {
  const position = { line: 6, character: 7 };
  const range = { start: position, end: position };

  test.each([
    ['what can follow', 'completion', { position }],
    ['a line', 'hover', { position }],
    ['what stands beside the lines in view', 'inlayHint', { range: { start: { line: 0, character: 0 }, end: { line: 40, character: 0 } } }],
    ['what can be done at the cursor', 'codeAction', { range, context: { diagnostics: [] } }],
  ])('a question about %s is answered in between, though the times of all plays were asked for before', { timeout: 60_000 }, async (_, method, params) => {
    client = await talk({ options: atOnce });
    await client.open(uri, playOf(6000));
    const order: string[] = [];
    const checked = client.diagnosticsOf(uri, 1).then(() => order.push('checked'));
    const timed = client.connection.sendRequest('textDocument/codeLens', { textDocument }).then(() => order.push('timed'));
    // The first answer may find the server reading the file; the second must find it checking.
    for (let count = 0; count < 2; count++) {
      await client.connection.sendRequest(`textDocument/${method}`, { textDocument, ...params });
      order.push('answered');
    }
    await Promise.all([checked, timed]);
    expect(order.slice(0, 2)).toEqual(['answered', 'answered']);
  });
});

describe('a workspace', () => {
  const club = 'file:///club/';
  async function talkOf(files: Readonly<Record<string, string>>) {
    client = await talk({ options: { ...atOnce, files: true }, folders: [club] });
    client.connection.onRequest(listFilesMethod, () => Object.keys(files));
    client.connection.onRequest(readFileMethod, (value: unknown) => files[readReadFile(value)!.uri] ?? null);
  }

  test('of 5,000 files is listed whole, and the open play is checked meanwhile', { timeout: 60_000 }, async () => {
    const small = (number: number) => `play "Pier ${number}"\n  from horns\n`;
    await talkOf(Object.fromEntries(Array.from({ length: 5000 }, (_, number) => [`${club}${number}.play`, small(number)])));
    const order: string[] = [];
    const listed = client.connection.sendRequest<Playbook>(playbookMethod, { version: PROTOCOL_VERSION }).then((playbook) => {
      order.push('listed');
      return playbook;
    });
    await client.open(uri, playOf(30));
    await client.diagnosticsOf(uri, 1);
    order.push('checked');
    await client.connection.sendRequest(lsp.HoverRequest.type, { textDocument, position: { line: 6, character: 7 } });
    order.push('answered');
    expect((await listed).plays).toHaveLength(5001);
    expect(order).toEqual(['checked', 'answered', 'listed']);
  });

  test('whose files use each other in a circle is checked, and a change goes round it once', async () => {
    const [a, b, c] = ['a', 'b', 'c'].map((name) => `${club}${name}.play`) as [string, string, string];
    const uses = (file: string, rest = '') => `notation 1\nuse "${file}.play"\n${rest}`;
    const alignment = (name: string) => `alignment "${name}"\n  1 top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n`;
    const files = { [a]: uses('b', 'play "Mine"\n  from "Own"\n'), [b]: uses('c'), [c]: uses('a', alignment('Own')) };
    await talkOf(files);
    for (const [at, text] of Object.entries(files)) await client.open(at, text);
    const known = () => client.published.findLast(({ uri: at }) => at === a)?.diagnostics.every(({ code }) => code !== 'unknown-alignment');
    await until(() => known() === true);
    await client.change(c, 2, [{ text: uses('a', alignment('Other')) }]);
    await until(() => known() === false);
    await client.diagnosticsOf(c, 2);
    const before = client.published.length;
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(client.published.length).toBe(before);
  });
});

test('10,000 edits leave the heap as it was (at most 20 MB more)', { timeout: 60_000 }, async () => {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const heap = () => {
    collect();
    return process.memoryUsage().heapUsed / million;
  };
  client = await talk({ options: atOnce });
  const text = playOf(300);
  const line = text.split('\n').findIndex((one) => one.includes(place));
  const typed = text.split('\n')[line]!;
  await client.open(uri, text);
  await client.diagnosticsOf(uri, 1);
  const edit = async (version: number) => {
    // Every line is another one: none is remembered from before.
    const next = typed.replace('5.12', (5 + version / 100_000).toFixed(5));
    await client.change(uri, version, [{ range: { start: { line, character: 0 }, end: { line, character: typed.length + (version === 2 ? 0 : 3) } }, text: next }]);
    if (version % 100 === 0) await client.diagnosticsOf(uri, version);
    if (version % 100 === 0) client.published.length = 0;
  };
  let version = 1;
  while (version < 500) await edit(++version);
  const before = heap();
  while (version < 10_500) await edit(++version);
  expect(heap() - before).toBeLessThan(20);
});
