// A line that is to be set while a coach types is set for a quick hand too: what VS Code drops is asked for again when he pauses.
import type { CancellationToken, FormattingOptions, TextDocument, TextEdit } from 'vscode';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { setAsTyped } from '../../client/set-as-typed.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { formatTyped } from '../../server/lsp/formatting.ts';

interface Place { readonly line: number; readonly character: number }
interface Change { readonly range: { readonly start: Place; readonly end: Place }; readonly text: string }

const vscode = vi.hoisted(() => ({ hear: undefined as ((event: unknown) => void) | undefined, editors: [] as unknown[], open: 0 }));
vi.mock('vscode', () => ({
  CancellationTokenSource: class { readonly token = {}; constructor() { vscode.open++; } dispose() { vscode.open--; } },
  Disposable: { from: () => ({ dispose: () => undefined }) },
  Position: class { constructor(readonly line: number, readonly character: number) {} },
  TextDocumentChangeReason: { Undo: 1, Redo: 2 },
  window: { get visibleTextEditors() { return vscode.editors; } },
  workspace: { onDidChangeTextDocument: (hear: (event: unknown) => void) => void (vscode.hear = hear) },
}));

/** An editor that drops every answer, as VS Code does where the next letter is there before it. */
function quickHand(text: string) {
  const { middleware } = setAsTyped();
  let [lines, version] = [text.split('\n'), 1];
  const late: string[] = [];
  const document = { get version() { return version; }, get lineCount() { return lines.length; }, isClosed: false, lineAt: (line: number) => ({ text: lines[line]! }) };
  const cursor = () => ({ line: lines.length - 1, character: lines.at(-1)!.length });
  const change = ({ range: { start, end }, text: put }: Change, reason?: number) => {
    const [head, tail] = [lines.slice(0, start.line), lines.slice(end.line + 1)];
    lines = [...head, ...(lines[start.line]!.slice(0, start.character) + put + lines[end.line]!.slice(end.character)).split('\n'), ...tail];
    version++;
    vscode.hear!({ document, contentChanges: [{ range: { start, end }, text: put }], reason });
  };
  let asked = 0;
  const ask = (_: unknown, { line }: Place, key: string) => {
    asked++;
    const uri = 'file:///a.play';
    return formatTyped({ uri, version, file: openFile(emptyBook, uri, lines.join('\n')).files.get(uri)! }, line, key).map(({ range, newText }) => ({ range, newText })) as unknown as TextEdit[];
  };
  vscode.editors = [{
    document,
    get selection() { return { active: cursor() }; },
    /** The window is a letter ahead of what the extension has been told: it takes nothing. */
    async edit(write: (builder: { replace: (range: Change['range'], text: string) => void }) => void) {
      const next = late.shift();
      if (next !== undefined) return void change({ range: { start: cursor(), end: cursor() }, text: next }), false;
      const made: Change[] = [];
      write({ replace: (range, put) => made.push({ range, text: put }) });
      for (const one of made.toReversed()) change(one);
      return true;
    },
  }];
  const dropped = (key: string) => void middleware.provideOnTypeFormattingEdits!(document as unknown as TextDocument, cursor() as never, key, {} as FormattingOptions, {} as CancellationToken, ask as never);
  return {
    type(words: string) {
      for (const letter of words) {
        change({ range: { start: cursor(), end: cursor() }, text: letter === '\n' ? `\n${/^\s*/.exec(lines.at(-1)!)![0]}` : letter });
        if (letter === '\n' || letter === '"') dropped(letter);
      }
    },
    /** Comes just as something is to be set. */
    typeLate: (letter: string) => void late.push(letter),
    undo: (to: string) => change({ range: { start: { line: 0, character: 0 }, end: cursor() }, text: to }, 1),
    text: () => lines.join('\n'),
    asked: () => asked,
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());
const pauses = () => vi.advanceTimersByTimeAsync(1000);

const opened = 'play "A"\n  from horns\n\n  step "Open"\n    1 dribbles to left wing\n    look 1: jumper';

test('a step below a look comes out, as its name is begun and whenever he pauses', async () => {
  const hand = quickHand(opened);
  hand.type('\nstep "');
  expect(hand.text()).toContain('\n    step "');
  await pauses();
  expect(hand.text()).toBe(`${opened}\n  step "`);
});

test('so does one that is typed to its end in one go, with lines below it, which stand as the examples do', async () => {
  const hand = quickHand(opened);
  hand.type('\nstep "Slip"\n4 screen for 2\nlook 2: three');
  await pauses();
  expect(hand.text()).toBe(`${opened}\n\n  step "Slip"\n    4 screens for 2\n    look 2: three`);
});

test('what the window does not take, for it is a letter ahead, is set at the next pause', async () => {
  const hand = quickHand(opened);
  hand.typeLate('l');
  hand.type('\nstep "S');
  await pauses();
  await pauses();
  expect(hand.text()).toBe(`${opened}\n  step "Sl`);
});

test('twice Enter behind the last man of a roster, and the number that stood there is gone, whatever he goes on with', async () => {
  const hand = quickHand('roster "R"\n  5 "Ann"');
  hand.type('\n6 \n');
  await pauses();
  expect(hand.text()).toBe('roster "R"\n  5 "Ann"\n  ');
  const quick = quickHand('roster "R"\n  5 "Ann"');
  quick.type('\n6 \nplay "A"');
  await pauses();
  expect(quick.text()).toBe('roster "R"\n  5 "Ann"\nplay "A"');
});

test('what he takes back is not done again, and nothing is set while he types', async () => {
  const hand = quickHand(opened);
  hand.type('\nstep "');
  await vi.advanceTimersByTimeAsync(300);
  hand.type('S');
  await vi.advanceTimersByTimeAsync(300);
  expect(hand.text()).toBe(`${opened}\n    step "S`);
  hand.undo(`${opened}\n    step "`);
  await pauses();
  expect(hand.text()).toBe(`${opened}\n    step "`);
});

test('a line that is set already is asked about once, and no question stays open', async () => {
  const hand = quickHand(opened);
  hand.type('\nlook 1: three\n');
  await pauses();
  expect(hand.asked()).toBe(2);
  hand.type('step "');
  await pauses();
  expect([hand.text(), vscode.open]).toEqual([`${opened}\n    look 1: three\n  step "`, 0]);
});
