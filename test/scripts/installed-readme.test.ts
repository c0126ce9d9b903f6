import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { installedReadme } from '../../scripts/installed-readme.ts';

const said = installedReadme(readFileSync(join(root, 'README.md'), 'utf8'));

test('a coach who has installed the extension reads how to begin, and that the times are no promise', () => {
  expect(said).toMatch(/^# Setwright\n/);
  expect(said).toContain('\n## Your first play\n');
  expect(said).toContain('no promise');
});

test('and nothing that is only in the folder of the source: no picture, no page, no command', () => {
  expect(said).not.toMatch(/<img|<picture|\]\((?!https?:)|\bnpm\b|\bnpx\b|DEVELOPERS/);
});
