import { message, oneOf } from '../message/message.ts';
import { check } from './check.ts';
import type { Subject } from './subject.ts';
import type { Look, PartId } from '../play/play.ts';

export const lookOutOfOrder = check({
  code: 'look-out-of-order',
  severity: 'warning',
  needs: 'before',
  source: 'the words of the notation',
  message: 'The look for {who} is to come at {seconds:seconds}, and it stands below the look for {other} at {later:seconds}. Looks are read in the order written: put it above.',
  manual: {
    title: 'Looks in another order than their times',
    why: 'Looks come in the order in which they are written, none before the one above it is passed up. Where times stand beside them they have to run the same way.',
    wrong: 'from 5-out\nlook 2 at about 9 seconds after the start: three\nlook 3 at about 6 seconds after the start: three',
    right: 'from 5-out\nlook 3 at about 6 seconds after the start: three\nlook 2 at about 9 seconds after the start: three',
  },
  *find(subject) {
    for (const { look, above } of outOfOrder(subject)) {
      yield { part: look.id, params: { who: oneOf(look.who), seconds: pinned(look)!, other: oneOf(above.who), later: pinned(above)! }, related: [{ part: above.id, message: message('the later look') }] };
    }
  },
});

/** Looks that this check tells: their missed time is not told again. */
export function pinnedTooEarly(subject: Subject): ReadonlySet<PartId> {
  return new Set(outOfOrder(subject).map(({ look }) => look.id));
}

/** Pairs on one way: the times run from the start or the call, and `of the call` includes getting into place, so only like is held against like. */
function outOfOrder({ ways }: Subject): readonly { readonly look: Look; readonly above: Look }[] {
  const found = new Map<PartId, { look: Look; above: Look }>();
  for (const { steps } of ways) {
    const timed = steps.flatMap(({ looks }) => looks).filter((look) => pinned(look) !== undefined);
    for (const [at, look] of timed.entries()) {
      const above = timed.slice(0, at).find((other) => other.pin?.kind === 'at' && look.pin?.kind === 'at' && other.pin.of === look.pin.of && pinned(other)! > pinned(look)!);
      if (above !== undefined) found.set(look.id, { look, above });
    }
  }
  return [...found.values()];
}

function pinned({ pin }: Look): number | undefined {
  return pin?.kind === 'at' ? pin.seconds : undefined;
}
