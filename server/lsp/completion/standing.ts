// How the game stands at the cursor, by the text above it and by the links of its own line that are written already.
import { blockAtLine, editFile, type Block, type Book } from '../../../language/book/book.ts';
import { courtOf, type Court } from '../../../language/court/court.ts';
import type { Point } from '../../../language/court/point.ts';
import { ruleSet } from '../../../language/court/rule-sets.ts';
import { parseLine } from '../../../language/grammar/parse-line.ts';
import { createLookup } from '../../../language/names/lookup.ts';
import type { Action, BodyId, Play } from '../../../language/play/play.ts';
import { readPlay } from '../../../language/play/read-play.ts';
import { stateBefore, type GameState } from '../../../language/play/state.ts';
import { sayPlace } from '../../../language/words/say-place.ts';
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
  readonly sayWhere: (body: BodyId) => string | undefined;
}

/** `before`: the cursor's line up to the word being typed. Outside a play nobody stands anywhere. */
export function standingAt(book: Book, document: OpenDocument, line: number, before: string): Standing {
  const { block, firstLine } = blockAtLine(document.file, line);
  if (block.kind !== 'play') return nowhere;
  const own = wholeLinks(before);
  const { read, at } = assume(book, document, block, firstLine, line, own);
  const reading = readPlay(read, createLookup(book, document.uri));
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
      return point && sayPlace(court, point);
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
function assume(book: Book, document: OpenDocument, block: Block, firstLine: number, line: number, own: string | undefined): { readonly read: Block; readonly at: number } {
  const at = line - firstLine;
  const opens = block.lines[at]?.parsed.opens !== undefined;
  if (opens) return { read: block, at };
  const text = textOfLine(block, at);
  // The empty line behind it gives the place to stand on, also at the end of the file.
  const edit = { range: { start: { line, character: 0 }, end: { line, character: text.length } }, text: `${own ?? ''}\n` };
  const assumed = editFile(book, document.uri, [edit]).files.get(document.uri);
  return { read: assumed === undefined ? block : blockAtLine(assumed, line).block, at: at + 1 };
}

const bodyOf = (part: string): BodyId => /(X?[1-5])\.\d+$/.exec(part)![1] as BodyId;
