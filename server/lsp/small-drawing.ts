// Small drawings for windows that show Markdown with images: a step as it is printed, a moment, five men on the floor. Where an editor shows
// none, the words beside them say the same.
import { message, type Say } from '../../language/message/message.ts';
import { lineText, blockAtLine, editFile, type Book } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { courtOf, type Court } from '../../language/court/court.ts';
import type { Point } from '../../language/court/point.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { toPicture } from '../../language/picture/lines.ts';
import type { PaletteName } from '../../language/picture/palette.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { stripFrames } from '../../language/picture/frames.ts';
import { drawFrame } from '../../language/picture/strip.ts';
import type { View } from '../../language/picture/view.ts';
import { plain } from './plain.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { OFFENCE, type BodyId, type StepKey } from '../../language/play/play.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { stateAtCall } from '../../language/play/state.ts';

/** Undefined: the editor shows no images. */
export type Theme = PaletteName | undefined;

/** Pixels in a hover or beside a list. */
const width = 260;
/** Shown beyond the free-throw lane and the arc, cm. */
const room = 110;

export function stepDrawing(compiled: Compiled, step: StepKey, theme: Theme, say: Say): readonly string[] {
  if (theme === undefined) return [];
  const playback = playbackOf(compiled);
  const run = playback.runs.find(({ steps }) => steps.includes(step));
  const frame = run && stripFrames(playback, run.id).find((one) => one.step === step);
  return frame === undefined ? [] : [image(drawFrame(playback, frame, theme), say(message('The step {step}', { step: frame.title })))];
}

/** The floor at t ms of a run-through. */
export function momentDrawing(compiled: Compiled, run: string, t: number, theme: Theme, say: Say): readonly string[] {
  if (theme === undefined) return [];
  return [image(drawSvg(sceneAt(playbackOf(compiled), run, t), theme), say(message('The floor {seconds} s after the call', { seconds: (t / 1000).toFixed(1) })))];
}

export interface Standing {
  readonly where: Readonly<Partial<Record<BodyId, Point>>>;
  readonly holder?: BodyId | undefined;
}

/** Where everybody stands; with `way`, one of them and where he would go. */
export function floorDrawing(court: Court, { where, holder }: Standing, title: string, theme: Theme, way?: { readonly who: BodyId; readonly to: Point }): readonly string[] {
  if (theme === undefined) return [];
  const bodies = OFFENCE.flatMap((id) => {
    const at = where[id];
    return at === undefined ? [] : [{ id, label: id, team: 'offence' as const, x: at.x * 100, y: at.y * 100, facing: Math.atan2(-at.y, -at.x), hasBall: id === holder, screening: false }];
  });
  const from = way && where[way.who];
  const ways = way === undefined || from === undefined ? [] : [{ way: { part: '', kind: way.who === holder ? ('dribble' as const) : ('cut' as const), who: way.who, step: undefined, t0: 0, t1: 1, points: [toPicture(from), toPicture(way.to)] }, phase: 'now' as const }];
  const points = [...Object.values(where), ...(way === undefined ? [] : [way.to])];
  return [image(drawSvg({ title, court, view: viewRound(court, points), ways, bodies, ball: undefined, labels: [] }, theme), title)];
}

/** Where everybody stands at the call when a play's `from` line says this. Undefined where the words name no alignment. */
export function alignmentDrawing(book: Book, uri: string, line: number, words: string, theme: Theme): readonly string[] {
  const file = book.files.get(uri);
  const located = file && blockAtLine(file, line);
  const before = located?.block.lines[line - located.firstLine];
  if (theme === undefined || located === undefined || before === undefined) return [];
  const range = { start: { line, character: 0 }, end: { line, character: lineText(before).length } };
  const then = editFile(book, uri, [{ range, text: `  from ${words}` }]);
  const { block } = blockAtLine(then.files.get(uri)!, line);
  if (block.kind !== 'play') return [];
  const { play } = readPlay(block, createLookup(then, uri));
  if (play.start.alignment.value === undefined) return [];
  const { places } = stateAtCall(play);
  return floorDrawing(courtOf(ruleSet(play.rules.value)), { where: places, holder: `${play.start.ball.value ?? 1}` as BodyId }, `from ${words}`, theme);
}

function viewRound({ boundary, three }: Court, points: readonly Point[]): View {
  const deepest = Math.max((three?.radius ?? 6.75) + 1.6, ...points.map(({ y }) => y + 1));
  const half = Math.max(...[boundary.left, boundary.right].map(Math.abs), ...points.map(({ x }) => Math.abs(x) + 0.7)) * 100;
  return { left: -half - room / 2, right: half + room / 2, top: Math.min(boundary.bottom * 100, ...points.map(({ y }) => y * 100 - room)) - room / 2, bottom: deepest * 100, full: deepest > 14, bodies: 1 };
}

/** As Markdown; the words that stand in it are our own. */
function image(svg: string, says: string): string {
  const bytes = new TextEncoder().encode(svg);
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return `![${plain(says)}](data:image/svg+xml;base64,${btoa(text)}|width=${width})`;
}
