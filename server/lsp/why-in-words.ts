// "Why so late?", from the causes the timeline kept, in a coach's words.
import type { Compiled } from '../../language/compile.ts';
import type { Action, PartId, Play } from '../../language/play/play.ts';
import type { EventId, EventKind, Reason, Run, TimedEvent } from '../../language/timeline/timeline.ts';
import { why, type WhyStep } from '../../language/timeline/why.ts';
import { sayAction } from '../../language/words/say-action.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';

/** Longer chains are cut: what happened ten causes ago helps nobody. */
const mostCauses = 6;
/** A cause that adds less than this only passes on the one before it. */
const unfelt = 50;

/** Why an event comes no earlier, the nearest cause first, each a sentence. Empty for the call. */
export function sayWhy(compiled: Compiled, run: Run, event: EventId): readonly string[] {
  const chain = why(run, event).filter(({ cause }) => cause.delay >= unfelt || !passesOn.has(cause.reason));
  const said = chain.slice(0, mostCauses).map((step) => sentence(sayCause(compiled, run, step)));
  return chain.length > mostCauses ? [...said, 'And so on, back to the call.'] : said;
}

const passesOn: ReadonlySet<Reason> = new Set(['legs', 'read', 'flight', 'reaction', 'hand-over', 'catch-to-release']);

function sayCause({ play }: Compiled, run: Run, { event, cause }: WhyStep): string {
  const from = run.events.find(({ id }) => id === cause.from);
  const before = from === undefined ? 'what comes before it' : sayEvent(play, from);
  const since = from === undefined ? '' : `, from ${sayMoment(from.at)}`;
  const takes = sayMoment(cause.delay);
  const who = event.who ?? actionOf(play, event.part)?.who;
  const he = who ?? 'he';
  switch (cause.reason) {
    case 'own-last-action':
      return `${he} is free only after ${before}`;
    case 'chain':
      return `it follows on from ${before}`;
    case 'step-opens':
      return cause.delay < unfelt ? `${he} starts with the step: ${before}` : `${he} reacts within ${takes} to ${before}`;
    case 'set-up':
      return `the team needs ${takes} to get into its places and start`;
    case 'reaction':
      return `${he} reacts within ${takes} to ${before}`;
    case 'legs':
      return `${he} needs ${takes} for the way${since}`;
    case 'flight':
      return `the ball is in the air for ${takes}${since}`;
    case 'screen':
      if (event.kind === 'free') return `${he} stays until his man is past: ${before}`;
      return `${he} leaves so as to come past just after the screen is set: ${before}`;
    case 'meets-cutter':
      return `ball and man are to meet: ${before}`;
    case 'ball-order':
      return `the ball is needed first for ${before}`;
    case 'written-wait':
      return `you wrote it so: ${before}${cause.delay < unfelt ? '' : `, and ${takes} more`}`;
    case 'read':
      return `seeing it takes ${takes}${since}`;
    case 'catch-to-release':
      return `getting the shot off takes ${takes}${since}`;
    case 'hand-over':
      return `handing the ball over takes ${takes}${since}`;
    case 'look-order':
      return `the look before comes first: ${before}`;
  }
}

const states: Readonly<Record<EventKind, string>> = {
  call: 'the call', open: 'open', start: 'begins', arrive: 'there', set: 'set', use: 'used', free: 'free', release: 'thrown', catch: 'caught', take: 'taken', touch: 'touched',
  read: 'there', 'passed-up': 'passed up', shot: 'shot', rim: 'at the rim', end: 'over',
};

/** `1 dribbles to left wing (there at 5.6 s)`. */
function sayEvent(play: Play, { kind, part, at }: TimedEvent): string {
  if (kind === 'call') return play.start.throwIn === undefined ? 'the call' : 'the hand-over';
  return `${sayPart(play, part)} (${states[kind]} at ${sayMoment(at)})`;
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** An action, look or step by its words. */
export function sayPart(play: Play, part: PartId): string {
  const action = actionOf(play, part);
  if (action !== undefined) return sayAction(action);
  const look = play.steps.flatMap(({ looks }) => looks).find(({ id }) => id === part);
  if (look !== undefined) return look.label === undefined ? `look for ${look.who.join(' or ')}` : `“${look.label}” for ${look.who.join(' or ')}`;
  return play.steps.some(({ key }) => key === part) ? stepName(play, part) : part;
}

export function actionOf(play: Play, id: PartId): Action | undefined {
  for (const step of play.steps) {
    const found = step.actions.find((action) => action.id === id) ?? step.kept.find((action) => action.id === id) ?? step.looks.flatMap(({ tail }) => tail).find((action) => action.id === id);
    if (found !== undefined) return found;
  }
  return undefined;
}

export function stepName(play: Play, key: string): string {
  const step = play.steps.find((one) => one.key === key);
  return step === undefined ? key : `“${step.name}”`;
}
