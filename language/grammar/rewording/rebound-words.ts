// Who goes to the boards and who gets back, as coaches say it.
import { isPlayer, standing, withThese, wordOf, before, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';

/** `1, 2, 3 back` in a rebound line. */
export function getBack(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[0]?.image !== 'rebound' || at < 2) return undefined;
  const word = wordOf(tokens[at]);
  const who = tokens[at - 1]!;
  const isTo = word === 'to' && /^(glass|boards?|rim|offensive glass)$/.test(wordOf(tokens[at + 1]));
  const end = tokens[isTo ? at + 2 : at + 1];
  const isWho = isPlayer(who) || /^(others|rest|everyone|everybody|else)$/.test(who.image);
  const verb = /^(back|safe|deep|home|safety|protect|out|high|stays? home|stays?)$/.test(word) ? 'get back' : isTo || /^(in|inside|hard|board|boards|go|goes)$/.test(word) ? 'crash' : undefined;
  if (!isWho || verb === undefined || (end !== undefined && ![',', 'and'].includes(end.image))) return undefined;
  return withThese(tokens, at, isTo ? at + 2 : at + 1, [standing(types, verb, tokens[at]!, tokens[isTo ? at + 1 : at])]);
}

/**
 * `3, 4, 5 crash, 1, 2 get back`, `4 and 5 crash the boards` as a line of its own, without the word `rebound` before it. One man who crashes, and
 * whoever gets back on a line that says no more, moves when the line says so.
 */
export function crashAndGetBack(tokens: Tokens, _at: number, types: Types): Tokens | undefined {
  const first = tokens[0];
  if (first === undefined || !isPlayer(first) || tokens.some(({ tokenType }) => tokenType.name === 'STRING')) return undefined;
  const said: Tokens = tokens.map((token) => (/^rebounds?$/.test(wordOf(token)) ? standing(types, 'crash', token) : token));
  const verbs = said.filter((token) => !isPlayer(token) && ![',', 'and'].includes(wordOf(token)));
  const all = verbs.map((token) => verbOf(wordOf(token)) ?? (/^(back|safe|home)$/.test(wordOf(token)) ? { class: 'rebound', base: 'get back' } : undefined));
  if (all.some((verb) => verb?.class !== 'rebound') || !all.some((verb) => verb!.base === 'crash')) return undefined;
  if (!all.some((verb) => verb!.base === 'get back') && said.filter(isPlayer).length < 2) return undefined;
  return [before(types, 'rebound', first), ...said];
}
