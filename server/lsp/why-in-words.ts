// "Why so late?", from the causes the timeline kept, in a coach's words.
import type { Compiled } from '../../language/compile.ts';
import type { Action, PartId, Play } from '../../language/play/play.ts';
import type { EventId, Run, TimedEvent } from '../../language/timeline/timeline.ts';
import { why, type WhyStep } from '../../language/timeline/why.ts';
import { sayAction } from '../../language/words/say-action.ts';
import { sayMoment, saySeconds } from '../../language/words/say-seconds.ts';

/** Longer chains are cut: what happened ten causes ago helps nobody. */
const mostSteps = 6;

/** Why an event comes when it does, the nearest cause first. Empty for the call. */
export function sayWhy(compiled: Compiled, run: Run, event: EventId): readonly string[] {
  const chain = why(run, event);
  const said = chain.slice(0, mostSteps).map((step) => sayCause(compiled, run, step));
  return chain.length > mostSteps ? [...said, `… and so on back to ${run.startsAt === 0 ? 'the start' : 'the call'}.`] : said;
}

function sayCause(compiled: Compiled, run: Run, { event, cause }: WhyStep): string {
  const from = run.events.find(({ id }) => id === cause.from);
  const before = from === undefined ? 'what comes before' : `${sayEvent(compiled, from)} (${sayMoment(from.at)})`;
  const delay = saySeconds(cause.delay / 1000);
  const after = cause.delay < 50 ? '' : `, ${delay} before`;
  const what = `${sayMoment(event.at)}: ${sayEvent(compiled, event)}`;
  switch (cause.reason) {
    case 'own-last-action':
      return `${what}. He is free from then on: ${before}.`;
    case 'chain':
      return `${what}. It follows on: ${before}.`;
    case 'step-opens':
      return `${what}. The step is open from then on: ${before}.`;
    case 'set-up':
      return `${what}. Getting into place takes ${delay}.`;
    case 'reaction':
      return `${what}. He reacts to it within ${delay}: ${before}.`;
    case 'legs':
      return `${what}. The way takes ${delay} from then: ${before}.`;
    case 'flight':
      return `${what}. The ball is in the air for ${delay}: ${before}.`;
    case 'screen':
      return `${what}. It waits for the screen: ${before}.`;
    case 'meets-cutter':
      return `${what}. Ball and man are to meet: ${before}.`;
    case 'ball-order':
      return `${what}. The ball comes here first: ${before}.`;
    case 'written-wait':
      return `${what}. As you wrote it${after}: ${before}.`;
    case 'read':
      return `${what}. Seeing that it is there takes ${delay}: ${before}.`;
    case 'catch-to-release':
      return `${what}. From the catch to the release takes ${delay}: ${before}.`;
    case 'hand-over':
      return `${what}. Handing the ball over takes ${delay}: ${before}.`;
    case 'look-order':
      return `${what}. The look before it comes first: ${before}.`;
  }
}

/** `5's screen is set`, `3 is there (3 cuts off 5 to top)`. */
export function sayEvent(compiled: Compiled, { kind, part, who, id }: TimedEvent): string {
  const deed = sayPart(compiled.play, part);
  switch (kind) {
    case 'call':
      return compiled.play.start.throwIn === undefined ? 'the call' : 'the hand-over';
    case 'open':
      return `the step ${stepName(compiled.play, part)} is open`;
    case 'start':
      return `he starts: ${deed}`;
    case 'arrive':
      return `he is there: ${deed}`;
    case 'set':
      return `the screen is set: ${deed}`;
    case 'use':
      return `${who ?? id.slice(id.lastIndexOf('.') + 1)} comes past the screen: ${deed}`;
    case 'free':
      return `the screener is free: ${deed}`;
    case 'release':
      return `the ball leaves his hands: ${deed}`;
    case 'catch':
      return `the ball is caught: ${deed}`;
    case 'take':
      return `the ball is handed over: ${deed}`;
    case 'touch':
      return 'the ball is touched on the court and the game clock runs';
    case 'read':
      return `the look is there: ${deed}`;
    case 'passed-up':
      return `the look is passed up: ${deed}`;
    case 'shot':
      return `the shot leaves the hand: ${deed}`;
    case 'rim':
      return 'the ball reaches the rim';
    case 'end':
      return 'the play ends';
  }
}

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
  return step === undefined || step.name === '' ? 'at the start' : `“${step.name}”`;
}
