// What an assumption is worth: example plays scheduled again with one group of the level's numbers a tenth off (`schedule(play, level)`).
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Compiled } from '../../language/compile.ts';
import { LEVELS, levelIds, type Level, type Quantity } from '../../language/motion/levels.ts';
import { schedule } from '../../language/timeline/schedule.ts';
import { compileExample } from './compile-example.ts';

interface Change {
  readonly says: string;
  readonly factor: number;
  readonly of: readonly Quantity[];
}

const changes: readonly Change[] = [
  { says: 'legs 10 % quicker', factor: 1.1, of: ['vmax', 'jog', 'walk'] },
  { says: 'up to speed in 10 % less time', factor: 0.9, of: ['tau'] },
  { says: 'braking 10 % harder', factor: 1.1, of: ['brake'] },
  { says: 'reactions 10 % shorter', factor: 0.9, of: ['reaction'] },
  { says: 'looks read 10 % quicker', factor: 0.9, of: ['read'] },
  { says: 'a beat at a screen 10 % shorter', factor: 0.9, of: ['beat'] },
  { says: 'shots away 10 % quicker', factor: 0.9, of: ['layupRelease', 'dunkRelease', 'jumperRelease', 'threeRelease', 'hookRelease', 'tipInRelease', 'layupOffDribble', 'jumperOffDribble'] },
  { says: 'passes away 10 % quicker', factor: 0.9, of: ['passRelease'] },
  { says: 'passes 10 % faster', factor: 1.1, of: ['passSpeed', 'bounceSpeed', 'lobSpeed', 'skipSpeed', 'overheadSpeed', 'baseballSpeed'] },
  { says: 'into place 10 % quicker', factor: 0.9, of: ['setUp'] },
  { says: 'off 10 % sooner after the call', factor: 0.9, of: ['startDelay'] },
  { says: 'everybody 10 % less steady', factor: 1.1, of: ['legsSpread', 'reactionSpread', 'readSpread', 'releaseSpread', 'setUpSpread', 'passSpread'] },
];

const examples = [['lighthouse', 'Lighthouse'], ['harbour', 'Harbour'], ['quick', 'Skiff']] as const;

export interface Timed {
  readonly play: string;
  readonly level: string;
  /** The look that comes last: for whom, and its times in ms. */
  readonly look: string;
  readonly typical: number;
  readonly late: number;
}

export interface Sensitivities {
  readonly plays: readonly Timed[];
  /** For each change the difference of the late time in each play, ms. */
  readonly changed: readonly { readonly says: string; readonly late: readonly number[] }[];
  /** For each level the last look of each play. */
  readonly levels: readonly { readonly level: string; readonly times: readonly Timed[] }[];
}

/** Computed by the model itself; the same on every machine. */
export function sensitivities(): Sensitivities {
  const plays = examples.map(([file, name]) => playNamed(file, name));
  const timed = plays.map((compiled) => lastLook(compiled, LEVELS[compiled.play.level.value]));
  return {
    plays: timed,
    changed: changes.map((change) => ({
      says: change.says,
      late: plays.map((compiled, at) => lastLook(compiled, changed(LEVELS[compiled.play.level.value], change)).late - timed[at]!.late),
    })),
    levels: levelIds.map((id) => ({ level: id, times: plays.map((compiled) => lastLook(compiled, LEVELS[id])) })),
  };
}

function changed(level: Level, { factor, of }: Change): Level {
  return { ...level, ...Object.fromEntries(of.map((quantity) => [quantity, level[quantity] * factor])) };
}

function playNamed(file: string, name: string): Compiled {
  const { plays } = compileExample(readFileSync(join(import.meta.dirname, `../../examples/${file}.play`), 'utf8'));
  const found = plays.find(({ play }) => play.name === name);
  if (found === undefined) throw new Error(`examples/${file}.play has no play called ${name}`);
  return found;
}

/** Of the play as it is written; a change is measured on the same look. */
function lastLook({ play, timeline }: Compiled, level: Level): Timed {
  const last = timeline.times.looks.toSorted((a, b) => b.late - a.late)[0];
  const look = play.steps.flatMap(({ looks }) => looks).find(({ id }) => id === last?.look);
  const time = schedule(play, level).times.looks.find((one) => one.look === look?.id);
  return { play: play.name, level: play.level.value, look: look === undefined ? '' : `${look.who.join(' or ')}${look.label === undefined ? '' : ` “${look.label}”`}`, typical: time?.typical ?? 0, late: time?.late ?? 0 };
}
