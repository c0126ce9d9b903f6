// Words of a clause that no value came of: nothing a coach writes is dropped without a word.
import type { ActionTree, Columns } from '../grammar/tree.ts';
import type { Reader } from './reader.ts';
import { putPart, report } from './reader.ts';
import type { Line } from './scope.ts';

type PartTree = Columns & { readonly $type: string; readonly spots?: readonly (Columns | undefined)[]; readonly players?: readonly Columns[] };

/** What of a clause has gone into the play, and the line it stands in. */
interface Taken {
  readonly line: Line;
  readonly taken: ReadonlySet<unknown>;
}

/** Words that only make a sentence of it: the ball in `swings the ball`, where somebody comes from, which his place says. */
export const saysNothing: ReadonlySet<string> = new Set(['PassBall', 'ComesFrom']);

/** Tells each part of the clause, and each of several places or men in one, that nothing came of. */
export function tellLeftOver(reader: Reader, tree: ActionTree, clause: Taken): void {
  tellWords(reader, clause.line, leftOver(tree, clause));
}

export function tellWords(reader: Reader, { key, index }: Line, left: readonly (Columns | undefined)[]): void {
  for (const words of left) {
    // Said of the verb before, it is told once.
    if (words === undefined || reader.parts.has(`${key}#left${words.at}`)) continue;
    const part = `${key}#left${words.at}`;
    putPart(reader, part, index, words);
    report(reader, 'words-left-over', part, { words: reader.lines[index]?.text.slice(words.at, words.to) ?? '' });
  }
}

function leftOver(tree: ActionTree, { taken }: Taken): readonly Columns[] {
  // `boxes out, then for 1`: nothing that the verb before could be for.
  if (tree.$type === 'SameAgain') return [tree];
  if (tree.$type === 'Crash') return tree.on === undefined || taken.has(tree.on) ? [] : [tree.on];
  if (!('parts' in tree)) return [];
  return (tree.parts as readonly (PartTree | undefined)[]).flatMap(part => {
    if (part === undefined || saysNothing.has(part.$type)) return [];
    if (!taken.has(part)) return [part];
    const among = part.$type === 'For' && tree.$type !== 'Screen' ? (part.players ?? []) : (part.spots ?? []);
    return among.length < 2 ? [] : among.filter(each => each !== undefined && !taken.has(each)) as Columns[];
  });
}
