// The picture that opens by itself with the first play of a window, for one who has asked for it: one, never a second beside one that comes back.
import type { ExtensionContext } from 'vscode';
import { beforeEach, expect, test, vi } from 'vitest';
import { registerPlayPanels } from '../../client/panel/panels.ts';

const made = vi.hoisted(() => ({ views: 0, tabs: [] as unknown[], wanted: true }));

vi.mock('vscode', () => {
  const nothing = () => ({ dispose: () => undefined });
  class TabInputWebview { constructor(readonly viewType: string) {} }
  class TabInputText { constructor(readonly uri: unknown) {} }
  return {
    TabInputWebview,
    TabInputText,
    EventEmitter: class { event = nothing; fire() { /* nobody listens */ } },
    Uri: class {},
    ViewColumn: { Beside: -2 },
    commands: { registerCommand: nothing, executeCommand: async () => undefined },
    window: {
      activeTextEditor: { document: { languageId: 'setwright', uri: 'file:///a.play' }, selection: { active: { line: 0 } } },
      visibleTextEditors: [],
      tabGroups: { get all() { return [{ tabs: made.tabs }]; } },
      createWebviewPanel: () => void made.views++,
      registerWebviewPanelSerializer: nothing,
      onDidChangeVisibleTextEditors: nothing,
      onDidChangeActiveTextEditor: nothing,
      onDidChangeTextEditorSelection: nothing,
    },
    workspace: { getConfiguration: () => ({ get: () => made.wanted }) },
  };
});
vi.mock('../../client/panel/editor-marks.ts', () => ({ createEditorMarks: () => ({ dispose: () => undefined, cameFromPanel: () => false }) }));
vi.mock('../../client/panel/panel.ts', () => ({ openPlayPanel: () => ({ isPinned: () => false, remembered: () => ({}), play: () => undefined, view: { active: false, visible: true } }) }));
vi.mock('../../client/panel/shown-documents.ts', () => ({ recallShown: () => [], rememberShown: () => undefined }));

const { TabInputWebview, TabInputText } = (await import('vscode')) as unknown as Record<'TabInputWebview' | 'TabInputText', new (what: string) => object>;

async function openedWindow(...inputs: readonly object[]): Promise<number> {
  made.tabs = inputs.map((input) => ({ input }));
  registerPlayPanels({ extensionUri: {}, workspaceState: {} } as unknown as ExtensionContext, { running: Promise.resolve(), hear: () => ({ dispose: () => undefined }) } as never, { playsOf: async () => [] } as never, 'setwright');
  await new Promise((resolve) => setTimeout(resolve));
  return made.views;
}

beforeEach(() => void Object.assign(made, { views: 0, wanted: true }));

test('comes once the server answers', async () => expect(await openedWindow(new TabInputText('a.play'))).toBe(1));
test('does not come to one who has not asked for it', async () => {
  made.wanted = false;
  expect(await openedWindow(new TabInputText('a.play'))).toBe(0);
});
test('does not come beside one that comes back, which may be later', async () => expect(await openedWindow(new TabInputText('a.play'), new TabInputWebview('mainThreadWebview-setwright.play'))).toBe(0));
test('and comes beside a page of another extension', async () => expect(await openedWindow(new TabInputWebview('mainThreadWebview-letters'))).toBe(1));
