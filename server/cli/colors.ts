// Colour only where somebody sees it: on a terminal, unless NO_COLOR says no (no-color.org: any text but an empty one), or as the call says.
import { Option } from 'commander';
import picocolors from 'picocolors';
import type { Colors } from 'picocolors/types';

export type ColorWhen = 'auto' | 'always' | 'never';

export function colorOption(): Option {
  return new Option('--color <when>', 'colours: auto takes them on a terminal where NO_COLOR is not set').choices(['auto', 'always', 'never']).default('auto');
}

export function colorsFor(when: ColorWhen): Colors {
  const seen = process.stdout.isTTY === true && (process.env.NO_COLOR ?? '') === '' && process.env.TERM !== 'dumb';
  return picocolors.createColors(when === 'always' || (when === 'auto' && seen));
}
