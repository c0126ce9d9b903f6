import type { RuleSet } from '../rule-set.ts';
import { computed, count, feet, fromMemory, read, seconds, secondHand } from '../sources.ts';

const dimensions = 'open league court dimensions dataset (sportyR surface-dimensions.json)';

/** NCAA men's Basketball Rules 2020-21. */
export const ncaaMen: RuleSet = {
  id: 'ncaa-men',
  name: 'NCAA men',
  edition: 'Men’s Basketball Rules 2020-21',
  court: {
    length: feet(94, 0, read('NCAA men 1-2.2, 2020-21')),
    width: feet(50, 0, read('NCAA men 1-2.2, 2020-21')),
    ringCentreToBaseline: feet(5, 3, computed('4 ft + 6 in + 9 in, NCAA men 1-14.1, 1-15.2, 2020-21')),
    boardToBaseline: feet(4, 0, read('NCAA men 1-13.1, 2020-21')),
    ringHeight: feet(10, 0, read('NCAA men 1-14, 2020-21')),
    ringDiameter: feet(0, 18, read('NCAA men 1-15.2, 2020-21')),
    boardWidth: feet(6, 0, fromMemory('NCAA men 1-13')),
    laneWidth: feet(12, 0, read(dimensions)),
    laneLength: feet(19, 0, read(dimensions)),
    freeThrowLineToBoard: feet(15, 0, read(dimensions)),
    threeRadius: feet(22, 1.75, read('NCAA men 1-7.1, 2020-21')),
    threeCorner: feet(21, 7.875, read('NCAA men 1-7, 2020-21')),
    restrictedRadius: feet(4, 0, read('NCAA men 1-8, 2020-21')),
    centreCircleRadius: feet(6, 0, read(dimensions)),
    throwInMark: feet(28, 0, fromMemory('NCAA: coaching-box line')),
    lineWidth: feet(0, 2, read('NCAA men 1-3, 2020-21')),
  },
  counts: {
    throwIn: seconds(5, read('NCAA men 7-6.6, 2020-21')),
    backcourt: seconds(10, read('NCAA men 9-10, 2020-21')),
    backcourtStarts: { value: 'on the legal touch of a throw-in, on control of a rebound', source: read('NCAA men 9-10, 2020-21') },
    threeSeconds: seconds(3, read('NCAA men 9-9, 2020-21; not during a throw-in')),
    defensiveThreeSeconds: undefined,
    shotClock: seconds(30, read('NCAA men 2-11.1, 2020-21')),
    shotClockAfterOffensiveRebound: seconds(20, read('NCAA men 2-11.6(d)(1), 2020-21')),
    shotClockAfterFrontcourtFoul: seconds(20, read('NCAA men 2-11.6(c), 2020-21: stays or 20, whichever is greater')),
    closelyGuarded: {
      seconds: seconds(5, secondHand('NCAA men, as summed up on an officials’ forum, 2018')),
      within: feet(6, 0, secondHand('NCAA men, as summed up on an officials’ forum, 2018')),
      countsDribbler: { value: false, source: secondHand('NCAA men since 2015-16, as summed up on an officials’ forum, 2018') },
    },
  },
  throwIn: {
    lateral: feet(3, 0, read('NCAA men 7-6.8, 9-4, 2020-21: a spot 3 ft wide, one foot on or over it')),
    mayMoveBack: { value: true, source: read('NCAA men 7-6.8, 2020-21: no limit of depth') },
    mayRunEndlineAfterGoal: { value: true, source: read('NCAA men 7-6, 2020-21') },
    mayHandBallOver: { value: false, source: read('NCAA men 9-4, 2020-21') },
  },
  clock: {
    periods: count(2, read('NCAA men 5-6.1, 2020-21')),
    periodSeconds: seconds(1200, read('NCAA men 5-6.1, 2020-21')),
    overtimeSeconds: seconds(300, read('NCAA men 5-6.1, 2020-21')),
    startsOnThrowIn: { value: 'when a player inbounds legally touches the ball after the release', source: read('NCAA men 5-10.2(a), 2020-21') },
    stopsAfterGoalLastPeriod: seconds(59.9, read('NCAA men 5-11.9, 2020-21')),
    stopsAfterGoalOtherPeriods: seconds(0, read('NCAA men 5-11.9, 2020-21')),
    leastTouch: seconds(0.3, read('NCAA men 5-10.2(d), 2020-21: in the last 59.9 s')),
  },
  screens: {
    blindSideSteps: count(1, read('NCAA men 4-35, 2020-21')),
    movingSteps: {
      least: count(1, read('NCAA men 4-35 and Appendix III, 2020-21: usually one to two strides')),
      most: count(2, read('NCAA men 4-35 and Appendix III, 2020-21: usually one to two strides')),
    },
  },
  halfLineIsBackcourt: { value: true, source: read('NCAA men 9-12.2, 2020-21') },
  remarks: [
    { text: 'From 2026-27 the ten-second violation is read when the shot clock reaches 19.', source: secondHand('a news page on the 2026-27 changes') },
  ],
};

/** NCAA women: the men's record with what is known to differ; the women's book was not read. */
export const ncaaWomen: RuleSet = {
  ...ncaaMen,
  id: 'ncaa-women',
  name: 'NCAA women',
  edition: 'as the men’s book 2020-21, with the women’s line of 2021-22; the women’s book was not read',
  court: {
    ...ncaaMen.court,
    threeRadius: feet(22, 1.75, read('a trade page on the women’s line, from 2021-22; 20 ft 9 in before')),
    threeCorner: feet(21, 7.875, fromMemory('as the men’s line; the women’s book was not read')),
    restrictedRadius: feet(4, 0, read('NCAA men’s book 2020-21, Appendix V')),
  },
  counts: {
    ...ncaaMen.counts,
    backcourt: seconds(10, fromMemory('NCAA women 9-10')),
    shotClock: seconds(30, fromMemory('NCAA women 2-14')),
    shotClockAfterOffensiveRebound: seconds(20, fromMemory('NCAA women, since 2022-23')),
    closelyGuarded: {
      seconds: seconds(5, secondHand('NCAA women, as summed up on an officials’ forum, 2018')),
      within: feet(3, 0, secondHand('NCAA women, as summed up on an officials’ forum, 2018; 6 ft may hold since')),
      countsDribbler: { value: false, source: secondHand('NCAA women, as summed up on an officials’ forum, 2018') },
    },
  },
  clock: {
    ...ncaaMen.clock,
    periods: count(4, read('NCAA men’s book 2020-21, Appendix V: women 4 x 10')),
    periodSeconds: seconds(600, read('NCAA men’s book 2020-21, Appendix V: women 4 x 10')),
    stopsAfterGoalLastPeriod: seconds(59.9, fromMemory('NCAA women 5-11')),
  },
  remarks: [
    { text: 'Values not named here are the men’s; the women’s book was not read.', source: fromMemory('NCAA women') },
  ],
};
