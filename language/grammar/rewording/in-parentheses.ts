// What a coach puts in parentheses: `from 4-out 1-in (5 on the left block)`, `look 1 in the corner (skip): three`, `1 passes to 2 (on the right wing)`.
import { oneOf, standing, withThese, wordOf, type Tokens, type Types } from './rewording.ts';

const KINDS = oneOf('pass', 'bounce-pass', 'lob', 'skip', 'skip-pass', 'pocket pass', 'kick out', 'dump off', 'high-low', 'layup', 'lay-up', 'dunk', 'jumper', 'three', 'hook', 'floater', 'pull up');

/** Nobody says more beside a line; without an end every one of a thousand brackets would look through all that follow. */
const mostInside = 40;

/** The words are read as if they stood without; metres from the floor under the ring have theirs. */
export function inParentheses(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const inside = tokens.slice(at + 1, at + 1 + mostInside).findIndex(({ image }) => image === ')');
  if (at === 0 || inside < 1) return undefined;
  const end = at + 1 + inside;
  const said = tokens.slice(at + 1, end);
  if (said.every((token) => /^(NUMBER|PLAYER|NEGATIVE)$/.test(token.tokenType.name) || token.image === ',')) return undefined;
  const [open, close, next] = [tokens[at]!, tokens[end]!, tokens[end + 1]];
  if (wordOf(tokens[0]) === 'from') return withThese(tokens, at, end + 1, [standing(types, ',', open), ...said]);
  // What kind of pass or shot it is stands behind the colon.
  const isKind = wordOf(tokens[0]) === 'look' && said.every((token) => KINDS.has(wordOf(token))) && !tokens.slice(0, at).some(({ image }) => image === ':');
  if (isKind && next === undefined) return withThese(tokens, at, end + 1, [standing(types, ':', open), ...said]);
  if (isKind && next?.image === ':') return withThese(tokens, at, end + 2, [standing(types, ':', open), ...said, standing(types, ',', close, next)]);
  return withThese(tokens, at, end + 1, said);
}
