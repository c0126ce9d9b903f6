// What a play tells along each way through it, whatever its steps are called and its lines are numbered.
import type { Action, Look, Play } from '../play/play.ts';
import { pathTo, runThroughs } from '../play/run-throughs.ts';

/** Keys that name a place in the text or in the order of lines. */
const places: ReadonlySet<string> = new Set(['id', 'step', 'line', 'link', 'part', 'repeats', 'parent', 'within']);

/** The actions and looks of every run-through in order, as one text to compare. */
export function toldAlong(play: Play): string {
  return plain(
    runThroughs(play).map(({ steps, look }) => {
      const path = pathTo(play, steps.at(-1)!);
      const said = path.flatMap(({ kept, actions, looks, end }, at) => [...kept, ...actions, ...(at < path.length - 1 ? looks : []), ...(end === undefined ? [] : [end.text])]);
      return [...said, path.at(-1)?.looks.find(({ id }) => id === look)];
    }),
  );
}

/** All actions and looks, step by step in no order of looks. */
export function toldInAll(play: Play): string {
  const looks = play.steps.flatMap((step): readonly Look[] => step.looks).map(plain).toSorted();
  return plain([play.steps.flatMap((step): readonly Action[] => step.actions), looks]);
}

/** What else the play says: start, clock, notes, demands. Whose step a note stands in does not count. */
export function saidBesides({ steps: _, key, ...rest }: Play): string {
  return `${key} ${plain(rest)}`;
}

const plain = (value: unknown): string => JSON.stringify(value, (key, inner: unknown) => (places.has(key) ? undefined : inner));
