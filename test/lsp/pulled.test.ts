// An editor that asks for what is wrong: for a document, for the whole workspace, and told to ask again. It is never sent any unasked.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { afterEach, describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { listFilesMethod, readFileMethod, readReadFile } from '../../server/lsp/playbook-protocol.ts';
import { talk, until, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const broken = lighthouse.replace('    5 screens down for 3', '    1 screens down for 3');
const lineOf = (text: string, words: string) => text.split('\n').findIndex((line) => line.includes(words));
const folder = 'file:///club/';
const uri = `${folder}lighthouse.play`;
const user = 'notation 1\nuse "own.play"\n\nplay "Mine"\n  from "Own"\n\n  step "Go"\n    1 passes to 2\n    look 2: jumper\n';
const own = 'notation 1\nalignment "Own"\n  1 top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n';

let client: Client;
let disk: Record<string, string>;
let refreshed = 0;
afterEach(() => client?.close());

async function start(settle = 0, capabilities: lsp.ClientCapabilities = { textDocument: { diagnostic: {} }, workspace: { diagnostics: { refreshSupport: true } } }) {
  refreshed = 0;
  client = await talk({ options: { files: true, settings: { checks: { settle } } }, capabilities });
  client.connection.onRequest(listFilesMethod, () => Object.keys(disk));
  client.connection.onRequest(readFileMethod, (value: unknown) => disk[readReadFile(value)!.uri] ?? null);
  client.connection.onRequest(lsp.DiagnosticRefreshRequest.type, () => void refreshed++);
}

const pull = (previousResultId?: string, of = uri) => client.connection.sendRequest(lsp.DocumentDiagnosticRequest.type, { textDocument: { uri: of }, ...(previousResultId !== undefined && { previousResultId }) });
const codes = (report: lsp.DocumentDiagnosticReport | lsp.WorkspaceDocumentDiagnosticReport) => (report.kind === 'full' ? report.items.map(({ code }) => code) : report.kind);
const idOf = (report: lsp.DocumentDiagnosticReport | lsp.WorkspaceDocumentDiagnosticReport) => report.resultId!;
const edit = (line: number, character: number, to: number, text: string) => ({ range: { start: { line, character }, end: { line, character: to } }, text });

describe('one document', () => {
  test('is told what is wrong in it, once: as long as nothing changes, its id is the answer', async () => {
    await start();
    await client.open(uri, broken);
    const first = await pull();
    expect(codes(first)).toContain('screen-with-ball');
    expect(await pull(idOf(first))).toEqual({ kind: 'unchanged', resultId: idOf(first) });
    await client.change(uri, 2, [edit(0, 0, 0, '# a remark\n')]);
    expect(await pull(idOf(first)), 'one line further down').toMatchObject({ kind: 'full' });
  });

  test('after an edit that changes nothing of it the id stays', async () => {
    await start();
    await client.open(uri, broken);
    const first = await pull();
    await client.change(uri, 2, [edit(0, 'notation 1'.length, 'notation 1'.length, ' ')]);
    expect(await pull(idOf(first))).toMatchObject({ kind: 'unchanged' });
  });

  test('nothing is sent unasked', async () => {
    await start();
    await client.open(uri, broken);
    await client.change(uri, 2, [edit(0, 0, 0, '\n')]);
    await pull();
    await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    await pull();
    expect(client.published).toEqual([]);
  });

  test('one that cannot ask is sent them, and offered no way to', async () => {
    await start(0, {});
    expect(client.capabilities.diagnosticProvider).toBeUndefined();
    await client.open(uri, broken);
    expect((await client.diagnosticsOf(uri, 1)).map(({ code }) => code)).toContain('screen-with-ball');
  });

  const at = lineOf(lighthouse, '2 clears');
  const half = edit(at, '    2 clears '.length, '    2 clears to right corner'.length, 'to rigth corner');

  test('what is new on the line being typed waits; then the editor is told to ask again', async () => {
    await start(60);
    await client.open(uri, lighthouse);
    expect(codes(await pull())).toEqual([]);
    await client.change(uri, 2, [half]);
    const typing = await pull();
    expect(codes(typing)).toEqual([]);
    await until(() => refreshed === 1);
    const settled = await pull(idOf(typing));
    expect(settled.kind === 'full' && settled.items.map(({ range }) => range.start.line)).toEqual([at]);
  });

  test('it does not wait for one that cannot be told to ask again', async () => {
    await start(5000, { textDocument: { diagnostic: {} } });
    await client.open(uri, lighthouse);
    await client.change(uri, 2, [half]);
    expect((await pull()).kind === 'full' && codes(await pull())).toHaveLength(1);
  });

  test('a file that it uses is read before the answer', async () => {
    disk = { [`${folder}own.play`]: own };
    await start();
    await client.open(`${folder}mine.play`, user);
    expect(codes(await pull(undefined, `${folder}mine.play`))).not.toContain('unknown-alignment');
  });

  test('when a file that it uses changes, the editor is told to ask again; not when it changes nothing', async () => {
    disk = {};
    await start();
    await client.open(`${folder}own.play`, own);
    await client.open(`${folder}mine.play`, user);
    const before = await pull(undefined, `${folder}mine.play`);
    await client.change(`${folder}own.play`, 2, [edit(0, 0, 0, '# a remark\n')]);
    await pull(undefined, `${folder}own.play`);
    expect(refreshed).toBe(0);
    await client.change(`${folder}own.play`, 3, [{ text: own.replace('"Own"', '"Other"') }]);
    await until(() => refreshed === 1);
    expect(codes(await pull(idOf(before), `${folder}mine.play`))).toContain('unknown-alignment');
  });
});

describe('the whole workspace', () => {
  async function pullAll(previousResultIds: lsp.PreviousResultId[] = [], inParts = false) {
    const parts: lsp.WorkspaceDocumentDiagnosticReport[] = [];
    const progress: string[] = [];
    const [part, work] = [`part-${Math.random()}`, `work-${Math.random()}`];
    client.connection.onProgress(lsp.WorkspaceDiagnosticRequest.partialResult, part, ({ items }) => void parts.push(...items));
    client.connection.onProgress(lsp.WorkDoneProgress.type, work, ({ kind }) => void progress.push(kind));
    const answer = client.connection.sendRequest(lsp.WorkspaceDiagnosticRequest.type, { previousResultIds, workDoneToken: work, ...(inParts && { partialResultToken: part }) });
    return { answer, parts, progress };
  }
  const idsOf = (reports: readonly lsp.WorkspaceDocumentDiagnosticReport[]) => reports.map((report) => ({ uri: report.uri, value: idOf(report) }));

  test('is told file by file, also of those that nobody has open', async () => {
    disk = { [uri]: broken, [`${folder}own.play`]: own, [`${folder}mine.play`]: user };
    await start();
    await client.open(`${folder}mine.play`, user, 7);
    const { answer, progress } = await pullAll();
    const { items } = await answer;
    expect(items.map((one) => [one.uri, one.version])).toEqual([[uri, null], [`${folder}mine.play`, 7], [`${folder}own.play`, null]]);
    expect(codes(items[0]!)).toContain('screen-with-ball');
    expect(progress[0]).toBe('begin');
    expect(progress.at(-1)).toBe('end');
    expect(progress).toContain('report');
    const again = await (await pullAll(idsOf(items))).answer;
    expect(again.items.map(({ kind }) => kind)).toEqual(['unchanged', 'unchanged', 'unchanged']);
  });

  test('in parts, to one who can take them; with nothing new the question stays open until something is', { timeout: 10_000 }, async () => {
    disk = { [uri]: broken, [`${folder}own.play`]: own };
    await start();
    const first = await pullAll([], true);
    expect((await first.answer).items).toEqual([]);
    expect(first.parts.map((one) => one.uri)).toEqual([uri, `${folder}own.play`]);
    const second = await pullAll(idsOf(first.parts), true);
    let answered = false;
    void second.answer.then(() => (answered = true));
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(answered).toBe(false);
    disk[uri] = lighthouse;
    await client.connection.sendNotification(lsp.DidChangeWatchedFilesNotification.type, { changes: [{ uri, type: lsp.FileChangeType.Changed }] });
    await second.answer;
    expect(second.parts.map((one) => [one.uri, codes(one)])).toEqual([[uri, []]]);
  });

  test('a file that is gone has nothing wrong any more', async () => {
    disk = { [uri]: broken, [`${folder}own.play`]: own };
    await start();
    const { items } = await (await pullAll()).answer;
    delete disk[uri];
    await client.connection.sendNotification(lsp.DidChangeWatchedFilesNotification.type, { changes: [{ uri, type: lsp.FileChangeType.Deleted }] });
    const then = (await (await pullAll(idsOf(items))).answer).items;
    expect(then.map((one) => [one.uri, codes(one)])).toEqual([[uri, []], [`${folder}own.play`, 'unchanged']]);
  });

  test('called off it answers -32800, also while it waits', async () => {
    disk = { [`${folder}own.play`]: own };
    await start();
    const { items } = await (await pullAll()).answer;
    const source = new lsp.CancellationTokenSource();
    const answer = client.connection.sendRequest(lsp.WorkspaceDiagnosticRequest.type, { previousResultIds: idsOf(items), partialResultToken: 'p' }, source.token);
    const refused = expect(answer).rejects.toMatchObject({ code: lsp.LSPErrorCodes.RequestCancelled });
    await new Promise((resolve) => setTimeout(resolve, 100));
    source.cancel();
    await refused;
  });
});
