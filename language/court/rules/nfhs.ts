import type { RuleSet } from '../rule-set.ts';
import { count, feet, fromMemory, read, seconds, secondHand } from '../sources.ts';

const dimensions = 'open league court dimensions dataset (sportyR surface-dimensions.json)';

/** NFHS high-school rules, as quoted from the 2019-20 to 2022-23 books. */
export const nfhs: RuleSet = {
  id: 'nfhs',
  name: 'NFHS high school',
  edition: 'Basketball Rules 2019-20 to 2022-23, through pages that quote the book',
  court: {
    length: feet(84, 0, read('NFHS 1-1, 2019-20, quoted: 84 x 50 ft is ideal for high school, 94 x 50 ft the most')),
    width: feet(50, 0, read('NFHS 1-1, 2019-20, quoted')),
    ringCentreToBaseline: feet(5, 3, read(dimensions)),
    boardToBaseline: feet(4, 0, read(dimensions)),
    ringHeight: feet(10, 0, fromMemory('NFHS 1-10')),
    ringDiameter: feet(0, 18, fromMemory('NFHS 1-10')),
    boardWidth: feet(6, 0, read(dimensions)),
    laneWidth: feet(12, 0, read(dimensions)),
    laneLength: feet(19, 0, read(dimensions)),
    freeThrowLineToBoard: feet(15, 0, read(dimensions)),
    threeRadius: feet(19, 9, read('NFHS 1-4.1, 2019-20, quoted')),
    threeCorner: feet(19, 9, read('NFHS 1-4.1, 2019-20, quoted: no separate corner line')),
    restrictedRadius: undefined,
    centreCircleRadius: feet(6, 0, read('NFHS 1-3.1, 2019-20, quoted')),
    throwInMark: feet(28, 0, fromMemory('NFHS 1: coaching-box line')),
    lineWidth: feet(0, 2, read(dimensions)),
  },
  counts: {
    throwIn: seconds(5, read('NFHS 7-6-2, quoted')),
    backcourt: seconds(10, read('NFHS 9-8, in the NCAA men’s book 2020-21, Appendix V')),
    backcourtStarts: { value: 'on player control in the backcourt', source: read('NCAA men’s book 2020-21, Appendix V') },
    threeSeconds: seconds(3, fromMemory('NFHS 9-7')),
    defensiveThreeSeconds: undefined,
    shotClock: undefined,
    shotClockAfterOffensiveRebound: undefined,
    shotClockAfterFrontcourtFoul: undefined,
    closelyGuarded: {
      seconds: seconds(5, secondHand('NFHS 9-10-1, quoted on an officials’ forum')),
      within: feet(6, 0, secondHand('NFHS 4-10, as summed up on an officials’ forum')),
      countsDribbler: { value: true, source: secondHand('NFHS 9-10-1, quoted on an officials’ forum: frontcourt only, held and dribbled counted apart') },
    },
  },
  throwIn: {
    lateral: feet(3, 0, read('NFHS 7-6, case 9.2.1A, quoted: a spot 3 ft wide')),
    mayMoveBack: { value: true, source: read('NFHS case 9.2.1A, quoted') },
    mayRunEndlineAfterGoal: { value: true, source: fromMemory('NFHS 7-5-7') },
    mayHandBallOver: { value: false, source: fromMemory('NFHS 9-2-2') },
  },
  clock: {
    periods: count(4, read('NFHS 5-5.1, quoted')),
    periodSeconds: seconds(480, read('NFHS 5-5.1, quoted; below 9th grade 6 minutes')),
    overtimeSeconds: seconds(240, read('NFHS 5-7.3, quoted')),
    startsOnThrowIn: { value: 'when the ball touches or is legally touched by a player on the court after the release', source: read('NFHS 5-9-4, quoted') },
    stopsAfterGoalLastPeriod: seconds(0, fromMemory('NFHS 5-8: the clock runs on after a goal')),
    stopsAfterGoalOtherPeriods: seconds(0, fromMemory('NFHS 5-8: the clock runs on after a goal')),
    leastTouch: undefined,
  },
  screens: {
    blindSideSteps: count(1, read('NFHS 4-40, quoted; interpretations 2021-22')),
    movingSteps: { least: count(1, read('NFHS 4-40, quoted')), most: count(2, read('NFHS 4-40, quoted')) },
  },
  halfLineIsBackcourt: { value: true, source: fromMemory('NFHS 4-13') },
  remarks: [
    { text: 'A 35 s shot clock may be adopted by a state, from 2022-23.', source: read('NFHS 2-14, news page and guideline') },
  ],
};
