// A play is asked for right after a reload, before the panel of the last time is there again: it is shown in that one, never in a second beside it.
import type { ExtensionContext } from 'vscode';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { registerPlayPanels } from '../../client/panel/panels.ts';

const vscode = vi.hoisted(() => ({
  commands: new Map<string, (...asked: unknown[]) => unknown>(),
  comeBack: undefined as ((view: unknown, state: unknown) => Promise<void>) | undefined,
  tabs: [] as { label: string; isActive: boolean; input: unknown }[],
  shown: [] as { uri: string; line: number; pin?: string }[],
  front: undefined as unknown,
  made: 0,
  followed: [] as unknown[],
}));

vi.mock('vscode', () => {
  const nothing = () => ({ dispose: () => undefined });
  class TabInputWebview { readonly viewType = 'mainThreadWebview-setwright.play'; }
  class Uri {
    constructor(readonly path: string) {}
    static parse = (text: string) => new Uri(text);
    toString() { return this.path; }
  }
  return {
    TabInputWebview,
    Uri,
    TabInputText: class {},
    EventEmitter: class { event = nothing; fire() { /* nobody listens */ } },
    ViewColumn: { Beside: -2 },
    l10n: { t: (words: string, title: string) => words.replace('{0}', title) },
    commands: { registerCommand: (name: string, run: () => unknown) => void vscode.commands.set(name, run), executeCommand: async () => undefined },
    window: {
      get activeTextEditor() { return vscode.front; },
      visibleTextEditors: [],
      tabGroups: { get all() { return [{ tabs: vscode.tabs }]; }, close: async (tab: never) => void vscode.tabs.splice(vscode.tabs.indexOf(tab), 1) },
      createWebviewPanel: () => void vscode.made++,
      registerWebviewPanelSerializer: (_: string, { deserializeWebviewPanel }: { deserializeWebviewPanel: never }) => void (vscode.comeBack = deserializeWebviewPanel),
      onDidChangeVisibleTextEditors: nothing,
      onDidChangeActiveTextEditor: nothing,
      onDidChangeTextEditorSelection: nothing,
    },
    workspace: { textDocuments: ['a.play', 'b.play'].map((uri) => ({ uri: new Uri(uri) })), openTextDocument: async () => undefined, getConfiguration: () => ({ get: () => false }) },
  };
});
vi.mock('../../client/panel/editor-marks.ts', () => ({ createEditorMarks: () => ({ dispose: () => undefined }) }));
vi.mock('../../client/panel/panel.ts', () => ({
  asPinned: (title: string) => `${title} (pinned)`,
  openPlayPanel: (_: unknown, __: unknown, { pin }: { pin?: string }) => ({
    isPinned: () => pin !== undefined,
    shows: (uri: object) => `${uri}` === 'a.play',
    remembered: () => ({}),
    play: () => undefined,
    follow: (uri: object, line: number) => void vscode.followed.push(`${uri} ${line}`),
    view: { title: pin ?? 'A', active: false, visible: true, reveal: () => undefined },
  }),
}));
vi.mock('../../client/panel/shown-documents.ts', () => ({ recallShown: () => vscode.shown, rememberShown: () => undefined }));

const { Uri, TabInputWebview } = (await import('vscode')) as unknown as { Uri: { parse: (text: string) => object }; TabInputWebview: new () => object };
const tab = (label: string, isActive: boolean) => ({ label, isActive, input: new TabInputWebview() });
const follows = { uri: 'a.play', line: 3 };
const pinned = { uri: 'a.play', line: 3, pin: 'play:a' };

function reloaded(shown: readonly typeof pinned[] | readonly typeof follows[], ...tabs: ReturnType<typeof tab>[]) {
  Object.assign(vscode, { front: undefined, made: 0, followed: [], shown, tabs });
  registerPlayPanels({ extensionUri: {}, workspaceState: {} } as unknown as ExtensionContext, { running: new Promise(() => undefined), hear: () => ({ dispose: () => undefined }) } as never, {} as never, 'setwright');
}
const ask = () => vscode.commands.get('setwright.showPlay')!(Uri.parse('b.play'), 7);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('in sight it is waited for, and goes to the play', async () => {
  reloaded([follows], tab('A', true));
  const asked = ask();
  await vscode.comeBack!({}, undefined);
  await asked;
  expect([vscode.made, vscode.followed]).toEqual([0, ['b.play 7']]);
});

test('behind another tab it would stay where it is: it makes room for a new one', async () => {
  reloaded([follows], tab('A', false), tab('Letters', true));
  await ask();
  expect([vscode.made, vscode.tabs.map(({ label }) => label)]).toEqual([1, ['Letters']]);
});

test.each([['b.play', [follows], ['b.play 4']], ['a.play', [follows], []], ['b.play', [pinned], []]] as const)('with %s in front one that goes with the text goes there', async (uri, shown, followed) => {
  reloaded(shown, tab('A', true));
  vscode.front = { document: { uri: Uri.parse(uri), languageId: 'setwright' }, selection: { active: { line: 4 } } };
  await vscode.comeBack!({}, undefined);
  expect(vscode.followed).toEqual(followed);
});

test('one that does not come is not waited for long', async () => {
  reloaded([follows], tab('A', true));
  const asked = ask();
  await vi.advanceTimersByTimeAsync(11_000);
  await asked;
  expect(vscode.made).toBe(1);
});

test.each([['keeps to its play', [pinned], tab('A (pinned)', true)], ['is another window’s', [], tab('A', true)]] as const)('one that %s is left alone', async (_, shown, its) => {
  reloaded(shown, its);
  await ask();
  expect([vscode.made, vscode.tabs.length]).toEqual([1, 1]);
});
