// What a check is. One file a check: its manual entry, how it finds the mistake, how it mends it.
import type { Message } from '../message/message.ts';
import type { Point } from '../court/point.ts';
import type { Source } from '../court/sources.ts';
import type { PartId } from '../play/play.ts';
import type { Fix, Severity } from './finding.ts';
import type { Subject } from './subject.ts';
import type { ParamsOf } from '../message/template.ts';

/**
 * How much of the play must be readable before this can be said. An unreadable line can have been anything, so what would speak only
 * because that line is missing stays silent (`unreadable.ts`):
 * - `line`: nothing else, it is said of its own line.
 * - `before`: whatever comes before it on its way through the play.
 * - `way`: the whole way through the play that it is said of.
 * - `play`: the whole play.
 * - `steps`: whatever in the play can have opened a step.
 * - `names`: whatever in the file can have given a name.
 */
export type Needs = 'line' | 'before' | 'way' | 'play' | 'steps' | 'names';

/** The manual of one code: what `explain` prints and the reference shows. `wrong` speaks, `right` is silent: both are tested. */
export interface Manual {
  /** In a few words, as a heading. */
  readonly title: string;
  readonly why: string;
  /** Lines of a play that bring the finding, and the same lines mended. Absent where no play of a few lines can show it. */
  readonly wrong?: string;
  readonly right?: string;
  /** A second file that the examples speak of. */
  readonly beside?: { readonly name: string; readonly text: string };
}

/** What a code rests on that no rule book, paper or habit of coaches has to say. */
export type Ground = 'the words of the notation' | 'what the play itself asks for' | 'what can happen on a floor' | 'what this tool can show';

export interface Entry<Code extends string = string, Template extends string = string> {
  readonly code: Code;
  readonly severity: Severity;
  readonly needs: Needs;
  readonly message: Template;
  readonly manual: Manual;
  readonly source: Source | Ground;
  /** It speaks of what is not there yet and may still come: behind it in the same line, or in a line below. Told more quietly while that is being written (`while-written.ts`). */
  readonly stillToCome?: 'in-line' | 'below';
  /** What another place that belongs to it is, where reading or scheduling names one. */
  readonly related?: string;
}

/** One thing found, before it has a place in the text. */
export interface Found<Template extends string = string> {
  readonly part: PartId;
  readonly params: ParamsOf<Template>;
  /** Another sentence than the entry's, where number or case ask for one. */
  readonly instead?: Message;
  /** The run-through it is said of; the same thing in several is told once. */
  readonly run?: string;
  /** Where no single run-through is named: the steps that all ways it can be seen on begin with. */
  readonly steps?: readonly string[];
  /** ms from the call. */
  readonly moment?: number;
  readonly spot?: Point;
  readonly related?: readonly { readonly part: PartId; readonly message?: Message }[];
  readonly fixes?: readonly Fix[];
  /** Where the rule set in force says it otherwise than the entry. */
  readonly source?: Source;
}

export interface Check<Code extends string = string, Template extends string = string> extends Entry<Code, Template> {
  /** It rests on a rule set's own counts or measures, so it is asked again of each `also` rule set. */
  readonly byRules?: true;
  find(subject: Subject): Iterable<Found<Template>>;
}

/** Declares a check: the compiler holds `find` to the parameters its message asks for. */
export function check<const Code extends string, const Template extends string>(declared: Check<Code, Template>): Check<Code, Template> {
  return declared;
}

export function entry<const Code extends string, const Template extends string>(declared: Entry<Code, Template>): Entry<Code, Template> {
  return declared;
}
