import { reflection } from '../generated/ast.ts';
import type { SpanNode } from './span-builder.ts';
import type { LengthUnit, TreeNode } from '../tree.ts';

type Node = { [property: string]: unknown };

const METRES: Record<LengthUnit, number> = { m: 1, cm: 0.01, ft: 0.3048, in: 0.0254 };
const PLACE_SYNONYMS: Record<string, string> = {
  basket: 'rim', hoop: 'rim', ring: 'rim', hole: 'rim', bucket: 'rim', 'under the basket': 'rim', 'under the hoop': 'rim', 'under the rim': 'rim', 'under the ring': 'rim', 'front of the rim': 'rim', 'front of the basket': 'rim', 'front of the hoop': 'rim',
  'top of the key': 'top', 'top of the arc': 'top', 'top of the circle': 'top', 'up top': 'top', 'out top': 'top', post: 'mid-post', middle: 'nail', paint: 'lane', key: 'lane',
  'half-court line': 'half court', 'half line': 'half court', midcourt: 'half court', 'mid court': 'half court', 'midcourt line': 'half court', 'center court': 'half court', 'centre court': 'half court', 'center line': 'half court', 'centre line': 'half court',
  'over half court': 'half court', 'across half court': 'half court', 'past half court': 'half court', 'own free-throw line': 'far free-throw line', 'own baseline': 'far baseline', 'foul line': 'free-throw line', 'foul line extended': 'free-throw line', 'hash mark': 'hash',
};
/** `SpotAtBothEnds` of the grammar as the other half calls it. */
const IN_THE_BACKCOURT: Record<string, string> = {
  corner: 'backcourt corner', wing: 'backcourt wing', elbow: 'backcourt elbow', block: 'backcourt block', top: 'backcourt top', nail: 'far free-throw line', 'free-throw line': 'far free-throw line', 'high post': 'far free-throw line',
};
const PLURAL_PLACES: Record<string, string> = {
  blocks: 'block', 'low posts': 'low post', 'mid-posts': 'mid-post', elbows: 'elbow', 'high posts': 'high post', slots: 'slot', wings: 'wing', corners: 'corner',
  'short corners': 'short corner', 'dunker spots': 'dunker spot', hashes: 'hash', 'backcourt corners': 'backcourt corner', 'backcourt elbows': 'backcourt elbow', 'backcourt wings': 'backcourt wing', 'backcourt blocks': 'backcourt block',
};
const SHOT_SYNONYMS: Record<string, string> = { 'tip in': 'tip-in', 'lay-up': 'layup', 'jump shot': 'jumper', 'three-pointer': 'three', 'hook shot': 'hook',
  // A floater, a runner and a set shot are jump shots of their own kind: the release and the flight are theirs. Common practice, no source.
  floater: 'jumper', runner: 'jumper', 'pull up': 'jumper', 'bank shot': 'jumper', 'set shot': 'jumper', 'catch-and-shoot jumper': 'jumper', 'catch-and-shoot three': 'three',
  'step back': 'jumper', fadeaway: 'jumper', turnaround: 'jumper', teardrop: 'jumper',
  'put-back': 'layup', putback: 'layup', 'finger roll': 'layup', 'lay-in': 'layup', layin: 'layup', '3 pointer': 'three',
  // What a man with his back to the rim does there. Common practice, no source.
  'drop step': 'layup', 'up and under': 'layup', 'baby hook': 'hook',
  // Who finishes or scores off a pass inside lays it up. Common practice, no source.
  finish: 'layup', 'catch and finish': 'layup', 'catch and score': 'layup', score: 'layup', scoop: 'layup',
};
const COUNTABLES: Record<string, string> = {
  passes: 'pass', screens: 'screen', 'ball-screens': 'ball-screen', cuts: 'cut', dribbles: 'dribble', drives: 'drive', 'hand-offs': 'hand-off', 'hand off': 'hand-off', handoffs: 'hand-off', handoff: 'hand-off', reversals: 'reversal', looks: 'look',
};
const MOVE_NOUNS: Record<string, string> = { 'post up': 'post-up', 'hand off': 'hand-off', handoff: 'hand-off', 'step out': 'step-out', flare: 'fade', 'duck in': 'seal', backdoor: 'back-cut', 'backdoor cut': 'back-cut',
  rolling: 'roll', cutting: 'cut', popping: 'pop', slipping: 'slip', diving: 'dive', driving: 'drive', curling: 'curl', fading: 'fade', flashing: 'flash', sealing: 'seal', 'posting up': 'post-up',
  'stepping in': 'step-in', 'spotting up': 'spot-up', 'opening up': 'seal', 'all the way': 'drive', 'short roll': 'roll', trailing: 'move', going: 'move', coming: 'move', running: 'run', 'turning the corner': 'drive', 'cutting backdoor': 'back-cut', 'going backdoor': 'back-cut',
  rolls: 'roll', cuts: 'cut', pops: 'pop', slips: 'slip', dives: 'dive', drives: 'drive', curls: 'curl', fades: 'fade', flashes: 'flash', flares: 'fade', lifts: 'lift', drifts: 'drift', seals: 'seal', 'posts up': 'post-up', 'ducks in': 'seal', 'steps out': 'step-out', 'spots up': 'spot-up', 'back-cuts': 'back-cut',
  'back-cutting': 'back-cut', flaring: 'fade', lifting: 'lift', drifting: 'drift', filling: 'fill', 'stepping out': 'step-out', 'ducking in': 'seal',
};
const CIRCUMSTANCES: Record<string, string> = {
  'sideline out of bounds': 'sideline throw-in', slob: 'sideline throw-in', 'baseline out of bounds': 'baseline throw-in', blob: 'baseline throw-in', 'after a timeout': 'after a time-out',
  'after a made basket': 'after a basket', 'after a score': 'after a basket', 'after a goal': 'after a basket', 'after a bucket': 'after a basket', 'after a make': 'after a basket',
  'tie game': 'tied', tie: 'tied', 'need a 3': 'need a three', 'vs a press': 'against a press',
};
const ALIGNMENT_SYNONYMS: Record<string, string> = {
  'five out': '5-out', 'four out one in': '4-out 1-in', 'three out two in': '3-out 2-in',
  // Who is left stands inside; two stacks are a double one; flat is along the baseline. Common usage, no source.
  '4-out': '4-out 1-in', 'four out': '4-out 1-in', '3-out': '3-out 2-in', 'three out': '3-out 2-in', '1-4 flat': '1-4 low', 'double stack': 'stack',
};

/** `twice` is `2 times`. */
function timesInWords(out: Node): void {
  if (out['twice'] === true) out['times'] = 2;
  delete out['twice'];
}

const WAITS: Record<string, string> = { 'as soon as': 'once', after: 'once', whilst: 'while' };
const PASS_SYNONYMS: Record<string, string> = { 'hand off': 'hand-off', 'kick out': 'kick-out', 'skip-pass': 'skip', 'dump off': 'pass', 'dump pass': 'pass',
  'drop pass': 'pass', dish: 'pass', 'high-low': 'pass', 'high-low pass': 'pass', 'give and go': 'pass', 'kick-out pass': 'kick-out', 'alley-oop': 'lob', handoff: 'hand-off',
  // A pass between two defenders off the dribble is bounced. Common practice, no source.
  'pocket pass': 'bounce-pass', 'entry pass': 'pass', 'lob pass': 'lob', 'touch pass': 'tip', 'wrap-around pass': 'pass', 'drop-off': 'pass',
  'throw back': 'pass', throwback: 'pass', 'hit ahead': 'pass', swing: 'pass', 'swing pass': 'pass', 'swing back': 'pass', reversal: 'pass', kick: 'kick-out', 'kick back': 'kick-out', 'kick ahead': 'pass', dump: 'pass', 'dump in': 'pass', 'dump down': 'pass',
  spray: 'kick-out', 'spray out': 'kick-out', 'high-low lob': 'lob',
  feed: 'pass', 'post feed': 'pass', 'post entry': 'pass', 'pass inside': 'pass', 'pass back': 'pass', 'pass ahead': 'pass', 'pass across': 'pass', 'pass over the top': 'pass', 'lob over the top': 'lob', 'slip pass': 'bounce-pass',
  'backdoor pass': 'bounce-pass', 'inside pass': 'pass', 'return pass': 'pass', 'lead pass': 'pass', 'throw ahead': 'pass', 'outlet pass': 'pass', 'drive and kick': 'kick-out', 'quick pass': 'pass' };
const PASS_STYLES: Record<string, string> = { long: 'baseball', 'long pass': 'baseball' };

function lengthOf(text: string): { value: number; unit: LengthUnit; metres: number } {
  const [, digits, word] = /^([\d.]+)\s*(.*)$/.exec(text) ?? [];
  const value = Number(digits);
  const unit: LengthUnit = /^f/.test(word!) ? 'ft' : /^in/.test(word!) ? 'in' : /^c/.test(word!) ? 'cm' : 'm';
  return { value, unit, metres: value * METRES[unit] };
}

/** With 8 left the clock shows 8. */
function onTheClock(out: Node): void {
  if (out['clock'] === 'left') out['clock'] = 'on the clock';
}

/** Nodes whose data differ from what the parser gives: measures in metres and seconds, players by number, one name for a place. */
const reshape: { [type: string]: (out: Node) => void } = {
  Player(out) {
    const number = out['number'] as string | undefined;
    out['defence'] = number !== undefined && /^x/i.test(number);
    if (number !== undefined) out['number'] = Number(number.replace(/^x/i, ''));
  },
  Seconds(out) {
    const seconds = Number.parseFloat((out['text'] as string | undefined) ?? '0');
    Object.assign(out, { value: seconds, unit: 's', seconds });
    delete out['text'];
  },
  Length(out) {
    Object.assign(out, lengthOf((out['text'] as string | undefined) ?? '0 m'));
    delete out['text'];
  },
  ClockTime(out) {
    out['seconds'] = out['count'] ?? Number.parseFloat((out['seconds'] as string | undefined) ?? '0');
    delete out['count'];
  },
  Speed(out) {
    out['speed'] = lengthOf(((out['speed'] as string | undefined) ?? '0 m').replace(/\/s$/, '')).metres;
  },
  Place(out) {
    const name = out['name'] as string | undefined;
    if (out['side'] === 'other') out['side'] = 'opposite';
    if (out['half'] === 'left' || out['half'] === 'right') out['half'] = `${out['half']} side`;
    if (out['half'] === 'opposite side' || out['half'] === 'other side') out['half'] = 'far side';
    // `half court, left side`, `half court left`; `the left elbow in the backcourt`.
    if (out['onSide'] !== undefined) out['side'] ??= (out['onSide'] as string).replace(/ side.*/, '');
    delete out['onSide'];
    if (name === undefined) {
      out['each'] = false;
      delete out['inBackcourt'];
      return;
    }
    out['each'] = name in PLURAL_PLACES;
    if (name === 'foul line extended') out['extended'] = true;
    const plain = PLURAL_PLACES[name] ?? PLACE_SYNONYMS[name] ?? name;
    out['name'] = out['inBackcourt'] === true ? IN_THE_BACKCOURT[plain] : plain;
    delete out['inBackcourt'];
  },
  ShotKinds(out) {
    out['kinds'] = ((out['kinds'] as string[] | undefined) ?? []).map((kind) => SHOT_SYNONYMS[kind] ?? kind);
  },
  Shot(out) {
    out['kinds'] = ((out['kinds'] as string[] | undefined) ?? []).map((kind) => SHOT_SYNONYMS[kind] ?? kind);
  },
  PassStyle(out) {
    const style = out['style'] as string | undefined;
    if (style !== undefined) out['style'] = PASS_STYLES[style] ?? style;
  },
  Wait(out) {
    const how = out['how'] as string | undefined;
    if (how !== undefined) out['how'] = WAITS[how] ?? how;
  },
  // `fills the top`, `attacks the rim`: the verb says it.
  To(out) {
    out['how'] ??= 'to';
  },
  OnClock: onTheClock,
  AlignmentRef(out) {
    const name = out['name'] as string | undefined;
    if (name !== undefined) out['name'] = ALIGNMENT_SYNONYMS[name] ?? name;
  },
  // `1 on the left wing with the ball`
  Placing(out) {
    if (out['ballBehind'] === true) out['withBall'] = true;
    delete out['ballBehind'];
  },
  AgainFrom: timesInWords,
  Repeats: timesInWords,
  ShotWindow: onTheClock,
  Everyone(out) {
    if (out['all'] === 'rest') out['all'] = 'others';
  },
  // `down the left sideline`: by it, in bounds; without a side it is his own.
  Heading(out) {
    const way = out['way'] as string | undefined;
    if (way !== undefined) out['way'] = way.replace(/^along the (.*)sideline$/, 'down the $1sideline').replace(/ sideline$/, ' side');
  },
  At(out) {
    out['how'] ??= 'at';
    if (out['how'] === 'on') out['how'] = 'at';
  },
  Circumstance(out) {
    const what = out['what'] as string | undefined;
    if (what !== undefined) out['what'] = CIRCUMSTANCES[what] ?? what;
  },
  // `off 5's hip` is off 5; `off a double from 4 and 5` as `off the double of 4 and 5`.
  Off(out) {
    const noun = out['screen'] as string | boolean | undefined;
    const players = (out['players'] as unknown[] | undefined) ?? [];
    out['double'] = out['double'] === true || (typeof noun === 'string' && noun.startsWith('double-screen') && players.length === 2);
    out['screen'] = players.length === 0 && (noun === true || typeof noun === 'string');
  },
  // He throws in from behind the line: `from under the basket`.
  FromSpot(out) {
    const spot = out['spot'] as Node | undefined;
    if (spot?.['$type'] === 'Place' && spot['name'] === 'rim') out['spot'] = { ...spot, name: 'baseline' };
  },
  OnMove(out) {
    const move = out['move'] as string | undefined;
    if (move !== undefined) out['move'] = MOVE_NOUNS[move] ?? move;
  },
  PassKind(out) {
    const kind = out['kind'] as string | undefined;
    if (kind !== undefined) out['kind'] = PASS_SYNONYMS[kind] ?? kind;
  },
  Statement: endsApart,
  Amount(out) {
    const what = out['what'] as string | undefined;
    if (what !== undefined) out['what'] = COUNTABLES[what] ?? what;
    if (out['behind'] !== undefined) out['bound'] = out['behind'] === 'or more' ? 'at least' : 'at most';
    delete out['behind'];
  },
};

/** What a line ends with is the line's, not a link of its deeds. */
function endsApart(out: Node): void {
  const links = (out['links'] as Node[] | undefined) ?? [];
  const ending = links.find((link) => link['ends'] !== undefined);
  if (ending === undefined) return;
  out['ends'] = ending['ends'];
  out['links'] = links.filter((link) => link['ends'] === undefined);
}

/** Copies a node of the parser into plain data, without containers. */
export function toPlain(node: Node): TreeNode {
  const source = node['$cstNode'] as SpanNode;
  const out: Node = { $type: node['$type'], at: Math.max(source.at, 0), to: Math.max(source.to, 0) };
  for (const key in node) if (key.charCodeAt(0) !== 36) out[key] = plainValue(node[key]);
  return finished(out, source.spans);
}

/** A node with the values as the parser gives them becomes the plain one. */
export function finished(out: Node, spans: TreeNode['spans']): TreeNode {
  reshape[out['$type'] as string]?.(out);
  out['spans'] = spans;
  return out as unknown as TreeNode;
}

function plainValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plainValue);
  if (typeof value === 'object' && value !== null) return toPlain(value as Node);
  return value;
}

/** Reshaped above, or said by the generated types to be there always, which is not so: a link may begin with `then`, a place is not always one by name. */
const NOT_ALWAYS: ReadonlySet<string> = new Set(['ComesFrom.spot', 'Player.number', 'Seconds.text', 'Length.text', 'Link.how', 'Place.name']);
const mandatory = new Map<string, readonly string[]>();
/** The properties that a node of a type always has. */
function mandatoryOf(type: string): readonly string[] {
  let names = mandatory.get(type);
  if (!names) {
    const { properties } = reflection.getTypeMetaData(type) as { properties: { [name: string]: { optional?: boolean; defaultValue?: unknown } } };
    const needed = Object.entries(properties).filter(([name, { optional, defaultValue }]) => !optional && defaultValue === undefined && !NOT_ALWAYS.has(`${type}.${name}`));
    mandatory.set(type, (names = needed.map(([name]) => name)));
  }
  return names;
}

/**
 * The node without what the fault left half read, so that a reader never meets a node that lacks what its type promises.
 * A node that lacks a mandatory part goes, and what cannot be without it goes too. Nothing if the whole node goes.
 */
export function prune<T>(node: T): T | undefined {
  const source = node as Node;
  const out: Node = {};
  for (const [key, value] of Object.entries(source)) {
    if (Array.isArray(value)) out[key] = isNode(value[0]) ? value.map(prune).filter((item) => item !== undefined) : value;
    else out[key] = isNode(value) ? prune(value) : value;
    if (out[key] === undefined) delete out[key];
  }
  const type = source['$type'] as string;
  if (mandatoryOf(type).some((name) => out[name] === undefined)) return undefined;
  const oneOf = NEVER_EMPTY.get(type);
  return oneOf?.every((name) => !out[name] || (Array.isArray(out[name]) && out[name].length === 0)) ? undefined : (out as T);
}

/** Of these properties, at least one holds something, which the generated types cannot say. */
const NEVER_EMPTY: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    Look: ['players'], Players: ['players'], For: ['players'], Off: ['players', 'screen'], Past: ['players'], Via: ['spots'], At: ['spots'], To: ['spots', 'ball', 'player'], DefendTo: ['player', 'spots'],
    Rebound: ['groups'], OnMiss: ['groups'], ShotKinds: ['kinds', 'plain'], SameAgain: ['parts'], Link: ['clause'], Tags: ['tags'], Situation: ['parts'], Placing: ['spots'], Repeats: ['steps'], From: ['base', 'changes'],
    Player: ['number', 'pronoun'], Place: ['name', 'half', 'own'], TimeLeft: ['time'], Amount: ['none', 'count'], Ends: ['noShot', 'event'], ShotWindow: ['within', 'late', 'beforeHorn', 'by', 'notBefore'], Against: ['man', 'formation', 'press'],
    PlayerEvent: ['verb', 'action', 'overHalfCourt'], BallEvent: ['spot', 'is'], AlignmentRef: ['name', 'own'], ComesFrom: ['spot', 'alignment'],
  }),
);

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && '$type' in value;
}
