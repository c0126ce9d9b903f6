// What the playbook view shows where nothing is left of what was chosen: VS Code hides the button that shows all plays behind a message.
import { expect, test, vi } from 'vitest';
import { registerPlaybookView } from '../../client/playbook/playbook-view.ts';
import { playEntry } from './play-entry.ts';

vi.mock('vscode', () => import('../security/pretended-editor.ts'));
const { run, shown } = await import('../security/pretended-editor.ts');

function opened(...plays: readonly ReturnType<typeof playEntry>[]) {
  shown.views.length = 0;
  const source = { newest: () => ({ plays, books: [] }), onDidChange: () => ({ dispose: () => undefined }), refresh: async () => undefined, watch: () => undefined, wake: () => undefined };
  registerPlaybookView({ ask: async () => undefined } as never, source as never);
  return shown.views[0]!;
}

test('the seconds that were asked for stand above the plays that fit', async () => {
  const view = opened(playEntry('Oar', { first: 5 }), playEntry('Reed', { first: 30 }));
  await run('setwright.playbook.filterSeconds');
  expect(view).toMatchObject({ message: 'Only: 11 s left', description: undefined });
  await run('setwright.playbook.clearFilter');
  expect(view).toMatchObject({ message: undefined, description: undefined });
});

test('where none fits they stand beside the view’s name, and the view has its button', async () => {
  const view = opened(playEntry('Reed', { first: 30 }));
  await run('setwright.playbook.filterSeconds');
  expect(view).toMatchObject({ message: undefined, description: '11 s left' });
  await run('setwright.playbook.clearFilter');
  expect(view).toMatchObject({ message: undefined, description: undefined });
});
