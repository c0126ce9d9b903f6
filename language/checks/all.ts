// Every check, in the order a coach meets their matter: ball, screens, throw-in, clock, floor, structure, rebounds, youth.
import { backcourtCount } from './backcourt-count.ts';
import { ballNeeded } from './ball-needed.ts';
import { closelyGuarded } from './closely-guarded.ts';
import { commaWaits } from './comma-waits.ts';
import { crowding } from './crowding.ts';
import { demandNotMet } from './demands.ts';
import { endTooLate } from './end-too-late.ts';
import { handOffApart } from './hand-off-apart.ts';
import { idlePlayer } from './idle-player.ts';
import { inboundLate } from './inbound-late.ts';
import { callTooLate, littleLeft } from './left-on-the-clock.ts';
import { lookOutOfOrder } from './look-out-of-order.ts';
import { movingWithBall } from './moving-with-ball.ts';
import { noEnding } from './no-ending.ts';
import { nothingToPassUp } from './nothing-to-pass-up.ts';
import { footOnLine, outOfBounds } from './out-of-bounds.ts';
import { overAndBack } from './over-and-back.ts';
import { passToDefender } from './pass-to-defender.ts';
import { passToSelf } from './pass-to-self.ts';
import { passIntoBoard } from './pass-into-board.ts';
import { passTooFar } from './pass-too-far.ts';
import { pastWindow, pastWindowWhenLate } from './past-window.ts';
import { fewOnTheBoards, nobodyBack, noTriangle } from './rebounds.ts';
import { screenDirection } from './screen-direction.ts';
import { screenNoRoom } from './screen-no-room.ts';
import { screenWithBall } from './screen-with-ball.ts';
import { secondDribble } from './second-dribble.ts';
import { shotOutsideClock, shotOutsideClockWhenLate, laterShotOutsideClock } from './shot-between.ts';
import { pastShotClock, pastShotClockWhenLate } from './shot-clock.ts';
import { noThreeLine, threeInsideLine } from './three-point-line.ts';
import { threeSeconds } from './three-seconds.ts';
import { throwInWindow } from './throw-in-window.ts';
import { throwerHandsOver, throwerMoves, throwerStepsIn } from './thrower.ts';
import { screenTooLate, timeNotKept } from './time-not-kept.ts';
import { afterTheShot, leftOutToo } from './unreached.ts';
import { youthPress, youthRingAndBall, youthScreens, youthThree, youthZone } from './youth.ts';

export const allChecks = [
  ballNeeded, screenWithBall, movingWithBall, secondDribble, passToSelf, passToDefender, passTooFar, passIntoBoard, handOffApart,
  screenTooLate, screenDirection, screenNoRoom,
  inboundLate, throwInWindow, throwerMoves, throwerStepsIn, throwerHandsOver,
  pastWindow, pastWindowWhenLate, shotOutsideClock, shotOutsideClockWhenLate, laterShotOutsideClock, littleLeft, callTooLate, pastShotClock, pastShotClockWhenLate,
  backcourtCount, closelyGuarded, threeSeconds, timeNotKept, endTooLate,
  outOfBounds, footOnLine, overAndBack, crowding, threeInsideLine, noThreeLine,
  noEnding, commaWaits, lookOutOfOrder, nothingToPassUp, leftOutToo, afterTheShot, demandNotMet, idlePlayer,
  fewOnTheBoards, nobodyBack, noTriangle,
  youthScreens, youthZone, youthPress, youthThree, youthRingAndBall,
] as const;
