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
    ['comes', 'come', 'move'], ['goes', 'go', 'move'], ['slides', 'slide', 'move'], ['loops', 'loop', 'move'], ['returns', 'return', 'move'], ['steps up', 'step up', 'move'],
    ['breaks', 'break', 'cut'], ['steps', 'step', 'move'], ['steps back', 'step back', 'move'], ['backdoors', 'backdoor', 'back-cut'],
    ['sinks', 'sink', 'drift'], ['circles', 'circle', 'move'], ['races', 'race', 'sprint'], ['leaks out', 'leak out', 'sprint'],
    ['steps inbounds', 'step inbounds', 'step in'], ['steps in bounds', 'step in bounds', 'step in'], ['comes inbounds', 'come inbounds', 'step in'],
    ['heads', 'head', 'move'], ['hustles', 'hustle', 'sprint'], ['darts', 'dart', 'cut'], ['bolts', 'bolt', 'sprint'], ['streaks', 'streak', 'sprint'], ['rushes', 'rush', 'sprint'], ['hurries', 'hurry', 'sprint'],
    ['bursts', 'burst', 'cut'], ['floats', 'float', 'drift'], ['wheels', 'wheel', 'move'], ['spins', 'spin', 'move'], ['peels', 'peel', 'move'], ['peels off', 'peel off', 'move'], ['continues', 'continue', 'move'],
    ['carries on', 'carry on', 'move'], ['keeps going', 'keep going', 'move'], ['takes off', 'take off', 'sprint'], ['slashes', 'slash', 'cut'], ['ghosts', 'ghost', 'slip'], ['slips it', 'slip it', 'slip'], ['ghosts it', 'ghost it', 'slip'], ['rubs', 'rub', 'cut'], ['brushes', 'brush', 'cut'], ['scrapes', 'scrape', 'cut'], ['shakes', 'shake', 'lift'],
    ['settles', 'settle', 'move'],
    ['gets open', 'get open', 'v-cut'], ['cuts backdoor', 'cut backdoor', 'back-cut'], ['cuts back door', 'cut back door', 'back-cut'], ['goes backdoor', 'go backdoor', 'back-cut'],
    ['goes back door', 'go back door', 'back-cut'], ['replaces', 'replace', 'fill'], ['comes off', 'come off'], ['uses', 'use', 'come off'],
    ['swaps', 'swap'], ['swaps places', 'swap places', 'swap'], ['exchanges', 'exchange', 'swap'], ['exchanges places', 'exchange places', 'swap'], ['changes places', 'change places', 'swap'],
    ['trades places', 'trade places', 'swap'], ['switches places', 'switch places', 'swap'], ['crosses', 'cross', 'swap'],
  ],
  seal: [['seals', 'seal'], ['ducks in', 'duck in', 'seal'], ['opens up', 'open up', 'seal'], ['shapes up', 'shape up', 'seal']],
  rebound: [
    ['crashes', 'crash'], ['crashes the boards', 'crash the boards', 'crash'], ['hits the boards', 'hit the boards', 'crash'], ['hits the glass', 'hit the glass', 'crash'],
    ['gets back', 'get back'], ['gets back on defence', 'get back on defence', 'get back'], ['gets back on defense', 'get back on defense', 'get back'], ['gets back on d', 'get back on d', 'get back'],
    ['stays back', 'stay back', 'get back'], ['sprints back', 'sprint back', 'get back'], ['goes to the boards', 'go to the boards', 'crash'], ['goes to the glass', 'go to the glass', 'crash'],
    ['boxes out', 'box out'],
  ],
  dribble: [
    ['dribbles', 'dribble'], ['dribbles it', 'dribble it', 'dribble'], ['dribbles the ball', 'dribble the ball', 'dribble'], ['drives', 'drive'], ['drives it', 'drive it', 'drive'], ['drives the ball', 'drive the ball', 'drive'], ['turns the corner', 'turn the corner'], ['brings the ball up', 'bring the ball up'], ['backs out', 'back out'],
    ['brings the ball', 'bring the ball', 'dribble'], ['brings it', 'bring it', 'dribble'], ['takes the ball', 'take the ball', 'dribble'], ['takes it', 'take it', 'dribble'],
    ['pushes the ball', 'push the ball', 'dribble'], ['pushes it', 'push it', 'dribble'], ['brings it up', 'bring it up', 'bring the ball up'],
    ['takes the ball up', 'take the ball up', 'bring the ball up'], ['pushes the ball up', 'push the ball up', 'bring the ball up'], ['pushes it up', 'push it up', 'bring the ball up'],
    ['pulls the ball out', 'pull the ball out', 'back out'], ['pulls it out', 'pull it out', 'back out'], ['attacks', 'attack', 'drive'],
    ['goes one on one', 'go one on one', 'drive'], ['plays one on one', 'play one on one', 'drive'], ['penetrates', 'penetrate', 'drive'],
  ],
  pass: [
    ['passes', 'pass'], ['bounce-passes', 'bounce-pass'], ['chest-passes', 'chest-pass'], ['lobs', 'lob'], ['skips', 'skip'], ['skip-passes', 'skip-pass', 'skip'], ['throws', 'throw'],
    ['tips', 'tip'], ['swings', 'swing'], ['reverses', 'reverse'], ['kicks out', 'kick out'],
    ['kicks', 'kick', 'kick out'], ['dumps', 'dump', 'pass'], ['sends', 'send', 'pass'], ['outlets', 'outlet', 'pass'], ['enters', 'enter', 'pass'], ['bounces', 'bounce', 'bounce-pass'],
    ['fires', 'fire', 'pass'], ['zips', 'zip', 'pass'], ['whips', 'whip', 'pass'], ['tosses', 'toss', 'pass'], ['delivers', 'deliver', 'pass'], ['dishes', 'dish', 'pass'], ['sprays', 'spray', 'kick out'],
    ['feeds', 'feed', 'pass'], ['hits', 'hit', 'pass'], ['finds', 'find', 'pass'], ['gives', 'give', 'pass'],
  ],
  'hand-off': [['hands off', 'hand off'], ['hands', 'hand', 'hand off'], ['hands back', 'hand back', 'hand off'], ['takes the hand off', 'take the hand off', 'hand off'], ['hands it off', 'hand it off', 'hand off'], ['pitches', 'pitch', 'hand off'], ['flips', 'flip', 'hand off'], ['dribble hands off', 'dribble hand off', 'hand off']],
  screen: [
    ['screens', 'screen'], ['ball-screens', 'ball-screen'], ['back-screens', 'back-screen'], ['flare-screens', 'flare-screen'], ['cross-screens', 'cross-screen'],
    ['down-screens', 'down-screen'], ['up-screens', 'up-screen'], ['pin-screens', 'pin-screen'], ['pins down', 'pin down', 'pin-screen'], ['re-screens', 're-screen'],
    ['stagger-screens', 'stagger-screen'], ['staggers', 'stagger', 'stagger-screen'], ['double-screens', 'double-screen'], ['picks', 'pick', 'screen'], ['back picks', 'back pick', 'back-screen'], ['drag-screens', 'drag-screen', 'ball-screen'],
  ],
  close: [['closes behind', 'close behind']],
  shot: [
    ['shoots', 'shoot'], ['shoots it', 'shoot it', 'shoot'], ['dunks', null, 'dunk'], ['dunks it', null, 'dunk'], ['lays up', null, 'lay up'], ['lays it up', 'lay it up', 'lay up'], ['pulls up', 'pull up'], ['tips in', 'tip in'], ['hooks', null, 'hook'],
    ['takes', 'take', 'shoot'],
  ],
  hold: [
    ['holds', 'hold'], ['waits', 'wait'], ['stays', 'stay'], ['keeps his dribble', 'keep their dribble', 'keep dribble'], ['picks up his dribble', 'pick up their dribble', 'pick up'],
    ['picks up', 'pick up'], ['pivots', 'pivot', 'hold'], ['stops', 'stop', 'hold'], ['stands', 'stand', 'stay'], ['faces up', 'face up', 'hold'], ['squares up', 'square up', 'hold'],
    ['lines up', 'line up', 'stay'], ['sets up', 'set up', 'stay'], ['camps', 'camp', 'stay'], ['keeps it', 'keep it', 'hold'], ['keeps the ball', 'keep the ball', 'hold'], ['parks', 'park', 'stay'], ['stays put', 'stay put', 'stay'],
  ],
  'throw-in': [
    ['inbounds', 'inbound'], ['throws in', 'throw in', 'inbound'], ['throws it in', 'throw it in', 'inbound'], ['throws the ball in', 'throw the ball in', 'inbound'],
    ['passes it in', 'pass it in', 'inbound'], ['takes the ball out', 'take the ball out', 'inbound'], ['takes it out', 'take it out', 'inbound'], ['triggers', 'trigger', 'inbound'],
    ['takes the ball out of bounds', 'take the ball out of bounds', 'inbound'], ['takes it out of bounds', 'take it out of bounds', 'inbound'],
    ['is taking the ball out', null, 'inbound'], ['is taking it out', null, 'inbound'], ['is throwing it in', null, 'inbound'], ['is throwing in', null, 'inbound'], ['is inbounding', null, 'inbound'], ['has it out of bounds', null, 'inbound'],
    ['has the ball out of bounds', null, 'inbound'], ['has it out', null, 'inbound'], ['has the ball out', null, 'inbound'], ['is out of bounds with the ball', null, 'inbound'],
  ],
  role: [['is the safety', null, 'safety'], ['is the safety valve', null, 'safety'], ['is the thrower', null, 'thrower'], ['is the inbounder', null, 'thrower']],
  defend: [
    ['switches', 'switch'], ['goes under', 'go under'], ['goes over', 'go over'], ['goes through', 'go through'], ['goes behind', 'go behind'], ['trails', 'trail'], ['follows', 'follow', 'trail'],
    ['helps', 'help'], ['tags', 'tag', 'help'], ['denies', 'deny'], ['shows', 'show'], ['hedges', 'hedge', 'show'], ['traps', 'trap'], ['doubles', 'double', 'trap'], ['drops', 'drop'], ['guards', 'guard'],
    ['recovers', 'recover'], ['rotates', 'rotate'], ['fronts', 'front'], ['closes out', 'close out'], ['sags', 'sag'], ['overplays', 'overplay', 'deny'], ['jumps', 'jump'], ['stays home', 'stay home'],
    ['fights over', 'fight over', 'go over'], ['fights through', 'fight through', 'go through'], ['ducks under', 'duck under', 'go under'],
    ['chases over', 'chase over', 'go over'], ['chases', 'chase', 'trail'], ['goes over the top of', 'go over the top of', 'go over'],
  ],
  event: [
    ['is set', 'are set', 'set'], ['has the ball', 'have the ball', 'have ball'], ['is open', 'are open', 'open'], ['is free', 'are free', 'open'], ['releases', 'release'], ['turns', 'turn'],
    ['arrives', 'arrive'], ['reaches', 'reach'], ['gets to', 'get to', 'reach'], ['gets into', 'get into', 'reach'], ['leaves', 'leave'], ['gets past', 'get past', 'clear'], ['catches', 'catch'],
    ['has it', 'have it', 'have ball'], ['gets it', 'get it', 'have ball'], ['gets the ball', 'get the ball', 'have ball'], ['receives it', 'receive it', 'have ball'], ['receives the ball', null, 'have ball'], ['receives', 'receive', 'have ball'],
    ['catches it', 'catch it', 'have ball'], ['catches the ball', 'catch the ball', 'have ball'],
    ['has gone by', 'have gone by', 'clear'], ['goes by', 'go by', 'clear'], ['is by', null, 'clear'], ['is past', null, 'clear'], ['is out', 'are out', 'clear'], ['is clear', 'are clear', 'clear'], ['is through', 'are through', 'clear'], ['gets through', 'get through', 'clear'], ['has gone', null, 'clear'],
    ['has gone through', null, 'clear'], ['has cut', null, 'clear'], ['has passed', null, 'pass'], ['is gone', null, 'clear'], ['is there', 'are there', 'arrive'], ['gets there', 'get there', 'arrive'], ['is in place', 'are in place', 'arrive'],
    ['gets set', 'get set', 'set'], ['goes past', 'go past', 'clear'], ['runs past', 'run past', 'clear'], ['comes past', 'come past', 'clear'], ['has gone past', null, 'clear'], ['comes by', 'come by', 'clear'], ['is off', null, 'clear'],
    ['has cleared', null, 'clear'], ['has come off', null, 'clear'], ['has used', null, 'clear'], ['gets by', 'get by', 'clear'],
  ],
};

/** Every verb word of the grammar, as the tree spells it. `clears` and `comes off` are moves and stand in a trigger too (`once 3 clears 4`); `turns` is an event and a hold (`5 turns and shoots`). */
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

/** The same verb word of one man, or of several. */
export const singular = (word: string): string => (verbOf(word)?.number === 'plural' ? (otherNumber.get(word) ?? word) : word);
export const plural = (word: string): string => (verbOf(word)?.number === 'singular' ? (otherNumber.get(word) ?? word) : word);
