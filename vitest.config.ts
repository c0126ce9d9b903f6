import { availableParallelism } from 'node:os';
import { defineConfig, type ViteUserConfig } from 'vitest/config';
import { buildPlayer } from './scripts/build.ts';
import { playerForVitest } from './scripts/player-text.ts';

const plugins = [playerForVitest(buildPlayer)];
const folders = '{language,server,client,scripts,test}';

/** Side by side: a window waits half of its time, and leaves a processor to another or to unit tests. */
const together = { maxWorkers: Math.max(2, availableParallelism() >> 1), sequence: { groupOrder: 0 } };
/** One after the other, when all else is done: what measures has the machine to itself. */
const alone = { maxWorkers: 1, sequence: { groupOrder: 1 } };

const withWindows = {
  globalSetup: ['test/e2e/prepare.ts'],
  // One Chromium and one VS Code server for all files of a worker: what they have loaded for one window they have for the next.
  isolate: false,
  environment: './test/e2e/environment.ts',
  // A busy machine can lose one click or letter; what needed a second try is named at the end of `.ci/run`.
  retry: 1,
  // What a test does is bounded itself, and says what it never saw; a try that is cut off would go on beside the next.
  testTimeout: 300_000,
  hookTimeout: 300_000,
  // Left alone it is asked for one second, which a busy machine passes without drawing a frame.
  expect: { poll: { timeout: 30_000 } },
} satisfies ViteUserConfig['test'];

export default defineConfig({
  test: {
    reporters: ['default', ['json', { outputFile: 'test/out/results.json' }]],
    projects: [
      {
        plugins,
        test: {
          name: 'unit',
          ...together,
          include: [`${folders}/**/*.test.ts`],
          exclude: ['test/e2e/**', '**/*.{e2e,mocked,measured}.test.ts', '**/node_modules/**'],
          // Evaluated once for a worker, not once for each file: 38 % of a run's processor time went into that.
          isolate: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        plugins,
        test: {
          // What puts something else in a module's place has its modules for itself.
          name: 'mocked',
          ...together,
          include: [`${folders}/**/*.mocked.test.ts`],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        plugins,
        test: {
          name: 'e2e',
          ...together,
          ...withWindows,
          include: ['test/e2e/**/*.test.ts', 'test/**/*.e2e.test.ts'],
          exclude: ['**/*.measured.test.ts', '**/node_modules/**'],
        },
      },
      {
        plugins,
        test: {
          name: 'measured',
          ...alone,
          ...withWindows,
          include: [`${folders}/**/*.measured.test.ts`],
        },
      },
    ],
  },
});
