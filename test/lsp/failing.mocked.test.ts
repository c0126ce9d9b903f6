// Features made to fail on purpose: the failure is logged, the question answered, and everything else goes on.
import { spawn } from 'node:child_process';
import { appendFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver-protocol/node';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { buildServer } from '../../scripts/build.ts';
import { showMethod } from '../../server/lsp/protocol.ts';
import { clientOn, talk, until, uri, type Client } from './talking.ts';

const broken = vi.hoisted(() => ({ hover: false, symbols: false, diagnostics: false, frames: false }));
const breaks = (what: keyof typeof broken, error: () => unknown) => {
  if (broken[what]) throw error();
};
vi.mock('../../server/lsp/hover.ts', async (original) => {
  const real = await original<typeof import('../../server/lsp/hover.ts')>();
  return { ...real, hover: (...args: Parameters<typeof real.hover>) => (breaks('hover', () => new Error('the hover tripped')), real.hover(...args)) };
});
vi.mock('../../server/lsp/workspace-symbols.ts', async (original) => {
  const real = await original<typeof import('../../server/lsp/workspace-symbols.ts')>();
  return { ...real, workspaceSymbols: (...args: Parameters<typeof real.workspaceSymbols>) => (breaks('symbols', () => 'a symbol that is no error'), real.workspaceSymbols(...args)) };
});
vi.mock('../../server/lsp/diagnostics.ts', async (original) => {
  const real = await original<typeof import('../../server/lsp/diagnostics.ts')>();
  return { ...real, diagnosticOf: (...args: Parameters<typeof real.diagnosticOf>) => (breaks('diagnostics', () => new Error('the check tripped')), real.diagnosticOf(...args)) };
});
vi.mock('../../language/playback/playback-of.ts', async (original) => {
  const real = await original<typeof import('../../language/playback/playback-of.ts')>();
  return { ...real, playbackOf: (...args: Parameters<typeof real.playbackOf>) => (breaks('frames', () => new Error('the picture tripped')), real.playbackOf(...args)) };
});

const text = 'notation 1\nplay "Pier"\n  from horns\n  1 screens for 2\n  look 2: jumper\n';
const position = { line: 3, character: 4 };
const textDocument = { uri };

describe('a feature that fails', () => {
  let client: Client;
  let logged: string[];
  beforeEach(async () => {
    client = await talk({ options: { settings: { checks: { settle: 0 } } } });
    logged = [];
    client.connection.onNotification(lsp.LogMessageNotification.type, ({ type, message }) => void (type === lsp.MessageType.Error && logged.push(message)));
    await client.open(uri, text);
    await client.diagnosticsOf(uri, 1);
  });
  afterEach(() => {
    Object.assign(broken, { hover: false, symbols: false, diagnostics: false, frames: false });
    client.close();
  });

  const hover = () => client.connection.sendRequest(lsp.HoverRequest.type, { textDocument, position });

  test('is answered with an error for people, is told in the log with its place, and works the next time', async () => {
    broken.hover = true;
    await expect(hover()).rejects.toMatchObject({ code: lsp.LSPErrorCodes.RequestFailed, message: expect.stringMatching(/play is untouched/) });
    expect(logged).toEqual([expect.stringMatching(/^onHover failed: Error: the hover tripped\n\s+at /)]);
    broken.hover = false;
    expect(await hover()).not.toBeNull();
  });

  test('costs no other one', async () => {
    broken.hover = true;
    await expect(hover()).rejects.toThrow();
    expect(await client.connection.sendRequest(lsp.DocumentSymbolRequest.type, { textDocument })).toMatchObject([{ name: 'Pier' }]);
    await client.change(uri, 2, [{ text: text.replace('Pier', 'Quay') }]);
    expect((await client.diagnosticsOf(uri, 2)).map(({ code }) => code)).toContain('screen-unused');
  });

  test('is told even where what it throws is no error', async () => {
    broken.symbols = true;
    await expect(client.connection.sendRequest(lsp.WorkspaceSymbolRequest.type, { query: 'p' })).rejects.toMatchObject({ code: lsp.LSPErrorCodes.RequestFailed });
    expect(logged).toEqual(['onWorkspaceSymbol failed: a symbol that is no error']);
  });

  test('a check that fails in the background is told, and the next text is checked', async () => {
    broken.diagnostics = true;
    await client.change(uri, 2, [{ text: text.replace('Pier', 'Quay') }]);
    await until(() => logged.length > 0);
    expect(logged[0]).toMatch(/the check tripped/);
    broken.diagnostics = false;
    await client.change(uri, 3, [{ text }]);
    expect((await client.diagnosticsOf(uri, 3)).map(({ code }) => code)).toContain('screen-unused');
  });

  test('a picture that fails is told, and the findings still come', async () => {
    broken.frames = true;
    await client.connection.sendNotification(showMethod, { version: 1, panel: 'p', uri, what: { kind: 'follow', line: 3 } });
    await until(() => logged.length > 0);
    expect(logged[0]).toMatch(/the picture tripped/);
    await client.change(uri, 2, [{ text: text.replace('Pier', 'Quay') }]);
    await client.diagnosticsOf(uri, 2);
  });

  test('one refused on purpose is no failure', async () => {
    const stale = { title: 'Split', data: { uri, version: 0, id: 'split-step', range: { start: position, end: position } } };
    await expect(client.connection.sendRequest(lsp.CodeActionResolveRequest.type, stale)).rejects.toMatchObject({ code: lsp.LSPErrorCodes.RequestFailed, message: expect.stringMatching(/text has changed/) });
    expect(logged).toEqual([]);
  });
});

test('what nobody catches is told, and the process goes on', { timeout: 90_000 }, async () => {
  const server = await buildServer('test/out/failing');
  const strayed = "setTimeout(() => { throw new Error('a stray throw'); }, 1);\nsetTimeout(() => void Promise.reject(new Error('a stray promise')), 2);";
  appendFileSync(join(dirname(server), 'language-server.cjs'), strayed);
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createProtocolConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const logged: string[] = [];
  connection.onNotification(lsp.LogMessageNotification.type, ({ message }) => void logged.push(message));
  const client = await clientOn(connection);
  await until(() => logged.length === 2);
  expect(logged).toEqual([expect.stringMatching(/Nobody caught Error: a stray throw/), expect.stringMatching(/Nobody caught Error: a stray promise/)]);
  await client.open(uri, text);
  expect((await client.diagnosticsOf(uri, 1)).map(({ code }) => code)).toContain('screen-unused');
  client.close();
  child.kill();
});
