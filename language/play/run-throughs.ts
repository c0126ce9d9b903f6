import type { Play, RunThrough, Step, StepKey } from './play.ts';

/**
 * Every way through the play, steps in text order and looks in the order the coach wants them read: to each look, to a stated end, and to
 * a step with nothing after it that has no look.
 */
export function runThroughs(play: Play): readonly RunThrough[] {
  return play.steps.flatMap(step => {
    const steps = pathTo(play, step.key).map(({ key }) => key);
    const looks = step.looks.map(look => ({ id: look.id, steps, look: look.id }));
    return endsHere(play, step) ? [...looks, { id: step.key, steps }] : looks;
  });
}

function endsHere(play: Play, step: Step): boolean {
  if (step.end !== undefined) return true;
  return step.looks.length === 0 && !play.steps.some(other => other.parent === step.key);
}

/** The steps from the root to a step, itself last; empty where the play has no such step. */
export function pathTo(play: Pick<Play, 'steps'>, key: StepKey): readonly Step[] {
  const path: Step[] = [];
  let step = play.steps.find(each => each.key === key);
  while (step !== undefined && !path.includes(step)) {
    path.unshift(step);
    const { parent } = step;
    step = parent === null ? undefined : play.steps.find(each => each.key === parent);
  }
  return path;
}
