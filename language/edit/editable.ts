// What every change by hand shares: the play as it stands, and the proof that a change means what was meant and nothing else.
import { message, type Message, type Words } from '../message/message.ts';
import type { Block } from '../book/book.ts';
import { lineText } from '../book/book.ts';
import type { BlockEdit } from '../checks/finding.ts';
import type { Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { parseLine } from '../grammar/parse-line.ts';
import type { Action, ActionId, PartId, Places, Play, Place, Step, StepKey } from '../play/play.ts';
import type { Reading } from '../play/reading.ts';
import type { OwnWords } from '../words/say-place.ts';
import { applyBlockEdits } from './apply-edits.ts';
import type { Outcome } from './intent.ts';

export interface Editable {
  readonly block: Block;
  readonly reading: Pick<Reading, 'play' | 'places' | 'problems'>;
  readonly court: Court;
  /** The unit and the spots of his own that the coach writes places with. */
  readonly own?: OwnWords;
  /** Reads the block again with other lines, so that what was written can be proved to mean what was meant. */
  readonly readAgain: (lines: readonly string[]) => Pick<Reading, 'play' | 'problems'>;
}

/** One way to write a change: its edits, and the words it brings. */
export interface Candidate {
  readonly edits: readonly BlockEdit[];
  readonly words: Words;
  /** Where they put a man. */
  readonly at?: Point;
}

/** What a change may touch; all else has to read as before. */
export type Touched = { readonly action: ActionId } | { readonly start: readonly number[] } | { readonly added: true } | 'all';

export function refuse(refused: Message): { readonly refused: Message } {
  return { refused };
}

/** The first change after which its lines read, bring nothing wrong, mean what is meant, and leave everything else as it was. */
export function firstThatMeans(editable: Editable, candidates: readonly Candidate[], touched: Touched, means: (after: Play) => boolean): Outcome | undefined {
  const lines = linesOf(editable);
  const known = new Set(lines);
  const { play, problems } = editable.reading;
  const before = untouched(play, play, touched);
  for (const candidate of candidates) {
    const after = applyBlockEdits(lines, candidate.edits);
    if (after.some((line) => !known.has(line) && parseLine(line).fault !== undefined)) continue;
    const read = editable.readAgain(after);
    if (means(read.play) && untouched(read.play, play, touched) === before && read.problems.length <= problems.length) return candidate;
  }
  return undefined;
}

/**
 * The play without what the change is about, as one text. Left out are the lines' numbers, which grow with a new line, and what is copied
 * from elsewhere in the play: a copy follows what it copies. Who passes to a looker follows from the lines above his look.
 */
function untouched(play: Play, original: Play, touched: Touched): string {
  if (touched === 'all') return '';
  const known = new Set(actionsOf(original).map(({ id }) => id));
  const added = 'added' in touched;
  const drop = (action: Action) => action.origin === 'copied' || ('action' in touched ? action.id === touched.action : added && !known.has(action.id));
  const places = 'start' in touched ? Object.entries(play.start.places).filter(([player]) => !touched.start.includes(Number(player))) : Object.entries(play.start.places);
  const shown = added ? play.steps.filter(({ key }) => original.steps.some((step) => step.key === key)) : play.steps;
  const steps = shown.map(({ actions, kept, looks, ...step }) => ({
    ...step,
    actions: actions.filter((action) => !drop(action)),
    looks: looks.map(({ tail, ...look }) => ({ ...look, tail: tail.filter((action) => !drop(action) && !(added && action.origin === 'derived')) })),
    // A counter keeps a new line of the step it stands instead of, as it does the others.
    kept: kept.map(({ id }) => id).filter((id) => !added || known.has(id)),
  }));
  const { alignment: _, ...start } = play.start;
  // A spot of the file’s counts among the play’s once it is named there: no more and no less than the places that name it.
  const { spots: __, ...others } = play;
  const rest = { ...others, start: { ...start, places: places.map(([player, { value }]) => [player, value]) }, steps };
  return JSON.stringify(rest, (key, value: unknown) => (key === 'line' || key === 'origin' || (added && key === 'link') ? undefined : value));
}

export function linesOf({ block }: Editable): readonly string[] {
  return block.lines.map(lineText);
}

/** Why the words of a part cannot be changed as they stand. */
export function faultOn({ block, reading }: Editable, part: PartId): Message | undefined {
  const place = reading.places.get(part);
  const line = place === undefined ? undefined : block.lines[place.line];
  return line?.parsed.fault === undefined ? undefined : message('This line cannot be read as it stands. Mend it first.');
}

/** An action that may be changed, with its words' place, or why not. */
export function writtenAction(editable: Editable, id: ActionId): { readonly action: Action } | { readonly refused: Message } {
  const action = actionOf(editable.reading.play, id);
  if (action === undefined) return refuse(message('This action is no longer in the play.'));
  const fault = faultOn(editable, id);
  if (fault !== undefined) return refuse(fault);
  if (action.origin === 'copied') return refuse(message('This line is copied from another play or step. Change it there, or write it out here.'));
  if (action.origin === 'derived') return refuse(message('This only follows from what is written: change the line it follows from.'));
  return { action };
}

/** A line that another step repeats word for word is one with it: changed alone it would be two. */
export function whyRepeated({ reading: { play } }: Editable, id: ActionId): Message | undefined {
  const twin = actionsOf(play).find((action) => action.repeats === id);
  const step = twin && stepOf(play, twin.step);
  return step && message('“{step}” repeats this line word for word, and both are one. Change it in both places in the text.', { step: step.name });
}

export function samePlace(a: Place, b: Place): boolean {
  return a.kind === 'offset' && b.kind === 'offset'
    ? Math.abs(a.by - b.by) < 0.005 && a.direction === b.direction && samePlace(a.from, b.from)
    : JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(place: Place): unknown {
  return Object.entries(place).filter(([, value]) => value !== undefined).toSorted(([a], [b]) => (a < b ? -1 : 1));
}

export function actionsOf(play: Play): readonly Action[] {
  return play.steps.flatMap(actionsIn);
}

function actionsIn(step: Step): readonly Action[] {
  return [...step.actions, ...step.looks.flatMap(({ tail }) => tail)];
}

export function actionOf(play: Play, id: string): Action | undefined {
  return actionsOf(play).find((action) => action.id === id);
}

export function stepOf(play: Play, key: StepKey): Step | undefined {
  return play.steps.find((step) => step.key === key);
}

/** The last line of a step that holds an action or opens it. */
export function lastLineOf(places: Places, step: Step): number | undefined {
  const lines = [step.key, ...step.actions.filter(({ origin }) => origin !== 'copied').map(({ id }) => id)].map((part) => places.get(part)?.line).filter((line) => line !== undefined);
  return lines.length === 0 ? undefined : Math.max(...lines);
}
