// What stands under the pointer: who, where, when, how fast, and why then; a look's times and what they leave.
import { MarkupKind, type Hover, type Position } from 'vscode-languageserver-types';
import { blockAtLine, blockOfKey } from '../../language/book/book.ts';
import type { BodyId, LookId, PartId, Play, Rebound } from '../../language/play/play.ts';
import type { Compiled } from '../../language/compile.ts';
import type { FileFinding } from '../../language/keeper.ts';
import { stateAtCall } from '../../language/play/state.ts';
import type { LookTime, Run, Segment } from '../../language/timeline/timeline.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { message, type Message, type Say } from '../../language/message/message.ts';
import { distance } from '../../language/court/point.ts';
import { sayAbout } from '../../language/words/say-place.ts';
import { least, sayMoment } from '../../language/words/say-seconds.ts';
import { tellStanding } from '../../language/words/tell-play.ts';
import type { OpenDocument } from './documents.ts';
import { throwInOf } from '../../language/checks/moments.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import { partAt } from './parts.ts';
import { runOf } from './moment-of-part.ts';
import { plain } from './plain.ts';
import { holds, rangeOf, visibleRange } from './positions.ts';
import { floorDrawing, momentDrawing, stepDrawing, type Theme } from './small-drawing.ts';
import { tellName, type Elsewhere } from './hover-names.ts';
import { tellSetting } from './hover-settings.ts';
import { actionOf, sayPart, sayWhy } from './why-in-words.ts';

/** What a hover is told in: `theme`, the colours of drawings in an editor that shows images, and its language. */
export interface Telling {
  readonly say: Say;
  readonly theme?: Theme;
}

type Hovering = Telling & Elsewhere;

export function hover(document: OpenDocument, compiled: Compiled | undefined, findings: readonly FileFinding[], position: Position, telling: Hovering): Hover | null {
  const rules = rulesAt(document, findings, position, telling.say);
  const setting = tellSetting(document, position, telling.say) ?? tellName(document, position, { ...telling, tellCall: (play) => withDrawing(play, 'play', telling) });
  if (setting !== undefined) return { contents: { kind: MarkupKind.Markdown, value: [...setting.parts, ...rules].join('\n\n') }, range: setting.range };
  const part = compiled && partUnder(document, compiled, position);
  const parts = [...(part === undefined ? [] : withDrawing(compiled!, part.part, telling)), ...rules];
  if (parts.length === 0) return null;
  return { contents: { kind: MarkupKind.Markdown, value: parts.join('\n\n') }, ...(part !== undefined && { range: part.range }) };
}

/** The drawing right below the name: a hover shows little more without scrolling. */
function withDrawing(compiled: Compiled, part: PartId, telling: Telling): readonly string[] {
  const told = tellPart(compiled, part, telling.say);
  return [...told.slice(0, 1), ...drawn(compiled, part, telling), ...told.slice(1)];
}

function partUnder(document: OpenDocument, compiled: Compiled, { line, character }: Position) {
  const { firstLine } = blockAtLine(document.file, line);
  const rebound = reboundsOf(compiled.play).map(({ part }) => ({ part, place: compiled.places.get(part) })).find(({ place }) => place?.line === line - firstLine && place.at <= character && character <= place.to);
  const found = rebound?.place === undefined ? partAt(compiled.places, line - firstLine, character) : { part: rebound.part, place: rebound.place };
  // Blank space at the ends of a line is nobody's.
  if (found === undefined || character < found.place.at || character > found.place.to) return undefined;
  return { part: found.part, range: rangeOf(firstLine, found.place) };
}

/** What the findings at this place rest on. */
function rulesAt({ file }: OpenDocument, findings: readonly FileFinding[], position: Position, say: Say): readonly string[] {
  return findings.flatMap(({ block: key, firstLine, place, source, code }) => {
    const block = blockOfKey(file, key);
    if (block === undefined || source === undefined || !holds(visibleRange(block, firstLine, place), position)) return [];
    return [say(message('*Rule:* {rule} (`{code}`)', { rule: plain(say(restsOn(source))), code }))];
  });
}

/** A step as it is printed, the moment of a look, where everybody stands at the call. */
function drawn(compiled: Compiled, part: PartId, { theme, say }: Telling): readonly string[] {
  const { play, timeline, court } = compiled;
  if (theme === undefined) return [];
  const time = timeline.times.looks.find(({ look }) => look === part);
  const run = time && timeline.runs.find(({ id }) => id === time.run);
  if (run !== undefined) return momentDrawing(compiled, run.id, run.releaseAt ?? run.end, theme, say);
  if (play.steps.some(({ key }) => key === part)) return stepDrawing(compiled, part, theme, say);
  if (part === 'from' || part.startsWith('from#')) return floorDrawing(court, { where: stateAtCall(play).places, holder: `${play.start.ball.value}` as BodyId }, say(message('Where everybody stands at the call')), theme);
  return part === 'play' && play.steps[0] !== undefined ? stepDrawing(compiled, play.steps[0].key, theme, say) : [];
}

function tellPart(compiled: Compiled, part: PartId, say: Say): readonly string[] {
  const { play, timeline } = compiled;
  const time = timeline.times.looks.find(({ look }) => look === part);
  if (time !== undefined) return tellLook(compiled, part, time, say);
  if (actionOf(play, part) !== undefined) return tellAction(compiled, part, say);
  if (play.steps.some(({ key }) => key === part)) return tellStep(compiled, part, say);
  return tellHeader(compiled, part, say);
}

function tellAction(compiled: Compiled, part: PartId, say: Say): readonly string[] {
  const { play } = compiled;
  const title = `**${plain(say(sayPart(play, part)))}**`;
  const run = runOf(compiled, part);
  if (run === undefined) return [title, say(message('It does not happen on any way through the play.'))];
  const events = run.events.filter((event) => event.part === part).toSorted((a, b) => a.at - b.at);
  const first = events[0]!;
  const legs = Object.values(run.tracks).flatMap(({ segments }) => segments.filter(({ action }) => action === part));
  const facts = [
    tellSpan(compiled, first.at, Math.max(events.at(-1)!.at, ...legs.map(({ t1 }) => t1))),
    ...(legs.length === 0 ? [] : [tellLegs(compiled, legs)]),
    ...run.ball.flatMap((ball) => (ball.kind === 'flight' && ball.action === part ? [message('The ball is in the air for {seconds}, {metres} m.', { seconds: sayMoment(ball.t1 - ball.t0), metres: tenth(distance(ball.from, ball.to)) })] : [])),
  ];
  return [title, facts.map(say).join('  \n'), ...tellWhy(compiled, run, first.id, say)];
}

/** Who is there already begins and ends at once. A way that nobody waits for has no event at its end. */
function tellSpan(compiled: Compiled, begins: number, ends: number): Message {
  const [from, to] = [sayMoment(begins), sayMoment(ends)];
  const after = afterZero(compiled);
  return from === to ? message('At {from} {after}.', { from, after }) : message('From {from} to {to} {after}.', { from, to, after });
}

function tellLegs({ court }: Compiled, legs: readonly Segment[]): Message {
  const [first, last] = [legs[0]!, legs.at(-1)!];
  const length = legs.reduce((sum, { profile }) => sum + profile.distance, 0);
  const seconds = legs.reduce((sum, { t0, t1 }) => sum + t1 - t0, 0);
  const params = {
    way: message('{from} → {to}', { from: sayAbout(court, first.path[0]!), to: sayAbout(court, last.path.at(-1)!) }),
    metres: tenth(length),
    seconds: sayMoment(seconds),
    fastest: tenth(Math.max(...legs.map(({ profile }) => profile.peak))),
  };
  return first.withBall ? message('{way}: {metres} m in {seconds} with the ball, {fastest} m/s at most.', params) : message('{way}: {metres} m in {seconds}, {fastest} m/s at most.', params);
}

function tellLook(compiled: Compiled, look: LookId, time: LookTime, say: Say): readonly string[] {
  const { play, timeline } = compiled;
  const run = timeline.runs.find(({ id }) => id === time.run);
  const flight = sayMoment(time.flight);
  const rows = [
    [message('Typically {typical} {after}, late {late} (nine runs of ten are quicker), early {early}.', { typical: sayMoment(time.typical), after: afterZero(compiled), late: sayMoment(time.late), early: sayMoment(time.early) })],
    [time.setUp > 0 ? message('That is the ball leaving the hand, {setUp} of it getting into place; it is in the air for {flight}.', { setUp: sayMoment(time.setUp), flight }) : message('That is the ball leaving the hand; it is in the air for {flight}.', { flight })],
  ];
  const { call, leave } = play.clock;
  if (call !== undefined && run !== undefined) {
    const left = call.from * 1000 - (time.late - run.clockStartsAt) - time.flight;
    const called = call.from;
    if (left >= 0) rows.push([message('Called with {called} s on the clock, a late miss leaves {left} s.', { called, left: least(left) }), ...(leave === undefined ? [] : [message('You ask for {leave} s.', { leave })])]);
    else rows.push([message('Called with {called} s on the clock, a late one comes {over} after the horn.', { called, over: sayMoment(-left) })]);
  }
  const release = run?.events.find(({ kind, part }) => kind === 'shot' && part.startsWith(look)) ?? run?.events.find(({ part, kind }) => part === look && kind === 'read');
  return [`**${plain(say(sayPart(play, look)))}**`, rows.map((row) => row.map(say).join(' ')).join('  \n'), ...(run === undefined || release === undefined ? [] : tellWhy(compiled, run, release.id, say))];
}

function tellStep(compiled: Compiled, key: PartId, say: Say): readonly string[] {
  const { play, timeline } = compiled;
  const step = play.steps.find((one) => one.key === key)!;
  const run = timeline.runs.find(({ steps }) => steps.includes(key));
  const open = run?.events.find(({ kind, part }) => kind === 'open' && part === key);
  const ways = timeline.runs.filter(({ steps }) => steps.includes(key)).length;
  const title = `**${plain(step.name || say(message('The start')))}**`;
  if (run === undefined || open === undefined) return [title];
  const since = { at: sayMoment(open.at), after: afterZero(compiled) };
  const opens = ways === 1 ? message('Open from {at} {after}, on one way through the play.', since) : message('Open from {at} {after}, on {ways} ways through the play.', { ...since, ways });
  return [title, say(opens), ...tellWhy(compiled, run, open.id, say)];
}

/** The head of the play and its clock lines say when to call it; the others what they mean on the floor. */
function tellHeader({ play, timeline }: Compiled, part: PartId, say: Say): readonly string[] {
  if (part === 'from' || part.startsWith('from#')) return [`**${say(message('At the call'))}**`, plain(tellStanding(play, say))];
  if (part === 'against') return tellDefence(play, say);
  if (part.startsWith('throw-in') || part === 'inbound') return tellThrowIn(play, timeline, say);
  const rebound = reboundsOf(play).find((one) => one.part === part);
  if (rebound !== undefined) return tellRebound(play, rebound, say);
  const { firstLook, allLooks } = timeline.times;
  if (!['play', 'call', 'window', 'leave'].includes(part) || firstLook === undefined || allLooks === undefined) return [];
  const [first, all] = [{ seconds: firstLook.fromCall, set: firstLook.alreadySet }, { seconds: allLooks.fromCall, set: allLooks.alreadySet }];
  const rows = [
    first.set === first.seconds ? message('First look: call it with {seconds} or more on the clock.', { seconds: first.seconds }) : message('First look: call it with {seconds} or more on the clock (already set: {set}).', first),
    all.set === all.seconds ? message('All looks: {seconds} or more.', { seconds: all.seconds }) : message('All looks: {seconds} or more (already set: {set}).', all),
  ];
  return [`**${plain(play.name)}**`, rows.map(say).join('  \n'), say(message('*Figures of a model, not a promise: time your own team.*'))];
}

function tellDefence({ defence: { value: { kind, zone, press } } }: Play, say: Say): readonly string[] {
  if (kind === 'none') return [];
  const stands = zone === undefined
    ? (press === true ? message('X1 to X5 each guard the man of their number, all over the floor.') : message('X1 to X5 each guard the man of their number.'))
    : zone.endsWith(' press') ? message('X1 to X5 stand in a {zone}.', { zone }) : message('X1 to X5 stand in a {zone} zone.', { zone });
  const otherwise = message('A line of a step says who does otherwise: `X2 denies 2`.');
  return [`**${say(message('The defence'))}**`, [stands, otherwise].map(say).join(' ')];
}

/** Who throws in and how long that takes beside the count, on the way where it takes longest. */
function tellThrowIn({ start: { throwIn }, clock: { inboundWithin }, rules }: Play, { runs }: Compiled['timeline'], say: Say): readonly string[] {
  const releases = runs.flatMap((run) => throwInOf(run)?.t1 ?? []);
  if (throwIn === undefined || releases.length === 0) return [];
  const release = sayMoment(Math.max(...releases));
  const { value } = ruleSet(rules.value).counts.throwIn;
  return [
    `**${say(message('{who} throws in', { who: `${throwIn.by.value}` }))}**`,
    [
      message('The ball leaves his hand {release} after the hand-over at the latest; the count is {count} s.', { release, count: value }),
      ...(inboundWithin === undefined ? [] : [message('You ask for {asked} s.', { asked: inboundWithin })]),
      message('The clock runs from the touch on the floor.'),
    ].map(say).join('  \n'),
  ];
}

const reboundsOf = ({ rebounds, steps }: Play): readonly Rebound[] => [...rebounds, ...steps.flatMap(({ looks }) => looks.flatMap((look) => look.rebounds))];

function tellRebound({ steps }: Play, { crash, back, within }: Rebound, say: Say): readonly string[] {
  const looks = steps.flatMap((step) => step.looks);
  const [step, look] = [steps.find(({ key }) => key === within), looks.find(({ id }) => id === within)];
  const holds = look !== undefined ? message('It holds for this look.') : step !== undefined ? step.name === '' ? message('It holds for the looks of the first step.') : message('It holds for the looks of {step}.', { step: plain(step.name) }) : message('It holds for every look of the play without one of its own.');
  const groups = [
    ...(crash.length === 0 ? [] : [message('To the boards: {who}.', { who: crash.join(', ') })]),
    ...(back.length === 0 ? [] : [message('Back on defence: {who}.', { who: back.join(', ') })]),
  ];
  return [`**${say(message('After a miss'))}**`, [...groups, holds].map(say).join('  \n')];
}

function tellWhy(compiled: Compiled, run: Run, event: string, say: Say): readonly string[] {
  const said = sayWhy(compiled, run, event);
  return said.length === 0 ? [] : [[say(message('*Why then?*')), ...said.map((line) => `- ${plain(say(line))}`)].join('\n')];
}

const afterZero = ({ play }: Compiled): Message => (play.start.throwIn === undefined ? message('after the call') : message('after the hand-over'));
const tenth = (value: number): string => value.toFixed(1);
