import { defineConfig } from 'vitest/config';
import { buildPlayer } from './scripts/build.ts';
import { playerForVitest } from './scripts/player-text.ts';

const plugins = [playerForVitest(buildPlayer)];

export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: 'test/out/results.json' }]],
    projects: [
      {
        plugins,
        test: {
          name: 'unit',
          include: ['{language,server,client,scripts,test}/**/*.test.ts'],
          exclude: ['test/e2e/**', '**/*.e2e.test.ts', '**/*.mocked.test.ts', '**/node_modules/**'],
          // Evaluated once for a worker, not once for each file: 38 % of a run's processor time went into that.
          isolate: false,
          testTimeout: 120_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        plugins,
        test: {
          // What puts something else in a module's place has its modules for itself.
          name: 'mocked',
          include: ['{language,server,client,scripts,test}/**/*.mocked.test.ts'],
          testTimeout: 120_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        plugins,
        test: {
          name: 'e2e',
          include: ['test/e2e/**/*.test.ts', 'test/**/*.e2e.test.ts'],
          globalSetup: ['test/e2e/prepare.ts'],
          // One real VS Code and one Chromium at a time: two keep two processors so busy that all of it takes as long, and each wait longer.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          // A busy machine can lose one click or letter; what needed a second try is named at the end of `.ci/run`.
          retry: 1,
          // What a test does is bounded itself, and says what it never saw; a try that is cut off would go on beside the next.
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
