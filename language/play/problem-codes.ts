import type { Words } from '../message/message.ts';
import type { PartId } from './play.ts';
import type { Problem } from '../names/problem.ts';

/** Every problem that reading a play can note, with the numbers and names its message needs. `checks/` gives each its words. */
export interface ReadingProblems {
  /** `spot "poket"`, `from "wide bx"`, `instead of "Midle"`, `mirrors "Harbor"`: nothing has this name. */
  'unknown-spot': { readonly name: string };
  'unknown-alignment': { readonly name: string; readonly known: readonly string[] };
  'unknown-step': { readonly name: string; readonly step: string };
  'unknown-play': { readonly name: string; readonly known: readonly string[] };
  'unknown-file': { readonly name: string };
  /** Two steps, spots or players of the start share a name; the later one has another key (steps) or counts (spots, players). */
  'duplicate-name': { readonly kind: 'step' | 'spot' | 'player'; readonly name: string };
  /** The step comes after itself by way of others. It and what hangs on it are left out. */
  'step-loop': { readonly name: string };
  /** A play or an alignment mirrors or continues itself, a file uses itself. */
  'copy-loop': { readonly name: string };
  'use-circle': { readonly name: string };
  /** A second step follows `after` under no condition: which one is played? */
  'two-ways-on': { readonly name: string; readonly other: string; readonly after: string };
  /** An own spot that hangs on where a player stands is no fixed spot. */
  'spot-not-fixed': { readonly name: string };
  /** `left nail`, `right top`: a spot in the middle of the floor has no sides. */
  'spot-without-side': { readonly name: string; readonly side: string };
  /** `he`, `him`, `both`, `then for 2` with nobody or nothing before it. */
  'who-is-meant': { readonly word: string };
  /** `after the hand-off`, `at the same time` where no line above tells of one. */
  'not-told-above': { readonly words: string };
  /** Words of a link that say what it has no room for: a second place to end at, a screen on two men. */
  'words-left-over': { readonly words: string };
  'pass-to-nobody': { readonly who: string; readonly other: string };
  /** A player of the offence does what only a defender does, or the other way round. */
  'offence-defends': { readonly who: string; readonly verb: string };
  'defender-attacks': { readonly who: string; readonly verb: string };
  /** A wait on what a defender may do: that is a step of its own. */
  'wait-on-defender': { readonly who: string };
  /** A place and no verb in a step. */
  'verb-missing': { readonly who: string };
  /** A line that has nothing to say in a play, or in the file's header. */
  'line-elsewhere': { readonly belongs: string };
  /** The same header line twice; the first counts. */
  'header-twice': { readonly word: string };
  /** Nobody has the ball when the look comes. */
  'no-holder-for-look': { readonly who: string };
  /** `look 4: lob` while 4 has the ball. */
  'looker-has-ball': { readonly who: string };
  'ball-not-with-thrower': { readonly thrower: string; readonly written: string };
  /** The `from` line lists places, but not this player's. */
  'not-placed': { readonly who: string };
  /** Read, understood, and not yet carried out. */
  'not-yet': { readonly what: Words };
}

export type ReadingProblemCode = keyof ReadingProblems;

export interface ReadingProblem<Code extends ReadingProblemCode = ReadingProblemCode> extends Problem {
  readonly code: Code;
}

export function readingProblem<Code extends ReadingProblemCode>(
  code: Code,
  part: PartId,
  params: ReadingProblems[Code],
  related?: readonly PartId[],
): ReadingProblem {
  const problem = { code, part, params: params as unknown as Problem['params'] };
  return related === undefined ? problem : { ...problem, related };
}
