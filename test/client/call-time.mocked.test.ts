// When to call the play, in the status bar: of the panel in hand, else of the text; of nothing once no play can be seen.
import { beforeEach, expect, test, vi } from 'vitest';
import { playEntry } from './play-entry.ts';

const heard = vi.hoisted(() => ({ active: [] as (() => void)[], visible: [] as (() => void)[], item: { text: '', shown: false } }));
const at = (path: string) => ({ toString: () => path });
const textAt = (path: string, line: number, languageId = 'setwright') => ({ document: { uri: at(path), languageId }, selection: { active: { line } } });

vi.mock('vscode', () => {
  const hear = (list: (() => void)[]) => (listener: () => void) => (list.push(listener), { dispose: () => undefined });
  const nothing = hear([]);
  const item = { set text(words: string) { heard.item.text = words; }, show: () => void (heard.item.shown = true), hide: () => void (heard.item.shown = false) };
  return {
    l10n: { t: (template: string, ...gaps: unknown[]) => template.replace(/\{(\d)\}/g, (_, gap: string) => String(gaps[Number(gap)])) },
    StatusBarAlignment: { Right: 2 },
    ThemeIcon: class {},
    ThemeColor: class {},
    TreeItem: class {},
    Uri: class {},
    window: {
      activeTextEditor: undefined as unknown, visibleTextEditors: [] as unknown[], createStatusBarItem: () => item,
      onDidChangeActiveTextEditor: hear(heard.active), onDidChangeVisibleTextEditors: hear(heard.visible), onDidChangeTextEditorSelection: nothing,
    },
    workspace: { onDidChangeTextDocument: nothing },
  };
});

const quick = [{ ...playEntry('Skiff', { first: 7 }), line: 3 }, { ...playEntry('Oar', { first: 4 }), line: 20 }];
const lighthouse = [playEntry('Lighthouse', { first: 16 })];
let inHand: { uri: { toString: () => string }; playKey: string } | undefined;
let handChanged = () => {};

beforeEach(async () => {
  inHand = undefined;
  Object.assign(heard.item, { text: '', shown: false });
  const { registerCallTime } = await import('../../client/call-time.ts');
  registerCallTime(
    { playsOf: async (uri: { toString: () => string }) => (uri.toString() === 'quick' ? quick : lighthouse), onDidChange: () => ({ dispose: () => undefined }) } as never,
    { inHand: () => inHand, onDidChangeInHand: (listener: () => void) => ((handChanged = listener), { dispose: () => undefined }) } as never,
    'setwright',
  );
});

/** The window has these in front and in sight now. */
async function sees(active: unknown, visible: readonly unknown[]) {
  const { window } = (await import('vscode')) as unknown as { window: { activeTextEditor: unknown; visibleTextEditors: readonly unknown[] } };
  [window.activeTextEditor, window.visibleTextEditors] = [active, visible];
  for (const listener of [...heard.active, ...heard.visible]) listener();
  await new Promise((resolve) => setTimeout(resolve));
  return heard.item.shown ? heard.item.text : 'hidden';
}

test('it is that of the play the cursor stands in', async () => {
  const text = textAt('quick', 21);
  expect(await sees(text, [text])).toContain('Call with 4 s');
});

test('with a panel in hand it is that of its play, whatever the text beside it says', async () => {
  const text = textAt('quick', 4);
  expect(await sees(text, [text])).toContain('Call with 7 s');
  inHand = { uri: at('lighthouse'), playKey: lighthouse[0]!.key };
  handChanged();
  expect(await sees(undefined, [text])).toContain('Call with 16 s');
});

test('in a list the last play goes on being spoken of while its text is in sight, and no longer', async () => {
  const text = textAt('quick', 4);
  await sees(text, [text]);
  expect(await sees(undefined, [text])).toContain('Call with 7 s');
  expect(await sees(undefined, [])).toBe('hidden');
});

test('another kind of text has none', async () => {
  const [play, other] = [textAt('quick', 4), textAt('readme', 0, 'markdown')];
  await sees(play, [play]);
  expect(await sees(other, [play, other])).toBe('hidden');
});
