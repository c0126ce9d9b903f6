// The moments of a run-through that a coach steps through, and where its steps begin.
import type { BodyId, LookId, PartId, StepKey } from '../play/play.ts';
import type { EventKind, Run } from '../timeline/timeline.ts';

export interface KeyMoment {
  /** ms from the call. */
  readonly t: number;
  /** What begins or happens there, ball first; never empty. */
  readonly parts: readonly PartId[];
  readonly kind: EventKind;
}

export interface StepSpan {
  readonly key: StepKey;
  readonly from: number;
  readonly to: number;
}

// What a coach would stop at. An arrival is not: the next start or catch is.
const STOPS: readonly EventKind[] = ['call', 'shot', 'release', 'catch', 'take', 'set', 'use', 'read', 'open', 'start', 'touch', 'rim', 'end'];

// Events nearer than this are one moment to the eye.
const SAME_MOMENT = 80;

/** The run's moments in time order: the call, each start, screen, pass, catch and look, and the end. */
export function momentsOf(run: Run): readonly KeyMoment[] {
  const events = run.events
    .filter(({ kind, at }) => STOPS.includes(kind) && at >= 0 && at <= run.end)
    .toSorted((a, b) => a.at - b.at || STOPS.indexOf(a.kind) - STOPS.indexOf(b.kind));
  const moments: { t: number; parts: PartId[]; kind: EventKind }[] = [{ t: 0, parts: [], kind: 'call' }];
  for (const { kind, at, part } of events) {
    const last = moments.at(-1)!;
    if (at - last.t < SAME_MOMENT) {
      if (!last.parts.includes(part)) last.parts.push(part);
    } else moments.push({ t: at, parts: [part], kind });
  }
  const last = moments.at(-1)!;
  if (run.end - last.t >= SAME_MOMENT) moments.push({ t: run.end, parts: [], kind: 'end' });
  else last.t = Math.max(last.t, moments.length > 1 ? run.end : 0);
  return moments;
}

/** The step of a part: `zip` of `zip/3.1`, of `zip?3.1/3.1` and of `zip:2`. */
export function stepOfPart(part: PartId): StepKey {
  const cut = part.search(/[/?:#]/);
  return cut < 0 ? part : part.slice(0, cut);
}

/** The man of an action or a look: `3` of `zip/3.1` and of `zip?3.1`. */
export function bodyOfPart(part: PartId): BodyId | undefined {
  return /[/?](X?[1-5])\.\d+(?:#.*)?$/.exec(part)?.[1] as BodyId | undefined;
}

/** The look an action hangs on: `middle?3.1` of `middle?3.1/3.2`. */
export function lookOfPart(part: PartId): LookId | undefined {
  const slash = part.indexOf('/');
  const owner = slash < 0 ? part : part.slice(0, slash);
  return owner.includes('?') ? owner : undefined;
}

/** The steps of the run in order with the time each is open: from its opening to that of the next. */
export function stepSpans(run: Run): readonly StepSpan[] {
  const known = spans.get(run);
  if (known !== undefined) return known;
  const found = findSpans(run);
  spans.set(run, found);
  return found;
}

// The same for every frame of a run.
const spans = new WeakMap<Run, readonly StepSpan[]>();

function findSpans(run: Run): readonly StepSpan[] {
  const starts = run.steps.map((key) => openingOf(run, key));
  let before = 0;
  const from = starts.map((start, i) => (before = Math.max(before, i === 0 ? 0 : (start ?? before))));
  return run.steps.map((key, i) => ({ key, from: from[i]!, to: from[i + 1] ?? run.end }));
}

function openingOf(run: Run, key: StepKey): number | undefined {
  const opened = run.events.find(({ kind, part }) => kind === 'open' && part === key);
  if (opened !== undefined) return opened.at;
  const times = run.events.filter(({ part }) => stepOfPart(part) === key).map(({ at }) => at);
  return times.length === 0 ? undefined : Math.min(...times);
}

/**
 * The step of this run that a part belongs to: its own, or, where its line was kept from a replaced step, the one open at t.
 */
export function stepInRun(run: Run, part: PartId, t: number): StepKey | undefined {
  const own = stepOfPart(part);
  if (run.steps.includes(own)) return own;
  return stepSpans(run).findLast(({ from }) => from <= t)?.key ?? run.steps[0];
}
