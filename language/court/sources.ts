import type { Source } from './point.ts';

export type { Source };

/**
 * How a number is known (`Source` is the shared contract). Every constant of the rules, of the court and of the legs carries one, so that a message can cite it.
 *
 * - `read`: the text or the dataset was seen.
 * - `second-hand`: a page that quotes or summarises it was seen.
 * - `computed`: arithmetic from other values here, or from an open dataset.
 * - `from memory`: not looked up; treat as unverified.
 * - `common practice, no source`: no published source found.
 */
export type How = Source['how'];

/** A value with its unit and its source. Lengths in metres, times in seconds, speeds in m/s. */
export interface Measure {
  readonly value: number;
  readonly unit: 'm' | 's' | 'm/s' | 'm/s2' | 'count' | 'share';
  /** As the rule book prints it, with its own unit: "23 ft 9 in", "6.75 m". */
  readonly printed: string;
  readonly source: Source;
}

/** A statement of the rules that is not a number. */
export interface Sourced<T> {
  readonly value: T;
  readonly source: Source;
}

export const read = (text: string): Source => ({ text, how: 'read' });
export const secondHand = (text: string): Source => ({ text, how: 'second-hand' });
export const computed = (text: string): Source => ({ text, how: 'computed' });
export const fromMemory = (text: string): Source => ({ text, how: 'from memory' });
export const commonPractice = (text = 'common practice'): Source => ({ text, how: 'common practice, no source' });

export const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;

const fractions: Readonly<Record<string, string>> = { '0.5': '1/2', '0.75': '3/4', '0.875': '7/8' };

function printInches(inches: number): string {
  const whole = Math.floor(inches);
  const rest = inches - whole;
  if (rest === 0) return `${whole} in`;
  const fraction = fractions[String(rest)] ?? String(rest);
  return whole === 0 ? `${fraction} in` : `${whole} ${fraction} in`;
}

/** A length printed in feet and inches; kept in metres (1 ft = 0.3048 m exactly). */
export function feet(ft: number, inches: number, source: Source): Measure {
  const printed = ft === 0 ? printInches(inches) : inches === 0 ? `${ft} ft` : `${ft} ft ${printInches(inches)}`;
  return { value: ft * metresPerFoot + inches * metresPerInch, unit: 'm', printed, source };
}

export function metres(value: number, source: Source): Measure {
  return { value, unit: 'm', printed: `${value} m`, source };
}

export function seconds(value: number, source: Source): Measure {
  return { value, unit: 's', printed: `${value} s`, source };
}

export function count(value: number, source: Source): Measure {
  return { value, unit: 'count', printed: String(value), source };
}

/** A share of one: 0.9 is nine tenths. */
export function share(value: number, source: Source): Measure {
  return { value, unit: 'share', printed: String(value), source };
}
