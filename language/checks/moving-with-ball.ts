import { message } from '../message/message.ts';
import { check } from './check.ts';
import { heldAt, howHeGotIt, howItCame, walkBall } from './ball.ts';
import { lineBefore } from './fixes.ts';
import type { Move } from '../play/play.ts';
import type { Fix } from './finding.ts';
import type { Subject } from './subject.ts';
import { infinitive, thirdPerson } from '../words/verbs.ts';

// A catch on the run and the first steps after it are one movement; less than this after the catch is not a walk with the ball.
const inStrideMs = 250;

export const movingWithBall = check({
  code: 'moving-with-ball',
  severity: 'error',
  needs: 'before',
  message: '{who} {does} while he has the ball ({how}). Let him dribble or drive, or pass first.',
  manual: {
    title: 'A cut by the man with the ball',
    why: 'A player may not walk with the ball (FIBA 25, NBA 10-XIII, NCAA 9-5). A cut, a roll or a clear-out is a move without the ball.',
    wrong: '1 cuts to left slot\nlook 1: jumper',
    right: '1 dribbles to left slot\nlook 1: jumper',
  },
  source: { text: 'Travelling: FIBA 25, NBA 10-XIII, NCAA 9-5', how: 'read' },
  *find(subject) {
    for (const way of subject.ways) {
      const moments = walkBall(subject, way);
      for (const { action, before } of moments) {
        if (action.kind !== 'move') continue;
        const segment = way.run.tracks[action.who]?.segments.find((one) => one.action === action.id);
        if (segment === undefined || segment.withBall) continue;
        const held = heldAt(way.run, segment.t0);
        if (held === undefined || held.by !== action.who || held.out || held.t1 <= segment.t0 + inStrideMs) continue;
        const hasIt = before.holder === action.who;
        // The ball may come by a pass that is written later: then there is none yet to be passed.
        const next = hasIt ? way.actions.find((other) => other.kind === 'pass' && other.who !== action.who)?.who : undefined;
        yield {
          part: action.id,
          params: { who: action.who, does: thirdPerson(action.verb), how: hasIt ? howHeGotIt(subject, before) : howItCame(subject, way, action.who, segment.t0) },
          run: way.run.id,
          moment: segment.t0,
          spot: segment.path[0]!,
          fixes: [...asDribble(subject, action), ...(next === undefined ? [] : lineBefore(subject, action.id, `${action.who} passes to ${next}`, message('Pass to {next} first', { next })))],
        };
      }
    }
  },
});

/** The same line with a dribble for the cut's verb. */
function asDribble(subject: Subject, move: Move): readonly Fix[] {
  const place = subject.places.get(move.id);
  if (place === undefined || move.to?.origin !== 'written') return [];
  const verb = new RegExp(`(?<![\\w-])(${thirdPerson(move.verb)}|${infinitive(move.verb)})(?![\\w-])`, 'i');
  const found = verb.exec((subject.lines[place.line] ?? '').slice(place.at, place.to));
  if (found === null) return [];
  const at = place.at + found.index;
  return [{ title: message('Let him dribble there'), edits: [{ line: place.line, at, to: at + found[0].length, text: 'dribbles' }] }];
}
