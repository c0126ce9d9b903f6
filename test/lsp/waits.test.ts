// A client that leaves questions open: every wait for it ends, and what is known by then is answered.
import * as lsp from 'vscode-languageserver-protocol';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { listFilesMethod, playbookMethod, readFileMethod } from '../../server/lsp/playbook-protocol.ts';
import { PROTOCOL_VERSION } from '../../server/lsp/protocol.ts';
import { talk, until, type Client } from './talking.ts';

const club = 'file:///club/';
const mine = `${club}mine.play`;
const text = 'notation 1\nuse "own.play"\n\nplay "Mine"\n  from "Own"\n\n  step "Go"\n    1 passes to 2\n    look 2: jumper\n';
const own = 'notation 1\nalignment "Own"\n  1 top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n';

/** ms that count as soon on a machine that does much else; what never came would be waited for for ever. */
const seconds = 15_000;

let client: Client;
afterEach(() => client.close());
const never = () => new Promise<never>(() => undefined);
const codes = (found: readonly lsp.Diagnostic[]) => found.map(({ code }) => code);

describe('where the client never says what a file holds', () => {
  let answer: (text: string | null) => void;
  beforeEach(async () => {
    client = await talk({ options: { files: true, settings: { checks: { settle: 0 } } }, folders: [club] });
    client.connection.onRequest(listFilesMethod, never);
    client.connection.onRequest(readFileMethod, () => new Promise<string | null>((resolve) => (answer = resolve)));
  });

  test('findings come without it within seconds, and again once it comes after all', async () => {
    const began = performance.now();
    await client.open(mine, text);
    expect(codes(await client.diagnosticsOf(mine, 1))).toContain('unknown-alignment');
    expect(performance.now() - began).toBeLessThan(seconds);
    answer(own);
    await until(() => !codes(client.published.findLast(({ uri }) => uri === mine)!.diagnostics).includes('unknown-alignment'));
  });

  test('everything else is answered meanwhile', async () => {
    await client.open(mine, text);
    const began = performance.now();
    const symbols = await client.connection.sendRequest(lsp.DocumentSymbolRequest.type, { textDocument: { uri: mine } });
    expect(symbols).toMatchObject([{ name: 'Mine' }]);
    expect(performance.now() - began).toBeLessThan(seconds);
  });

  test('the names of all files and the playbook are what is known so far', { timeout: 15_000 }, async () => {
    await client.open(mine, text);
    const [symbols, playbook] = await Promise.all([
      client.connection.sendRequest(lsp.WorkspaceSymbolRequest.type, { query: 'mine' }),
      client.connection.sendRequest(playbookMethod, { version: PROTOCOL_VERSION }),
    ]);
    expect(symbols).toMatchObject([{ name: 'Mine' }]);
    expect(playbook).toMatchObject({ plays: [{ name: 'Mine' }] });
  });
});

test('a playbook whose files are still being listed says that there may be more, and asked again has them', { timeout: 30_000 }, async () => {
  let list: (uris: readonly string[]) => void = () => undefined;
  client = await talk({ options: { files: true }, folders: [club] });
  client.connection.onRequest(listFilesMethod, () => new Promise((resolve) => (list = resolve)));
  client.connection.onRequest(readFileMethod, () => text);
  const ask = () => client.connection.sendRequest(playbookMethod, { version: PROTOCOL_VERSION });
  expect(await ask()).toEqual({ plays: [], books: [], unread: true });
  const again = ask();
  list([mine]);
  const whole = await again;
  expect(whole).toMatchObject({ plays: [{ name: 'Mine' }] });
  expect(whole).not.toHaveProperty('unread');
});

test('what is wrong in a play that takes long to be listed is told once it is read', { timeout: 60_000 }, async () => {
  let list: (uris: readonly string[]) => void = () => undefined;
  client = await talk({ options: { files: true }, folders: [club], capabilities: { textDocument: { diagnostic: {} } } });
  client.connection.onRequest(listFilesMethod, () => new Promise((resolve) => (list = resolve)));
  client.connection.onRequest(readFileMethod, () => text.replace('use "own.play"\n', ''));
  const told: lsp.WorkspaceDocumentDiagnosticReport[] = [];
  client.connection.onProgress(lsp.WorkspaceDiagnosticRequest.partialResult, 'p', ({ items }) => void told.push(...items));
  const answer = client.connection.sendRequest(lsp.WorkspaceDiagnosticRequest.type, { previousResultIds: [], partialResultToken: 'p' });
  await new Promise((resolve) => setTimeout(resolve, 6000));
  expect(told).toEqual([]);
  list([mine]);
  await answer;
  expect(told).toMatchObject([{ uri: mine, kind: 'full', items: expect.arrayContaining([expect.objectContaining({ code: 'unknown-alignment' })]) }]);
});

test('where the client never tells its settings the usual ones hold', async () => {
  client = await talk({ capabilities: { workspace: { configuration: true } } });
  client.connection.onRequest(lsp.ConfigurationRequest.type, never);
  await client.open(mine, text.replace('"Own"', 'horns').replace('use "own.play"\n', ''));
  await client.diagnosticsOf(mine, 1);
});

test('one who asks for findings is answered within seconds', async () => {
  client = await talk({ options: { files: true }, folders: [club], capabilities: { textDocument: { diagnostic: {} } } });
  client.connection.onRequest(readFileMethod, never);
  await client.open(mine, text);
  const began = performance.now();
  const report = await client.connection.sendRequest(lsp.DocumentDiagnosticRequest.type, { textDocument: { uri: mine } });
  expect(report).toMatchObject({ kind: 'full', items: expect.arrayContaining([expect.objectContaining({ code: 'unknown-alignment' })]) });
  expect(performance.now() - began).toBeLessThan(seconds);
});
