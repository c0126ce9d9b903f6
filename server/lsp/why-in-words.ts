// "Why so late?", from the causes the timeline kept, in a coach's words.
import type { Compiled } from '../../language/compile.ts';
import { message, oneOf, type Message, type Param, type Words } from '../../language/message/message.ts';
import type { Action, PartId, Play } from '../../language/play/play.ts';
import type { EventId, EventKind, Reason, Run, TimedEvent } from '../../language/timeline/timeline.ts';
import { why, type WhyStep } from '../../language/timeline/why.ts';
import { sayAction } from '../../language/words/say-action.ts';
import { sayPin } from '../../language/words/say-wait.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';

/** Longer chains are cut: what happened ten causes ago helps nobody. */
const mostCauses = 6;
/** A cause that adds less than this only passes on the one before it. */
const unfelt = 50;

/** Why an event comes no earlier, the nearest cause first, each a sentence. Empty for the call. */
export function sayWhy(compiled: Compiled, run: Run, event: EventId): readonly Message[] {
  const chain = why(run, event).filter(({ cause }) => cause.delay >= unfelt || !passesOn.has(cause.reason));
  const said = chain.slice(0, mostCauses).map((step) => sayCause(compiled, run, step));
  return chain.length > mostCauses ? [...said, message('And so on, back to the call.')] : said;
}

const passesOn: ReadonlySet<Reason> = new Set(['legs', 'read', 'flight', 'reaction', 'hand-over', 'catch-to-release']);

function sayCause({ play }: Compiled, run: Run, { event, cause }: WhyStep): Message {
  const from = run.events.find(({ id }) => id === cause.from);
  const before = from === undefined ? message('what comes before it') : sayEvent(play, from);
  const since = sayMoment(from?.at ?? event.at - cause.delay);
  const takes = sayMoment(cause.delay);
  const who: Param = event.who ?? actionOf(play, event.part)?.who ?? message('He');
  switch (cause.reason) {
    case 'own-last-action':
      return message('{who} is free only after {before}.', { who, before });
    case 'chain':
      return message('It follows on from {before}.', { before });
    case 'step-opens':
      return cause.delay < unfelt ? message('{who} starts with the step: {before}.', { who, before }) : message('{who} reacts within {takes} to {before}.', { who, takes, before });
    case 'set-up':
      return message('The team needs {takes} to get into its places and start.', { takes });
    case 'reaction':
      return message('{who} reacts within {takes} to {before}.', { who, takes, before });
    case 'legs':
      return message('{who} needs {takes} for the way, from {since}.', { who, takes, since });
    case 'flight':
      return message('The ball is in the air for {takes}, from {since}.', { takes, since });
    case 'screen':
      if (event.kind === 'free') return message('{who} stays until his man is past: {before}.', { who, before });
      return message('{who} leaves so as to come past just after the screen is set: {before}.', { who, before });
    case 'meets-cutter':
      return message('Ball and man are to meet: {before}.', { before });
    case 'ball-order':
      return message('The ball is needed first for {before}.', { before });
    case 'written-wait':
      return cause.delay < unfelt ? message('You wrote it so: {before}.', { before }) : message('You wrote it so: {before}, and {takes} more.', { before, takes });
    case 'read':
      return message('Seeing it takes {takes}, from {since}.', { takes, since });
    case 'catch-to-release':
      return message('Getting the shot off takes {takes}, from {since}.', { takes, since });
    case 'hand-over':
      return message('Handing the ball over takes {takes}, from {since}.', { takes, since });
    case 'look-order':
      return message('The look before comes first: {before}.', { before });
  }
}

/** `1 dribbles to left wing (there at 5.6 s)`. */
function sayEvent(play: Play, { kind, part, at }: TimedEvent): Message {
  return kind === 'call' ? (play.start.throwIn === undefined ? message('the call') : message('the hand-over')) : events[kind]({ what: sayPart(play, part), at: sayMoment(at) });
}

const events: Readonly<Record<Exclude<EventKind, 'call'>, (params: { readonly what: Param; readonly at: string }) => Message>> = {
  open: (params) => message('{what} (open at {at})', params),
  start: (params) => message('{what} (begins at {at})', params),
  arrive: (params) => message('{what} (there at {at})', params),
  set: (params) => message('{what} (set at {at})', params),
  use: (params) => message('{what} (used at {at})', params),
  free: (params) => message('{what} (free at {at})', params),
  release: (params) => message('{what} (thrown at {at})', params),
  catch: (params) => message('{what} (caught at {at})', params),
  take: (params) => message('{what} (taken at {at})', params),
  touch: (params) => message('{what} (touched at {at})', params),
  read: (params) => message('{what} (there at {at})', params),
  'passed-up': (params) => message('{what} (passed up at {at})', params),
  shot: (params) => message('{what} (shot at {at})', params),
  rim: (params) => message('{what} (at the rim at {at})', params),
  end: (params) => message('{what} (over at {at})', params),
};

/** An action, look or step by its words. */
export function sayPart(play: Play, part: PartId): Words {
  const action = actionOf(play, part);
  if (action !== undefined) return sayAction(action);
  const look = play.steps.flatMap(({ looks }) => looks).find(({ id }) => id === part);
  if (look !== undefined) {
    const { label, pin } = look;
    const who = oneOf(look.who);
    if (label !== undefined) return message('“{label}” for {who}', { label, who });
    return pin === undefined ? message('look for {who}', { who }) : message('look for {who} {pin}', { who, pin: sayPin(pin) });
  }
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
