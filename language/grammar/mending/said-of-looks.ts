// What coaches say of chances and choices.
import { message } from '../../message/message.ts';
import { endOf, endOfWords, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import type { LineFix } from '../line-fault.ts';
import { isAttacker, isDefender, rewriting, wholeLine, word, type Recogniser, type SaidOtherwise } from './saying.ts';
import { verbOf } from '../verbs.ts';

export const saidOfLooks: readonly Recogniser[] = [goingThere, onTheMissing, looksTo, shotOrMan, orElse, anOption, forAShot, theyDo];

/** `look 1 to the rim: layup` */
function goingThere(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(to|into)$/.test(word(tokens[i])));
  if (at === undefined || word(tokens[0]) !== 'look' || !(isAttacker(tokens[at - 1]) || tokens[at - 1]?.tokenType.name === 'STRING')) return undefined;
  const token = tokens[at]!;
  const fix = tried(broken, message('Write "{words}"', { words: `going ${token.image}` }), [{ at: token.startOffset, to: token.startOffset, text: 'going ' }]);
  return fix && { code: 'missing-word', from: at, to: at + 1, message: message('Say when the chance comes, as in "look 1 going to rim: layup", or behind a colon what he then does: "look 1: drives to rim, layup".'), fixes: [fix] };
}

/** `look 1 drift: three` */
function onTheMissing(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const token = tokens[index];
  if (word(tokens[0]) !== 'look' || !token || !(isAttacker(tokens[index - 1]) || tokens[index - 1]?.tokenType.name === 'STRING')) return undefined;
  const at = startWithArticles(broken, index);
  const fix = tried(broken, message('Write "on the {words}"', { words: written(broken, index) }), [{ at, to: token.startOffset, text: 'on the ' }]);
  return fix && { code: 'missing-word', from: index, to: index + 1, message: message('Write "on the {words}".', { words: written(broken, index) }), fixes: [fix] };
}

/** `4 looks to give it back`, `1 looks for 5` */
function looksTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^looks?$/.test(word(tokens[index])) || index === 0) return undefined;
  const joint = tokens[index - 1]!;
  if (!isAttacker(joint)) {
    // `4 turns and looks up the floor`
    if (index < 2 || !['and', 'then', ','].includes(joint.image)) return undefined;
    // What he does behind it stays.
    const next = tokens.findIndex(({ image }, at) => at > index && ['and', 'then', ','].includes(image));
    const end = next < 0 ? tokens.length : next;
    const words = written(broken, index - 1, end);
    return { code: 'misplaced-word', from: index, to: end, message: message('Looking moves nobody. A chance to score is a line that begins with "look" and the man who scores: "{words}".', { words: 'look 1: layup' }), fixes: [tried(broken, message('Leave out "{words}"', { words }), [{ at: endOf(tokens[index - 2]!), to: endOf(tokens[end - 1]!), text: '' }])] };
  }
  const whom = tokens.findIndex((token, at) => at > index && isAttacker(token));
  const text = whom < 0 ? undefined : `look ${written(broken, whom)}`;
  const rest = index === 1 && whom >= 0 ? `look ${broken.text.slice(tokens[whom]!.startOffset, endOfWords(broken))}` : '';
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('Looking moves nobody. A chance to score is a line that begins with "look" and the man who scores: "{words}".', { words: text ?? 'look 1: layup' }), fixes: [rest === '' ? undefined : rewriting(broken, rest)] };
}

/** `look 2 3` */
function shotOrMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'look' || !isAttacker(tokens[index - 1]) || word(tokens[index]) !== '3' || index + 1 < tokens.length) return undefined;
  const { startOffset } = tokens[index]!;
  const fixes = [': three', ' or 3'].map((text) => tried(broken, message('Write "{words}"', { words: text.trim() }), [{ at: endOf(tokens[index - 1]!), to: startOffset + 1, text }]));
  return { code: 'missing-word', from: index, to: index + 1, message: message('Say whether it is the shot or a man: "{shot}", or "{men}".', { shot: `${written(broken, 0, index)}: three`, men: `${written(broken, 0, index)} or 3` }), fixes };
}

/** `3 lobs to 2 or passes to 5`: two ways on. */
function orElse(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'or' || word(tokens[0]) === 'look') return undefined;
  const next = tokens[index + 1];
  const verb = isAttacker(next) ? tokens[index + 2] : next;
  if (!verb || verbOf(word(verb)) === undefined) return undefined;
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('A line always happens. What the ball holder chooses is seen in the game: write a look for each, in the order he reads them ("look 2: lob, layup", then "look 5: three").'), fixes: [index === 0 ? lookInstead(broken) : undefined] };
}

const FINISH = '(layup|lay-up|dunk|jumper|three|hook|floater|pull-up|3)';
/** Nothing else may be said: a mend that leaves words out loses what the coach meant. */
const whole = (pattern: string): RegExp => new RegExp(`^${pattern}$`, 'i');
const IS_OPEN = whole(`if ([1-5])(?:['’]s| is| gets)? (?:wide )?(?:open|free)(?:,? (?:(?:pass|throw|kick|hit|dump)(?: it)?(?: to)? (?:him|her|\\1)|(?:for )?(?:an? |the )?${FINISH}))?`);
const IF_OPEN = whole("([1-5]) if (?:he is |he['’]s |she is |she['’]s )?(?:wide )?open");
const SHOOTS = whole(`([1-5]) (?:shoots|shoot|scores|takes|for|with|pulls up for)(?: it| up)?(?: an?| the)?(?: (?:\\w+ )?${FINISH})?`);
const PASSES = whole(`(?:[1-5] )?(?:pass(?:es)?|kicks?(?: it)?(?: out)?|dumps?(?: it)?(?: off| down| in)?|throws?|hits?|skips?|feeds?)(?: it| the ball)?(?: to)? ([1-5])(?: if [^,]*\\bopen)?(?: for (?:an? |the )?${FINISH})?`);
const LOBS_OR_HANDS_OFF = whole('(?:[1-5] )?(lobs?|hands?)(?: it)?(?: off)?(?: to)? ([1-5])(?: if [^,]*\\bopen)?');
const LEADS = /^(?:(?:and|or|then|finally|lastly|last|otherwise|else|if not|if nothing is there|failing that|next)\s*,?\s*)+/i;

/** `otherwise 1 shoots a jumper`, `if 4 is open, layup`, `pass to 4 if he is open`: the look that is meant. */
function asLook(said: string): string | undefined {
  const bare = said.replace(LEADS, '').replace(/[.!]$/, '');
  const [, who, finish] = IS_OPEN.exec(bare) ?? IF_OPEN.exec(bare) ?? SHOOTS.exec(bare) ?? PASSES.exec(bare) ?? [];
  if (who !== undefined) return `look ${who}${finish === undefined ? '' : `: ${finish === '3' ? 'three' : finish.toLowerCase()}`}`;
  const [, how, whom] = LOBS_OR_HANDS_OFF.exec(bare) ?? [];
  return how === undefined ? undefined : `look ${whom!}: ${/^l/i.test(how) ? 'lob, layup' : 'hand-off'}`;
}

/** The mend of a line that says a chance as a choice. */
export function lookInstead(broken: Broken): LineFix | undefined {
  const look = asLook(wholeLine(broken));
  return look === undefined ? undefined : rewriting(broken, look);
}

/** `otherwise 1 shoots a jumper`, `last, hand off to 2`, `if not, kick it to 3`; `otherwise 4 pops` is no chance. */
function anOption(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken);
  if (!/^(or|finally|lastly|last|otherwise|else|if not|if nothing is there|failing that)\b|^(pass|kick|dump|throw|hit|skip|feed|lob|hand)\b.*\bif\b.*\bopen\b|^[1-5] scores$/i.test(said)) return undefined;
  const look = asLook(said);
  const fix = look === undefined ? undefined : rewriting(broken, look);
  if (fix === undefined && /^(otherwise|else)$/.test(word(broken.tokens[0])) && broken.index <= 1) return { code: 'misplaced-word', from: 0, to: 1, message: message('A line always happens. What is done when a look is passed up stands below that look; what is done instead, because of the defence, is a step of its own: step "…" instead of "…" when X4 switches.'), fixes: [belowItsLook(broken)] };
  return fix && { code: 'misplaced-word', from: 0, to: 1, message: message('What he may do or leave is a look, and looks are read in the order they are written: "{look}".', { look: look! }), fixes: [fix] };
}

/** `otherwise 3 pulls it out`: so it goes on once nothing was open; `otherwise 4 pops` may be of the defence. */
function belowItsLook(broken: Broken): LineFix | undefined {
  const [otherwise, next] = broken.tokens;
  const who = word(next) === ',' ? broken.tokens[2] : next;
  const verb = broken.tokens[broken.tokens.indexOf(who!) + 1];
  return who && verbOf(word(verb))?.base === 'back out' ? tried(broken, message('Leave out "{words}"', { words: written(broken, 0) }), [{ at: otherwise!.startOffset, to: who.startOffset, text: '' }]) : undefined;
}

export const FINISHES: ReadonlyMap<string, string> = new Map(Object.entries({ layup: 'lays it up', 'lay-up': 'lays it up', 'lay-in': 'lays it up', layin: 'lays it up', dunk: 'dunks', jumper: 'shoots a jumper', three: 'shoots a three', shot: 'shoots', hook: 'hooks' }));

/** `3 passes ahead to 5 for a lay up` */
function forAShot(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => word(tokens[i]) === 'for' && FINISHES.has(word(tokens[i + 1])));
  const who = tokens[(at ?? 0) - 1];
  if (at === undefined || !isAttacker(who)) return undefined;
  const text = `, ${written(broken, at - 1)} ${FINISHES.get(word(tokens[at + 1]))!}`;
  const fix = tried(broken, message('Write "{words}"', { words: text }), [{ at: endOf(who!), to: endOf(tokens[at + 1]!), text }]);
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('Say what he does then: "{words}". A chance he may leave is a look.', { words: `${written(broken, at - 1)}${text}` }), fixes: [fix] };
}

/** `if they jump out on 2, 5 slips`: they are the defence. */
function theyDo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [0, index, index - 1].find((i) => /^(if|when|once|unless|after|as|as soon as|until)$/.test(word(tokens[i])) && /^(they|their|defence|defense|defender|defenders|zone|press|trap|help|helper|x)$/.test(word(tokens[i + 1])));
  if (at === undefined || tokens.slice(at, index).some(isDefender)) return undefined;
  if (word(tokens[0]) === 'step') return undefined;
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('What the defence decides is a step of its own, and names the defender: step "…" instead of "…" when X4 shows on 1.'), fixes: [] };
}
