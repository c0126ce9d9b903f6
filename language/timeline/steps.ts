/** When a step opens (rules 1, 2, 6, 17), and what a defender does when it is taken (rule 17). */
import type { BodyId, Step } from '../play/play.ts';
import type { Branch, Item } from './branch.ts';
import { happen, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { edge, latestOf, varyingEdge } from './graph.ts';
import { hasBall } from './items.ts';
import { tenths } from './passes.ts';
import { problem } from './problem-codes.ts';
import { replacedScreenOf } from './screens.ts';
import { clockMoment } from './waits.ts';

/** A step opens when its parent's last ball action is done and its last look passed up; the first one after the call. */
export function openStep(branch: Branch, step: Step): void {
  const parent = branch.steps[branch.steps.length - 1];
  const edges = [...(parent === undefined ? [callEdge(branch)] : openingEdges(branch, parent)), ...clockEdges(branch, step)];
  const { winner } = latestOf(branch.scene.graph, edges);
  const who = parent === undefined ? undefined : branch.scene.graph.events[edges[winner]!.from]!.timed.who;
  const open = happen(branch, `${step.key}:open`, 'open', step.key, who, edges);
  branch.opened.set(step.key, open);
  tellTooLate(branch, step, open);
  actOutCondition(branch, step, open);
}

/** `when 5 to 8 seconds are left`: the step is kept back until the clock shows the most of them (rule 18). */
function clockEdges(branch: Branch, step: Step): readonly Edge[] {
  const { condition } = step;
  if (condition?.kind !== 'clock') return [];
  const at = clockMoment(branch, { clock: condition.clock, seconds: condition.to });
  if (at !== undefined) return [edge(at.event, 'written-wait', at.ms)];
  tell(branch, problem('clock-unknown', step.key, { who: `“${step.name}”`, clock: condition.clock }));
  return [];
}

function tellTooLate(branch: Branch, step: Step, open: number): void {
  const { condition } = step;
  const at = condition?.kind === 'clock' ? clockMoment(branch, { clock: condition.clock, seconds: condition.from }) : undefined;
  if (at === undefined) return;
  const late = whenOf(branch, open) - whenOf(branch, at.event) - at.ms;
  if (late > 50) tell(branch, problem('time-not-kept', step.key, { who: `“${step.name}”`, seconds: tenths(late) }, { moment: whenOf(branch, open) }));
}

/** Getting into place, unless the team is set or the ball is dead, and the delay of the first action; its spread is the same under any name of the play. */
function callEdge(branch: Branch): Edge {
  const { level } = branch.scene;
  const setUp = setUpMs(branch);
  const delay = Math.round(level.startDelay * 1000);
  if (setUp === 0) return varyingEdge(branch.events[0]!, 'set-up', 0, delay, 'reaction', 'play');
  return varyingEdge(branch.events[0]!, 'set-up', delay, setUp, 'set-up', 'play');
}

function setUpMs(branch: Branch): number {
  const { start } = branch.scene.play;
  return start.alreadySet || start.dead || start.throwIn !== undefined ? 0 : Math.round(branch.scene.level.setUp * 1000);
}

function openingEdges(branch: Branch, parent: string): readonly Edge[] {
  const open = branch.opened.get(parent)!;
  const edges: Edge[] = [edge(open, 'step-opens')];
  const settled = branch.items.filter((item) => item.step === parent && branch.settled.has(item.key));
  const ball = settled.filter((item) => item.kind === 'action' && hasBall(item)).at(-1);
  if (ball !== undefined) edges.push(edge(branch.settled.get(ball.key)!.done, 'ball-order'));
  const look = settled.filter((item) => item.kind === 'look').at(-1);
  if (look?.kind === 'look') edges.push(edge(branch.looks.get(look.look.id)!.passedUp, 'look-order'));
  if (ball === undefined && look === undefined) edges.push(...startedEdges(branch, settled));
  return edges;
}

/** A step with neither ball action nor look: the next one opens once its moves have started. */
function startedEdges(branch: Branch, settled: readonly Item[]): readonly Edge[] {
  return settled.filter((item) => item.kind === 'action').map((item) => edge(branch.settled.get(item.key)!.start, 'step-opens'));
}

const atTheScreen = new Set(['show', 'switch', 'hedge', 'trap', 'go-under', 'go-over', 'go-through', 'go-behind', 'trail', 'drop', 'help']);

/** A sentence about a defender makes him act: at the screen it speaks of, set on this path or in the step replaced; else as the step opens. */
function actOutCondition(branch: Branch, step: Step, open: number): void {
  const { condition } = step;
  if (condition?.kind !== 'defence') return;
  const cue = atTheScreen.has(condition.verb) ? cueOf(branch, step, condition.who, condition.on) : undefined;
  const edges = cue === undefined ? [edge(open, 'step-opens')] : [cue.kind === 'seen' ? edge(open, 'screen', Math.max(0, cue.at - whenOf(branch, open))) : edge(cue.event, 'screen')];
  for (const who of [condition.who, ...(condition.also ?? [])]) happen(branch, `${step.key}:start.${who}`, 'start', step.key, who, edges);
}

type Cue = { readonly kind: 'seen'; readonly at: number } | { readonly kind: 'here'; readonly event: number };

function cueOf(branch: Branch, step: Step, who: BodyId, on: BodyId | undefined): Cue | undefined {
  const man = who.slice(-1) as BodyId;
  const replaced = replacedScreenOf(branch, step.key, man) ?? (on === undefined ? undefined : replacedScreenOf(branch, step.key, on));
  if (replaced !== undefined) return { kind: 'seen', at: replaced.set };
  const here = [...branch.screens.values()].filter(({ action }) => action.who === man || (on !== undefined && action.users.includes(on))).at(-1);
  return here && { kind: 'here', event: here.set };
}
