// `3 is the safety at top`: an outlet. When the last look is passed up he gets the ball, on a way of its own.
import type { ActionId, Pass, Step, StepKey } from './play.ts';
import type { Reader } from './reader.ts';
import { pathTo } from './run-throughs.ts';
import type { Ball } from './scope.ts';
import { ballAfter } from './scope.ts';

const sign = '~safety';

/** Steps that nobody has written: they are made anew once all steps are known. */
export function withoutOutlets(steps: readonly Step[]): readonly Step[] {
  return steps.filter(({ key }) => !key.endsWith(sign));
}

/**
 * Behind each step with looks that nothing follows, a step in which whoever has the ball passes it to the safety of that way, and the way ends.
 * None where no safety is named on the way, or he has the ball already.
 */
export function withOutlets(reader: Reader, steps: readonly Step[], first: Ball): readonly Step[] {
  return steps.flatMap(step => {
    const outlet = step.looks.length === 0 || step.end !== undefined || steps.some(({ parent }) => parent === step.key) ? undefined : outletOf(reader, steps, step, first);
    return outlet === undefined ? [step] : [step, outlet];
  });
}

function outletOf(reader: Reader, steps: readonly Step[], step: Step, first: Ball): Step | undefined {
  const actions = pathTo({ steps }, step.key).flatMap(({ kept, actions: own }) => [...kept, ...own]);
  const role = actions.findLast(({ verb }) => verb === 'safety');
  const ball = actions.reduce(ballAfter, first);
  if (role === undefined || ball.holder === undefined || ball.holder === role.who) return undefined;
  const key = `${step.key}${sign}`;
  const pass: Pass = {
    kind: 'pass', id: `${key}/${ball.holder}.1`, step: key, line: `${key}:1`, link: 0, who: ball.holder, verb: ball.out ? 'inbound' : 'pass', waits: [], origin: 'derived',
    pass: { value: 'pass', origin: 'default' }, to: role.who, early: false, throwIn: ball.out,
  };
  const end = { part: `${key}#end`, text: `the safety, ${role.who}, has the ball`, shot: false, event: { who: role.who, does: 'catch' } };
  putOutlet(reader, key, pass, role.id);
  return { key, name: 'Safety', parent: step.key, how: 'after', condition: { kind: 'remark', text: 'no look is open' }, actions: [pass], kept: [], looks: [], end };
}

/** All of it stands where the safety is named. */
function putOutlet(reader: Reader, key: StepKey, pass: Pass, role: ActionId): void {
  const place = reader.parts.get(role);
  if (place === undefined) return;
  for (const part of [key, pass.line, pass.id, `${pass.id}#to`, `${key}#end`, `${key}#when`]) reader.parts.set(part, place);
}
