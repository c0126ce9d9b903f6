// From what somebody does with his hand to the smallest change of the text that says the same.
import type { Block } from '../book/book.ts';
import { lineText } from '../book/book.ts';
import type { BlockEdit } from '../checks/finding.ts';
import type { Court } from '../court/court.ts';
import { parseLine } from '../grammar/parse-line.ts';
import type { Action, PartId, Places, Play, Place, TextPlace } from '../play/play.ts';
import { saySeconds } from '../words/say-seconds.ts';
import { wordsFor } from '../words/say-place.ts';
import { applyBlockEdits } from './apply-edits.ts';
import type { Intent, Outcome } from './intent.ts';

export interface Editable {
  readonly block: Block;
  readonly play: Play;
  readonly places: Places;
  readonly court: Court;
  /** Reads the block again with other lines, so that what was written can be proved to mean what was meant. */
  readonly readAgain: (lines: readonly string[]) => Play;
}

/** Edits at the value's place, or a refusal with its reason. Pure; what it writes has been read back. */
export function applyIntent(editable: Editable, intent: Intent): Outcome {
  switch (intent.kind) {
    case 'move-start':
      return moveStart(editable, intent);
    case 'move-end':
      return moveEnd(editable, intent);
    case 'set-wait':
      return setWait(editable, intent);
  }
}

function refuse(refused: string): Outcome {
  return { refused };
}

function moveStart(editable: Editable, { player, to }: Extract<Intent, { kind: 'move-start' }>): Outcome {
  const { play, places, court } = editable;
  const broken = faultOn(editable, 'from');
  if (broken !== undefined) return refuse(broken);
  if (play.start.throwIn?.by.value === player) return refuse(`${player} throws the ball in: his place is where the throw-in is. Change the throw-in line.`);
  if (play.start.places[player].origin === 'copied') return refuse(copied(`${player}’s place`));
  const words = wordsFor(court, to);
  const means = (after: Play) => samePlace(after.start.places[player].value, words.place);
  const own = play.start.places[player].origin === 'written' ? places.get(`from#${player}`) : undefined;
  const line = places.get('from');
  const candidates: BlockEdit[] = [];
  if (own !== undefined && own.to > own.at) candidates.push({ ...own, text: words.text }, { ...own, text: `at ${words.text}` }, { ...own, text: `${player} at ${words.text}` });
  const hasLine = line !== undefined && line.to > line.at;
  if (hasLine) candidates.push({ line: line.line, at: line.to, to: line.to, text: `, ${player} at ${words.text}` });
  // A play without a `from` line gets one below its first line.
  else candidates.push({ line: 1, at: 0, to: 0, text: `  from ${player} at ${words.text}`, newLine: true });
  return firstThatMeans(editable, candidates, means) ?? refuse(`I cannot write ${player}’s place into this line. Write “${player} at ${words.text}” in the from line yourself.`);
}

function moveEnd(editable: Editable, { action: id, to }: Extract<Intent, { kind: 'move-end' }>): Outcome {
  const { play, places, court } = editable;
  const action = actionOf(play, id);
  if (action === undefined) return refuse('This way is no longer in the play.');
  const broken = faultOn(editable, id);
  if (broken !== undefined) return refuse(broken);
  if (action.origin === 'copied') return refuse(copied('This line'));
  const value = endOf(action);
  if (value === undefined) return refuse(whyNoEnd(action));
  if (value.place?.origin === 'copied') return refuse(copied('Where he goes'));
  const place = places.get(`${id}#${value.slot}`);
  if (place === undefined) return refuse('I cannot find the words for where he goes in this line.');
  const words = wordsFor(court, to);
  const means = (after: Play) => {
    const now = actionOf(after, id);
    const then = now === undefined ? undefined : endOf(now)?.place?.value;
    return then !== undefined && samePlace(then, words.place) && onlyChanged(play, after, id);
  };
  return firstThatMeans(editable, waysToSay(place, words.text, value.slot), means) ?? refuse('Several players share these words. Give him a line of his own first.');
}

/** A written value is replaced; one that is not written goes behind the verb with its preposition. */
function waysToSay(place: TextPlace, words: string, slot: 'to' | 'at'): readonly BlockEdit[] {
  if (place.to > place.at) return [{ ...place, text: words }, { ...place, text: `${slot} ${words}` }];
  return [{ ...place, text: ` ${slot} ${words}` }];
}

function setWait(editable: Editable, { action: id, seconds }: Extract<Intent, { kind: 'set-wait' }>): Outcome {
  const { play, places } = editable;
  const action = actionOf(play, id);
  if (action === undefined) return refuse('This action is no longer in the play.');
  const broken = faultOn(editable, id);
  if (broken !== undefined) return refuse(broken);
  if (action.origin === 'copied') return refuse(copied('This line'));
  if (!(seconds >= 0)) return refuse('He cannot start before he is free.');
  const rounded = Math.round(seconds * 10) / 10;
  const written = action.waits.find((wait) => wait.kind === 'later');
  const means = (after: Play) => {
    const later = actionOf(after, id)?.waits.find((wait) => wait.kind === 'later');
    return (later?.kind === 'later' ? later.seconds : 0) === rounded;
  };
  const place = places.get(id);
  const words = written === undefined ? undefined : places.get(written.part);
  const text = `${saySeconds(rounded)} later`;
  if (words !== undefined) {
    const line = lineText(editable.block.lines[words.line]!);
    if (rounded > 0) return firstThatMeans(editable, [{ ...words, text }, { ...words, text: saySeconds(rounded) }], means) ?? refuse('I cannot write this wait here.');
    // With its comma or its blank.
    const behind = /^\s*,?\s*/.exec(line.slice(words.to))![0].length;
    const before = /\s*$/.exec(line.slice(0, words.at))![0].length;
    const whole = [{ line: words.line, at: words.at, to: words.to + behind, text: '' }, { line: words.line, at: words.at - before, to: words.to, text: '' }];
    return firstThatMeans(editable, whole, means) ?? refuse('I cannot take this wait out here.');
  }
  if (rounded === 0) return { edits: [] };
  if (place === undefined) return refuse('I cannot find this action in the text.');
  const head = action.link === 0 ? [{ line: place.line, at: place.at, to: place.at, text: `${text}, ` }] : [];
  return firstThatMeans(editable, [...head, { line: place.line, at: place.to, to: place.to, text: ` ${text}` }], means) ?? refuse('There is a wait in this line already. Change its words.');
}

// ---- what a change must leave as it is ----------------------------------------------------------------------------

/** The first change after which the line reads, and reads as meant. */
function firstThatMeans(editable: Editable, candidates: readonly BlockEdit[], means: (after: Play) => boolean): Outcome | undefined {
  const lines = editable.block.lines.map(lineText);
  for (const edit of candidates) {
    const after = applyBlockEdits(lines, [edit]);
    if (parseLine(after[edit.line] ?? '').fault === undefined && means(editable.readAgain(after))) return { edits: [edit] };
  }
  return undefined;
}

/** Two who share a line share its words: moving one must not move the other. */
function onlyChanged(before: Play, after: Play, id: string): boolean {
  const line = actionOf(before, id)?.line;
  return actionsOf(before).every((action) => action.line !== line || action.id === id || JSON.stringify(action) === JSON.stringify(actionOf(after, action.id)));
}

function faultOn({ block, places }: Editable, part: PartId): string | undefined {
  const place = places.get(part);
  const line = place === undefined ? undefined : block.lines[place.line];
  return line?.parsed.fault === undefined ? undefined : 'This line cannot be read as it stands. Mend it first.';
}

function copied(what: string): string {
  return `${what} is copied from another play or step. Change it there, or write it out here.`;
}

function samePlace(a: Place, b: Place): boolean {
  return a.kind === 'offset' && b.kind === 'offset'
    ? Math.abs(a.by - b.by) < 0.005 && a.direction === b.direction && samePlace(a.from, b.from)
    : JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(place: Place): unknown {
  return Object.entries(place).filter(([, value]) => value !== undefined).toSorted(([a], [b]) => (a < b ? -1 : 1));
}

function actionsOf(play: Play): readonly Action[] {
  return play.steps.flatMap((step) => [...step.actions, ...step.looks.flatMap(({ tail }) => tail)]);
}

function actionOf(play: Play, id: string): Action | undefined {
  return actionsOf(play).find((action) => action.id === id);
}

function endOf(action: Action): { readonly slot: 'to' | 'at'; readonly place: { readonly value: Place; readonly origin: string } | undefined } | undefined {
  switch (action.kind) {
    case 'move':
    case 'defend':
      return { slot: 'to', place: action.to };
    case 'dribble':
      return action.at === undefined && action.style !== 'keep' ? { slot: 'to', place: action.to } : undefined;
    case 'screen':
      return { slot: 'at', place: action.at };
    default:
      return undefined;
  }
}

function whyNoEnd(action: Action): string {
  switch (action.kind) {
    case 'pass':
    case 'hand-off':
      return `The ball goes to where ${action.to} is. Move ${action.to}’s way instead.`;
    case 'shot':
      return 'A shot goes to the ring. Move the way that leads to it.';
    case 'dribble':
      return 'He dribbles at another player: move that player’s way instead.';
    default:
      return 'He stays where he is. Write a move for him first.';
  }
}
