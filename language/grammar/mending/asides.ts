// Words of an action or a look that nothing on the floor comes of: what for (`to keep his man busy`), how (`with his hands up`), and what cannot
// be read where the line is whole without it. The line is read, and the words are told of. What turns a line round or makes it depend on
// something, and what may be somebody's action, a place or a time, is never passed over so.
import { ENDS, goesOn, isMeasure, isPlace, isSubject, isUnknown, sortOfAside, TURNS, type AsideSort } from '../rewording/aside-sorts.ts';
import { isPlayer, wordOf, type LineToken } from '../line-token.ts';
import type { Follow, Walk } from '../reading/follow.ts';
import { verbOf } from '../verbs.ts';
import { WAITS } from '../waits.ts';

export interface Aside {
  /** Tokens from, up to and not including to. */
  readonly from: number;
  readonly to: number;
  readonly sort: AsideSort;
}

/** No longer line is anybody's. */
export const MOST_WORDS = 60;
/** Nor any longer aside. */
const LONGEST_ASIDE = 14;

/**
 * What has to be left out for the rest to be read, the longest beginning of the line being kept: nothing where that would leave out what may
 * have been meant. `text` tells what articles the tokens have lost.
 */
export function asidesIn(tokens: readonly LineToken[], follow: Follow, text: string): readonly Aside[] | undefined {
  if (tokens.length > MOST_WORDS) return undefined;
  const kind = tokens[0]?.image === 'look' ? 'look' : isPlayer(tokens[0]) || isSubject(tokens[0]) || WAITS.has(wordOf(tokens[0])) || ['on', 'with', 'at', 'at the same time', 'then', 'after that', 'next'].includes(wordOf(tokens[0])) || wordOf(tokens[1]) === 'later' ? 'action' : undefined;
  if (kind === undefined) return undefined;
  const found: Aside[] = [];
  let rest = tokens;
  // Where each token of the rest stands in the line.
  let at = tokens.map((_, index) => index);
  for (let turn = 0; turn < 3; turn++) {
    const walk = follow.walk(rest);
    if (walk.whole) return found.length > 0 ? found : undefined;
    if (walk.at === rest.length && found.length === 0) return undefined;
    const next = asideAt(rest, Math.min(walk.at, rest.length - 1), follow, text);
    if (next === undefined) return undefined;
    found.push({ from: at[next.from]!, to: at[next.to - 1]! + 1, sort: next.sort });
    rest = [...rest.slice(0, next.from), ...rest.slice(next.to)];
    at = [...at.slice(0, next.from), ...at.slice(next.to)];
  }
  return follow.walk(rest).whole ? found : undefined;
}

/** Of the man behind it: without it he would be one of those before. */
export const OF_WHOM: ReadonlySet<string> = new Set(['with', 'from', 'for', 'to', 'by', 'of', 'off']);

/** The words round the one that does not fit which the line can do without. */
function asideAt(tokens: readonly LineToken[], wrong: number, follow: Follow, text: string): Aside | undefined {
  const lead = leadIn(tokens, wrong);
  if (lead !== undefined && follow.walk([...tokens.slice(0, lead.from), ...tokens.slice(lead.to)]).at > lead.from) return lead;
  const heads = headsOf(tokens, wrong, follow);
  const starts: number[] = [];
  for (let from = wrong; from >= 1 && from >= wrong - 7; from--) if (follow.canEnd(heads[from]!.configs)) starts.push(from);
  if (!starts.includes(wrong)) starts.push(wrong);
  for (const from of starts) {
    const head = heads[from]!;
    const isWhole = from !== wrong || follow.canEnd(head.configs);
    for (let to = wrong + 1; to <= tokens.length && to <= from + LONGEST_ASIDE; to++) {
      const last = tokens[to - 1];
      // Behind a joint a new action begins; `and` may join two nouns.
      if (to > from + 1 && ENDS.has(wordOf(last)) && goesOn(tokens, to)) break;
      const next = tokens[to];
      if (isPlayer(next) && OF_WHOM.has(wordOf(last))) continue;
      const rest = follow.walk(tokens.slice(to), head.configs);
      const helps = (rest.whole && !head.asObject) || (rest.at > 0 && next !== undefined && ENDS.has(next.image) && goesOn(tokens, to + 1));
      if (!helps) continue;
      const sort = sortOfAside(tokens, from, to, text, isWhole);
      if (sort !== undefined) return { from, to, sort };
    }
  }
  return undefined;
}

/** The readings before each token up to `wrong`, the first that does not fit. */
export function headsOf(tokens: readonly LineToken[], wrong: number, follow: Follow): readonly Walk[] {
  const heads: Walk[] = [follow.walk([])];
  for (let at = 0; at < wrong; at++) {
    const { configs, asObject } = heads[at]!;
    const next = follow.walk([tokens[at]!], configs);
    heads.push({ ...next, asObject: asObject || next.asObject });
  }
  return heads;
}

/** Whether words name somebody of whom a pronoun behind them speaks: without them it would mean another. */
export function speaksOfAnother(tokens: readonly LineToken[], from: number, to: number): boolean {
  return tokens.slice(from, to).some((token) => isPlayer(token) || wordOf(token) === 'man') && tokens.slice(to).some((token) => /^(him|them|he|they)$/.test(wordOf(token)));
}

/** `3 fakes low, then pops out`, `5 reads the screen and cuts`: what he does first cannot be drawn, or read, and he goes on. */
function leadIn(tokens: readonly LineToken[], wrong: number): Aside | undefined {
  const from = [wrong, wrong - 1, wrong - 2].find((at) => at >= 1 && (isUnknown(tokens[at]) || isLooking(tokens, at) || /^catch(es)?( it| the ball)?$/.test(wordOf(tokens[at]))) && (isPlayer(tokens[at - 1]) || ['and', 'then', ','].includes(wordOf(tokens[at - 1]))));
  if (from === undefined) return undefined;
  const joint = tokens.findIndex((token, at) => at > from && ENDS.has(token.image));
  const moves = isLooking(tokens, from) || FAKES.test(wordOf(tokens[from]));
  if (joint < 0 || tokens.slice(from + 1, joint).some((token) => ((isPlayer(token) || isPlace(token)) && !moves) || isMeasure(token) || TURNS.has(wordOf(token)) || verbOf(token.image)?.number === 'singular')) return undefined;
  if (speaksOfAnother(tokens, from, joint)) return undefined;
  let to = joint;
  while (['and', 'then', ','].includes(wordOf(tokens[to]))) to++;
  if (verbOf(wordOf(tokens[to])) === undefined) return undefined;
  return { from, to, sort: /^(fakes?|sells?|jabs?|feints?|pump-fakes?|shot-fakes?|pretends?|hesitates?|reads?|catches? it|catches the ball|plants?|delays?|slows?|catch|catches|gathers?|changes?|looks?|eyes|pauses?)$/.test(wordOf(tokens[from])) ? 'said' : 'unread' };
}

/** What is only feigned is not done, wherever and with whomever: `fakes it to 1 and throws it to 2`. */
const FAKES = /^(fakes?|feints?|jabs?|pump-fakes?|shot-fakes?)$/;

/** `looks inside, then skips`: a look moves nobody, whoever is looked at. `looks to drive` may be a drive. */
const isLooking = (tokens: readonly LineToken[], at: number): boolean => isPlayer(tokens[at - 1]) && /^looks?$/.test(wordOf(tokens[at])) && !(wordOf(tokens[at + 1]) === 'to' && verbOf(wordOf(tokens[at + 2])) !== undefined);
