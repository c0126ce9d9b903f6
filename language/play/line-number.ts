import type { LineKey } from './play.ts';

/** The how-manieth line of its step. */
export function lineNumber(line: LineKey): number {
  const number = Number(line.slice(line.lastIndexOf(':') + 1));
  return Number.isFinite(number) ? number : 0;
}
