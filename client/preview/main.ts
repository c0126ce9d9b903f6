// The player: the same code in the page and in the editor's panel. It shows what it is given and computes neither text nor times.
// Here its parts are put together, and what arrives or changes is drawn at the next frame.
import './player.css';
import type { Playback } from '../../language/playback/playback.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import { listenToCalm } from './calm.ts';
import { createInbox } from './inbox.ts';
import { listenToKeys } from './keyboard.ts';
import { MESSAGES_VERSION, type Show, type TextKey, type ToPlayer } from './messages.ts';
import { dataOfPage, openPage } from './open-page.ts';
import { areFew } from './job-sheets.ts';
import { printOnPaper } from './paper.ts';
import { createPicking } from './picking.ts';
import { createPlaying } from './playing.ts';
import { openPort } from './port.ts';
import { createScreen } from './screen.ts';
import * as change from './state.ts';
import type { PlayerState, Showing } from './state.ts';
import { createToEditor } from './to-editor.ts';

/** ms after which a panel that has been told nothing says again that it is ready. */
const UNTOLD = 5000;

const port = openPort();

let state: PlayerState = change.initialState(port.kept);
let scheduled = false;
/** The picture that was drawn before its frame. */
let early: number | undefined;
let before: number | undefined;
let autoplay = false;
let isTold = false;

const showing: Showing = {
  state: () => state,
  update(next) {
    if (next === state) return;
    state = next;
    schedule();
  },
};
const inbox = createInbox();
const calm = listenToCalm(schedule);
const editor = createToEditor(port, showing.state);
const picking = createPicking(showing, editor, (finding) => screen.tellFinding(finding));
const playing = createPlaying(showing, editor, (words) => screen.say(words));
const screen = createScreen({ port, showing, editor, picking, playing, showTeam, showPlay, redraw: schedule });

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
    screen.byHand?.chip.past();
    state = pointed.mark === true ? change.pick(state, pointed.part) : change.follow(state, pointed);
  }
  // A window that was hidden comes back with a long gap: the play does not jump over it.
  if (state.playing && before !== undefined) state = change.advance(state, Math.min(now - before, 100));
  before = state.playing ? now : undefined;
  draw();
  editor.keepSoon();
  if (seq !== undefined && seq === state.seq) editor.drawn(seq);
  if (state.playing) schedule();
}

function draw(): void {
  screen.draw(calm.inSteps(state));
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
  editor.refused(message.seq, read.message);
}

function hear(message: ToPlayer): void {
  if (message.kind === 'show') isTold = true;
  if (message.kind === 'outcome') return screen.byHand?.hear(message);
  if (message.kind === 'team') return screen.isTeam() ? undefined : showTeam();
  if (inbox.put(message)) {
    drawEarly();
    schedule();
  } else if (message.kind === 'show') editor.missed(message.seq);
}

/** The floor alone; on a page it takes the whole screen. */
function showTeam(): void {
  const on = screen.toggleTeam();
  if (port.host !== 'page' || !document.fullscreenEnabled) return;
  if (on) void document.documentElement.requestFullscreen().catch(() => undefined);
  else if (document.fullscreenElement !== null) void document.exitFullscreen();
}

function leave(): void {
  screen.clear();
  if (screen.isTeam()) showTeam();
  else showing.update(change.pick(state, undefined));
}

/** The text has the keyboard meanwhile; what had it here gets it back. */
function sayToText(does: TextKey): void {
  const held = document.activeElement;
  if (held instanceof HTMLElement || held instanceof SVGElement) addEventListener('focus', () => void (document.activeElement === document.body && held.focus({ preventScroll: true })), { once: true });
  port.post({ v: MESSAGES_VERSION, kind: 'text', does });
}

// What was told of the last change by hand does not linger over the next thing.
for (const done of ['pointerdown', 'keydown'] as const) addEventListener(done, () => screen.byHand?.chip.past(), true);
listenToKeys({
  togglePlaying: playing.toggle, stepMoment: playing.stepMoment, nudge: playing.nudge, toStart: () => playing.seek(0), toEnd: () => playing.seek(Infinity), chooseRun: playing.chooseRun, speed: playing.changeSpeed,
  choosePlay: screen.plays.step, chooseMan: screen.jobs.step, bench: screen.plays.openBench, showTeam, help: screen.openHelp, leave,
  ...(screen.byHand !== undefined && { draw: screen.toggleDrawing, toText: sayToText }),
});
addEventListener('fullscreenchange', () => {
  if (document.fullscreenElement === null && screen.isTeam()) screen.toggleTeam();
});

document.body.classList.add(port.host);
port.listen(hear);
sayReady(false);
const data = dataOfPage();
if (data === undefined) schedule();
else void showPage(data);

/** While a busy window puts the panel together, what is said or answered can be lost: it is said again until a picture comes. */
function sayReady(again: boolean): void {
  if (isTold || port.host === 'page') return;
  port.post({ v: MESSAGES_VERSION, kind: 'ready', ...(port.kept !== undefined && { kept: true }), ...(again && { again }) });
  setTimeout(sayReady, UNTOLD, true);
}

async function showPage(text: string): Promise<void> {
  const opened = await openPage(text);
  if (opened.plays.length === 0) return showing.update(change.refuse(state, 0, opened.refusal));
  autoplay = opened.autoplay;
  screen.jobs.offerOnPaper(areFew(opened.plays));
  printOnPaper(opened, screen.jobs.isOnPaper);
  screen.plays.load(opened.plays, opened.sections);
}

/** A play of the page, from its beginning; it moves when the page does, or when the one before it did. */
function showPlay(playback: Playback): void {
  const moves = (state.seq < 0 ? autoplay : state.playing) && !calm.ofSystem();
  state = { ...change.initialState(), seq: state.seq, speed: state.speed, man: state.man };
  inbox.put({ v: MESSAGES_VERSION, kind: 'show', seq: state.seq + 1, title: playback.play.name, playback, stale: false });
  frame(performance.now());
  if (moves) playing.toggle();
}
