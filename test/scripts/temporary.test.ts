import { existsSync, mkdirSync, mkdtempSync, rmdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { remove, temporary } from '../e2e/vscode.ts';

it('only a folder made for a test is removed: neither its parent nor one that lies in it, nor another’s', () => {
  const own = temporary('own');
  mkdirSync(join(own, 'plays'));
  // Not the folder for all that is temporary: this test must do no harm where it fails.
  const others = mkdtempSync(join(own, 'others-'));
  expect(() => remove(others)).toThrow('stays');
  expect(() => remove(join(own, 'plays'))).toThrow('stays');
  expect(() => remove(dirname(join(others, 'plays')))).toThrow('stays');
  expect([existsSync(others), existsSync(own), existsSync(tmpdir())]).toEqual([true, true, true]);
  rmdirSync(others);
  remove(own);
  expect(existsSync(own)).toBe(false);
});
