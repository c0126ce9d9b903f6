import { defineConfig } from 'vitest/config';
import { buildPlayer } from './scripts/build.ts';
import { playerForVitest } from './scripts/player-text.ts';

const plugins = [playerForVitest(buildPlayer)];

const pace = ['test/e2e/typing-speed.test.ts', 'test/preview/player-pace.e2e.test.ts'];

const inABrowser = {
  globalSetup: ['test/e2e/prepare.ts'],
  // A busy machine can lose one click or letter; what needed a second try is named at the end of `.ci/run`.
  retry: 1,
  // What a test does is bounded itself, and says what it never saw; a try that is cut off would go on beside the next.
  testTimeout: 300_000,
  hookTimeout: 300_000,
};

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
          // Evaluated once for a worker, not once for each file: half the processor time of a run went into that.
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
          ...inABrowser,
          name: 'e2e',
          include: ['test/e2e/**/*.test.ts', 'test/**/*.e2e.test.ts'],
          exclude: [...pace, '**/node_modules/**'],
          // Much of such a test is waiting, so two windows at a time use the processor better; a third only makes all of them late.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        plugins,
        test: {
          ...inABrowser,
          name: 'pace',
          include: pace,
          // What is timed has the machine for itself.
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
