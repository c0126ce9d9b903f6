import { message, type Message, type Words } from '../message/message.ts';
import { check } from './check.ts';
import { isBallAction, type BallAction } from '../timeline/items.ts';
import { howHeGotIt, walkBall } from './ball.ts';
import { lineBefore } from './fixes.ts';
import type { Action, Pass } from '../play/play.ts';
import type { Subject } from './subject.ts';

export const ballNeeded = check({
  code: 'ball-needed',
  severity: 'error',
  needs: 'before',
  source: 'what can happen on a floor',
  message: '{who} can’t pass to {to}: {holder} has the ball ({how}).',
  manual: {
    title: 'A pass, dribble, hand-off or shot without the ball',
    why: 'Ball actions happen in the order they are written. When one is written for a man who has not got the ball by then, a pass to him is missing, or the wrong man is named.',
    wrong: '1 dribbles to left slot\n2 passes to 3\nlook 3: three',
    right: '1 dribbles to left slot\n1 passes to 2\n2 passes to 3\nlook 3: three',
  },
  *find(subject) {
    for (const way of subject.ways) {
      const refused = subject.timeline.problems.filter(({ code, run }) => code === 'ball-elsewhere' && (run === undefined || run === way.run.id));
      if (refused.length === 0) continue;
      for (const { action, before } of walkBall(subject, way)) {
        if (!isBallAction(action) || !refused.some(({ part }) => part === action.id)) continue;
        // A pass that was itself refused leaves its receiver without the ball: the first mistake is told, not what follows from it.
        if (before.holder === undefined || before.holder === action.who) continue;
        const { holder } = before;
        const params = { who: action.who, holder, how: howHeGotIt(subject, before) };
        yield {
          part: action.id,
          params: { ...params, to: action.kind === 'pass' ? action.to : '' },
          ...(action.kind !== 'pass' && { instead: whatHeCannot(action, params) }),
          run: way.run.id,
          related: before.by === undefined ? [] : [{ part: before.by.id, message: message('here {holder} has the ball', { holder }) }],
          fixes: onOneLine(subject, before.by, action) ? [] : lineBefore(subject, action.id, `${holder} passes to ${action.who}`, message('Pass to {who} first', { who: action.who })),
        };
      }
    }
  },
});

/** A pass put above the line would stand before the one that brings the ball. */
function onOneLine({ places }: Subject, by: Action | undefined, action: Action): boolean {
  return by !== undefined && places.get(by.id)?.line === places.get(action.id)?.line;
}

function whatHeCannot(action: Exclude<BallAction, Pass>, params: { readonly who: string; readonly holder: string; readonly how: Words }): Message {
  switch (action.kind) {
    case 'hand-off':
      return message('{who} can’t hand off to {to}: {holder} has the ball ({how}).', { ...params, to: action.to });
    case 'dribble':
      return action.style === 'drive' ? message('{who} can’t drive: {holder} has the ball ({how}).', params) : message('{who} can’t dribble: {holder} has the ball ({how}).', params);
    case 'shot':
      return message('{who} can’t shoot: {holder} has the ball ({how}).', params);
  }
}
