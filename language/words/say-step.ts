// A step by its name and by when it is run.
import { message, type Message } from '../message/message.ts';
import type { Play, Step } from '../play/play.ts';
import { sayCondition } from './say-condition.ts';

/** `Slip, instead of Middle, when X4 shows on 3:` */
export function sayStepHead(play: Play, step: Step): Message {
  return message('{step}:', { step: [step.name, ...howItOpens(play, step)] });
}

/** Its heading is its name alone. */
export function hasBareHeading(play: Play, step: Step): boolean {
  return howItOpens(play, step).length === 0;
}

function howItOpens(play: Play, step: Step): readonly Message[] {
  const nameOf = (key: string | null | undefined) => play.steps.find((one) => one.key === key)?.name ?? key ?? '';
  const said = step.condition?.text;
  return [
    ...(step.how === 'instead' ? [message('instead of {step}', { step: nameOf(step.insteadOf) })] : []),
    ...(step.how === 'after' ? [message('after {step}', { step: nameOf(step.parent) })] : []),
    ...(step.how === 'first' ? [message('from the start')] : []),
    ...(said === undefined ? [] : [sayCondition(said)]),
  ];
}
