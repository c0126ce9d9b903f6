// After a player: what he can do at this line. No pass without the ball, no second dribble, no screen while holding it.
import type { Expected } from '../../../language/grammar/expected.ts';
import { singular, verbOf, type VerbClass } from '../../../language/grammar/verbs.ts';
import type { Choice } from './choice.ts';
import { has, type Line } from './line.ts';

const needsBall: ReadonlySet<VerbClass> = new Set(['pass', 'hand-off', 'shot', 'dribble']);
const withoutBall: ReadonlySet<VerbClass> = new Set(['move', 'seal', 'rebound', 'screen', 'close']);

/** What coaches write most stands first. */
const usual = [
  'passes', 'dribbles', 'drives', 'cuts', 'screens', 'ball-screens', 'clears', 'rolls', 'pops', 'back-screens', 'cross-screens', 'flare-screens', 'down-screens', 'slips', 'curls', 'fades',
  'flashes', 'back-cuts', 'hands off', 'lobs', 'skips', 'bounce-passes', 'shoots', 'posts up', 'spaces', 'fills', 'lifts', 'drifts', 'holds', 'stays', 'inbounds', 'is the safety',
  'catches', 'comes off', 'is set', 'reaches', 'has the ball', 'is open',
  'switches', 'shows', 'denies', 'goes under', 'goes over', 'trails', 'helps', 'traps', 'drops',
];
const rankOf = new Map(usual.map((verb, rank) => [verb, rank]));

/** What has to stand behind a verb before anything else can. */
const continued: Partial<Record<VerbClass, string>> = { pass: 'to', 'hand-off': 'to', 'throw-in': 'to', screen: 'for' };
const shortForms: Readonly<Record<string, string>> = { hands: 'hands', hand: 'hand' };

/** What a screener does when his man has passed. */
const afterScreen = new Set(['roll', 'pop', 'slip']);
const hasScreened = ({ actors, standing }: Line): boolean => actors.length === 1 && standing.screening[0] === actors[0];

export function actionChoices(line: Line, items: readonly Expected[]): readonly Choice[] {
  const thrower = items.some(({ text }) => text === 'inbounds') && mayBeTheThrower(line) ? throwInChoices(line) : [];
  return [...thrower, ...verbChoices(line, items)];
}

/** Of a play in which nobody has done anything yet. */
function mayBeTheThrower({ actors, standing, block, at }: Line): boolean {
  if (actors.length !== 1 || actors[0]!.startsWith('X') || standing.out || block.kind !== 'play') return false;
  const above = block.lines.slice(0, at).flatMap(({ parsed: { tree } }) => (tree === undefined || (tree.$type === 'Statement' && tree.first.action?.$type === 'Role') ? [] : [tree.$type]));
  return !above.includes('Statement') && above.filter((type) => type === 'StepHead').length < 2;
}

/** `3 inbounds from the left sideline`: first where the play says that it begins with a throw-in. */
function throwInChoices({ block, at }: Line): readonly Choice[] {
  const said = block.lines.map(({ parsed }, line) => (line !== at && parsed.tree?.$type === 'Situation' ? parsed.text : '')).join(' ');
  const rank = /throw-in|out of bounds|slob|blob/i.test(said) ? 20 : 150;
  const [first, second] = /base ?line|blob/i.test(said) ? ['baseline', 'sideline'] : ['sideline', 'baseline'];
  return [first, second].flatMap((line) => ['left', 'right'].map((side) => `inbounds from the ${side} ${line}`)).map((text, nth): Choice => ({ text, kind: 'action', rank: rank + nth }));
}

function verbChoices(line: Line, items: readonly Expected[]): readonly Choice[] {
  const { prefix, step, block } = line;
  // Above the steps nobody cuts yet, but it is told who is the safety.
  const roleFirst = step === undefined && block.lines.some(({ parsed }) => parsed.tree?.$type === 'StepHead');
  const theyCrash = /\b(?:crash|boards|glass)\b/i.test(prefix);
  return items.flatMap((item) => {
    const verb = item.class === undefined ? undefined : verbOf(item.token);
    if (verb === undefined || item.text in shortForms || !isOpen(line, item, verb.class, item.token) || !agrees(line, item, verb.number)) return [];
    const rank = 100 + (rankOf.get(singular(item.token)) ?? 60) - ((verb.class === 'event' && has(item, 'Event')) || (afterScreen.has(verb.base) && hasScreened(line)) || (verb.class === 'role' && roleFirst) ? 100 : 0) - (theyCrash && has(item, 'ReboundGroup') && verb.base === 'get back' ? 50 : 0);
    // `hands `: what is begun is gone on with.
    const begun = item.text === item.token ? 0 : 100;
    const link = has(item, 'Event') || item.text.startsWith('throw') ? undefined : continued[verb.class];
    const plain: Choice = { text: item.text, kind: 'action', rank: (link === undefined ? rank : rank + 80) - begun };
    return link === undefined ? [plain] : [{ text: `${item.text} ${link}`, kind: 'action' as const, rank: rank - begun, more: true }, plain];
  });
}

function isOpen({ actors, standing }: Line, item: Expected, verb: VerbClass, text: string): boolean {
  // What somebody else waits for may be anything he does.
  if (has(item, 'Event')) return verb === 'event' || verb === 'move' || verb === 'pass' || verb === 'dribble' || verb === 'shot' || verb === 'screen';
  if (has(item, 'Condition') || actors.some((body) => body.startsWith('X'))) return verb === 'defend';
  if (verb === 'defend') return false;
  if (actors.length === 0 || standing.holder === undefined) return verb !== 'throw-in' || standing.out;
  const holds = actors.includes(standing.holder);
  if (verb === 'role' && verbOf(text)?.base === 'safety') return actors.length === 1 && !(standing.out && holds);
  if (verb === 'throw-in' || verb === 'role') return standing.out && holds && actors.length === 1;
  if (holds && standing.out) return false;
  if (needsBall.has(verb)) return holds && actors.length === 1 && !(verb === 'dribble' && standing.dribble === 'used');
  if (withoutBall.has(verb)) return !holds;
  if (/dribble/.test(text)) return holds && standing.dribble === 'live';
  return !/^picks? up$/.test(text) || (holds && standing.dribble === 'live');
}

/** `4, 5 ` and `4 and 5 `, behind which a verb has begun or not. */
const severalMen = /[1-5]\s*(?:,\s*(?:and\s+)?|\band\s+)[1-5]\s+\D*$/i;

/** `4 screens`, `4 and 5 screen`. */
function agrees({ actors, prefix }: Line, item: Expected, number: 'singular' | 'plural'): boolean {
  if (has(item, 'Event') || has(item, 'Condition')) return number === (/\band\s+x?[1-5]\s+\S*$/i.test(prefix) ? 'plural' : 'singular');
  if (has(item, 'ReboundGroup')) return number === (severalMen.test(prefix) ? 'plural' : 'singular');
  if (actors.length > 0) return number === (actors.length > 1 ? 'plural' : 'singular');
  return number === (/\b(both|they)\s+\S*$/i.test(prefix) ? 'plural' : 'singular');
}
