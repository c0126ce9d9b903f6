// The pieces of the player, made once, and a state drawn into them.
import { momentOf } from '../../language/playback/at.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { startByHand, type ByHand } from './by-hand.ts';
import { createCallout } from './callout.ts';
import { createClock } from './clock.ts';
import { createControls } from './controls.ts';
import { createCourt } from './draw.ts';
import { createFindings } from './findings.ts';
import { handlesAt } from './handles.ts';
import { createJobs, type JobsView } from './jobs.ts';
import { createHelp } from './keyboard.ts';
import { createLanes } from './lanes.ts';
import { createFrame } from './layout.ts';
import type { Picking } from './picking.ts';
import type { Playing } from './playing.ts';
import { createPlays, type PlaysView } from './plays.ts';
import type { Port } from './port.ts';
import { createRuns } from './runs.ts';
import { chooseMan, currentRun, type LabelledRun, type PlayerState, type Showing } from './state.ts';
import type { ToEditor } from './to-editor.ts';
import { createTold, sayMoment } from './told.ts';

export interface Screen {
  readonly draw: (state: PlayerState) => void;
  /** To a screen reader. */
  readonly say: (words: string) => void;
  readonly plays: PlaysView;
  readonly jobs: Pick<JobsView, 'offerOnPaper' | 'isOnPaper' | 'step'>;
  /** Where there is no editor nothing can be written. */
  readonly byHand: ByHand | undefined;
  /** What a finding says, at its spot. */
  readonly tellFinding: (index: number) => void;
  readonly openHelp: () => void;
  /** Drags draw new lines, or move what is written again. */
  readonly toggleDrawing: () => void;
  readonly toggleTeam: () => boolean;
  readonly isTeam: () => boolean;
  /** What has come up over the floor goes. */
  readonly clear: () => void;
}

export interface Around {
  readonly port: Port;
  readonly showing: Showing;
  readonly editor: ToEditor;
  readonly picking: Picking;
  readonly playing: Playing;
  readonly showTeam: () => void;
  readonly showPlay: (playback: Playback) => void;
  /** Something else than the state has changed. */
  readonly redraw: () => void;
}

export function createScreen({ port, showing, editor, picking, playing, showTeam, showPlay, redraw }: Around): Screen {
  let loaded: { readonly playback: Playback | null; readonly run: LabelledRun | undefined } | undefined;
  let drawing = false;

  const clock = createClock();
  const court = createCourt(picking);
  const controls = createControls({ togglePlaying: playing.toggle, stepMoment: playing.stepMoment, seek: playing.seek, speed: playing.setSpeed, showTeam, help: openHelp, draw: toggleDrawing });
  const runs = createRuns(playing.chooseRun);
  const jobs = createJobs((who) => showing.update(chooseMan(showing.state(), who)), picking.job, port.host === 'page');
  const words = createTold((part) => picking.part(part));
  const plays = createPlays(showPlay);
  const byHand = port.host === 'panel'
    ? startByHand({ post: port.post, shown: showing.state, picked: picking.handle, say: words.say, answered: () => callout.hide(), place: () => court.svg.getBoundingClientRect() })
    : undefined;
  const lanes = createLanes({ body: picking.body, mark: picking.mark, step: picking.part, seek: playing.seek }, byHand?.lanes);
  const findings = createFindings(picking.finding, byHand?.fix);
  const callout = createCallout(byHand?.fix);
  const help = createHelp(byHand !== undefined);
  const layout = createFrame({
    clock: clock.root, plays: plays.root, court: court.svg, controls: controls.root, runs: runs.root, jobs: jobs.root, jobsBelow: jobs.below, lanes: lanes.root, findings: findings.root, told: words.root, live: words.live, help, bench: plays.bench, callout: callout.root,
    ...(byHand !== undefined && { hand: byHand.floor.root, chip: byHand.chip.root }),
  });
  new ResizeObserver(resized).observe(court.svg);
  addEventListener('resize', resized);

  function resized(): void {
    court.resized();
    redraw();
  }

  function toggleTeam(): boolean {
    const on = layout.toggleTeam();
    resized();
    return on;
  }

  function load(playback: Playback | null, run: LabelledRun | undefined): void {
    if (loaded !== undefined && loaded.playback === playback && loaded.run === run) return;
    loaded = { playback, run };
    court.load(playback, run);
    byHand?.letGo();
    callout.hide();
    for (const view of [clock, runs, lanes, findings]) view.load(playback, run);
    words.load(playback);
    jobs.load(playback);
    editor.anew();
  }

  function draw(state: PlayerState): void {
    const run = currentRun(state);
    const { playback, t, playing: moves, lit, part } = state;
    load(playback, run);
    layout.frame(state);
    controls.frame(state);
    if (playback === null || run === undefined) return;
    clock.frame(playback, run, t);
    const moment = momentOf(playback, run, t);
    court.frame(moment, lit, part);
    // While it plays nothing is taken hold of; while something is held nothing else comes up.
    if (byHand !== undefined && !byHand.floor.holds()) byHand.floor.show(moves ? [] : handlesAt(playback, run, moment, part, drawing), court.drawn());
    lanes.frame(state);
    words.frame(part);
    jobs.frame(state);
    layout.caption(sayMoment(playback, run, moment));
    editor.now(playback, run, moment);
  }

  function openHelp(): void {
    if (help.open) return;
    help.showModal();
    // Its button has the keyboard, and may lie below what a low window shows.
    help.scrollTop = 0;
  }

  function toggleDrawing(): void {
    drawing = !drawing;
    controls.drawing(drawing);
    redraw();
  }

  function tellFinding(index: number): void {
    findings.mark(index);
    // Once the picture of its moment is drawn.
    requestAnimationFrame(() => {
      const finding = showing.state().playback?.findings[index];
      if (finding === undefined) return;
      const at = finding.spot && court.onScreen(finding.spot.x * 100, finding.spot.y * 100);
      const box = court.svg.getBoundingClientRect();
      callout.show(finding, index, at && { x: at.x - box.left, y: at.y - box.top });
    });
  }

  function clear(): void {
    callout.hide();
    if (drawing) toggleDrawing();
  }

  return { draw, say: words.say, plays, jobs, byHand, tellFinding, openHelp, toggleDrawing, toggleTeam, isTeam: layout.isTeam, clear };
}
