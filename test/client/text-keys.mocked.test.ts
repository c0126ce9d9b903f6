// Undo and redo where a panel has the keyboard: the text has it while they are done, and the panel gets it back, however quick the hand.
import type { WebviewPanel } from 'vscode';
import { beforeEach, expect, test, vi } from 'vitest';
import { createTextKeys } from '../../client/panel/text-keys.ts';

const vscode = vi.hoisted(() => ({ done: [] as string[], open: true }));
const uri = { toString: () => 'file:///a.play' } as never;

vi.mock('vscode', () => {
  const document = { uri: 'file:///a.play', save: async () => void vscode.done.push('save') };
  return {
    ViewColumn: { One: 1 },
    commands: { executeCommand: async (name: string) => void vscode.done.push(name) },
    window: { visibleTextEditors: [{ document, viewColumn: 2 }], showTextDocument: async (_: unknown, { viewColumn }: { viewColumn: number }) => void vscode.done.push(`text in ${viewColumn}`) },
    workspace: { get textDocuments() { return vscode.open ? [document] : []; } },
  };
});

/** A panel that has the keyboard a moment after it is asked to. */
function panel() {
  let heard: (() => void) | undefined;
  const view = {
    active: false,
    reveal() {
      vscode.done.push('panel');
      setTimeout(() => ((view.active = true), heard?.()));
    },
    onDidChangeViewState: (hear: () => void) => ((heard = hear), { dispose: () => (heard = undefined) }),
  };
  return createTextKeys(view as unknown as WebviewPanel);
}

beforeEach(() => void Object.assign(vscode, { done: [], open: true }));

test('the text is shown where it stands, and the panel has the keyboard again before it is over', async () => {
  const keys = panel();
  const done = keys.press(uri, 'undo');
  expect(keys.areUnderWay()).toBe(true);
  await done;
  expect(vscode.done).toEqual(['text in 2', 'undo', 'panel']);
  expect(keys.areUnderWay()).toBe(false);
});

test('what is pressed meanwhile is done in the same text, before the panel has the keyboard again', async () => {
  const keys = panel();
  await Promise.all([keys.press(uri, 'undo'), keys.press(uri, 'undo'), keys.press(uri, 'redo')]);
  expect(vscode.done).toEqual(['text in 2', 'undo', 'undo', 'redo', 'panel']);
});

test('to save nothing else is shown, and of a text that is no longer open nothing is done', async () => {
  const keys = panel();
  await keys.press(uri, 'save');
  vscode.open = false;
  await keys.press(uri, 'undo');
  expect(vscode.done).toEqual(['save']);
});
