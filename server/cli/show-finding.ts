// A finding as text: where, how bad, what, the line with its mark, on which way and when, what it rests on, how to mend it.
import { inEnglish } from '../../language/message/message.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import type { UnreadableFile } from './files.ts';
import { printable } from './terminal.ts';
import type { Colors } from 'picocolors/types';
import type { Finding, Severity } from '../../language/checks/finding.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';

export interface PlacedFinding extends Finding {
  /** Line of the file, from 0. */
  readonly fileLine: number;
  /** The line's text. */
  readonly text: string;
  /** The way through the play, in words, and what its moments are counted from. */
  readonly way?: string;
  readonly zero?: string;
}

/** `name:23:5  error  screen-with-ball` and what belongs to it, lines and columns from 1. Ends without a newline. */
export function showFinding(file: string, finding: PlacedFinding, colors: Colors): string {
  const { place, fileLine } = finding;
  const text = printable(finding.text);
  const paint = painter(finding.severity, colors);
  const number = String(fileLine + 1);
  const margin = ' '.repeat(number.length);
  const head = `${printable(file)}:${number}:${place.at + 1}  ${paint(finding.severity)}  ${colors.dim(finding.code)}`;
  const to = Math.min(text.length, Math.max(place.to, place.at + 1));
  const mark = `${blank(text.slice(0, place.at))}${paint('^'.repeat(Math.max(1, widthOf(text.slice(place.at, to)))))}`;
  const facts = [momentOf(finding), finding.source && `rests on: ${inEnglish(restsOn(finding.source))}`, ...finding.fixes.slice(0, 1).map(({ title }) => `to mend it: ${printable(inEnglish(title))}`)];
  return [
    head,
    `  ${printable(finding.message)}`,
    `  ${colors.dim(`${number} |`)} ${text}`,
    `  ${margin} ${colors.dim('|')} ${mark}`,
    ...facts.filter((fact) => fact !== undefined).map((fact) => `  ${margin} ${colors.dim('=')} ${fact}`),
  ].join('\n');
}

/** `name  error  cannot be read`, for a file instead of its findings. */
export function showUnreadable({ name, why }: UnreadableFile, colors: Colors): string {
  return `${printable(name)}  ${colors.red('error')}  ${colors.dim('unreadable-file')}\n  This file cannot be read: ${why}. The others are checked all the same.`;
}

function painter(severity: Severity, colors: Colors): (text: string) => string {
  return severity === 'error' ? colors.red : severity === 'warning' ? colors.yellow : colors.cyan;
}

/** On which way through the play and when, as far as it is said of one. */
export function momentOf({ way, moment, zero = 'the call' }: Pick<PlacedFinding, 'way' | 'moment' | 'zero'>): string | undefined {
  if (way === undefined) return undefined;
  return moment === undefined ? `on the way to ${printable(way)}` : `on the way to ${printable(way)}, ${sayMoment(moment)} after ${zero}`;
}

/** Blanks as wide as a text on a terminal; tabs stay tabs. */
function blank(text: string): string {
  return [...text].map((sign) => (sign === '\t' ? '\t' : ' '.repeat(signWidth(sign)))).join('');
}

function widthOf(text: string): number {
  return [...text].reduce((width, sign) => width + signWidth(sign), 0);
}

/** Emoji and East Asian letters take two columns on most terminals, accents that join the letter before take none. */
function signWidth(sign: string): number {
  if (/\p{Mark}|\u200D|\uFE0F/u.test(sign)) return 0;
  return /\p{Emoji_Presentation}|[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]/u.test(sign) ? 2 : 1;
}
