import type { LineMeaning } from './line-meaning.ts';
import type { Places, Play, Step, StepKey } from './play.ts';
import type { Problem } from '../names/problem.ts';

/** What the reading of a block gives. Plain data; nothing in it changes when the block moves down its file. */
export interface Reading {
  readonly play: Play;
  readonly places: Places;
  readonly problems: readonly Problem[];
  /** What each line of the block is, by its index. */
  readonly lines: readonly LineMeaning[];
  /** Steps that hang on nothing that can be played (unknown name, a circle): not in the play, but their lines still mean something. */
  readonly leftOut: readonly Step[];
}

/** When each step of a play opens, ms from the call. Reading itself knows no times; whoever schedules lends it this. */
export type StepClock = (play: Play) => ReadonlyMap<StepKey, number>;
