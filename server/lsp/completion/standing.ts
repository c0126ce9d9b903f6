// How the game stands at the cursor, by the text above it and by the links of its own line that are written already.
import { blockAtLine, editFile, type Block, type Book } from '../../../language/book/book.ts';
import { courtOf, type Court } from '../../../language/court/court.ts';
import type { Point } from '../../../language/court/point.ts';
import { ruleSet } from '../../../language/court/rule-sets.ts';
import { parseLine } from '../../../language/grammar/parse-line.ts';
import type { Words } from '../../../language/message/message.ts';
import { createLookup, stillAnswers, type Asked, type Lookup } from '../../../language/names/lookup.ts';
import type { Action, BodyId, Play } from '../../../language/play/play.ts';
import { readPlay } from '../../../language/play/read-play.ts';
import { stateBefore, type GameState } from '../../../language/play/state.ts';
import { sayAbout } from '../../../language/words/say-place.ts';
import type { OpenDocument } from '../documents.ts';
import { textOfLine } from '../positions.ts';

export interface Standing {
  readonly court: Court;
  readonly holder?: BodyId;
  readonly dribble: GameState['dribble'];
  /** Out of bounds with its thrower. */
  readonly out: boolean;
  readonly where: Readonly<Partial<Record<BodyId, Point>>>;
  /** Men who have set a screen that the acting one may come off. */
  readonly screening: readonly BodyId[];
  /** Men who have a look already, and who have acted in this step. */
  readonly looked: readonly BodyId[];
  readonly acted: readonly BodyId[];
  readonly ownSpots: readonly { readonly name: string; readonly point: Point }[];
  readonly step?: string;
  /** What each man did last on this path; `order` grows, `inStep`: in this step. */
  readonly lastDid: Readonly<Partial<Record<BodyId, { readonly kind: Action['kind']; readonly verb: string; readonly order: number; readonly inStep: boolean }>>>;
  readonly sayWhere: (body: BodyId) => Words | undefined;
}

/** `before`: the cursor's line up to the word being typed. Outside a play nobody stands anywhere. */
export type StandingAt = (book: Book, document: OpenDocument, line: number, before: string) => Standing;

export const standingAt: StandingAt = (book, document, line, before) => {
  const place = placeAt(document, line, before);
  return place === undefined ? nowhere : standingOf(book, document, place, createLookup(book, document.uri));
};

/** The same, kept: nobody stands elsewhere while one line is typed, so the play is read at its first letter only. */
export function keepStanding(): StandingAt {
  let kept: { readonly place: Place; readonly asked: readonly Asked[]; readonly standing: Standing } | undefined;
  return (book, document, line, before) => {
    const place = placeAt(document, line, before);
    if (place === undefined) return nowhere;
    if (kept !== undefined && isSame(kept.place, place) && stillAnswers(kept.asked, book)) return kept.standing;
    const lookup = createLookup(book, document.uri);
    const standing = standingOf(book, document, place, lookup);
    kept = { place, asked: lookup.asked, standing };
    return standing;
  };
}

/** What a standing follows from, beside the names it asks for. */
interface Place {
  readonly uri: string;
  readonly line: number;
  readonly block: Block;
  /** Line of the block. */
  readonly at: number;
  /** The cursor's line opens something and counts as it is; any other counts for the links that stand whole. */
  readonly opens: boolean;
  readonly own: string | undefined;
}

function placeAt({ uri, file }: OpenDocument, line: number, before: string): Place | undefined {
  const { block, firstLine } = blockAtLine(file, line);
  if (block.kind !== 'play') return undefined;
  const at = line - firstLine;
  return { uri, line, block, at, opens: block.lines[at]?.parsed.opens !== undefined, own: wholeLinks(before) };
}

/** Lines are compared as objects: an edit leaves those it does not touch. */
function isSame(a: Place, b: Place): boolean {
  if (a.uri !== b.uri || a.at !== b.at || a.own !== b.own || a.opens !== b.opens || a.block.key !== b.block.key || a.block.lines.length !== b.block.lines.length) return false;
  return a.block.lines.every((one, at) => one === b.block.lines[at] || (at === a.at && !a.opens));
}

function standingOf(book: Book, document: OpenDocument, place: Place, lookup: Lookup): Standing {
  const { read, at } = assume(book, document, place);
  const reading = readPlay(read, lookup);
  const { play } = reading;
  const state = stateBefore(reading, at);
  const court = courtOf(ruleSet(play.rules.value));
  const inStep = state.step === undefined ? [] : state.actionsSoFar.filter((id) => id.startsWith(`${state.step}/`));
  return {
    court,
    ...(state.holder !== undefined && { holder: state.holder }),
    dribble: state.dribble,
    out: state.ballOut,
    where: state.places,
    screening: [...new Set(state.screensSet.map(({ by }) => by).reverse())],
    looked: state.looksSoFar.map(bodyOf),
    acted: inStep.map(bodyOf),
    lastDid: lastDeeds(play, state),
    ownSpots: Object.entries(play.spots).map(([name, point]) => ({ name, point })),
    ...(state.step !== undefined && { step: state.step }),
    sayWhere(body) {
      const point = state.places[body];
      return point && sayAbout(court, point);
    },
  };
}

const nowhere: Standing = { court: courtOf(ruleSet('fiba')), dribble: 'none', out: false, where: {}, screening: [], looked: [], acted: [], lastDid: {}, ownSpots: [], sayWhere: () => undefined };

function lastDeeds(play: Play, { actionsSoFar, step }: GameState): Standing['lastDid'] {
  const actions = new Map(play.steps.flatMap((one) => [...one.kept, ...one.actions]).map((action) => [action.id, action]));
  const did: { -readonly [Body in BodyId]?: Standing['lastDid'][Body] } = {};
  for (const [order, id] of actionsSoFar.entries()) {
    const action = actions.get(id);
    if (action !== undefined) did[action.who] = { kind: action.kind, verb: action.verb, order, inStep: id.startsWith(`${step}/`) };
  }
  return did;
}

/** The links of the line that stand whole before the one being typed: of `1 passes to 3, 3 ` that is `1 passes to 3`. */
function wholeLinks(before: string): string | undefined {
  const joints = [...before.matchAll(/,|(?<![\w-])(?:and|then)(?![\w-])/gi)].map(({ index }) => index).reverse();
  for (const at of joints) {
    const parsed = parseLine(before.slice(0, at));
    if (parsed.fault === undefined && parsed.tree?.$type === 'Statement') return parsed.text;
  }
  return undefined;
}

/** The play with only those links on the cursor's line, and the line to stand before. An edit of a book leaves the book as it was. */
function assume(book: Book, document: OpenDocument, { block, at, line, opens, own }: Place): { readonly read: Block; readonly at: number } {
  if (opens) return { read: block, at };
  const text = textOfLine(block, at);
  // The empty line behind it gives the place to stand on, also at the end of the file.
  const edit = { range: { start: { line, character: 0 }, end: { line, character: text.length } }, text: `${own ?? ''}\n` };
  const assumed = editFile(book, document.uri, [edit]).files.get(document.uri);
  return { read: assumed === undefined ? block : blockAtLine(assumed, line).block, at: at + 1 };
}

const bodyOf = (part: string): BodyId => /(X?[1-5])\.\d+$/.exec(part)![1] as BodyId;
