// A play to type into where speed is measured.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../../scripts/build.ts';

/** Every further digit behind the first number moves it. */
export const place = '(5.12, 1.2) m';

/** Lighthouse with a place that every further digit moves, and other plays below it until the file has so many lines. */
export function playOf(lines: number): string {
  const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
  const first = lighthouse.replace('2 clears to right corner', `2 clears to ${place}`);
  const more = lighthouse.slice(lighthouse.indexOf('play "Lighthouse"'));
  let text = first;
  for (let number = 2; text.split('\n').length < lines; number++) text += `\n${more.replaceAll('"Lighthouse"', `"Lighthouse ${number}"`)}`;
  return text;
}
