import type { SetLineKeywordNames } from './generated/ast.ts';

export type VerbClass =
  | 'move' | 'seal' | 'rebound' | 'dribble' | 'pass' | 'hand-off' | 'screen' | 'close' | 'shot' | 'hold' | 'throw-in' | 'role' | 'defend'
  /** Said of a player in a trigger only: `once 4 is set`. */
  | 'event';

export interface Verb {
  readonly class: VerbClass;
  /** One word for the singular, the plural and synonyms: `cuts`, `cut` → 'cut'. */
  readonly base: string;
  readonly number: 'singular' | 'plural';
}

/** [singular, plural, base], the base only where it is not the plural. A null plural means the singular alone is a verb. */
type Row = readonly [singular: SetLineKeywordNames, plural: SetLineKeywordNames | null, base?: string];

const VERBS: Readonly<Record<VerbClass, readonly Row[]>> = {
  move: [
    ['cuts', 'cut'], ['basket-cuts', 'basket-cut'], ['back-cuts', 'back-cut'], ['v-cuts', 'v-cut'], ['l-cuts', 'l-cut'], ['shallow-cuts', 'shallow-cut'],
    ['straight-cuts', 'straight-cut'], ['curls', 'curl'], ['fades', 'fade'], ['flares', 'flare', 'fade'], ['flashes', 'flash'], ['rolls', 'roll'], ['pops', 'pop'], ['slips', 'slip'],
    ['dives', 'dive'], ['posts up', 'post up'], ['lifts', 'lift'], ['drifts', 'drift'], ['fills', 'fill'], ['steps out', 'step out'], ['steps in', 'step in'],
    ['clears', 'clear'], ['clears out', 'clear out', 'clear'], ['spaces', 'space'], ['spots up', 'spot up'], ['sprints', 'sprint'], ['runs', 'run'], ['jogs', 'jog'], ['walks', 'walk'],
    ['moves', 'move'], ['relocates', 'relocate', 'move'], ['makes the same cut', 'make the same cut', 'same cut'],
  ],
  seal: [['seals', 'seal']],
  rebound: [['crashes', 'crash'], ['gets back', 'get back'], ['boxes out', 'box out']],
  dribble: [['dribbles', 'dribble'], ['drives', 'drive'], ['turns the corner', 'turn the corner'], ['brings the ball up', 'bring the ball up'], ['backs out', 'back out']],
  pass: [
    ['passes', 'pass'], ['bounce-passes', 'bounce-pass'], ['chest-passes', 'chest-pass'], ['lobs', 'lob'], ['skips', 'skip'], ['skip-passes', 'skip-pass', 'skip'], ['throws', 'throw'],
    ['tips', 'tip'], ['swings', 'swing'], ['reverses', 'reverse'], ['kicks out', 'kick out'],
  ],
  'hand-off': [['hands off', 'hand off'], ['hands', 'hand', 'hand off'], ['hands back', 'hand back', 'hand off']],
  screen: [
    ['screens', 'screen'], ['ball-screens', 'ball-screen'], ['back-screens', 'back-screen'], ['flare-screens', 'flare-screen'], ['cross-screens', 'cross-screen'],
    ['down-screens', 'down-screen'], ['up-screens', 'up-screen'], ['pin-screens', 'pin-screen'], ['pins down', 'pin down', 'pin-screen'], ['re-screens', 're-screen'],
    ['stagger-screens', 'stagger-screen'], ['staggers', 'stagger', 'stagger-screen'], ['double-screens', 'double-screen'],
  ],
  close: [['closes behind', 'close behind']],
  shot: [
    ['shoots', 'shoot'], ['dunks', null, 'dunk'], ['lays up', null, 'lay up'], ['lays it up', 'lay it up', 'lay up'], ['pulls up', 'pull up'], ['tips in', 'tip in'], ['hooks', null, 'hook'],
    ['takes', 'take', 'shoot'],
  ],
  hold: [
    ['holds', 'hold'], ['waits', 'wait'], ['stays', 'stay'], ['keeps his dribble', 'keep their dribble', 'keep dribble'], ['picks up his dribble', 'pick up their dribble', 'pick up'],
    ['picks up', 'pick up'],
  ],
  'throw-in': [['inbounds', 'inbound'], ['throws in', 'throw in', 'inbound']],
  role: [['is the safety', null, 'safety'], ['is the thrower', null, 'thrower']],
  defend: [
    ['switches', 'switch'], ['goes under', 'go under'], ['goes over', 'go over'], ['goes through', 'go through'], ['goes behind', 'go behind'], ['trails', 'trail'], ['follows', 'follow', 'trail'],
    ['helps', 'help'], ['denies', 'deny'], ['shows', 'show'], ['hedges', 'hedge', 'show'], ['traps', 'trap'], ['doubles', 'double', 'trap'], ['drops', 'drop'], ['guards', 'guard'],
    ['recovers', 'recover'], ['rotates', 'rotate'], ['fronts', 'front'], ['closes out', 'close out'], ['sags', 'sag'], ['overplays', 'overplay', 'deny'], ['jumps', 'jump'], ['stays home', 'stay home'],
  ],
  event: [
    ['is set', 'are set', 'set'], ['has the ball', 'have the ball', 'have ball'], ['is open', 'are open', 'open'], ['is free', 'are free', 'open'], ['releases', 'release'], ['turns', 'turn'],
    ['arrives', 'arrive'], ['reaches', 'reach'], ['gets to', 'get to', 'reach'], ['leaves', 'leave'], ['comes off', 'come off'], ['gets past', 'get past', 'clear'], ['catches', 'catch'],
  ],
};

/** Every verb word of the grammar, as the tree spells it. `clears` is a move; with a player behind it in a trigger (`once 3 clears 4`) the tree says so. */
export const verbs: ReadonlyMap<string, Verb> = new Map(
  (Object.entries(VERBS) as [VerbClass, readonly Row[]][]).flatMap(([verbClass, rows]) =>
    rows.flatMap(([singular, plural, base]) => {
      const shared = { class: verbClass, base: base ?? plural ?? singular };
      const both: [string, Verb][] = [[singular, { ...shared, number: 'singular' }]];
      if (plural !== null) both.push([plural, { ...shared, number: 'plural' }]);
      return both;
    }),
  ),
);

/** Singular ↔ plural of the same verb word; nothing where only one stands in the grammar. */
export const otherNumber: ReadonlyMap<string, string> = new Map(
  Object.values(VERBS).flatMap((rows) => rows.flatMap(([singular, plural]): [string, string][] => (plural === null ? [] : [[singular, plural], [plural, singular]]))),
);

/** The verb behind a verb word of the tree; undefined for a word that is none. */
export function verbOf(word: string): Verb | undefined {
  return verbs.get(word);
}
