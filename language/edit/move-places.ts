// A player's start, the end of a way, where a screen stands, the spots on the way.
import { message, type Message } from '../message/message.ts';
import { lineText } from '../book/book.ts';
import { distance } from '../court/point.ts';
import { parseLine } from '../grammar/parse-line.ts';
import type { Action, Play, Place, PlayerNumber, TextPlace } from '../play/play.ts';
import { resolvePlace } from '../play/places.ts';
import { sayWrittenPlace } from '../words/say-written-place.ts';
import { wordsFor, type PlaceWords } from '../words/say-place.ts';
import { actionOf, faultOn, firstThatMeans, refuse, samePlace, writtenAction, type Candidate, type Editable } from './editable.ts';
import type { Intent, Outcome } from './intent.ts';
import { linesApart, whyShared } from './lines-apart.ts';

type Of<Kind extends Intent['kind']> = Extract<Intent, { kind: Kind }>;

export function moveStart(editable: Editable, { player, to }: Of<'move-start'>): Outcome {
  const { court, own: said, reading: { play, places } } = editable;
  const fault = faultOn(editable, 'from');
  if (fault !== undefined) return refuse(fault);
  if (play.start.throwIn?.by.value === player) return refuse(message('{player} throws the ball in: his place is where the throw-in is. Change the throw-in line.', { player }));
  if (play.start.places[player].origin === 'copied') return refuse(message('{player}’s place is copied from another play or step. Change it there, or write it out here.', { player }));
  const words = wordsFor(court, to, said);
  const means = (after: Play) => samePlace(after.start.places[player].value, words.place);
  const { text } = words;
  const own = play.start.places[player].origin === 'written' ? places.get(`from#${player}`) : undefined;
  const line = places.get('from');
  const candidates: Candidate[] = [];
  if (own !== undefined && own.to > own.at) {
    candidates.push({ edits: [{ ...own, text }], words: text }, { edits: [{ ...own, text: `at ${text}` }], words: text }, ...apartFromGroup(editable, own, player, text));
  }
  const hasLine = line !== undefined && line.to > line.at;
  if (hasLine) candidates.push({ edits: [{ line: line.line, at: line.to, to: line.to, text: `, ${player} at ${text}` }], words: text });
  // A play without a `from` line gets one below its first line.
  else candidates.push({ edits: [{ line: 1, at: 0, to: 0, text: `  from ${player} at ${text}`, newLine: true }], words: text });
  return firstThatMeans(editable, landing(candidates, words), { start: [player] }, means) ?? refuse(message('I cannot write {player}’s place into this line. Write “{player} at {text}” in the from line yourself.', { player, text }));
}

const landing = (candidates: readonly Candidate[], { point }: PlaceWords): readonly Candidate[] => candidates.map((candidate) => ({ ...candidate, at: point }));

/** `2 and 3 blocks` becomes `2 at left wing, 3 at right block`: he leaves the others where they are. */
function apartFromGroup({ block, reading: { play } }: Editable, own: TextPlace, player: PlayerNumber, text: string): readonly Candidate[] {
  const tree = block.lines[own.line]?.parsed.tree;
  if (tree?.$type !== 'From') return [];
  const group = tree.changes.find((change) => change?.$type === 'Placing' && change.at <= own.at && own.to <= change.to);
  if (group?.$type !== 'Placing' || group.subject?.$type !== 'Players') return [];
  const said = group.subject.players.map(({ number }) => `${number} at ${number === player ? text : sayWrittenPlace(play.start.places[number as PlayerNumber].value)}`);
  return [{ edits: [{ line: own.line, at: group.at, to: group.to, text: said.join(', ') }], words: text }];
}

export function moveEnd(editable: Editable, { action: id, to }: Of<'move-end' | 'move-screen'>): Outcome {
  const found = writtenAction(editable, id);
  if ('refused' in found) return found;
  const value = endOf(found.action);
  if (value === undefined) return refuse(whyNoEnd(found.action));
  if (value.place?.origin === 'copied') return refuse(message('Where he goes is copied from another play or step. Change it there, or write it out here.'));
  const place = editable.reading.places.get(`${id}#${value.slot}`);
  if (place === undefined) return refuse(message('I cannot find the words for where he goes in this line.'));
  const words = wordsFor(editable.court, to, editable.own);
  const means = (after: Play) => {
    const now = actionOf(after, id);
    const then = now === undefined ? undefined : endOf(now)?.place?.value;
    return then !== undefined && samePlace(then, words.place) && samePlaces(viaOf(now!), viaOf(found.action));
  };
  const apart = linesApart(editable, endingAt(found.action, words.place));
  const candidates = [...waysToSay(place, words.text, value.slot), ...(apart.length > 0 ? [{ edits: apart, words: words.text }] : [])];
  return firstThatMeans(editable, landing(candidates, words), { action: id }, means) ?? refuse(whyShared(editable, id));
}

/** A written value is replaced; one that is not written goes behind the verb with its preposition. */
function waysToSay(place: TextPlace, words: string, slot: 'to' | 'at'): readonly Candidate[] {
  if (place.to > place.at) return [words, `${slot} ${words}`].map((text) => ({ edits: [{ ...place, text }], words }));
  return [{ edits: [{ ...place, text: ` ${slot} ${words}` }], words }];
}

export function moveVia(editable: Editable, { action: id, via, to }: Of<'move-via'>): Outcome {
  const found = writtenAction(editable, id);
  if ('refused' in found) return found;
  const vias = viaOf(found.action);
  if (vias[via] === undefined) return refuse(message('This way has no such spot on it any more.'));
  const words = wordsFor(editable.court, to, editable.own);
  const means = (after: Play) => meansVia(after, found.action, vias.with(via, words.place));
  const candidates = viaSpots(editable, found.action).map((place) => ({ edits: [{ ...place, text: words.text }], words: `via ${words.text}` }));
  return firstThatMeans(editable, landing(candidates, words), { action: id }, means) ?? refuse(message('He passes there because of other words in this line. Change them there.'));
}

export function addVia(editable: Editable, { action: id, to }: Of<'add-via'>): Outcome {
  const found = writtenAction(editable, id);
  if ('refused' in found) return found;
  const { action } = found;
  if (action.kind !== 'move' && action.kind !== 'dribble') return refuse(message('Only a run or a dribble passes a spot on its way.'));
  const words = wordsFor(editable.court, to, editable.own);
  const vias = viaOf(action);
  const means = (after: Play) => {
    const now = actionOf(after, id);
    return now !== undefined && viaOf(now).length === vias.length + 1 && viaOf(now).some((place) => samePlace(place, words.place)) && sameEnd(now, action);
  };
  return firstThatMeans(editable, landing(placesForVia(editable, action, words), words), { action: id }, means) ?? refuse(whyShared(editable, id));
}

// So near to a spot on the way the hand means that spot, metres.
const grasp = 1.2;

/** The way is drawn from where it was taken hold of: the spot it passes there is moved, or a new one written. */
export function bendWay(editable: Editable, { action, from, to }: Of<'bend'>): Outcome {
  const { court, reading: { play } } = editable;
  const found = actionOf(play, action);
  const far = (found === undefined ? [] : viaOf(found)).map((place) => distance(resolvePlace(place, { court, positions: {}, who: found!.who, spots: play.spots }), from));
  const via = far.indexOf(Math.min(...far));
  return via >= 0 && far[via]! <= grasp ? moveVia(editable, { kind: 'move-via', action, via, to }) : addVia(editable, { kind: 'add-via', action, to });
}

/** Behind the spots he passes already, else before where he goes, else behind his verb. */
function placesForVia(editable: Editable, action: Action, { text }: PlaceWords): readonly Candidate[] {
  const { block, reading: { places } } = editable;
  const candidates: Candidate[] = [];
  const last = viaSpots(editable, action).at(-1);
  const add = (line: number, at: number, words: string) => candidates.push({ edits: [{ line, at, to: at, text: words }], words: `via ${text}` });
  if (last !== undefined) add(last.line, last.to, ` and ${text}`);
  const end = places.get(`${action.id}#to`);
  if (end !== undefined && end.to > end.at) {
    const before = lineText(block.lines[end.line]!).slice(0, end.at);
    const preposition = /\s+(?:(?:through to|to|into|towards?)\s+)(?:(?:the|an?)\s+)?$/i.exec(before);
    if (preposition !== null) add(end.line, preposition.index, ` via ${text}`);
    add(end.line, end.to, ` via ${text}`);
  } else if (end !== undefined) add(end.line, end.at, ` via ${text}`);
  return candidates;
}

/** The written spots behind `via` within the action's words. */
function viaSpots({ block, reading: { places } }: Editable, action: Action): readonly TextPlace[] {
  const whole = places.get(action.id);
  if (whole === undefined) return [];
  const parsed = block.lines[whole.line]?.parsed ?? parseLine('');
  const spots: TextPlace[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) return value.forEach(walk);
    if (typeof value !== 'object' || value === null) return;
    const node = value as { readonly $type?: string; readonly spots?: readonly ({ readonly at: number; readonly to: number } | undefined)[] };
    if (node.$type === 'Via') for (const spot of node.spots ?? []) if (spot !== undefined) spots.push({ line: whole.line, at: spot.at, to: spot.to });
    Object.values(value).forEach(walk);
  };
  walk(parsed.tree);
  return spots.filter(({ at, to }) => whole.at <= at && to <= whole.to).toSorted((a, b) => a.at - b.at);
}

function meansVia(after: Play, before: Action, wanted: readonly Place[]): boolean {
  const now = actionOf(after, before.id);
  return now !== undefined && samePlaces(viaOf(now), wanted) && sameEnd(now, before);
}

function viaOf(action: Action): readonly Place[] {
  return action.kind === 'move' || action.kind === 'dribble' ? action.via : [];
}

const samePlaces = (a: readonly Place[], b: readonly Place[]): boolean => a.length === b.length && a.every((place, i) => samePlace(place, b[i]!));

function sameEnd(a: Action, b: Action): boolean {
  return JSON.stringify(endOf(a)) === JSON.stringify(endOf(b));
}

/** The same action with another end. */
function endingAt(action: Action, value: Place): Action {
  const end = { value, origin: 'written' } as const;
  if (action.kind === 'screen') return { ...action, at: end };
  return action.kind === 'move' || action.kind === 'dribble' ? { ...action, to: end } : action;
}

export function endOf(action: Action): { readonly slot: 'to' | 'at'; readonly place: { readonly value: Place; readonly origin: string } | undefined } | undefined {
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

function whyNoEnd(action: Action): Message {
  switch (action.kind) {
    case 'pass':
    case 'hand-off':
      return message('The ball goes to where {to} is. Move {to}’s way instead.', { to: action.to });
    case 'shot':
      return message('A shot goes to the ring. Move the way that leads to it.');
    case 'dribble':
      return message('He dribbles at another player: move that player’s way instead.');
    default:
      return message('He stays where he is. Write a move for him first.');
  }
}
