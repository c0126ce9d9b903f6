// Slips that no nearest word mends: a word that stands twice, a number behind its sign, a small word of another action, what stands on the
// wrong side of `look`.
import { message } from '../../message/message.ts';
import { endOf, endOfWords, tried, written, type Broken } from './broken-line.ts';
import { isAttacker, rewriting, wholeLine, word, type Recogniser, type SaidOtherwise } from './saying.ts';
import { verbOf } from '../verbs.ts';

export const saidByASlip: readonly Recogniser[] = [twice, behindItsSign, lookBehindItsMan, passedTo, andTheShot];

/** A line with more of them is no slip, and each that is tried costs a reading. */
const mostTwice = 3;

/** `3 cuts cuts to the rim` */
function twice(broken: Broken): SaidOtherwise | undefined {
  const { text, tokens } = broken;
  const found = [...text.slice(0, endOfWords(broken)).matchAll(/(?<![\p{L}\p{N}-])([\p{L}-]{2,})\s+\1(?![\p{L}\p{N}-])/giu)];
  for (const { index, 0: both, 1: once } of found.length > mostTwice ? [] : found) {
    const at = index + once!.length;
    const fix = tried(broken, message('Leave out "{words}"', { words: once! }), [{ at, to: index + both.length, text: '' }]);
    const again = tokens.findIndex((token) => endOf(token) > at);
    if (fix && again >= 0) return { code: 'extra-word', from: again, to: again + 1, message: message('"{words}" stands twice. Write it once.', { words: once! }), fixes: [fix] };
  }
  return undefined;
}

/** `look #1: three`: all that stands behind # is a remark. */
function behindItsSign(broken: Broken): SaidOtherwise | undefined {
  const { text, tokens, lexed: { comment } } = broken;
  if (comment === undefined || !/^#[1-5](?!\d)/.test(text.slice(comment.at))) return undefined;
  const signs = [...text.slice(comment.at).matchAll(/#(?=[1-5](?!\d))/g)].map(({ index }) => ({ at: comment.at + index, to: comment.at + index + 1, text: '' }));
  const fix = tried(broken, message('Leave out "{words}"', { words: '#' }), signs);
  return fix && { code: 'line-unfinished', from: tokens.length - 1, to: tokens.length, message: message('What stands behind # is a remark in the text. A player is his number alone: {who}.', { who: text[comment.at + 1]! }), fixes: [fix] };
}

/** `1 look "corner": three` */
function lookBehindItsMan(broken: Broken): SaidOtherwise | undefined {
  const [who, look, next] = broken.tokens;
  if (!isAttacker(who) || word(look) !== 'look' || isAttacker(next)) return undefined;
  const words = `look ${written(broken, 0)}${broken.text.slice(endOf(look!), endOfWords(broken))}`;
  const fix = rewriting(broken, words);
  return fix && { code: 'word-order', from: 0, to: 2, message: message('A chance begins with "look", then comes the man who scores: "{words}".', { words }), fixes: [fix] };
}

/** `1 passes at 2`, `4 hands off with 1`; behind `from` stands who gives it. */
function passedTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  const at = tokens.findIndex((token, index) => /^(?:at|in|on|for|into|with|towards?)$/.test(word(token)) && /^(?:pass|hand-off|throw-in)$/.test(verbOf(word(tokens[index - 1]))?.class ?? '') && isAttacker(tokens[index + 1]));
  if (at < 0) return undefined;
  const small = tokens[at]!;
  const fix = tried(broken, message('Write "{words}"', { words: 'to' }), [{ at: small.startOffset, to: endOf(small), text: 'to' }]);
  const verb = written(broken, at - 1);
  return fix && { code: 'misplaced-word', from: at, to: at + 2, message: message('The ball goes to a man: "{words}".', { words: `${verb} to ${written(broken, at + 1)}` }), fixes: [fix] };
}

/** `look 5: bounce-pass and layup` */
function andTheShot(broken: Broken): SaidOtherwise | undefined {
  const { tokens, text } = broken;
  const colon = tokens.findIndex(({ image }) => image === ':');
  const and = tokens.findIndex(({ image }, index) => index > colon && image === 'and');
  if (word(tokens[0]) !== 'look' || colon < 0 || and < 0) return undefined;
  const before = endOf(tokens[and - 1]!);
  const fix = tried(broken, message('Put a comma in its place'), [{ at: before, to: endOf(tokens[and]!), text: ',' }]);
  return fix && { code: 'misplaced-word', from: and, to: and + 1, message: message('What comes next in a look stands behind a comma: "{words}".', { words: `${wholeLine(broken).slice(0, before - tokens[0]!.startOffset)},${text.slice(endOf(tokens[and]!), endOfWords(broken))}` }), fixes: [fix] };
}
