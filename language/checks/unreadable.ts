// What an unreadable line keeps silent. A line that cannot be read can have been anything: a pass that is missing now, the opening of a
// step, the place where everybody stands. So nothing is said that might only be true because that line is missing:
//
// 1. What is said of a line alone is always said.
// 2. A line known by its first words to be an action or a look touches the ways through its step, nothing else.
// 3. A line of which nothing is known touches in addition the ways through what stands below it: it can have opened a step, or a play.
// 4. A line that holds for the whole play touches all of it, as does any other above the first step, unless its first words show that it
//    only asks something of the clock or is a remark: without it those checks just do not ask.
// 5. What names stand for is not said while a line can have opened or named something; one that begins as a header, an action, a look or a
//    question did neither.
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { PartId, Play, StepKey } from '../play/play.ts';
import type { LineMeaning } from '../play/read-play.ts';
import type { Needs } from './check.ts';
import { stepOf } from './parts.ts';

/** What a line's first words say it would have been. */
type Kind = 'action' | 'question' | 'header' | 'unknown';

interface Unreadable {
  readonly line: number;
  readonly kind: Kind;
  /** The step it stands in; absent above the first. */
  readonly step?: StepKey;
}

/** Lines that ask or tell something; when one is missing, nothing else is different. */
const questions = new Set<string>(['Notation', 'Tags', 'Call', 'ShotWindow', 'Leave', 'Situation', 'InboundWithin', 'Note', 'Rebound', 'Amount', 'EveryTouch', 'Touch', 'NotHold', 'Demand']);
const headers = new Set<string>(['From', 'BallWith', 'Against', 'AlreadySet', 'ClockAt', 'Allow']);
const actions = new Set<string>(['Statement', 'Look', 'Ends', 'Placing']);

/** Of a line that cannot be read there may be no tree; its first word is read for itself. Nothing that opens a block or gives a name begins with a player. */
const firstWords: readonly (readonly [Kind, RegExp])[] = [
  ['action', /^\s*(x?[1-5](?![\w.-])|(look|ends)\b)/i],
  ['question', /^\s*(tags|call|shot|leave|situation|inbound|note|must|rebound)\b/i],
  ['header', /^\s*(from|ball with|against|vs|already set|clock|allow)\b/i],
];

function kindOf({ tree, opens, text }: ParsedLine): Kind {
  const type = opens === undefined ? tree?.$type : undefined;
  if (type === undefined) return opens === undefined ? (firstWords.find(([, begins]) => begins.test(text))?.[0] ?? 'unknown') : 'unknown';
  if (headers.has(type)) return 'header';
  return questions.has(type) ? 'question' : actions.has(type) ? 'action' : 'unknown';
}

/** Whether a line cannot be read and its being missing can change what the lines around it mean. */
export function leavesGap(line: ParsedLine): boolean {
  return line.fault !== undefined && kindOf(line) !== 'question';
}

/** Whether a line can have opened a block or a step, or defined a name. */
export function mayHaveOpened(line: ParsedLine): boolean {
  return line.fault !== undefined && kindOf(line) === 'unknown';
}

export interface Gaps {
  /** Whether a finding may be said in spite of the unreadable lines. */
  readonly allow: (needs: Needs, part: PartId | undefined, line: number, run: readonly StepKey[] | undefined) => boolean;
}

export interface GapsIn {
  /** The block's lines, and what reading took each for. */
  readonly lines: readonly ParsedLine[];
  readonly meanings: readonly LineMeaning[];
  readonly play: Play;
  /** A line above the play, in its file's header, cannot be read. */
  readonly headGap?: boolean;
}

export function gapsOf({ lines, meanings, play, headGap = false }: GapsIn): Gaps {
  const unreadable = lines.flatMap((line, at): Unreadable[] => {
    const step = meanings[at]?.step;
    return leavesGap(line) ? [{ line: at, kind: kindOf(line), ...(step !== undefined && { step }) }] : [];
  });
  if (unreadable.length === 0 && !headGap) return { allow: () => true };
  const inHead = headGap || unreadable.some(({ step, kind }) => step === undefined || kind === 'header');

  const allow: Gaps['allow'] = (needs, part, line, run) => {
    if (needs === 'line') return true;
    if (needs === 'steps' || needs === 'names') return !headGap && unreadable.every(({ kind }) => kind !== 'unknown');
    if (inHead || needs === 'play') return false;
    const own = part === undefined ? undefined : stepOf(part);
    const way = run ?? (own === undefined ? [] : wayTo(play, own));
    // A kept line stands in a step that its way does not pass: then the whole way counts.
    const until = needs === 'way' || own === undefined || !way.includes(own) ? way : way.slice(0, way.indexOf(own) + 1);
    const touched = new Set(until.flatMap((key) => [key, ...replacedBy(play, key)]));
    const lastLine = Math.max(line, meanings.findLastIndex(({ step }) => step !== undefined && touched.has(step)));
    return !unreadable.some(({ step, kind, line: gap }) => (step !== undefined && touched.has(step)) || (kind === 'unknown' && gap < lastLine));
  };
  return { allow };
}

/** From the root to a step. */
function wayTo(play: Play, key: StepKey): readonly StepKey[] {
  const way: StepKey[] = [];
  for (let at: StepKey | null | undefined = key; at !== null && at !== undefined && !way.includes(at); at = play.steps.find((step) => step.key === at)?.parent) way.unshift(at);
  return way;
}

/** The steps whose lines a counter may have kept. */
function replacedBy(play: Play, key: StepKey): readonly StepKey[] {
  const replaced = play.steps.find((step) => step.key === key)?.insteadOf;
  return replaced === undefined ? [] : [replaced];
}
