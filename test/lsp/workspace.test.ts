// The workspace around the open documents: several folders, files that come, change and go, what a document says once it is closed,
// files that do not count, settings as they change.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import * as lsp from 'vscode-languageserver-protocol';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { withoutLeftOut } from '../../server/lsp/left-out.ts';
import { listFilesMethod, readFileMethod, readReadFile } from '../../server/lsp/playbook-protocol.ts';
import { readSettings, usualSettings, wrongSettings } from '../../server/lsp/settings.ts';
import { editedFiles, talk, until, type Client } from './talking.ts';

const [club, other] = ['file:///club/', 'file:///other/'];
const user = 'notation 1\nuse "own.play"\n\nplay "Mine"\n  from "Own"\n\n  step "Go"\n    1 passes to 2\n    look 2: jumper\n';
const own = 'notation 1\nalignment "Own"\n  1 top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n';
const unknown = (found: readonly lsp.Diagnostic[]) => found.map(({ code }) => String(code)).filter((code) => code.startsWith('unknown'));

let client: Client;
let disk: Record<string, string>;
afterEach(() => client?.close());

const notify = (uri: string, type: lsp.FileChangeType = lsp.FileChangeType.Changed) => client.connection.sendNotification(lsp.DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });
const close = (uri: string) => client.connection.sendNotification(lsp.DidCloseTextDocumentNotification.type, { textDocument: { uri } });
const named = async (query: string) => ((await client.connection.sendRequest(lsp.WorkspaceSymbolRequest.type, { query })) as lsp.SymbolInformation[]).map(({ location }) => location.uri);
/** What was last said of a document. */
const last = (uri: string) => unknown(client.published.findLast((one) => one.uri === uri)?.diagnostics ?? []);

describe('with a client that reads the files', () => {
  beforeEach(async () => {
    disk = { [`${club}own.play`]: own, [`${club}mine.play`]: user };
    client = await talk({ options: { files: true, settings: { checks: { settle: 0 } } }, folders: [club], capabilities: { workspace: { workspaceFolders: true } } });
    client.connection.onRequest(listFilesMethod, () => Object.keys(disk).filter((uri) => uri.endsWith('.play')));
    client.connection.onRequest(readFileMethod, (value: unknown) => disk[readReadFile(value)!.uri] ?? null);
  });

  test('a document closed without saving says what lies on the disk, also to those that use it', async () => {
    await client.open(`${club}mine.play`, user);
    expect(unknown(await client.diagnosticsOf(`${club}mine.play`, 1))).toEqual([]);
    await client.open(`${club}own.play`, own);
    await client.change(`${club}own.play`, 2, [{ text: own.replace('"Own"', '"Other"') }]);
    await until(() => last(`${club}mine.play`).includes('unknown-alignment'));
    await close(`${club}own.play`);
    await until(() => last(`${club}mine.play`).length === 0);
    expect(client.published.filter(({ uri }) => uri === `${club}own.play`).at(-1)!.diagnostics).toEqual([]);
  });

  test('one that lies nowhere is gone when it is closed', async () => {
    delete disk[`${club}own.play`];
    await client.open(`${club}own.play`, own);
    await client.open(`${club}mine.play`, user);
    expect(unknown(await client.diagnosticsOf(`${club}mine.play`, 1))).toEqual([]);
    await close(`${club}own.play`);
    await until(() => last(`${club}mine.play`).includes('unknown-file'));
  });

  test('a file deleted outside is missed, and known again once it is back', async () => {
    await client.open(`${club}mine.play`, user);
    expect(unknown(await client.diagnosticsOf(`${club}mine.play`, 1))).toEqual([]);
    delete disk[`${club}own.play`];
    await notify(`${club}own.play`, lsp.FileChangeType.Deleted);
    await until(() => last(`${club}mine.play`).includes('unknown-file'));
    disk[`${club}own.play`] = own;
    await notify(`${club}own.play`, lsp.FileChangeType.Created);
    await until(() => last(`${club}mine.play`).length === 0);
  });

  test('a whole folder that goes takes its files along', async () => {
    disk[`${club}more/own.play`] = own;
    await client.open(`${club}mine.play`, user.replace('own.play', 'more/own.play'));
    expect(unknown(await client.diagnosticsOf(`${club}mine.play`, 1))).toEqual([]);
    delete disk[`${club}more/own.play`];
    await client.connection.sendNotification(lsp.DidDeleteFilesNotification.type, { files: [{ uri: `${club}more` }] });
    await until(() => last(`${club}mine.play`).includes('unknown-file'));
  });

  test('a file renamed: the lines that use it follow, in files that nobody has open too', async () => {
    const edit = await client.connection.sendRequest(lsp.WillRenameFilesRequest.type, { files: [{ oldUri: `${club}own.play`, newUri: `${club}ours.play` }] });
    expect(editedFiles(disk, edit!)[`${club}mine.play`]).toContain('use "ours.play"');
    disk[`${club}ours.play`] = disk[`${club}own.play`]!;
    delete disk[`${club}own.play`];
    await client.connection.sendNotification(lsp.DidRenameFilesNotification.type, { files: [{ oldUri: `${club}own.play`, newUri: `${club}ours.play` }] });
    await client.open(`${club}mine.play`, user.replace('own', 'ours'));
    expect(unknown(await client.diagnosticsOf(`${club}mine.play`, 1))).toEqual([]);
    expect(await named('Own')).toEqual([`${club}ours.play`]);
  });

  test('a name changed is changed in files that nobody has open', async () => {
    await client.open(`${club}own.play`, own);
    const edit = await client.connection.sendRequest(lsp.RenameRequest.type, { textDocument: { uri: `${club}own.play` }, position: { line: 1, character: 13 }, newName: 'Ours' });
    expect(editedFiles(disk, edit!)[`${club}mine.play`]).toContain('from "Ours"');
  });

  test('folders come and go, and their plays with them', async () => {
    disk[`${other}theirs.play`] = user.replace('"Mine"', '"Theirs"').replace('use "own.play"\n', '');
    const all = { ...disk };
    delete disk[`${other}theirs.play`];
    expect(await named('theirs')).toEqual([]);
    disk = all;
    await client.connection.sendNotification(lsp.DidChangeWorkspaceFoldersNotification.type, { event: { added: [{ uri: other, name: 'other' }], removed: [] } });
    expect(await named('theirs')).toEqual([`${other}theirs.play`]);
    delete disk[`${other}theirs.play`];
    await client.connection.sendNotification(lsp.DidChangeWorkspaceFoldersNotification.type, { event: { added: [], removed: [{ uri: other, name: 'other' }] } });
    expect(await named('theirs')).toEqual([]);
  });

  test('an unsaved document is checked like any other', async () => {
    const uri = 'untitled:Untitled-1';
    await client.open(uri, user.replace('use "own.play"\n', '').replace('"Own"', 'horns').replace('1 passes', '1 passses'));
    expect(await client.diagnosticsOf(uri, 1)).not.toEqual([]);
    await close(uri);
    expect(await named('Mine')).toEqual([`${club}mine.play`]);
  });

  test('what a folder’s .gitignore names is no play of it; a file in use is read all the same', async () => {
    disk[`${club}drafts/old.play`] = user.replace('"Mine"', '"Old"').replace('own.play', '../own.play');
    expect(await named('Old')).toEqual([`${club}drafts/old.play`]);
    disk[`${club}.gitignore`] = 'drafts/\nown.play\n';
    await notify(`${club}.gitignore`, lsp.FileChangeType.Created);
    await settled(async () => (await named('Old')).length === 0);
    await client.open(`${club}mine.play`, user);
    expect(unknown(await client.diagnosticsOf(`${club}mine.play`, 1))).toEqual([]);
    delete disk[`${club}.gitignore`];
    await notify(`${club}.gitignore`, lsp.FileChangeType.Deleted);
    await settled(async () => (await named('Old')).length === 1);
  });

  test('so does the setting, as soon as it is set', async () => {
    disk[`${club}old-one.play`] = user.replace('"Mine"', '"Old"');
    expect(await named('Old')).toEqual([`${club}old-one.play`]);
    await client.connection.sendNotification(lsp.DidChangeConfigurationNotification.type, { settings: { setwright: { files: { leaveOut: ['old-*'] } } } });
    await settled(async () => (await named('Old')).length === 0);
    expect(await named('Mine')).toEqual([`${club}mine.play`]);
  });
});

describe('on a machine’s own disk', () => {
  let root: string;
  const uriOf = (name: string) => pathToFileURL(join(root, name)).href;
  const write = (name: string, text: string) => {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  };
  beforeEach(() => void (root = mkdtempSync(join(tmpdir(), 'setwright-'))));
  afterEach(() => rmSync(root, { recursive: true, force: true }));

  test('two folders are one playbook, each with its own .ignore; the editor is asked to watch them', async () => {
    write('a b/own é.play', own);
    write('a b/drafts/x.play', user.replace('"Mine"', '"Draft"'));
    write('a b/.ignore', 'drafts\n');
    write('second/drafts/y.play', user.replace('"Mine"', '"Second"'));
    const watched: string[] = [];
    client = await talk({ folders: [uriOf('a b'), uriOf('second')], capabilities: { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } } });
    client.connection.onRequest(lsp.RegistrationRequest.type, ({ registrations }) => void watched.push(...registrations.flatMap(({ registerOptions }) => (registerOptions as lsp.DidChangeWatchedFilesRegistrationOptions).watchers.map(({ globPattern }) => String(globPattern)))));
    expect(await named('')).toEqual(expect.arrayContaining([uriOf('a b/own é.play'), uriOf('second/drafts/y.play')]));
    expect(await named('Draft')).toEqual([]);
    write('second/z.play', user.replace('"Mine"', '"Third"'));
    await notify(uriOf('second/z.play'), lsp.FileChangeType.Created);
    await settled(async () => (await named('Third')).length === 1);
    expect(watched).toEqual(['**/*.play', '**/.gitignore', '**/.ignore']);
  });

  test('a file used from beside the folder is read and followed', async () => {
    write('shared/own.play', own);
    write('club/mine.play', user.replace('own.play', '../shared/own.play'));
    client = await talk({ folders: [uriOf('club')], options: { settings: { checks: { settle: 0 } } } });
    await client.open(uriOf('club/mine.play'), user.replace('own.play', '../shared/own.play'));
    expect(unknown(await client.diagnosticsOf(uriOf('club/mine.play'), 1))).toEqual([]);
    rmSync(join(root, 'shared/own.play'));
    await notify(uriOf('shared/own.play'), lsp.FileChangeType.Deleted);
    await until(() => last(uriOf('club/mine.play')).includes('unknown-file'));
  });
});

describe('which files count', () => {
  const files: Record<string, string> = { 'file:///r/.gitignore': '*.play\n!/keep.play\nsub/**\n', 'file:///r/sub/.ignore': '!own.play\n' };
  test.each([
    ['file:///r/a.play', false],
    ['file:///r/keep.play', true],
    ['file:///r/sub/own.play', true],
    ['file:///r/sub/deep/x.play', false],
    ['file:///elsewhere/a.play', true],
    ['file:///r/', true],
  ])('%s: %s', async (uri, counts) => {
    expect(await withoutLeftOut([uri], ['file:///r'], [], async (asked) => files[asked])).toEqual(counts ? [uri] : []);
  });
});

describe('settings', () => {
  test.each([
    [undefined, usualSettings, []],
    ['x', usualSettings, [/does not fit/]],
    [{ checks: { settle: 'soon' }, hints: { places: true } }, { ...usualSettings, hints: { ...usualSettings.hints, places: true } }, [/setwright\.checks\.settle/]],
    [{ checks: { settle: -1 }, files: { leaveOut: 'drafts' } }, usualSettings, [/settle/, /leaveOut/]],
    [{ files: { leaveOut: ['drafts'] }, preview: { followCursor: true } }, { ...usualSettings, leaveOut: ['drafts'] }, []],
  ] as const)('%j', (value, settings, wrong) => {
    expect(readSettings(value)).toEqual(settings);
    expect(wrongSettings(value)).toEqual(wrong.map((words) => expect.stringMatching(words)));
  });

  test('are fetched from a client that is asked for them, again at each change, and a wrong one is told in its log', async () => {
    let value: unknown = { hints: { clock: false } };
    const log: string[] = [];
    client = await talk({ capabilities: { workspace: { configuration: true } } });
    client.connection.onRequest(lsp.ConfigurationRequest.type, ({ items }) => items.map(({ section }) => (section === 'setwright' ? value : null)));
    client.connection.onNotification(lsp.LogMessageNotification.type, ({ message }) => void log.push(message));
    await client.open(`${club}mine.play`, user.replace('use "own.play"\n', '').replace('"Own"', 'horns'));
    const hints = async () => (await client.connection.sendRequest(lsp.InlayHintRequest.type, { textDocument: { uri: `${club}mine.play` }, range: { start: { line: 0, character: 0 }, end: { line: 20, character: 0 } } }))!.length;
    const usual = await hints();
    await client.connection.sendNotification(lsp.DidChangeConfigurationNotification.type, { settings: null });
    await settled(async () => (await hints()) === 0);
    value = { hints: { clock: 'often' } };
    await client.connection.sendNotification(lsp.DidChangeConfigurationNotification.type, { settings: null });
    await until(() => log.some((message) => /setwright\.hints\.clock/.test(message)));
    expect(await hints()).toBe(2);
    expect(usual).toBeLessThanOrEqual(2);
  });
});

async function settled(ask: () => Promise<boolean>) {
  for (let times = 0; !(await ask()); times++) {
    if (times > 100) throw new Error('waited in vain');
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
