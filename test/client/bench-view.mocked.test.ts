// What a row of the bench says first, for a list too narrow for the rest: what differs from the row above.
import { expect, test, vi } from 'vitest';
import { registerBenchView } from '../../client/playbook/bench-view.ts';
import { playEntry } from './play-entry.ts';

vi.mock('vscode', () => import('../security/pretended-editor.ts'));
const { run, shown } = await import('../security/pretended-editor.ts');

test('how much is to spare behind what all need, which looks are in time, how late it is', async () => {
  shown.views.length = 0;
  const plays = [playEntry('Oar', { first: 5, all: 6 }), playEntry('Reed', { first: 10, all: 14 }), playEntry('Kelp', { first: 13, all: 13 })];
  const source = { newest: () => ({ plays, books: [] }), onDidChange: () => ({ dispose: () => undefined }), watch: () => undefined, wake: () => undefined };
  registerBenchView(source as never, { get: () => undefined, update: async () => undefined } as never);
  await run('setwright.bench.seconds');
  const rows = (await shown.views[0]!.rows()).map(({ label, description }) => `${String(label)}: ${String(description)}`);
  expect(rows.filter((row) => /^(?:Oar|Reed|Kelp)/.test(row))).toEqual(['Oar: 5 s, all looks 6 s · 5 s to spare', expect.stringMatching(/^Reed: in time: .* · 10 s, all looks 14 s$/), 'Kelp: 2 s too late · 13 s']);
});
