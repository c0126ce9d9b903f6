import { check } from './check.ts';
import type { Court } from '../court/court.ts';
import { message } from '../message/message.ts';
import { distance, type Point } from '../court/point.ts';
import { ballHeight, ballRadius, passFlight, type Flight } from '../motion/ball.ts';
import { LEVELS } from '../motion/levels.ts';
import type { BallState, Run } from '../timeline/timeline.ts';

/** The board hangs from this far below the ring to this far above it, metres: 2.90 to 3.95 m at a ring of 3.05 m. */
const belowRing = 0.15;
const aboveRing = 0.9;
/** A ball to be dunked or tipped in is caught above the ring by so much, metres; common practice, no source. */
const overRing = 0.2;

type InTheAir = Extract<BallState, { kind: 'flight' }>;

interface AtTheBoard {
  /** The ball's centre as it comes to the board's plane: metres up, and metres to the side. */
  readonly height: number;
  readonly x: number;
  /** How far its way is done by then. */
  readonly share: number;
}

export const passIntoBoard = check({
  code: 'pass-into-board',
  severity: 'warning',
  needs: 'before',
  message: '{who} throws from behind the board, and the ball would meet it: it comes there {height} m up, and the board hangs from {low} to {high} m, {half} m to either side. Let {who} stand {aside} m farther out to the side, or write bounce-passes: below the board there is room.',
  manual: {
    title: 'A pass into the board',
    why: 'Who throws from behind the board, as under the basket on a throw-in, has it between himself and the floor in front of the ring. A flat or a bounce pass goes through below it; a ball that has to rise does not. Nor does one lobbed to a man behind it, or skipped from corner to corner: the corners lie in the plane of the board. Counted as a thrown ball without drag, from hand to hand at the level’s usual speed; one that is to be dunked or tipped in is caught above the ring.',
    wrong: 'from 1 left corner, 2 top, 3 under the basket, 4 left elbow, 5 right block\n3 inbounds from under the basket\n3 lobs to 2\nlook 2: three',
    right: 'from 1 left corner, 2 top, 3 under the basket, 4 left elbow, 5 right block\n3 inbounds from under the basket\n3 inbounds to 5\nlook 5: layup',
  },
  source: { text: 'FIBA equipment rules, quoted: the board is 1.80 m wide and hangs from 2.90 to 3.95 m; the other rule books’ boards of 6 by 3.5 ft the same to a few cm', how: 'second-hand' },
  *find({ play, court, ways }) {
    const level = LEVELS[play.level.value];
    const [low, high] = [court.ringHeight - belowRing, court.ringHeight + aboveRing];
    const half = court.boardWidth / 2;
    for (const { run } of ways) {
      for (const [index, state] of run.ball.entries()) {
        if (state.kind !== 'flight' || state.pass === 'bounce') continue;
        const usual = { ...passFlight(state.pass, distance(state.from, state.to), level), durationMs: state.t1 - state.t0 };
        const crossing = atTheBoard(court, state, isFinishedInTheAir(run, index) ? { ...usual, toHeight: court.ringHeight + overRing } : usual);
        if (crossing === undefined || Math.abs(crossing.x) > half + ballRadius || crossing.height < low - ballRadius || crossing.height > high + ballRadius) continue;
        const aside = (half + ballRadius - Math.abs(crossing.x)) / (1 - crossing.share);
        const board = { who: state.by, height: crossing.height.toFixed(1), low: low.toFixed(2), high: high.toFixed(2), half: half.toFixed(1) };
        const fromBehind = isBehind(state.from, court.boardY) && !isBehind(state.to, court.boardY);
        yield {
          part: state.action, run: run.id, moment: state.t0, spot: { x: crossing.x, y: court.boardY },
          params: { ...board, aside: aside.toFixed(1) },
          ...(!fromBehind && { instead: message('The ball from {who} to {to} would meet the board: it comes there {height} m up, and the board hangs from {low} to {high} m, {half} m to either side. Let one of them stand a step farther up the floor, or write bounce-passes: below the board there is room.', { ...board, to: state.receiver }) }),
        };
      }
    }
  },
});

/** `lob, dunk`: he finishes before he lands. */
function isFinishedInTheAir(run: Run, index: number): boolean {
  const next = run.ball.slice(index + 1).find(({ kind }) => kind === 'shot' || kind === 'flight');
  return next?.kind === 'shot' && (next.shot === 'dunk' || next.shot === 'tip-in');
}

/** Where a ball comes to the board's plane: through it, or along it, as from corner to corner, where the board is nearest. */
function atTheBoard({ boardY }: Court, { from, to }: InTheAir, flight: Flight): AtTheBoard | undefined {
  const share = isBehind(from, boardY) === isBehind(to, boardY) ? alongTheBoard(from, to, boardY) : (boardY - from.y) / (to.y - from.y);
  return share === undefined ? undefined : { share, x: from.x + (to.x - from.x) * share, height: ballHeight(flight, (share * flight.durationMs) / 1000) };
}

/** The share of a way on one side of the board at which it is before the middle of it, near enough to touch. */
function alongTheBoard(from: Point, to: Point, boardY: number): number | undefined {
  if (Math.sign(from.x) === Math.sign(to.x)) return undefined;
  const share = from.x / (from.x - to.x);
  return Math.abs(from.y + (to.y - from.y) * share - boardY) < ballRadius ? share : undefined;
}

function isBehind({ y }: Point, boardY: number): boolean {
  return y < boardY;
}
