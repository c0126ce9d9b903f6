// What every telling of a play needs: its lines, how somebody stands, a sentence.
import type { Action, Place } from '../play/play.ts';
import type { Court } from '../court/court.ts';
import { wordsFor } from './say-place.ts';
import { sayWrittenPlace } from './say-written-place.ts';

/** The links of one line stay one sentence. */
export function chains(actions: readonly Action[]): readonly (readonly Action[])[] {
  const lines = new Map<string, Action[]>();
  for (const action of actions) {
    const chain = lines.get(action.line);
    if (chain === undefined) lines.set(action.line, [action]);
    else chain.push(action);
  }
  return [...lines.values()];
}

/** Where somebody stands, in words: in a line or a stack he was given a place in metres; said aloud it is so far from a spot. */
export function placeInWords(court: Court, place: Place): string {
  return place.kind === 'point' ? wordsFor(court, place.point).text : sayWrittenPlace(place);
}

/** `at left block`, `is 1.6 m above right mid-post`, `between 4 and 5` */
export function sayStanding(place: string): string {
  if (/^[\d(]/.test(place)) return `is ${place.startsWith('(') ? 'at ' : ''}${place}`;
  return /^between|^beside|^behind/.test(place) ? place : `at ${place}`;
}

export function sentence(text: string): string {
  return text.endsWith('.') ? text : `${text}.`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
