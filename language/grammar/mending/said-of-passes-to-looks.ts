// Chances that a coach tells as the pass that leads to them: `last look: 4 passes to 5, layup`, `1 can pass to 4 for a layup`, `kick 2 or 3 corner 3`.
import { message } from '../../message/message.ts';
import type { Broken } from './broken-line.ts';
import { rewriting, wholeLine, type Recogniser, type SaidOtherwise } from './saying.ts';

export const saidOfPassesToLooks: readonly Recogniser[] = [lookAtAPass, mayDo, passFirst, shotAfterAPass, passOrShot, twoPasses, readBehindTheLook];

const FINISH = '(layup|lay-up|lay up|dunk|jumper|jump shot|three|hook|floater|pull-up|shot|3)';
const SHOOTS = '(?:shoots?|shot|finish(?:es)?|scores?)';
const PASS = '(pass(?:es)?|kicks?|skips?|lobs?|bounces?|throws?|gives?|dumps?|feeds?|hits?)';
const WAYS = '(?: it| the ball)?(?: back| out| in| inside| over| across| down)*';
const PLACE = '((?: (?:in|on|at|under) (?:the )?[a-z][a-z -]*?)?)';
const whole = (pattern: string): RegExp => new RegExp(`^${pattern}$`, 'i');

/** The kind of pass of a look. */
const kindOf = (verb: string): string => (/^kick/i.test(verb) ? 'kick out' : /^skip/i.test(verb) ? 'skip' : /^lob/i.test(verb) ? 'lob' : /^bounce/i.test(verb) ? 'bounce pass' : 'pass');

function finishOf(said: string | undefined): string {
  if (said === undefined) return '';
  return `, ${said === '3' ? 'three' : said.toLowerCase()}`;
}

/** Of the ways to write the look the first that can be read. */
function told(broken: Broken, looks: readonly string[]): SaidOtherwise | undefined {
  for (const look of looks) {
    const fix = rewriting(broken, look);
    if (fix) return { code: 'misplaced-word', from: 0, to: broken.tokens.length, message: message('A chance is a look for the man who scores; how he gets the ball and what he does with it stand behind a colon: "{look}".', { look }), fixes: [fix] };
  }
  return undefined;
}

const LOOK_AT_A_PASS = whole(`(?:(?:1st|2nd|3rd|first|second|third|fourth|next|last|final)\\s+)?(?:look|option|read|choice|chance)(?:\\s+\\d)?(?:\\s*:)?\\s*([1-5]):? ${PASS}${WAYS} (?:to )?([1-5])${PLACE}(?:,?(?: and| then| for| who)?(?: an?| the)? (?:\\3 |he |she )?(?:${FINISH}|(${SHOOTS})(?: an? ${FINISH})?))?`);

/** `second look: 4 passes to 2 in the corner, 2 shoots` */
function lookAtAPass(broken: Broken): SaidOtherwise | undefined {
  const [, passer, verb, who, place = '', finish, shoots, shot = shoots === undefined ? undefined : 'shot'] = LOOK_AT_A_PASS.exec(wholeLine(broken)) ?? [];
  if (passer === undefined || passer === who) return undefined;
  const tail = `: ${kindOf(verb!)} from ${passer}${finishOf(finish ?? shot)}`;
  return told(broken, [`look ${who}${place}${tail}`, `look ${who} at${place}${tail}`]);
}

const MAY_SHOOT = whole(`([1-5]) (?:can|could|may|might) (?:also |now |just )?(?:shoot|score|finish|take (?:the|a) shot)(?: it)?(?: with)?(?:(?: an?| the)? ${FINISH})?`);
const MAY_PASS = whole(`([1-5]) (?:can|could|may|might) (?:also |now |just )?${PASS}${WAYS} (?:to )?([1-5])${PLACE}(?:,?(?: for| and)?(?: an?| the)? ${FINISH})?`);

/** `1 can shoot`, `1 can pass to 4 for layup` */
function mayDo(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken).replace(/^the /i, '');
  const [, shooter, shot] = MAY_SHOOT.exec(said) ?? [];
  if (shooter !== undefined) return told(broken, [`look ${shooter}${finishOf(shot).replace(', ', ': ')}`]);
  const [, passer, verb, who, place = '', finish] = MAY_PASS.exec(said) ?? [];
  return passer === undefined ? undefined : told(broken, [`look ${who}${place}: ${kindOf(verb!)} from ${passer}${finishOf(finish)}`]);
}

const PASS_FIRST = whole(`${PASS}(?: it)?(?: out)?(?: to)? ([1-5])(?: or ([1-5]))?(?:(?: in| at| on)?(?: the)? ((?:left |right )?(?:corner|wing|top|slot|elbow|block)))?(?: (?:for )?(?:an? )?${FINISH})?`);
/** What is done once it is passed up stands below a look anyhow. */
const NOT_THERE = /^if (?:it|that|he|she|nothing|the [a-z-]+)(?:['’]s| is)?(?: not|n['’]t)? (?:there|open|on),? (?:then )?/i;

/** `kick 2 or 3 corner 3`, `if it's not there kick it to 3 in the left corner for three`: who has the ball passes. */
function passFirst(broken: Broken): SaidOtherwise | undefined {
  const [, verb, who, other, place, finish] = PASS_FIRST.exec(wholeLine(broken).replace(NOT_THERE, '')) ?? [];
  // `pass 1` may be turned round.
  if (verb === undefined || broken.index > 0 || (/^pass/i.test(verb) && place === undefined && finish === undefined && other === undefined)) return undefined;
  return told(broken, [`look ${who}${other === undefined ? '' : ` or ${other}`}${place === undefined ? '' : ` ${/top|elbow|block/i.test(place) ? 'at' : 'in'} the ${place}`}: ${kindOf(verb)}${finishOf(finish)}`]);
}

const AFTER_A_PASS = whole(`(look [^:]+):\\s*${FINISH} (?:after|off|from|on) (?:an? |the )?(pass|lob|skip|kick-?out|feed|bounce pass) (?:of|from|by) ([1-5])`);

/** `look 4: layup after pass of 5` */
function shotAfterAPass(broken: Broken): SaidOtherwise | undefined {
  const [, look, finish, kind, passer] = AFTER_A_PASS.exec(wholeLine(broken)) ?? [];
  return look === undefined ? undefined : told(broken, [`${look}: ${kind} from ${passer}${finishOf(finish)}`]);
}

const PASS_OR_SHOT = whole(`(look [^:]+:\\s*(?:lob|skip|kick-?out|(?:bounce |pocket )?pass)) or (?:an? )?${FINISH}`);

/** `look 4: lob or layup`: the one is how he gets it, the other what he does with it. */
function passOrShot(broken: Broken): SaidOtherwise | undefined {
  const [, look, finish] = PASS_OR_SHOT.exec(wholeLine(broken)) ?? [];
  return look === undefined ? undefined : told(broken, [`${look}${finishOf(finish)}`]);
}

const TWO_PASSES = whole(`(look [^:]+):\\s*((?:pocket |bounce |skip )?pass|lob|skip|kick-?out|dump-?off) or (?:an? )?((?:pocket |bounce |skip )?pass|lob|skip|kick-?out|dump-?off), (?:an? )?${FINISH}`);

/** `look 4 rolling: pocket pass or lob, layup`: each is a chance of its own. */
function twoPasses(broken: Broken): SaidOtherwise | undefined {
  const [, look, one, other, finish] = TWO_PASSES.exec(wholeLine(broken)) ?? [];
  if (look === undefined) return undefined;
  const line = `${look}: ${one}${finishOf(finish)}, ${look}: ${other}${finishOf(finish)}`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('One pass a look, in the order he reads them: "{line}".', { line }), fixes: [fix] };
}

const READ_BEHIND = whole('(look [^:,]+):\\s*([^:]+?),? (?:if|when) (x[1-5] .+)');

/** `look 3: kick-out, three, if X3 helps`: what he reads stands before the colon. */
function readBehindTheLook(broken: Broken): SaidOtherwise | undefined {
  const [, look, tail, read] = READ_BEHIND.exec(wholeLine(broken)) ?? [];
  if (look === undefined) return undefined;
  const line = `${look} when ${read}: ${tail}`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('What the look depends on stands before the colon: "{line}".', { line }), fixes: [fix] };
}
