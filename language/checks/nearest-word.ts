import { message, type Message } from '../message/message.ts';
import { editDistance } from '../grammar/mending/nearest.ts';

/** Behind a name nobody knows. */
export const theNearest = (name: string): Message => message('; the nearest is “{name}”', { name });

/** The word a slip of the pen most likely meant: at most a third of its letters away, the first of two equally near. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  let best: { word: string; edits: number } | undefined;
  for (const candidate of known) {
    const limit = Math.max(1, Math.floor(candidate.length / 3));
    const edits = editDistance(word.toLowerCase(), candidate.toLowerCase(), limit);
    if (edits <= limit && (best === undefined || edits < best.edits)) best = { word: candidate, edits };
  }
  return best?.word;
}

/** So many names are read at a glance. */
const mostNames = 8;

/** The names there are, where none is near. */
export function others(names: readonly string[]): Message | undefined {
  if (names.length === 0) return undefined;
  const shown = names.slice(0, mostNames).map((name) => `“${name}”`).join(', ');
  return names.length > mostNames ? message(' (here there are {shown} and {more} others)', { shown, more: names.length - mostNames }) : message(' (here there are {shown})', { shown });
}
