// A written wait, a moment of a look and an event in a coach's words: as they could stand in a line.
import type { Action, BodyId, EventRef, LookPin, Wait } from '../play/play.ts';
import { inPlural } from './say-action.ts';
import { saySeconds } from './say-seconds.ts';
import { sayWrittenPlace } from './say-written-place.ts';
import { thirdPerson } from './verbs.ts';

/** `as 4 rolls`, `once 3 clears 4`, `2 seconds later`, `at 9 on the clock`: reads back to the same wait. To a man himself, `you` is `once you clear 4`. */
export function sayWait(wait: Wait, you?: BodyId): string | undefined {
  if (wait.kind === 'later') return `${saySeconds(wait.seconds)} later`;
  if (wait.kind === 'after') return `${saySeconds(wait.seconds)} after ${sayEvent(wait.event, you)}`;
  if (wait.kind !== 'clock') return `${wait.kind} ${sayEvent(wait.event, you)}`;
  // What counts from the start or the call has no line of its own: it comes from a step's clock.
  return wait.clock === 'period' || wait.clock === 'shot' ? `at ${wait.seconds} ${sayClock(wait.clock)}` : undefined;
}

/** The waits of an action; who holds does so until the clock shows that. */
export function sayWaitsOf(action: Action, you?: BodyId): readonly string[] {
  // The gate that closes behind a man says by itself whom it waits for.
  if (action.kind === 'move' && action.verb === 'close-behind') return [];
  const stands = action.kind === 'hold' || (action.kind === 'dribble' && action.style === 'keep');
  return action.waits.flatMap((wait) => {
    const said = sayWait(wait, you);
    return said === undefined ? [] : [stands && wait.kind === 'clock' ? said.replace(/^at /, 'until ') : said];
  });
}

/** `4 is set`, `1 reaches lane`, `3 clears 4`, `1 passes to 2`. */
export function sayEvent({ who, does, place, other }: EventRef, you?: BodyId): string {
  const words = who === you ? ['you', inPlural(thirdPerson(does))] : [who, thirdPerson(does)];
  if (other !== undefined) words.push(betweenVerbAndMan(does), other === you ? 'you' : other);
  else if (does === 'come-off') words.push('the screen');
  if (place !== undefined) words.push(does === 'reach' || does === 'leave' ? '' : does === 'catch' ? 'at' : 'to', sayWrittenPlace(place));
  return words.filter((word) => word !== '').join(' ');
}

function betweenVerbAndMan(does: string): string {
  if (['clear', 'come-off', 'close-behind'].includes(does)) return '';
  if (/pass|lob|skip|throw|swing|reverse|kick|hand-off|inbound|tip/.test(does)) return 'to';
  if (does === 'dribble') return 'at';
  return /screen/.test(does) ? 'for' : 'off';
}

/** `on the roll`, `as he comes off 4`, `about 3 seconds after the start`, `at left block`. */
export function sayPin(pin: LookPin, you?: BodyId): string {
  switch (pin.kind) {
    case 'on':
      return `on the ${pin.style}`;
    case 'as':
      return `${sayAs(pin.after)} ${sayEvent(pin.event, you)}`;
    case 'off':
      return `as ${you === undefined ? 'he comes' : 'you come'} off ${pin.screener === you ? 'you' : pin.screener}`;
    case 'later':
      return `${saySeconds(pin.seconds)} later`;
    case 'place':
      return `at ${sayWrittenPlace(pin.place)}`;
    case 'at':
      return pin.of === 'start' || pin.of === 'call' ? `at ${saySeconds(pin.seconds)} after the ${pin.of}` : `at ${pin.seconds} ${sayClock(pin.of)}`;
  }
}

/** `as`, `1 second after` what the look goes by. */
export function sayAs(after: number | undefined): string {
  return after === undefined ? 'as' : `${saySeconds(after)} after`;
}

function sayClock(clock: 'period' | 'shot'): string {
  return clock === 'shot' ? 'on the shot clock' : 'on the clock';
}
