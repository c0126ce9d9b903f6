// What surrounds the end-to-end tests of a worker, from its first file to its last.
import type { Environment } from 'vitest/runtime';
import { beginKeeping, endKeeping } from './kept.ts';

export default {
  name: 'windows',
  viteEnvironment: 'ssr',
  setup() {
    beginKeeping();
    return { teardown: endKeeping };
  },
} satisfies Environment;
