// What coaches say of a whole play: how they stand, who throws in, what is asked.
import { message } from '../message/message.ts';
import { endOf, reads, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { isAttacker, rewriting, wholeLine, word, type Recogniser, type SaidOtherwise } from './saying.ts';

export const saidOfHeads: readonly Recogniser[] = [throwerInFrom, alignmentWithoutFrom, demandWithoutMust, hasTheBall, whoCrashes, inTheBackcourt];

/** `from box, 3 taking it out under the basket` */
function throwerInFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'from' || !/^(taking|throwing|inbounding|inbounds?|passing|takes|throws|throws in|takes the ball out|takes it out|is the thrower)$/.test(word(tokens[index]))) return undefined;
  const who = isAttacker(tokens[index - 1]) ? written(broken, index - 1) : '3';
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('Who throws in has a line of his own below it: "{who} inbounds from the right baseline".', { who }), fixes: [] };
}

/** `5 out`, `1-4 high, ball with 1` above the first step. */
function alignmentWithoutFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens, text, lexed } = broken;
  const first = tokens[0];
  if (!first || tokens.length > 12 || word(first) === 'from') return undefined;
  // A man and his place are told by `placesWithoutFrom`.
  if (isAttacker(first) && !/^[1-5][- ](out|[1-5]-[1-5]|[1-5])/i.test(wholeLine(broken))) return undefined;
  const at = startWithArticles(broken, 0);
  const line = `from ${text.slice(at, lexed.comment?.at).trim()}`;
  if (!reads(line)) return undefined;
  const fix = tried(broken, message('Put "from" before it'), [{ at, to: at, text: 'from ' }]);
  return fix && { code: 'missing-word', from: 0, to: tokens.length, message: message('How the five stand at the start is the "from" line of the play: "{line}".', { line }), fixes: [fix] };
}

/** `no screens`, `everyone must touch the ball` */
function demandWithoutMust(broken: Broken): SaidOtherwise | undefined {
  const line = wholeLine(broken).toLowerCase();
  const touch = /^(every(one|body| player)|all five|all players|all) (must|has to|have to|needs to|should) (touch|handle) (the )?ball/.test(line);
  const demand = touch ? 'must have every player touch the ball' : `must have ${line}`;
  if (!touch && !/^(no|at least|at most|exactly|every player) /.test(line)) return undefined;
  const fix = rewriting(broken, demand);
  return fix && { code: 'missing-word', from: 0, to: broken.tokens.length, message: message('What you ask of a play begins with "must": "{demand}".', { demand }), fixes: [fix] };
}

/** `1 has the ball` as a line of its own. */
function hasTheBall(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!isAttacker(tokens[0]) || index > 1 || !/^(has the ball|with the ball|starts with it|has it)$/.test(word(tokens[1]))) return undefined;
  const text = `ball with ${written(broken, 0)}`;
  return { code: 'misplaced-word', from: 0, to: tokens.length, message: message('Who has the ball at the start: write "{text}".', { text }), fixes: [rewriting(broken, text)] };
}

/** `rebound 3, 4, 5` */
function whoCrashes(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const last = tokens.at(-1);
  if (word(tokens[0]) !== 'rebound' || index < tokens.length || !isAttacker(last)) return undefined;
  const fix = tried(broken, message('Write "crash" behind it'), [{ at: endOf(last!), to: endOf(last!), text: tokens.length > 2 ? ' crash' : ' crashes' }]);
  return fix && { code: 'line-unfinished', from: tokens.length - 1, to: tokens.length, message: message('Say what they do: "{words} crash", or "get back".', { words: wholeLine(broken) }), fixes: [fix] };
}

/** `1 at left elbow in the backcourt`: the other half has fewer names. */
function inTheBackcourt(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const spot = tokens[index - 1];
  if (!/^(in|of)$/.test(word(tokens[index])) || word(tokens[index + 1]) !== 'backcourt' || !spot) return undefined;
  const text = /^(elbow|elbows|free-throw line|nail|high post)$/.test(spot.image) ? 'far free-throw line' : 'backcourt';
  const fix = tried(broken, message('Write "{words}"', { words: text }), [{ at: spot.startOffset, to: endOf(tokens[index + 1]!), text }]);
  return { code: 'misplaced-word', from: index - 1, to: index + 2, message: message('Places of the other half are the far free-throw line, the far baseline and backcourt left, middle and right; any other is said in metres: (-3, 22.5) m.'), fixes: [fix] };
}
