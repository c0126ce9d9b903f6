// What stands under the pointer: who, where, when, how fast, and why then; a look's times and what they leave.
import { MarkupKind, type Hover, type Position } from 'vscode-languageserver-types';
import { blockAtLine, blockOfKey } from '../../language/book/book.ts';
import type { Compiled, FileFinding } from '../../language/compile.ts';
import type { BodyId, LookId, PartId } from '../../language/play/play.ts';
import { stateAtCall } from '../../language/play/state.ts';
import type { LookTime, Run, Segment } from '../../language/timeline/timeline.ts';
import { sayPlace } from '../../language/words/say-place.ts';
import { least, sayMoment } from '../../language/words/say-seconds.ts';
import type { OpenDocument } from './documents.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import { partAt } from './parts.ts';
import { runOf } from './moment-of-part.ts';
import { holds, rangeOf, visibleRange } from './positions.ts';
import { floorDrawing, momentDrawing, stepDrawing, type Theme } from './small-drawing.ts';
import { actionOf, sayPart, sayWhy } from './why-in-words.ts';

/** `theme`: the colours of drawings, in an editor that shows images. */
export function hover(document: OpenDocument, compiled: Compiled | undefined, findings: readonly FileFinding[], position: Position, theme?: Theme): Hover | null {
  const rules = rulesAt(document, findings, position);
  const part = compiled && partUnder(document, compiled, position);
  const told = part === undefined ? [] : tellPart(compiled!, part.part);
  // The drawing right below the name: a hover shows little more without scrolling.
  const parts = [...told.slice(0, 1), ...(part === undefined ? [] : drawn(compiled!, part.part, theme)), ...told.slice(1), ...rules];
  if (parts.length === 0) return null;
  return { contents: { kind: MarkupKind.Markdown, value: parts.join('\n\n') }, ...(part !== undefined && { range: part.range }) };
}

function partUnder(document: OpenDocument, compiled: Compiled, { line, character }: Position) {
  const { firstLine } = blockAtLine(document.file, line);
  const found = partAt(compiled.places, line - firstLine, character);
  // Blank space at the ends of a line is nobody's.
  if (found === undefined || character < found.place.at || character > found.place.to) return undefined;
  return { part: found.part, range: rangeOf(firstLine, found.place) };
}

/** What the findings at this place rest on. */
function rulesAt({ file }: OpenDocument, findings: readonly FileFinding[], position: Position): readonly string[] {
  return findings.flatMap(({ block: key, firstLine, place, source, code }) => {
    const block = blockOfKey(file, key);
    if (block === undefined || source === undefined || !holds(visibleRange(block, firstLine, place), position)) return [];
    return [`*Rule:* ${plain(restsOn(source))} (\`${code}\`)`];
  });
}

/** A step as it is printed, the moment of a look, where everybody stands at the call. */
function drawn(compiled: Compiled, part: PartId, theme: Theme): readonly string[] {
  const { play, timeline, court } = compiled;
  if (theme === undefined) return [];
  const time = timeline.times.looks.find(({ look }) => look === part);
  const run = time && timeline.runs.find(({ id }) => id === time.run);
  if (run !== undefined) return momentDrawing(compiled, run.id, run.releaseAt ?? run.end, theme);
  if (play.steps.some(({ key }) => key === part)) return stepDrawing(compiled, part, theme);
  if (part === 'from' || part.startsWith('from#')) return floorDrawing(court, { where: stateAtCall(play).places, holder: `${play.start.ball.value}` as BodyId }, 'Where everybody stands at the call', theme);
  return part === 'play' && play.steps[0] !== undefined ? stepDrawing(compiled, play.steps[0].key, theme) : [];
}

function tellPart(compiled: Compiled, part: PartId): readonly string[] {
  const { play, timeline } = compiled;
  const time = timeline.times.looks.find(({ look }) => look === part);
  if (time !== undefined) return tellLook(compiled, part, time);
  if (actionOf(play, part) !== undefined) return tellAction(compiled, part);
  if (play.steps.some(({ key }) => key === part)) return tellStep(compiled, part);
  return tellHeader(compiled, part);
}

function tellAction(compiled: Compiled, part: PartId): readonly string[] {
  const { play } = compiled;
  const title = `**${plain(sayPart(play, part))}**`;
  const run = runOf(compiled, part);
  if (run === undefined) return [title, 'It does not happen on any way through the play.'];
  const events = run.events.filter((event) => event.part === part).toSorted((a, b) => a.at - b.at);
  const first = events[0]!;
  const legs = Object.values(run.tracks).flatMap(({ segments }) => segments.filter(({ action }) => action === part));
  const flights = run.ball.filter((ball) => ball.kind === 'flight' && ball.action === part);
  const facts = [
    `From ${sayMoment(first.at)} to ${sayMoment(events.at(-1)!.at)} after ${zero(compiled)}.`,
    ...(legs.length === 0 ? [] : [tellLegs(compiled, legs)]),
    ...flights.map((ball) => `The ball is in the air for ${sayMoment(ball.t1 - ball.t0)}${ball.kind === 'flight' ? `, ${metres(Math.hypot(ball.to.x - ball.from.x, ball.to.y - ball.from.y))}` : ''}.`),
  ];
  return [title, facts.join('  \n'), ...tellWhy(compiled, run, first.id)];
}

function tellLegs({ court }: Compiled, legs: readonly Segment[]): string {
  const [first, last] = [legs[0]!, legs.at(-1)!];
  const way = `${sayPlace(court, first.path[0]!)} → ${sayPlace(court, last.path.at(-1)!)}`;
  const length = legs.reduce((sum, { profile }) => sum + profile.distance, 0);
  const seconds = legs.reduce((sum, { t0, t1 }) => sum + t1 - t0, 0);
  const fastest = Math.max(...legs.map(({ profile }) => profile.peak));
  return `${plain(way)}: ${metres(length)} in ${sayMoment(seconds)}${first.withBall ? ' with the ball' : ''}, ${fastest.toFixed(1)} m/s at most.`;
}

function tellLook(compiled: Compiled, look: LookId, time: LookTime): readonly string[] {
  const { play, timeline } = compiled;
  const run = timeline.runs.find(({ id }) => id === time.run);
  const rows = [`Typically ${sayMoment(time.typical)} after ${zero(compiled)}, late ${sayMoment(time.late)} (nine runs of ten are quicker), early ${sayMoment(time.early)}.`];
  const setUp = time.setUp > 0 ? `, ${sayMoment(time.setUp)} of it getting into place` : '';
  rows.push(`That is the ball leaving the hand${setUp}; it is in the air for ${sayMoment(time.flight)}.`);
  const { call, leave } = play.clock;
  if (call !== undefined && run !== undefined) {
    const left = call.from * 1000 - (time.late - run.clockStartsAt) - time.flight;
    const asked = leave === undefined ? '' : ` You ask for ${leave} s.`;
    rows.push(left >= 0 ? `Called with ${call.from} s on the clock, a late miss leaves ${least(left)} s.${asked}` : `Called with ${call.from} s on the clock, a late one comes ${sayMoment(-left)} after the horn.`);
  }
  const release = run?.events.find(({ kind, part }) => kind === 'shot' && part.startsWith(look)) ?? run?.events.find(({ part, kind }) => part === look && kind === 'read');
  return [`**${plain(sayPart(play, look))}**`, rows.join('  \n'), ...(run === undefined || release === undefined ? [] : tellWhy(compiled, run, release.id))];
}

function tellStep(compiled: Compiled, key: PartId): readonly string[] {
  const { play, timeline } = compiled;
  const step = play.steps.find((one) => one.key === key)!;
  const run = timeline.runs.find(({ steps }) => steps.includes(key));
  const open = run?.events.find(({ kind, part }) => kind === 'open' && part === key);
  const ways = timeline.runs.filter(({ steps }) => steps.includes(key)).length;
  const title = `**${plain(step.name || 'The start')}**`;
  if (run === undefined || open === undefined) return [title];
  return [title, `Open from ${sayMoment(open.at)} after ${zero(compiled)}, on ${ways === 1 ? 'one way' : `${ways} ways`} through the play.`, ...tellWhy(compiled, run, open.id)];
}

/** The head of the play and its clock lines say when to call it. */
function tellHeader({ play, timeline }: Compiled, part: PartId): readonly string[] {
  const { firstLook, allLooks } = timeline.times;
  if (!['play', 'call', 'window', 'leave'].includes(part) || firstLook === undefined || allLooks === undefined) return [];
  const set = (needed: typeof firstLook) => (needed.alreadySet === needed.fromCall ? '' : ` (already set: ${needed.alreadySet})`);
  return [
    `**${plain(play.name)}**`,
    [`First look: call it with ${firstLook.fromCall} or more on the clock${set(firstLook)}.`, `All looks: ${allLooks.fromCall} or more${set(allLooks)}.`].join('  \n'),
    '*Figures of a model, not a promise: time your own team.*',
  ];
}

function tellWhy(compiled: Compiled, run: Run, event: string): readonly string[] {
  const said = sayWhy(compiled, run, event);
  return said.length === 0 ? [] : [['*Why then?*', ...said.map((line) => `- ${plain(line)}`)].join('\n')];
}

const zero = ({ play }: Compiled): string => (play.start.throwIn === undefined ? 'the call' : 'the hand-over');
const metres = (length: number): string => `${length.toFixed(1)} m`;

/** A coach's own words stay words in Markdown. */
export const plain = (text: string): string => text.replace(/&/g, '&amp;').replace(/[\\`*_{}[\]<>#|~]|^[-+]|(?<=^\d+)\./g, '\\$&');
