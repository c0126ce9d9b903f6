// What coaches say of a whole play: how they stand, who throws in, what is asked.
import { levelOfAge } from '../../court/ages.ts';
import { message } from '../../message/message.ts';
import { endOf, reads, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { verbOf } from '../verbs.ts';
import { commaAfter, isAttacker, rewriting, wholeLine, word, writing, type Recogniser, type SaidOtherwise } from './saying.ts';

export const saidOfHeads: readonly Recogniser[] = [nearestLevel, rulesOfWhom, onTheShotClock, shotClockAlone, inTimeIsALine, shotWith, repeatsUntil, repeatsWithParts, throwerInFrom, throwInInFrom, deepUnderTheBasket, endsWithTheBall, alignmentWithoutFrom, demandWithoutMust, hasTheBall, whoCrashes, inTheBackcourt, leftInASituation, defenderInAgainst];

const LEVEL_WORDS: readonly (readonly [said: RegExp, level: string])[] = [
  [/^(minis?|kids|cubs|grade|elementary|primary)/, 'u10'], [/^(middle|junior-high|junior high)/, 'u14'], [/^(high|varsity|jv|prep|freshman|sophomore)/, 'hs'],
  [/^(university|uni|ncaa|juco)/, 'college'], [/^(senior|seniors|adult|adults|men|women|professional|professionals|nba|club|amateur)/, 'pro'], [/^(youth|juniors?|boys|girls|cadets?)/, 'u14'],
];

/** `level u18`, `level high school`: the nearest keystrokes would name much younger legs. */
function nearestLevel(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'level' || index !== 1) return undefined;
  const said = written(broken, 1, tokens.length).toLowerCase();
  const age = Number(/^(?:u|under|u-)[ -]?(\d{1,2})\b/.exec(said)?.[1] ?? /^(\d{1,2})u?\b/.exec(said)?.[1] ?? Number.NaN);
  const level = Number.isNaN(age) ? LEVEL_WORDS.find(([words]) => words.test(said))?.[1] : levelOfAge(age);
  if (level === undefined || reads(`level ${said}`)) return undefined;
  return { code: 'unknown-word', from: 1, to: tokens.length, message: message('The levels are u10, u12, u14, u16, hs (15 to 18), college and pro: whose legs the times are for. Nearest to "{words}" is {level}.', { words: written(broken, 1, tokens.length), level }), fixes: [writing(broken, 1, tokens.length, level)] };
}

const RULES_WORDS: readonly (readonly [said: RegExp, rules: string])[] = [
  [/^(high|hs|prep|federation)/, 'nfhs'], [/women|^girls/, 'ncaa-women'], [/^(ncaa|college|university)/, 'ncaa-men'], [/^(international|world|europe|ours|normal|club|youth)/, 'fiba'], [/^(pro|professional)/, 'nba'], [/^(minis?|kids|u10|u12)/, 'mini'],
];

/** `rules high school` */
function rulesOfWhom(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'rules' || index !== 1) return undefined;
  const said = written(broken, 1, commaAfter(broken, 0)).toLowerCase();
  const rules = RULES_WORDS.find(([words]) => words.test(said))?.[1];
  if (rules === undefined) return undefined;
  return { code: 'unknown-word', from: 1, to: commaAfter(broken, 0), message: message('The rule sets are fiba, nba, ncaa-men, ncaa-women, nfhs (high school) and mini. For "{said}" write {rules}.', { said, rules }), fixes: [writing(broken, 1, commaAfter(broken, 0), rules)] };
}

/** `5 deep under our basket`: whose basket is meant, each coach says otherwise. */
function deepUnderTheBasket(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index + 1].find((i) => /^(deep|under|long|end)$/.test(word(tokens[i])));
  if (at === undefined || !(isAttacker(tokens[index - 1]) || word(tokens[index]) === 'end') || (word(tokens[0]) !== 'from' && index > 1)) return undefined;
  const from = word(tokens[index]) === 'end' ? index - 2 : index;
  const fixes = ['at the rim', 'at the far free-throw line'].map((text) => writing(broken, from, commaAfter(broken, index), text));
  return fixes.some(Boolean) ? { code: 'unknown-word', from, to: commaAfter(broken, index), message: message('Say which end: "at the rim" is where you attack, "at the far free-throw line" where you defend.'), fixes } : undefined;
}

/** `call with 24 on the shot clock`: both clocks are wanted. */
function onTheShotClock(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const alone = /^(?:with )?(\d{1,2}) ?(?:s(?:ec(?:ond)?s?)?)?(?: left)? on the shot clock$/i.exec(wholeLine(broken))?.[1];
  if (alone === undefined && (word(tokens[0]) !== 'call' || word(tokens[index]) !== 'on the shot clock')) return undefined;
  const seconds = alone ?? written(broken, index - 1);
  return { code: 'misplaced-word', from: alone === undefined ? index - 1 : 0, to: alone === undefined ? index + 1 : tokens.length, message: message('Say the period clock first: "call with {words} on the clock, shot clock {seconds}".', { words: Number(seconds) > 0 ? Number(seconds) + 6 : 30, seconds }), fixes: [] };
}

/** `shot clock 24` on a line of its own. */
function shotClockAlone(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index !== 0 || word(tokens[0]) !== 'shot clock') return undefined;
  const words = written(broken, 0, tokens.length);
  return { code: 'misplaced-word', from: 0, to: tokens.length, message: message('The shot clock stands behind a comma in the line that says when it is called: "call with 30 on the clock, {words}".', { words }), fixes: [] };
}

/** `3 inbounds to 1 within 3 seconds`: how soon he has to let go is asked for in a line of its own. */
function inTimeIsALine(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const time = tokens[index + 1];
  if (!/^(within|in less than)$/.test(word(tokens[index])) || time?.tokenType.name !== 'SECONDS' || !tokens.slice(0, index).some(({ image }) => verbOf(image)?.class === 'throw-in')) return undefined;
  const text = `inbound within ${written(broken, index + 1)}`;
  return { code: 'extra-word', from: index, to: index + 2, message: message('How soon he has to let go is asked for in a line of its own: "{text}".', { text }), fixes: [tried(broken, message('Leave out "{words}"', { words: written(broken, index, index + 2) }), [{ at: endOf(tokens[index - 1]!), to: endOf(time), text: '' }])] };
}

/** `shot with 3 to 5 on the clock` */
function shotWith(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const [low, high] = [Number(written(broken, 2)), Number(written(broken, 4))];
  if (word(tokens[0]) !== 'shot' || index !== 1 || !/^(with|at)$/.test(word(tokens[1])) || word(tokens[3]) !== 'to' || !(low >= 0 && high >= 0)) return undefined;
  const text = `between ${Math.max(low, high)} and ${Math.min(low, high)}`;
  return { code: 'misplaced-word', from: 1, to: 5, message: message('Write "{text}".', { text }), fixes: [writing(broken, 1, 5, text)] };
}

/** `step "C" repeats "A" until somebody is open` */
function repeatsUntil(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const until = [index, index + 1].find((i) => /^(until|till|as long as|while)$/.test(word(tokens[i])));
  if (word(tokens[0]) !== 'step' || until === undefined || !tokens.some(({ image }) => /^repeats?$/.test(image))) return undefined;
  const fixes = ['for 15 seconds', '3 times'].map((text) => tried(broken, message('Write "{text}"', { text }), [{ at: tokens[until]!.startOffset, to: endOf(tokens.at(-1)!), text }]));
  return { code: 'misplaced-word', from: until, to: tokens.length, message: message('How often it is run must be said: "for 15 seconds" or "3 times". Whoever is open before is a look in the step.'), fixes };
}

/** `ends with the ball in 1's hands` */
function endsWithTheBall(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  if (!/^ends?$/.test(word(tokens[0])) || !/^(with( the)?( ball)?|in|on)$/.test(word(tokens[1]))) return undefined;
  const who = tokens.find(isAttacker);
  const chance = /\b(shot|layup|lay-up|jumper|three|dunk|basket|bucket|score)\b/i.exec(wholeLine(broken));
  if (chance) {
    const look = `look ${who?.image ?? 1}${/^(layup|lay-up|jumper|three|dunk)$/i.test(chance[1]!) ? `: ${chance[1]!.toLowerCase()}` : ''}`;
    return { code: 'misplaced-word', from: 0, to: tokens.length, message: message('A shot is a look: "{look}". "ends" is only for a play that ends without one.', { look }), fixes: who ? [rewriting(broken, look)] : [] };
  }
  const text = who ? `ends once ${who.image} has the ball` : 'ends with no shot';
  return { code: 'misplaced-word', from: 1, to: tokens.length, message: message('How a play ends without a shot is said as what has happened: "ends once 2 has the ball", "ends once the ball is over half court"; or plainly "ends with no shot".'), fixes: [rewriting(broken, text)] };
}

/** `step "Again" repeats "Ride" with 4 for 2`: parts are given out anew where the play goes on from a step, not where one step is repeated. */
function repeatsWithParts(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  const at = tokens.findIndex(({ image }) => /^repeats?$/.test(image));
  const parts = tokens.slice(at + 3);
  if (word(tokens[0]) !== 'step' || at < 0 || word(tokens[at + 2]) !== 'with' || !isAttacker(parts[0])) return undefined;
  const said = parts.map(({ image }, i) => (image === 'for' ? ' as ' : image === 'and' || image === ',' ? ', ' : i === 0 ? ` ${image}` : image)).join('');
  const text = `${written(broken, 0, at)} again from ${written(broken, at + 1, at + 3)}${said}`;
  return { code: 'misplaced-word', from: at, to: tokens.length, message: message('Men change parts where the play goes on once more from a step, with all that follows it: {text}.', { text: `again from ${written(broken, at + 1, at + 3)}${said}` }), fixes: [rewriting(broken, text)] };
}

/** `from box, 3 taking it out under the basket` */
function throwerInFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'from' || !/^(out|out of bounds|taking|throwing|inbounding|inbounds?|passing|takes|throws|throws in|takes the ball out|takes it out|has it out|has the ball out|has it|is the thrower)$/.test(word(tokens[index]))) return undefined;
  const who = isAttacker(tokens[index - 1]) ? written(broken, index - 1) : '3';
  const said = written(broken, index - 1, commaAfter(broken, index));
  const text = isAttacker(tokens[index - 1]) && reads(said) ? said : `${who} inbounds from the right baseline`;
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('Who throws in has a line of his own below it: "{text}".', { text }), fixes: [] };
}

/** `from sideline`, `from a side out`, `from the left baseline` */
function throwInInFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  const said = written(broken, 1, commaAfter(broken, 0)).toLowerCase();
  if (word(tokens[0]) !== 'from' || broken.index > 2 || !/^(the |a |an )?((left|right) )?(side|sideline|side line|touchline|baseline|base line|endline|end line|inbounds?|throw-in|out)( (out|out of bounds|throw-in|inbounds?|play|ball))*$/.test(said)) return undefined;
  const line = /^(the |a |an )?((left|right) )?(base|end)/.test(said) ? 'baseline' : 'sideline';
  const [side] = /\b(left|right)\b/.exec(said) ?? [];
  const who = tokens.find(isAttacker)?.image;
  const text = `${who ?? '3'} inbounds from the ${side ?? 'left'} ${line}`;
  // Nobody is made the thrower whom the coach has not named, and no side is made up.
  const mended = who === undefined ? `situation ${line} throw-in${side === undefined ? '' : `, "from the ${side}"`}` : `${who} inbounds from the ${side === undefined ? '' : `${side} `}${line}`;
  return { code: 'misplaced-word', from: 1, to: commaAfter(broken, 0), message: message('"from" says how the others stand ("from box"). Who throws in, and where, has a line of its own below it: for example "{line}".', { line: text }), fixes: [rewriting(broken, mended)] };
}

/** `5 out`, `1-4 high, ball with 1` above the first step. */
function alignmentWithoutFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens, text, lexed } = broken;
  const first = tokens[0];
  // `3 out` may be the thrower.
  if (!first || /^[1-5] out$/i.test(wholeLine(broken)) || tokens.length > 12 || word(first) === 'from' || (tokens.length === 1 && first.tokenType.name === 'STRING')) return undefined;
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

/** `1 at left slot in the backcourt`: the other half has fewer names. */
function inTheBackcourt(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const spot = tokens[index - 1];
  if (!/^(in|of)$/.test(word(tokens[index])) || word(tokens[index + 1]) !== 'backcourt' || !spot) return undefined;
  const fix = tried(broken, message('Write "{words}"', { words: 'backcourt' }), [{ at: spot.startOffset, to: endOf(tokens[index + 1]!), text: 'backcourt' }]);
  return { code: 'misplaced-word', from: index - 1, to: index + 2, message: message('Places of the other half are backcourt corner, wing, elbow, block and top, the far free-throw line, the far baseline, and backcourt left, middle and right (three metres behind the half line); any other is said in metres: (-3, 22.5) m.'), fixes: [fix] };
}

/** `against man, X5 drops` */
function defenderInAgainst(broken: Broken): SaidOtherwise | undefined {
  const [, against, does] = /^((?:against|vs) [^,]+), (x[1-5] .+)$/i.exec(wholeLine(broken)) ?? [];
  if (against === undefined || !reads(against) || !reads(does!)) return undefined;
  return { code: 'misplaced-word', from: broken.index, to: broken.tokens.length, message: message('What one defender does is a line of the step in which he does it, "{does}", or what a counter stands there for: step "…" instead of "…" when {does}. Here stands only "{against}".', { against, does: does! }), fixes: [] };
}

/** `situation down 1, 8 seconds left`: what is on the clock is reckoned with, and has its own line. */
function leftInASituation(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'situation') return undefined;
  const end = commaAfter(broken, index);
  const said = written(broken, index, end);
  const seconds = /^(?:under |last |about )?(\d+(?:\.\d+)?) ?(?:s|secs?|seconds?) (?:left|remaining|to go|to play|on the clock)$/i.exec(said)?.[1];
  if (seconds === undefined) return undefined;
  const line = `call with ${seconds} on the clock`;
  const fix = index === 1 && end === tokens.length ? rewriting(broken, line) : writing(broken, index, end, `"${said}"`);
  return { code: 'misplaced-word', from: index, to: end, message: message('How much is left when it is called has a line of its own: "{line}".', { line }), fixes: [fix] };
}
