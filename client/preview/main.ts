// The player: the same code in the page and in the editor's panel. It shows what it is given and computes neither text nor times.
import './player.css';
import { momentOf, type Moment } from '../../language/playback/at.ts';
import { momentsOf } from '../../language/playback/moments.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import type { BodyId, PartId } from '../../language/play/play.ts';
import { startByHand } from './by-hand.ts';
import { createCallout } from './callout.ts';
import { createClock } from './clock.ts';
import { createControls } from './controls.ts';
import { createCourt } from './draw.ts';
import { createFindings } from './findings.ts';
import { handlesAt, type Handle } from './handles.ts';
import { createInbox } from './inbox.ts';
import { createFrame } from './layout.ts';
import { createHelp, listenToKeys } from './keyboard.ts';
import type { LaneMark } from './lane-marks.ts';
import { createLanes } from './lanes.ts';
import { MESSAGES_VERSION, type Kept, type Show, type ToPlayer } from './messages.ts';
import { dataOfPage, openPage } from './open-page.ts';
import { printOnPaper } from './paper.ts';
import { openPort } from './port.ts';
import { createPlays } from './plays.ts';
import { createRuns } from './runs.ts';
import * as change from './state.ts';
import { currentRun, type PlayerState } from './state.ts';
import { createTold, partNow, sayMoment, sayWithTime } from './told.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

const port = openPort();
const calm = matchMedia('(prefers-reduced-motion: reduce)');

let state: PlayerState = change.initialState(port.kept);
let loaded: { playback: PlayerState['playback']; run: change.LabelledRun | undefined } | undefined;
let scheduled = false;
/** The picture that was drawn before its frame. */
let early: number | undefined;
let before: number | undefined;
let told: PartId | null | undefined;
let drawing = false;
let autoplay = false;
let keeping: ReturnType<typeof setTimeout> | undefined;
let kept: Kept | undefined;

const inbox = createInbox();
const clock = createClock();
const court = createCourt({ body: pickBody, part: pickPart, finding: pickFinding });
const controls = createControls({ togglePlaying, stepMoment, seek, speed: setSpeed, showTeam, help: openHelp, draw: toggleDrawing });
const runs = createRuns(chooseRun);
const words = createTold((part) => pickPart(part));
const plays = createPlays(showPlay);
// Where there is no editor nothing can be written.
const byHand = port.host === 'panel'
  ? startByHand({ post: port.post, shown: () => state, picked: pickHandle, say: words.say, answered: () => callout.hide(), place: () => court.svg.getBoundingClientRect() })
  : undefined;
const lanes = createLanes({ body: pickBody, mark: pickMark, step: (part, t) => pickPart(part, t), seek }, byHand?.lanes);
const findings = createFindings(pickFinding, byHand?.fix);
const callout = createCallout(byHand?.fix);
const help = createHelp(byHand !== undefined);
const layout = createFrame({
  clock: clock.root, plays: plays.root, court: court.svg, controls: controls.root, runs: runs.root, lanes: lanes.root, findings: findings.root, told: words.root, live: words.live, help, callout: callout.root,
  ...(byHand !== undefined && { hand: byHand.floor.root, chip: byHand.chip.root }),
});

function pickHandle({ kind, who, part }: Handle): void {
  if (kind === 'player' || kind === 'draw' || part === undefined) pickBody(who);
  else pickPart(part);
}

function toggleDrawing(): void {
  drawing = !drawing;
  controls.drawing(drawing);
  schedule();
}

/** A change by hand or by message: drawn at the next frame. */
function update(next: PlayerState): void {
  if (next === state) return;
  state = next;
  schedule();
}

function schedule(): void {
  if (scheduled) return;
  scheduled = true;
  requestAnimationFrame(frame);
}

function frame(now: number): void {
  scheduled = false;
  const arrived = inbox.takeShow();
  if (arrived !== undefined) receive(arrived);
  const seq = arrived?.seq ?? early;
  early = undefined;
  // After the picture it belongs to, however the two arrived.
  const pointed = state.playback === null ? undefined : inbox.takeCursor();
  if (pointed !== undefined) {
    byHand?.chip.past();
    state = pointed.mark === true ? change.pick(state, pointed.part) : change.follow(state, pointed);
  }
  // A window that was hidden comes back with a long gap: the play does not jump over it.
  if (state.playing && before !== undefined) state = change.advance(state, Math.min(now - before, 100));
  before = state.playing ? now : undefined;
  draw();
  keepSoon();
  if (seq !== undefined && seq === state.seq) report(seq);
  if (state.playing) schedule();
}

/** At rest a picture is drawn as it comes, in the time until the next frame and not in the frame's own; what else comes until then waits for it. */
function drawEarly(): void {
  if (scheduled || state.playing) return;
  const arrived = inbox.takeShow();
  if (arrived === undefined) return;
  early = arrived.seq;
  receive(arrived);
  draw();
}

function receive(message: Show): void {
  if (message.seq < state.seq) return;
  const read = message.playback === null ? undefined : readPlayback(message.playback);
  if (read?.ok !== false) {
    state = change.show(state, message, read?.playback ?? null);
    return;
  }
  state = change.refuse(state, message.seq, read.message);
  port.post({ v: MESSAGES_VERSION, kind: 'refused', seq: message.seq, message: read.message });
}

/** For the editor, and for whoever measures from the key to the picture. */
function report(seq: number): void {
  document.documentElement.dataset.seq = String(seq);
  performance.clearMarks('setwright:shown');
  performance.mark('setwright:shown', { detail: seq });
  port.post({ v: MESSAGES_VERSION, kind: 'shown', seq });
}

function draw(): void {
  const run = currentRun(state);
  const { playback } = state;
  if (loaded === undefined || loaded.playback !== playback || loaded.run !== run) {
    loaded = { playback, run };
    court.load(playback, run);
    byHand?.letGo();
    callout.hide();
    for (const view of [clock, runs, lanes, findings]) view.load(playback, run);
    words.load(playback);
    told = undefined;
  }
  const shown = inSteps(state);
  layout.frame(shown);
  controls.frame(shown);
  if (playback === null || run === undefined) return;
  clock.frame(playback, run, shown.t);
  const moment = momentOf(playback, run, shown.t);
  court.frame(moment, state.lit, state.part);
  // While it plays nothing is taken hold of; while something is held nothing else comes up.
  if (byHand !== undefined && !byHand.floor.holds()) byHand.floor.show(shown.playing ? [] : handlesAt(playback, run, moment, state.part, drawing), court.viewBox(), court.scale());
  lanes.frame(shown);
  words.frame(state.part);
  layout.caption(sayMoment(playback, run, moment));
  tellNow(moment, run);
}

/** As the reader's system asks, or the editor's own setting. */
const wantsCalm = (): boolean => calm.matches || document.body.classList.contains('vscode-reduce-motion');

/** With reduced motion nothing glides: the picture goes from moment to moment. */
function inSteps(real: PlayerState): PlayerState {
  const run = currentRun(real);
  if (!wantsCalm() || !real.playing || run === undefined) return real;
  return { ...real, t: momentsOf(run).findLast(({ t }) => t <= real.t)?.t ?? 0 };
}

function tellNow(moment: Moment, run: change.LabelledRun): void {
  const part = partNow(run, moment);
  if (part === told || state.playback === null) return;
  told = part;
  port.post({ v: MESSAGES_VERSION, kind: 'now', play: state.playback.play.key, part, t: Math.round(moment.t) });
}

/** Keeps play, run-through, time and speed a moment after they change, whoever changes them; while the play moves now and then. */
function keepSoon(): void {
  if (keeping !== undefined || !isKeptOtherwise()) return;
  keeping = setTimeout(() => {
    keeping = undefined;
    kept = change.keptOf(state) ?? kept;
    if (kept === undefined) return;
    port.keep(kept);
    port.post(kept);
  }, state.playing ? 1000 : 200);
}

const isKeptOtherwise = (): boolean => {
  const { playback, t, speed } = state;
  return playback !== null && (kept === undefined || kept.play !== playback.play.key || kept.t !== Math.round(t) || kept.speed !== speed || kept.run !== currentRun(state)?.id);
};

function sayHere(): void {
  const run = currentRun(state);
  if (state.playback !== null && run !== undefined) words.say(sayWithTime(state.playback, run, momentOf(state.playback, run, state.t)));
}

function togglePlaying(): void {
  update(change.togglePlaying(state));
  if (!state.playing) sayHere();
}

function stepMoment(by: 1 | -1): void {
  update(change.stepMoment(state, by));
  sayHere();
  if (state.part !== undefined) select(state.part);
}

function seek(t: number): void {
  update(change.seek(state, t));
}

function nudge(seconds: number): void {
  update(change.pause(change.seek(state, state.t + seconds * 1000)));
  sayHere();
}

function setSpeed(speed: number): void {
  update(change.setSpeed(state, speed));
}

function changeSpeed(by: 1 | -1): void {
  const next = change.SPEEDS[change.SPEEDS.findIndex((speed) => speed === state.speed) + by];
  if (next !== undefined) setSpeed(next);
}

function chooseRun(index: number): void {
  update(change.chooseRun(state, index));
  const run = currentRun(state);
  if (run !== undefined) words.say(tell(message('Run-through {nth}: {run}', { nth: state.run + 1, run: run.label })));
}

function pickBody(id: BodyId): void {
  const run = currentRun(state);
  if (state.playback === null || run === undefined) return;
  const doing = momentOf(state.playback, run, state.t).bodies.find((body) => body.id === id)?.action;
  const latest = run.tracks[id]?.segments.findLast(({ t0 }) => t0 <= state.t)?.action;
  const part = doing ?? latest ?? 'from';
  update({ ...change.pick(state, part), lit: [id] });
  select(part);
}

/** Marks a part; `t` where picking it also goes there in time, else only when it is not on show. */
function pickPart(part: PartId, t?: number): void {
  const picked = t === undefined ? change.follow(change.pause(state), { v: MESSAGES_VERSION, kind: 'cursor', part }) : change.seek(change.pick(state, part), t);
  update(picked);
  select(part);
}

function pickMark(mark: LaneMark): void {
  if (mark.finding !== undefined) {
    pickFinding(mark.finding);
    return;
  }
  if (mark.part === undefined) update(change.pause(change.seek(state, mark.from)));
  else pickPart(mark.part, mark.from);
}

function pickFinding(index: number): void {
  const finding = state.playback?.findings[index];
  if (state.playback === null || finding === undefined) return;
  const run = finding.run === undefined ? -1 : state.playback.runs.findIndex(({ id }) => id === finding.run);
  const at = run < 0 ? state : change.chooseRun(state, run);
  const marked = change.pick(change.pause(at), finding.part);
  update(finding.moment === undefined ? marked : change.seek(marked, finding.moment));
  findings.mark(index);
  // Once the picture of its moment is drawn.
  requestAnimationFrame(() => showCallout(index));
  port.post({ v: MESSAGES_VERSION, kind: 'select', play: state.playback.play.key, part: finding.part, place: finding.place });
}

function showCallout(index: number): void {
  const finding = state.playback?.findings[index];
  if (finding === undefined) return;
  const at = finding.spot && court.onScreen(finding.spot.x * 100, finding.spot.y * 100);
  const box = court.svg.getBoundingClientRect();
  callout.show(finding, index, at && { x: at.x - box.left, y: at.y - box.top });
}

function select(part: PartId): void {
  if (state.playback !== null) port.post({ v: MESSAGES_VERSION, kind: 'select', play: state.playback.play.key, part, place: state.playback.text[part] });
}

function showTeam(): void {
  const on = layout.toggleTeam();
  if (port.host === 'page' && document.fullscreenEnabled) {
    if (on) void document.documentElement.requestFullscreen().catch(() => undefined);
    else if (document.fullscreenElement !== null) void document.exitFullscreen();
  }
}

function leave(): void {
  callout.hide();
  if (drawing) toggleDrawing();
  if (layout.isTeam()) showTeam();
  else update(change.pick(state, undefined));
}

function openHelp(): void {
  if (!help.open) help.showModal();
}

function hear(message: ToPlayer): void {
  if (message.kind === 'outcome') return byHand?.hear(message);
  if (message.kind === 'team') return layout.isTeam() ? undefined : showTeam();
  if (inbox.put(message)) {
    drawEarly();
    schedule();
  } else if (message.kind === 'show') port.post({ v: MESSAGES_VERSION, kind: 'missed', seq: message.seq });
}

// What was told of the last change by hand does not linger over the next thing.
for (const done of ['pointerdown', 'keydown'] as const) addEventListener(done, () => byHand?.chip.past(), true);
listenToKeys({ togglePlaying, stepMoment, nudge, toStart: () => seek(0), toEnd: () => seek(Infinity), chooseRun, speed: changeSpeed, choosePlay: plays.step, showTeam, help: openHelp, leave, ...(byHand !== undefined && { draw: toggleDrawing }) });
addEventListener('fullscreenchange', () => {
  if (document.fullscreenElement === null && layout.isTeam()) layout.toggleTeam();
});
new ResizeObserver(() => {
  court.resized();
  schedule();
}).observe(court.svg);
calm.addEventListener('change', schedule);

document.body.classList.add(port.host);
port.listen(hear);
port.post({ v: MESSAGES_VERSION, kind: 'ready', ...(port.kept !== undefined && { kept: true }) });
const data = dataOfPage();
if (data === undefined) schedule();
else void showPage(data);

async function showPage(text: string): Promise<void> {
  const opened = await openPage(text);
  if (opened.plays.length === 0) return update(change.refuse(state, 0, opened.refusal));
  autoplay = opened.autoplay;
  printOnPaper(opened.plays, opened.sections);
  plays.load(opened.plays, opened.sections);
}

/** A play of the page, from its beginning; it moves when the page does, or when the one before it did. */
function showPlay(playback: Playback): void {
  const moves = (state.seq < 0 ? autoplay : state.playing) && !calm.matches;
  state = { ...change.initialState(), seq: state.seq, speed: state.speed };
  inbox.put({ v: MESSAGES_VERSION, kind: 'show', seq: state.seq + 1, title: playback.play.name, playback, stale: false });
  frame(performance.now());
  if (moves) togglePlaying();
}
