// Every check, in the order a coach meets their matter: ball, screens, clock, floor, endings.
import { ballNeeded } from './ball-needed.ts';
import { crowding } from './crowding.ts';
import { demandNotMet } from './demands.ts';
import { idlePlayer } from './idle-player.ts';
import { inboundLate } from './inbound-late.ts';
import { callTooLate, littleLeft } from './left-on-the-clock.ts';
import { movingWithBall } from './moving-with-ball.ts';
import { noEnding } from './no-ending.ts';
import { outOfBounds } from './out-of-bounds.ts';
import { passToSelf } from './pass-to-self.ts';
import { pastWindow, pastWindowWhenLate } from './past-window.ts';
import { fewOnTheBoards, nobodyBack } from './rebounds.ts';
import { screenWithBall } from './screen-with-ball.ts';
import { secondDribble } from './second-dribble.ts';
import { shotOutsideClock, shotOutsideClockWhenLate } from './shot-between.ts';
import { pastShotClock, pastShotClockWhenLate } from './shot-clock.ts';
import { threeSeconds } from './three-seconds.ts';

export const allChecks = [
  ballNeeded, screenWithBall, movingWithBall, secondDribble, passToSelf,
  pastWindow, pastWindowWhenLate, shotOutsideClock, shotOutsideClockWhenLate, littleLeft, callTooLate, pastShotClock, pastShotClockWhenLate, inboundLate,
  threeSeconds, outOfBounds, crowding, noEnding, demandNotMet, fewOnTheBoards, nobodyBack, idlePlayer,
] as const;
