// What is picked with a click or a key: a man, a part of the play, a mark on a lane, a finding. It is marked here, and its words in the text.
import { momentOf } from '../../language/playback/at.ts';
import type { BodyId, PartId } from '../../language/play/play.ts';
import type { Handle } from './handles.ts';
import type { Job } from './jobs.ts';
import type { LaneMark } from './lane-marks.ts';
import { MESSAGES_VERSION } from './messages.ts';
import * as change from './state.ts';
import { currentRun, type Showing } from './state.ts';
import type { ToEditor } from './to-editor.ts';

export interface Picking {
  readonly body: (id: BodyId) => void;
  /** `t` where picking it also goes there in time, else only when it is not on show. */
  readonly part: (part: PartId, t?: number) => void;
  /** A job leads to its moment; he who does it stays lit. */
  readonly job: (job: Job) => void;
  readonly mark: (mark: LaneMark) => void;
  /** By its place in the playback. */
  readonly finding: (index: number) => void;
  readonly handle: (handle: Handle) => void;
}

/** @param tell shows what a finding says, once the picture of its moment is drawn */
export function createPicking({ state, update }: Showing, editor: Pick<ToEditor, 'select'>, tell: (finding: number) => void): Picking {
  function body(id: BodyId): void {
    const { playback, t } = state();
    const run = currentRun(state());
    if (playback === null || run === undefined) return;
    const doing = momentOf(playback, run, t).bodies.find((body) => body.id === id)?.action;
    const latest = run.tracks[id]?.segments.findLast(({ t0 }) => t0 <= t)?.action;
    const picked = doing ?? latest ?? 'from';
    // A defender has no jobs of his own: those that are listed stay.
    update({ ...change.pick(state(), picked), lit: [id], man: id.startsWith('X') ? state().man : id });
    editor.select(picked);
  }

  function part(picked: PartId, t?: number): void {
    update(t === undefined ? change.follow(change.pause(state()), { v: MESSAGES_VERSION, kind: 'cursor', part: picked }) : change.seek(change.pick(state(), picked), t));
    editor.select(picked);
  }

  function job({ part: picked, run, at }: Job): void {
    const { playback, man } = state();
    const nth = playback?.runs.findIndex(({ id }) => id === run) ?? -1;
    if (nth < 0 || at === undefined) return part(picked);
    const there = change.seek(change.chooseRun(change.pause(state()), nth), at);
    update({ ...change.pick(there, picked), ...(man !== undefined && { lit: [man] }) });
    editor.select(picked);
  }

  function mark({ finding: index, part: picked, from }: LaneMark): void {
    if (index !== undefined) finding(index);
    else if (picked === undefined) update(change.pause(change.seek(state(), from)));
    else part(picked, from);
  }

  function finding(index: number): void {
    const { playback } = state();
    const found = playback?.findings[index];
    if (playback === null || found === undefined) return;
    const run = found.run === undefined ? -1 : playback.runs.findIndex(({ id }) => id === found.run);
    const at = run < 0 ? state() : change.chooseRun(state(), run);
    const marked = change.pick(change.pause(at), found.part);
    update(found.moment === undefined ? marked : change.seek(marked, found.moment));
    tell(index);
    editor.select(found.part, found.place);
  }

  function handle({ kind, who, part: written }: Handle): void {
    if (kind === 'player' || kind === 'draw' || written === undefined) body(who);
    else part(written);
  }

  return { body, part, job, mark, finding, handle };
}
