// CONTRACT, version 1. Everything that shows a play needs: the page, the panel, a picture, a client of its own.
// Plain JSON for one play, its words in one language. Text positions count from the play's first line.
import type { Court } from '../court/court.ts';
import type { ToldFinding } from '../checks/tell-finding.ts';
import type { BodyId, LevelId, LookId, PartId, RuleSetId, StepKey, TextPlace } from '../play/play.ts';
import type { Run, Times } from '../timeline/timeline.ts';
import type { JobsOfPlayer } from '../words/job.ts';

export const PLAYBACK_VERSION = 1;

export interface Playback {
  readonly version: typeof PLAYBACK_VERSION;
  readonly play: {
    readonly key: string;
    readonly name: string;
    readonly level: LevelId;
    readonly rules: RuleSetId;
    readonly tags: readonly string[];
    /** Game clock shown at the call, seconds: the upper value of a written range. */
    readonly callWith?: number;
    readonly throwIn: boolean;
    /** The defence it is written against: a zone by its shape, man to man without one; absent where the play names none. */
    readonly against?: { readonly zone?: string; /** All over the floor. */ readonly press?: true };
  };
  readonly court: Court;
  readonly bodies: readonly { readonly id: BodyId; readonly team: 'offence' | 'defence'; readonly label: string }[];
  readonly steps: readonly { readonly key: StepKey; readonly name: string; readonly parent: StepKey | null; readonly how: string; readonly condition?: string }[];
  readonly looks: readonly { readonly id: LookId; readonly step: StepKey; readonly who: BodyId; readonly label: string }[];
  /** Short words for each part shown on a lane: "5 screens down for 3". */
  readonly says: Readonly<Record<PartId, string>>;
  /** First the main run-through's last look, as the coach wrote them: text order. */
  readonly runs: readonly (Run & { readonly label: string })[];
  readonly times: Times;
  readonly findings: readonly ToldFinding[];
  /** The play told in sentences, each with the part it speaks of, and without its times for whoever shows them beside it. */
  readonly told: readonly { readonly text: string; readonly part?: PartId; readonly untimed?: string }[];
  /** Each player's own jobs, in text order: what, and when in which run-through (ms from the call). Left out by older makers. */
  readonly jobs?: readonly JobsOfPlayer[];
  /** Part → its words in the play's text. */
  readonly text: Readonly<Record<PartId, TextPlace>>;
}
