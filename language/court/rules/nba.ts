import type { RuleSet } from '../rule-set.ts';
import { computed, count, feet, fromMemory, metres, read, seconds } from '../sources.ts';

const dimensions = 'open league court dimensions dataset (sportyR surface-dimensions.json)';

/** NBA Official Rules 2019-20. */
export const nba: RuleSet = {
  id: 'nba',
  name: 'NBA',
  edition: 'Official Rules 2019-20',
  court: {
    length: feet(94, 0, read(dimensions)),
    width: feet(50, 0, read(dimensions)),
    ringCentreToBaseline: feet(5, 3, computed('4 ft + 6 in + 9 in, NBA 1-II(d, e), 2019-20')),
    boardToBaseline: feet(4, 0, read(dimensions)),
    ringHeight: feet(10, 0, read('NBA 1-II(d), 2019-20')),
    ringDiameter: feet(0, 18, read('NBA 1-II(e), 2019-20')),
    boardWidth: feet(6, 0, read('NBA 1-II(a), 2019-20')),
    laneWidth: feet(16, 0, read(dimensions)),
    laneLength: feet(19, 0, read(dimensions)),
    freeThrowLineToBoard: feet(15, 0, read('NBA 1-I(c), 2019-20')),
    threeRadius: feet(23, 9, read('NBA 1-I(d), 2019-20')),
    threeCorner: feet(22, 0, read('NBA 1-I(d), 2019-20: lines 3 ft from the sidelines')),
    restrictedRadius: feet(4, 0, read('NBA 1-I(i), 2019-20')),
    centreCircleRadius: feet(6, 0, read(dimensions)),
    throwInMark: feet(28, 0, read('NBA 1-I(e), 2019-20')),
    lineWidth: feet(0, 2, read('NBA 1-I, 2019-20')),
  },
  counts: {
    throwIn: seconds(5, read('NBA 8-III(a), 2019-20')),
    backcourt: seconds(8, read('NBA 10-VIII, 2019-20')),
    backcourtStarts: { value: 'on control in the backcourt', source: fromMemory('NBA 10-VIII') },
    threeSeconds: seconds(3, read('NBA 10-VI, 2019-20: the lane and 4 ft off the court behind it')),
    defensiveThreeSeconds: seconds(3, read('NBA 10-VII, 2019-20')),
    shotClock: seconds(24, read('NBA 7-I, 2019-20')),
    shotClockAfterOffensiveRebound: seconds(14, read('NBA 7-IV(d)(1), 2019-20')),
    shotClockAfterFrontcourtFoul: seconds(14, read('NBA 7-IV(e), 2019-20: stays or 14, whichever is greater')),
    closelyGuarded: undefined,
  },
  throwIn: {
    lateral: metres(0.9, fromMemory('NBA 10-III, 2019-20, allows one step left or right of the spot; the book gives no length, 0.9 m stands for a grown player’s step')),
    mayMoveBack: { value: true, source: fromMemory('NBA 10-III') },
    mayRunEndlineAfterGoal: { value: true, source: read('NBA 6-I(c), 8-III(c), 2019-20') },
    mayHandBallOver: { value: false, source: read('NBA 10-III, 2019-20') },
  },
  clock: {
    periods: count(4, read('NBA 5-II(a), 2019-20')),
    periodSeconds: seconds(720, read('NBA 5-II(a), 2019-20')),
    overtimeSeconds: seconds(300, read('NBA 5-II(b), 2019-20')),
    startsOnThrowIn: { value: 'when the ball is legally touched within the playing area', source: read('NBA 5-VIII(a)(2), 2019-20') },
    stopsAfterGoalLastPeriod: seconds(120, read('NBA 5-V(b), 2019-20')),
    stopsAfterGoalOtherPeriods: seconds(60, read('NBA 5-V(b), 2019-20')),
    leastTouch: seconds(0.3, read('NBA Comments L, 2019-20')),
  },
  screens: {
    blindSideSteps: count(1, read('NBA 12B-III, 2019-20')),
    movingSteps: { least: count(1, read('NBA 12B-III, 2019-20')), most: count(2, read('NBA 12B-III, 2019-20')) },
  },
  halfLineIsBackcourt: { value: true, source: read('NBA 4-VI(b), 2019-20') },
  remarks: [
    { text: 'A screener may not leave the court over the frontcourt endline.', source: read('NBA 10-XIV, 2019-20') },
    { text: 'No closely guarded count of this kind.', source: fromMemory('NBA rules') },
  ],
};
