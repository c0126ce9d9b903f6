// Names, notes and files of a coach's plays are shown in many places, and each reads something more into some text: links that run commands,
// icons, Markdown, markup, the terminal's orders. A row a place: what a hostile name shows there, and what reads it.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { marked, type Token } from 'marked';
import { parse, type DefaultTreeAdapterTypes } from 'parse5';
import { CodeLensRequest, CompletionRequest, CompletionResolveRequest, DocumentSymbolRequest, HoverRequest, InlayHintRequest, RenameRequest, type CompletionList, type Hover, type MarkupContent } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { PlaybookSource } from '../../client/playbook/playbook-source.ts';
import { pageHtml } from '../../client/preview/page.ts';
import type { ServerLine } from '../../client/server-line.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { drawStrip } from '../../language/picture/strip.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { choicesMethod, playbookMethod, readPlaybook, type Playbook } from '../../server/lsp/playbook-protocol.ts';
import { byHandMethod, drawnMethod } from '../../server/lsp/protocol.ts';
import { compileText } from '../checks/compiled.ts';
import { buildCommandLine, runBuilt } from '../cli/built.ts';
import { talk, type Client } from '../lsp/talking.ts';

vi.mock('vscode', () => import('./pretended-editor.ts'));

const name = '<img src=x onerror=alert(1)> [x](command:workbench.action.quit) ](command:y) $(flame) `**b**` ![z](https://z)';
/** What a terminal would obey. */
const orders = '\u001b[31mred\u009b2J\u202e';
const text = `notation 1
level u14

spot "${name}" is 1 m below left wing
alignment "${name}"
  1 top
  2 at right wing
  3 at left wing
  4 at right block
  5 at left block

book "${name}"
  section "${name}": "${name}", "${name} missing"

play "${name}"
  tags quick
  from "${name}", ball with 1
  against man
  note "${name}"

  step "${name}"
    1 passes to 2
    3 cuts to "${name}"
    look 2 "${name}": three
    note 3 "${name}"

  step "other" instead of "${name}" when X2 denies 2
    1 passes to 3
    look 3 "${name}": three
`;

let client: Client;
let playbook: Playbook;
let folder: string;
let commandLine: string;
const uri = 'file:///plays/a.play';
beforeAll(async () => {
  client = await talk({ options: { pictures: 'light', commands: true } });
  await client.open(uri, text);
  playbook = readPlaybook(await client.connection.sendRequest(playbookMethod, { version: 1 }))!;
  folder = mkdtempSync(join(tmpdir(), 'setwright-names-'));
  commandLine = await buildCommandLine(build, folder);
  writeFileSync(join(folder, 'a.play'), text.replaceAll(name, `${name}${orders}`).replace('1 passes to 2\n', '1 passes to 2\n    1 screens for 3\n'));
  writeFileSync(join(folder, 'b.play'), text.replaceAll(name, `${name}${orders}`).replace('3 cuts to', '4 cuts to'));
  writeFileSync(join(folder, `a${orders}.play`), 'play "P"\n  1 dribles\n');
}, 60_000);
afterAll(() => {
  client.close();
  rmSync(folder, { recursive: true, force: true });
});

const playback = playbackOf(compileText(text).plays[0]!);
const lines = text.split('\n');
/** In the name on the line that begins so. */
const at = (start: string) => {
  const line = lines.findIndex((one) => one.trim().startsWith(start));
  return { textDocument: { uri }, position: { line, character: lines[line]!.indexOf('"') + 3 } };
};
const hoverAt = async (start: string) => [((await client.connection.sendRequest(HoverRequest.type, at(start)) as Hover).contents as MarkupContent).value];
const told = async (...args: string[]) => {
  const { out, err } = await runBuilt(commandLine, args, { cwd: folder });
  return [out + err];
};

/** The extension's own lists and messages, on a pretended editor. */
async function inTheEditor() {
  const editor = await import('./pretended-editor.ts');
  const { registerPlaybookView } = await import('../../client/playbook/playbook-view.ts');
  const { registerBenchView } = await import('../../client/playbook/bench-view.ts');
  const { registerCallTime } = await import('../../client/call-time.ts');
  const { registerChangePlay } = await import('../../client/change-play.ts');
  const { registerKeepPlay } = await import('../../client/keep-play.ts');
  const { registerNewPlay } = await import('../../client/new-play.ts');
  for (const list of [editor.shown.messages, editor.shown.choices, editor.shown.statusBar, editor.shown.views]) list.length = 0;
  const changed = new editor.EventEmitter<void>();
  // What a section's word could hold of a formation or a tag is as hostile as the name.
  const hostile: Playbook = { ...playbook, plays: playbook.plays.map((play) => ({ ...play, against: name, from: name, tags: [name] })) };
  const answers: Readonly<Record<string, unknown>> = {
    [choicesMethod]: { alignments: [{ name, places: '', own: true }], levels: ['u14'], defences: [name], levelSaid: false, taken: [] },
    [byHandMethod]: { refused: name },
    [drawnMethod]: { version: 1, title: name, svg: '<svg/>' },
  };
  const source = {
    newest: () => hostile, onDidChange: changed.event, refresh: async () => undefined, watch: () => undefined, wake: () => undefined, playsOf: async () => hostile.plays, dispose: () => undefined,
  };
  const server = {
    ask: async (method: string, _params: object, read: (value: unknown) => unknown) => read(answers[method] ?? null),
  };
  const any = <Type>(value: unknown) => value as Type;
  registerPlaybookView(any<ServerLine>(server), any<PlaybookSource>(source));
  registerBenchView(any<PlaybookSource>(source), any({ get: () => ({ seconds: 30, situation: 'any', against: name, set: false }), update: async () => undefined }));
  registerCallTime(any<PlaybookSource>(source), { inHand: () => undefined, onDidChangeInHand: () => ({ dispose: () => undefined }) }, 'setwright');
  registerChangePlay(any<ServerLine>(server), any<PlaybookSource>(source), () => undefined);
  registerKeepPlay(any({ extensionUri: new editor.Uri('/x') }), any<ServerLine>(server), { inHand: () => undefined, playsOf: async () => [] });
  registerNewPlay(any<ServerLine>(server), any({ hasWritten: async () => undefined }), 'setwright');
  return { ...editor, changed };
}
const viewRows = async (id: string) => {
  const { shown, changed } = await inTheEditor();
  changed.fire();
  const rows = await shown.views.find((view) => view.id === id)!.rows();
  // Objects would be Markdown.
  return rows.flatMap(({ label, description, tooltip }) => [label, description, tooltip]).filter((words) => words !== undefined) as string[];
};
const choicesOf = async (command: string) => {
  const { shown, run } = await inTheEditor();
  await run(command);
  return shown.choices;
};
const messagesOf = async (command: string) => {
  const { shown, run } = await inTheEditor();
  await run(command);
  return shown.messages;
};

/** What a reader makes of a text beyond its letters. */
const readers = {
  // The pattern of VS Code's messages.
  links: (said: string) => said.match(/\[([^\]]+)\]\(((?:https?:\/\/|command:|file:)[^)\s]+)/gi) ?? [],
  icons: (said: string) => said.match(/(?<!\\)\$\([\w-]+\)/g) ?? [],
  markdown: (said: string) => tokens(marked.lexer(said)).filter((token) => token.type === 'link' || token.type === 'html' || (token.type === 'image' && !String(token.href).startsWith('data:image/svg+xml;base64,'))).map(({ raw }) => raw),
  markup: (said: string) => elements(parse(said, { scriptingEnabled: false })).filter(({ tagName, attrs }) => tagName === 'img' || attrs.some((attr) => attr.name.startsWith('on'))).map(({ tagName }) => tagName),
  terminal: (said: string) => said.match(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g) ?? [],
  nothing: (said: unknown) => (typeof said === 'string' ? [] : ['no plain text']),
} as const satisfies Record<string, (said: string) => readonly string[]>;

/** What an image says instead of itself is read as letters only. */
function tokens(list: readonly Token[]): Token[] {
  return list.flatMap((token) => [token, ...tokens('tokens' in token && token.type !== 'image' ? (token.tokens ?? []) : []), ...tokens('items' in token ? (token.items as Token[]) : [])]);
}

function elements(node: DefaultTreeAdapterTypes.Node): DefaultTreeAdapterTypes.Element[] {
  const inside = 'childNodes' in node ? node.childNodes.flatMap(elements) : [];
  return 'tagName' in node ? [node, ...inside] : inside;
}

interface Row {
  readonly read: keyof typeof readers;
  readonly shows: () => Promise<readonly string[]> | readonly string[];
}

const places: Readonly<Record<string, Row>> = {
  'a hover over a play': { read: 'markdown', shows: () => hoverAt('play') },
  'a hover over a step': { read: 'markdown', shows: () => hoverAt('step') },
  'a hover over a look': { read: 'markdown', shows: () => hoverAt('look 2') },
  'a hover over a place of one’s own': { read: 'markdown', shows: () => hoverAt('3 cuts') },
  'what stands beside the list of words': { read: 'markdown', shows: documentation },
  'the lenses above a play': { read: 'icons', shows: async () => (await client.connection.sendRequest(CodeLensRequest.type, at('play')))!.map(({ command }) => command!.title) },
  'the outline': { read: 'nothing', shows: async () => JSON.stringify(await client.connection.sendRequest(DocumentSymbolRequest.type, at('play'))).match(/"name":"(?:[^"\\]|\\.)*"/g)! },
  'hints in the text': { read: 'nothing', shows: async () => (await client.connection.sendRequest(InlayHintRequest.type, { ...at('play'), range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } } }))!.flatMap(({ label, tooltip }) => [label, tooltip ?? '']) as string[] },
  'a refused new name': { read: 'links', shows: renameRefused },
  'the playbook': { read: 'nothing', shows: () => viewRows('setwright.playbook') },
  'the bench': { read: 'nothing', shows: () => viewRows('setwright.bench') },
  'the line above a filtered playbook': { read: 'links', shows: filterLine },
  'the choices of the filter': { read: 'icons', shows: () => choicesOf('setwright.playbook.filter') },
  'the choices of the bench': { read: 'icons', shows: () => choicesOf('setwright.bench.against') },
  'the choices of a new play': { read: 'icons', shows: () => choicesOf('setwright.newPlay') },
  'the status bar': { read: 'nothing', shows: async () => (await inTheEditor(), await vi.waitFor(statusBar)) },
  'what is said of a written drawing': { read: 'links', shows: () => messagesOf('setwright.saveDrawing') },
  'why a change is refused': { read: 'links', shows: () => messagesOf('setwright.mirrorPlay') },
  'a page': { read: 'markup', shows: () => [pageHtml([playback], 'let a', 'b{}', { sha256: () => '', deflate: () => '', title: name })] },
  'the floor as a drawing': { read: 'markup', shows: () => [drawSvg(sceneAt(playback, playback.runs[0]!.id, 6000))] },
  'a strip': { read: 'markup', shows: () => [drawStrip(playback, playback.runs[0]!.id)] },
  'check on a terminal': { read: 'terminal', shows: () => told('check', '.') },
  'time on a terminal': { read: 'terminal', shows: () => told('time', 'a.play') },
  'list on a terminal': { read: 'terminal', shows: () => told('list', '.') },
  'jobs on a terminal': { read: 'terminal', shows: () => told('jobs', 'a.play') },
  'compare on a terminal': { read: 'terminal', shows: () => told('compare', 'b.play', 'a.play') },
  'a comment in a review': { read: 'markdown', shows: async () => [withoutOurTags((await told('compare', 'b.play', 'a.play', '--markdown'))[0]!)] },
  'what a review service is told': { read: 'links', shows: sarifWords },
  'a play that is not there, on a terminal': { read: 'terminal', shows: () => told('time', 'a.play', '--play', `x${orders}`) },
  'a drawing written from a terminal': { read: 'terminal', shows: () => told('draw', `a${orders}.play`, '-o', `a${orders}.svg`) },
};

describe('a hostile name', () => {
  test.each(Object.entries(places))('stays text in %s', async (_, { read, shows }) => {
    const said = await shows();
    expect(said.length).toBeGreaterThan(0);
    expect(said.flatMap((one) => readers[read](one))).toEqual([]);
  });

  // Where a name is not shown at all nothing is proved.
  test.each(Object.entries(places).filter(([place]) => !/hints|lenses|status bar|drawing written|floor/.test(place)))('is shown in %s', async (_, { shows }) => {
    expect((await shows()).join('\n')).toMatch(/onerror|command:workbench|flame|red/);
  });
});

test.each([
  ['links', name, 1], ['icons', name, 1], ['markdown', name, 2], ['markup', name, 1], ['terminal', orders, 3],
] as const)('what reads %s would see it', (reader, said, atLeast) => {
  expect(readers[reader](said).length).toBeGreaterThanOrEqual(atLeast);
});

const withoutOurTags = (said: string): string => said.replaceAll(/<details open><summary>[\w, ]*<\/summary>|<\/details>/g, '');

/** Of what is printed for machines, the sentences: in them a service makes links of words in brackets. */
async function sarifWords(): Promise<readonly string[]> {
  const { out } = await runBuilt(commandLine, ['check', 'a.play', '--sarif'], { cwd: folder });
  const words: string[] = [];
  JSON.parse(out, (key, value: { readonly text: string }) => (/^(message|description|fullDescription|help)$/.test(key) && words.push(value.text), value));
  return words;
}

async function documentation(): Promise<readonly string[]> {
  const { position, textDocument } = at('from');
  const { items } = (await client.connection.sendRequest(CompletionRequest.type, { textDocument, position: { ...position, character: position.character - 3 } })) as CompletionList;
  const own = items.filter(({ label }) => label.includes('onerror'));
  const resolved = await Promise.all(own.map((item) => client.connection.sendRequest(CompletionResolveRequest.type, item)));
  return resolved.map(({ documentation }) => (documentation as MarkupContent).value);
}

async function renameRefused(): Promise<readonly string[]> {
  const refused = await client.connection.sendRequest(RenameRequest.type, { ...at('step "other"'), newName: name }).then(() => undefined, (error: Error) => error.message);
  return refused === undefined ? [] : [refused];
}

async function filterLine(): Promise<readonly string[]> {
  const { shown, run } = await inTheEditor();
  await run('setwright.playbook.filter');
  return [shown.views.find(({ id }) => id === 'setwright.playbook')!.message!];
}

async function statusBar(): Promise<readonly string[]> {
  const { shown } = await import('./pretended-editor.ts');
  expect(shown.statusBar.length).toBeGreaterThan(0);
  return shown.statusBar.flatMap(({ text: words, tooltip }) => [words.replace('$(watch)', ''), tooltip as string]);
}
