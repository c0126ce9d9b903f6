import { describe, expect, test } from 'vitest';
import { hostSuite } from '../../scripts/host-suite.ts';
import { executable } from './chromium.ts';
import { runInside } from './window.ts';
import { places } from './vscode.ts';

describe.skipIf(!executable && !process.env.CI)('from inside VS Code', () => {
  test.each(places)('the extension is seen to work (extension host: %s)', async (place) => {
    const { passed, said } = await runInside(place, hostSuite[place]);
    console.log(said.find((line) => line.startsWith('activation:')), `(extension host: ${place})`);
    const lines = said.filter((line) => /^(pass|FAIL) {2}/.test(line));
    expect(lines.filter((line) => line.startsWith('FAIL'))).toEqual([]);
    expect(lines).not.toEqual([]);
    expect(passed, said.join('\n')).toBe(true);
  });
});
