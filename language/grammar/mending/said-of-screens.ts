// What coaches say of screens, and of who comes off them, that a line says in other words.
import { message } from '../../message/message.ts';
import { endOf, tried, written, type Broken } from './broken-line.ts';
import { inNumber, isAttacker, isDefender, rewriting, wholeLine, word, writing, type SaidOtherwise } from './saying.ts';
import { otherNumber, verbOf } from '../verbs.ts';

/** `4 sets a high ball screen for 1`: how high it stands, the place says; `messages.ts` knows the bare screen. */
export function setsAnAdjectiveScreen(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(sets?|gives?|makes?|puts?)$/.test(word(tokens[i])) || (/^(into|with)$/.test(word(tokens[i])) && i > 1));
  if (at === undefined || at < 1) return undefined;
  const noun = tokens.findIndex((token, i) => i > at && i <= at + 3 && verbOf(word(token))?.class === 'screen');
  const isInto = /^(into|with)$/.test(word(tokens[at]));
  if (noun < 0 || (!isInto && noun === at + 1)) return undefined;
  const from = isInto ? at - 1 : at;
  const kind = word(tokens[noun]) === 'pick' ? 'screen' : word(tokens[noun]);
  const text = inNumber(broken, from, otherNumber.get(kind) !== undefined && verbOf(kind)?.number === 'plural' ? otherNumber.get(kind)! : kind);
  return { code: 'noun-for-verb', from, to: noun + 1, message: message('Say it with the verb alone: "{text}". Where it stands is worked out, or said with "at": "{text} at the top".', { text }), fixes: [writing(broken, from, noun + 1, text)] };
}

/** `3 receives a back screen from 4 and cuts to the rim`: 4 sets it. */
export function getsAScreen(broken: Broken): SaidOtherwise | undefined {
  const [, who, kind = '', by, rest] = /^([1-5]) (?:gets?|receives?|takes?|has) (?:an? |the )?((?:[a-z]+[ -]){0,2}?)(?:screen|pick|block) (?:from|of|by) ([1-5])(?:(?:,? and|,)(?: then)? (.+))?$/i.exec(wholeLine(broken).replace(/^the /i, '')) ?? [];
  if (who === undefined || who === by) return undefined;
  const goesOn = rest === undefined ? '' : /^[1-5x]/i.test(rest) ? `, ${rest}` : `, ${who} ${rest}`;
  const line = `${by} sets a ${kind}screen for ${who}${goesOn}`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: 1, to: broken.tokens.length, message: message('A screen is told of the man who sets it: "{line}".', { line }), fixes: [fix] };
}

/** `1 and 4 run pick and roll` */
export function pickAndRoll(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const isOneWord = (i: number): boolean => /^(pick-(and|n)-(rolls?|pops?)|pnr|pnp|p&r|p&p)$/.test(word(tokens[i]));
  const at = [index, index - 1, index + 1, index + 2].find((i) => isOneWord(i) || (word(tokens[i]) === 'pick' && word(tokens[i + 1]) === 'and' && /^(rolls?|pops?)$/.test(word(tokens[i + 2]))));
  if (at === undefined) return undefined;
  const second = /pop|p$/.test(word(tokens[isOneWord(at) ? at : at + 2])) ? 'pops' : 'rolls';
  const [one, other] = tokens.filter(isAttacker).map(({ image }) => image);
  const [user, screener] = one !== undefined && other !== undefined ? [one, other].sort() : ['1', '4'];
  return { code: 'misplaced-word', from: at, to: isOneWord(at) ? at + 1 : at + 3, message: message('Say what each does: "{screener} ball-screens for {user}, then {second}", and on a line of its own "{user} drives off {screener}".', { screener: screener!, user: user!, second }), fixes: [other === undefined ? undefined : rewriting(broken, `${screener!} ball-screens for ${user!}, then ${second}`)] };
}

/** `1 rejects the screen`: he goes where the screen does not stand. */
export function refuses(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const turnsDown = [index, index - 1].find((i) => /^turns?$/.test(word(tokens[i])) && word(tokens[i + 1]).startsWith('down') && isAttacker(tokens[i - 1]));
  if (turnsDown === undefined && (!/^(rejects?|refuses?|splits?)$/.test(word(tokens[index])) || !isAttacker(tokens[index - 1]) || (/^splits?$/.test(word(tokens[index])) && /^(apart|up|out|wide|to)$/.test(word(tokens[index + 1]))))) return undefined;
  const from = turnsDown ?? index;
  return { code: 'unknown-word', from, to: from + 1, message: message('Who does not use the screen drives somewhere else: say where ("drives to left elbow"). If the defence brings it about, it is a step of its own.'), fixes: [] };
}

/** `2 curls the screen` */
export function offMissing(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = tokens[index];
  if (!noun || verbOf(word(tokens[index - 1]))?.class !== 'move' || !/^(screen|pick|pin down|pindown|.*-screen)$/.test(word(noun))) return undefined;
  const at = endOf(tokens[index - 1]!);
  const fix = tried(broken, message('Put "off" before "{words}"', { words: written(broken, index) }), [{ at, to: at, text: ' off' }]);
  return fix && { code: 'missing-word', from: index, to: index + 1, message: message('A word is missing before "{words}". Did you mean "off the {words}"?', { words: written(broken, index) }), fixes: [fix] };
}

/** `4 and 5 double for 2`: a double is the defence's trap. */
export function doublesFor(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'for' || !/^doubles?$/.test(word(tokens[index - 1])) || isDefender(tokens[index - 2])) return undefined;
  const text = inNumber(broken, index - 1, 'double-screens');
  return { code: 'misplaced-word', from: index - 1, to: index, message: message('Two defenders double a man; two screeners "{text}".', { text }), fixes: [writing(broken, index - 1, index, text)] };
}

/** `5, then 4, screen for 2` */
export function oneThenTheOther(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'then' || !isAttacker(tokens[index + 1]) || !isAttacker(tokens[index - 2])) return undefined;
  const verb = tokens.findIndex((token, i) => i > index + 1 && verbOf(token.image) !== undefined);
  const isScreen = verbOf(word(tokens[verb]))?.class === 'screen';
  if (verb < 0 || verb > index + 3 || !isScreen) return undefined;
  const text = `${written(broken, index - 2)} and ${written(broken, index + 1)} stagger`;
  return { code: 'misplaced-word', from: index - 2, to: verb + 1, message: message('Two screens one behind the other are a stagger: "{text}".', { text }), fixes: [writing(broken, index - 2, verb + 1, text)] };
}

/** `4 screens the bottom man of the zone`, `5 seals the middle man` */
export function whichOfTheZone(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const rest = tokens.slice(index, index + 5).map(word);
  const deed = verbOf(word(tokens[index - 1]))?.class;
  if ((deed !== 'screen' && deed !== 'seal') || !rest.some((each) => /^(man|defender|guy|zone|defence|defense)$/.test(each))) return undefined;
  if (isAttacker(tokens[index]) || rest.some((each) => /^(if|unless|when)$/.test(each))) return undefined;
  const code = tokens[index]?.tokenType.name === 'UNKNOWN' ? 'unknown-word' : 'misplaced-word';
  if (deed === 'seal') return { code, from: index, to: index + 1, message: message('Say which defender he seals, by his number: "seals X5", who stands in the middle of a 2-3. Where each of a zone stands, the picture shows.'), fixes: [] };
  return { code, from: index, to: index + 1, message: message('Say which defender is screened, by his number: "screens X4", or for whom: "screens for 2". Where each of a zone stands, the picture shows.'), fixes: [] };
}

/** `5 pins X4`, `5 pins the bottom man of the zone` */
export function pins(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^pins?$/.test(word(tokens[index])) || word(tokens[index + 1]) === 'down' || !isAttacker(tokens[index - 1])) return undefined;
  const text = inNumber(broken, index, 'pin-screens');
  if (isDefender(tokens[index + 1])) return { code: 'unknown-word', from: index, to: index + 1, message: message('Write "{text}".', { text }), fixes: [writing(broken, index, index + 1, text)] };
  return { code: 'unknown-word', from: index, to: index + 1, message: message('To pin a man is to screen him where he stands. Say which by his number, "{text} X4", or for whom: "{text} for 2". Where each of a zone stands, the picture shows.', { text }), fixes: [] };
}

/** `4 and 5 form a gate`: it is one once somebody goes between them. */
export function aGate(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const gate = tokens.findIndex((token, i) => i >= index && i <= index + 2 && /gate|elevator/.test(word(token)));
  if (gate < 0 || /^(closes?|shuts?)$/.test(word(tokens[index]))) return undefined;
  return { code: 'unknown-word', from: index, to: gate + 1, message: message('A gate is two men apart, and a man who goes between them: "4 and 5 move to the slots", "2 cuts through the gate to top", then "4 and 5 close behind him".'), fixes: [] };
}

/** `4 and 5 close the gate` */
export function shutsTheGate(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(closes?|shuts?)$/.test(word(tokens[index])) || !/^(gates?|doors?|gap|elevator|it)$/.test(word(tokens[index + 1]))) return undefined;
  const isNamed = word(tokens[index + 2]) === 'behind' && isAttacker(tokens[index + 3]);
  const text = `${inNumber(broken, index, 'closes behind')} ${isNamed ? written(broken, index + 3) : 'him'}`;
  if (isNamed) return { code: 'unknown-word', from: index, to: index + 4, message: message('Write "{text}", below the line of the man who goes between them.', { text }), fixes: [writing(broken, index, index + 4, text)] };
  return { code: 'unknown-word', from: index, to: index + 2, message: message('Say behind whom: "{text}", below the line of the man who goes between them.', { text }), fixes: [writing(broken, index, index + 2, text)] };
}
