// CONTRACT. A job of one player, as it is handed to him and shown.
import type { Words } from '../message/message.ts';
import type { BodyId, PartId } from '../play/play.ts';

export interface Job {
  readonly text: string;
  /** The step, action, look or line it speaks of. */
  readonly part: PartId;
  /** When it begins, typically: ms from the call, in the run-through of that id. Of a look when the ball leaves the hand. */
  readonly at?: number;
  readonly run?: string;
  /** It opens a step, or closes the play; the others are done in a step. */
  readonly head?: true;
}

export interface JobsOfPlayer {
  readonly who: BodyId;
  /** From the roster, where it has one for his number. */
  readonly name?: string;
  readonly jobs: readonly Job[];
}

/** A job before it is put into a language. */
export interface JobWords extends Omit<Job, 'text'> {
  readonly text: Words;
}
