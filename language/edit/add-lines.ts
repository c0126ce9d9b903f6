// A new line at the end of a step: a cut or a dribble that was drawn, a pass.
import { message } from '../message/message.ts';
import type { Point } from '../court/point.ts';
import type { BodyId, Play, PlayerNumber, Step, StepKey } from '../play/play.ts';
import { pathTo } from '../play/run-throughs.ts';
import { wordsFor } from '../words/say-place.ts';
import { actionsOf, firstThatMeans, lastLineOf, linesOf, refuse, samePlace, stepOf, type Editable } from './editable.ts';
import type { Intent, Outcome } from './intent.ts';

export function addCut(editable: Editable, { player, step: key, to }: Extract<Intent, { kind: 'add-cut' }>): Outcome {
  const { text, place, point } = wordsFor(editable.court, to, editable.own);
  const who = `${player}` as BodyId;
  const withBall = holderAfter(editable.reading.play, key) === who;
  const kind = withBall ? 'dribble' : 'move';
  return addLine(editable, key, [player], `${player} ${withBall ? 'dribbles' : 'cuts'} to ${text}`, (made) => made.who === who && made.kind === kind && made.to !== undefined && samePlace(made.to.value, place), point);
}

export function addPass(editable: Editable, { from, to, step: key }: Extract<Intent, { kind: 'add-pass' }>): Outcome {
  const { play } = editable.reading;
  if (from === to) return refuse(message('Nobody passes to himself.'));
  const holder = holderAfter(play, key);
  if (holder !== `${from}`) return refuse(holder === undefined ? message('Nobody has the ball there.') : message('{from} has no ball to pass at the end of “{step}”: {holder} has it.', { from, step: stepOf(play, key)?.name ?? key, holder }));
  return addLine(editable, key, [from, to], `${from} passes to ${to}`, (made) => made.kind === 'pass' && made.who === `${from}` && made.to === `${to}`);
}

function addLine(editable: Editable, key: StepKey, named: readonly PlayerNumber[], words: string, means: (made: Step['actions'][number]) => boolean, at?: Point): Outcome {
  const { play, places } = editable.reading;
  const step = stepOf(play, key);
  if (step === undefined && play.steps.length > 0) return refuse(message('This step is no longer in the play.'));
  if (step !== undefined && step.actions.length > 0 && step.actions.every(({ origin }) => origin === 'copied')) return refuse(message('This step is copied from another play or step. Change it there, or write it out here.'));
  if (step !== undefined && step.actions.length > 0 && step.actions.every(({ origin }) => origin === 'derived')) return refuse(message('This step only follows from who is the safety. Write a step of your own for what he does then.'));
  const lines = linesOf(editable);
  const above = step === undefined ? lastWritten(lines) : (lastLineOf(places, step) ?? lastWritten(lines));
  const indent = /^\s*/.exec(lines[above] ?? '')![0] + (step !== undefined && places.get(step.key)?.line !== above ? '' : '  ');
  const known = new Set(actionsOf(play).map(({ id }) => id));
  const edit = { line: above + 1, at: 0, to: 0, text: `${indent}${words}`, newLine: true };
  const read = (after: Play) => actionsOf(after).some((action) => !known.has(action.id) && means(action));
  return firstThatMeans(editable, [{ edits: [edit], words, ...(at !== undefined && { at }) }], { added: true }, read) ?? (step && keptWouldGo(play, step, named)) ?? refuse(message('I cannot write “{words}” into this step. Write it yourself where it belongs.', { words }));
}

/** A counter keeps what a man does in the step it stands instead of, as long as it does not name him itself. */
function keptWouldGo(play: Play, step: Step, named: readonly PlayerNumber[]): Outcome | undefined {
  const player = named.find((one) => step.kept.some(({ who }) => who === `${one}`));
  const other = step.insteadOf === undefined ? undefined : stepOf(play, step.insteadOf)?.name;
  if (player === undefined || other === undefined) return undefined;
  return refuse(message('“{step}” keeps what {player} does in “{other}”; with a line of his own here that would be gone. Write it yourself if you mean it.', { step: step.name, player, other }));
}

function lastWritten(lines: readonly string[]): number {
  return Math.max(0, lines.findLastIndex((line) => line.trim() !== ''));
}

/** Who has the ball at the end of a step, no look taken. */
function holderAfter(play: Play, key: StepKey): BodyId | undefined {
  let holder = `${play.start.ball.value}` as BodyId;
  for (const { kept, actions } of pathTo(play, key)) {
    for (const action of [...kept, ...actions]) if (action.kind === 'pass' || action.kind === 'hand-off') holder = action.to;
  }
  return holder;
}
