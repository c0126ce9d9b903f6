// One page of a whole playbook: what a coach is told where there is nothing to make it from, and that calling it off says nothing.
import { beforeEach, expect, test, vi } from 'vitest';
import { playEntry } from './play-entry.ts';

const seen = vi.hoisted(() => ({ told: [] as string[], saved: 0, calledOff: false, run: async () => {} }));

vi.mock('vscode', () => ({
  commands: {
    registerCommand: (name: string, run: () => Promise<void>) => {
      if (name === 'setwright.savePlaybook') seen.run = run;
      return { dispose: () => undefined };
    },
  },
  env: { language: 'en' },
  l10n: { t: (words: string) => words, bundle: undefined },
  ProgressLocation: { Notification: 15 },
  Uri: { parse: (path: string) => ({ path, toString: () => path }) },
  window: {
    showInformationMessage: async (words: string) => void seen.told.push(words),
    showSaveDialog: async () => void seen.saved++,
    withProgress: async (_: object, work: (progress: object, token: object) => unknown) => work({ report: () => undefined }, { isCancellationRequested: seen.calledOff }),
  },
  workspace: {
    openTextDocument: async ({ path }: { path: string }) => {
      if (path.includes('gone')) throw new Error('cannot open file:///gone.play');
      return {};
    },
    name: 'Otters',
  },
}));

async function make(plays: readonly unknown[]): Promise<void> {
  const { registerKeepPlaybook } = await import('../../client/keep-playbook.ts');
  registerKeepPlaybook({ extensionUri: {} } as never, { ask: async () => undefined }, { newest: () => ({ plays, books: [] }), refresh: async () => undefined } as never);
  await seen.run();
}

beforeEach(() => {
  Object.assign(seen, { told: [], saved: 0, calledOff: false });
});

test.each([['no play', []], ['only plays that show nothing', [playEntry('Tide'), playEntry('Reef')]], ['a play whose file has gone since', [playEntry('Tide', { uri: 'file:///gone.play' })]]])('of %s it says so, and asks for no place', async (_, plays) => {
  await make(plays);
  expect(seen.told).toEqual([expect.stringContaining('There is no play here to make a page of yet.')]);
  expect(seen.saved).toBe(0);
});

test('called off it says nothing', async () => {
  seen.calledOff = true;
  await make([playEntry('Tide')]);
  expect([seen.told, seen.saved]).toEqual([[], 0]);
});
