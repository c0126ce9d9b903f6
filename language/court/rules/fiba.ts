import type { RuleSet } from '../rule-set.ts';
import { computed, count, fromMemory, metres, read, seconds, secondHand } from '../sources.ts';

const dimensions = 'open league court dimensions dataset (sportyR surface-dimensions.json)';

/** FIBA Official Basketball Rules; single pages and quoted articles of 2010 to 2024 were seen, not one book whole. */
export const fiba: RuleSet = {
  id: 'fiba',
  name: 'FIBA',
  edition: 'Official Basketball Rules, pages of the 2020 and 2022 editions; shot clock and 33.7 as quoted from 2010 to 2014',
  court: {
    length: metres(28, read('FIBA Art. 2.1, as given on a rules guide page')),
    width: metres(15, read('FIBA Art. 2.1, as given on a rules guide page')),
    ringCentreToBaseline: metres(1.575, read(dimensions)),
    boardToBaseline: metres(1.2, read(dimensions)),
    ringHeight: metres(3.05, secondHand('FIBA equipment rules, quoted')),
    ringDiameter: metres(0.45, secondHand('FIBA equipment rules, quoted')),
    boardWidth: metres(1.8, secondHand('FIBA equipment rules, quoted')),
    laneWidth: metres(4.9, read('FIBA Art. 2.4.3, 2020, court lines: 2.45 m on each side')),
    laneLength: metres(5.8, read('FIBA Art. 2.4.3, 2020, court lines: far edge of the free-throw line')),
    freeThrowLineToBoard: metres(4.6, read(dimensions)),
    threeRadius: metres(6.75, read('FIBA Art. 2.4.4, 2020, court lines: outer edge')),
    threeCorner: metres(6.6, read('FIBA Art. 2.4.4, 2020, court lines: 0.90 m from the sideline')),
    restrictedRadius: metres(1.25, read('FIBA 2022, no-charge semi-circle, inside edge')),
    centreCircleRadius: metres(1.8, read('FIBA 2020, court lines')),
    throwInMark: metres(8.325, fromMemory('FIBA Art. 2.4.6, outer edge of the throw-in line; its inner edge at 8.275 m stands in the open dimensions dataset')),
    lineWidth: metres(0.05, read('FIBA 2020, court lines')),
  },
  counts: {
    throwIn: seconds(5, read('FIBA Art. 17.3.1, quoted')),
    backcourt: seconds(8, read('FIBA Art. 28, 2020')),
    backcourtStarts: { value: 'on control of a live ball in the backcourt, or when a throw-in is touched there by any player and the thrower’s team stays in control', source: fromMemory('FIBA Art. 28.1') },
    threeSeconds: seconds(3, fromMemory('FIBA Art. 26')),
    defensiveThreeSeconds: undefined,
    shotClock: seconds(24, read('FIBA Art. 29.1.1')),
    shotClockAfterOffensiveRebound: seconds(14, read('FIBA 2014 shot-clock sheet, Art. 29 and 50')),
    shotClockAfterFrontcourtFoul: seconds(14, read('FIBA 2014 shot-clock sheet: 14 or more stays, else 14')),
    closelyGuarded: {
      seconds: seconds(5, secondHand('FIBA Art. 27.2, quoted on a wiki page')),
      within: metres(1, secondHand('FIBA Art. 27.1, quoted on a wiki page')),
      countsDribbler: { value: false, source: secondHand('FIBA Art. 27.1, quoted on a wiki page: a player who is holding a live ball') },
    },
  },
  throwIn: {
    lateral: metres(1, secondHand('FIBA Art. 17.3.1, quoted: 1 m in all from the spot')),
    mayMoveBack: { value: true, source: secondHand('FIBA Art. 17.3.1, quoted') },
    mayRunEndlineAfterGoal: { value: true, source: secondHand('FIBA Art. 17.3.1, quoted: own endline after a goal') },
    mayHandBallOver: { value: false, source: fromMemory('FIBA Art. 17.3.2, official interpretations: the ball may not be handed to a player on the court') },
  },
  clock: {
    periods: count(4, read('FIBA Art. 8.1, as given on a rules page')),
    periodSeconds: seconds(600, read('FIBA Art. 8.1, as given on a rules page')),
    overtimeSeconds: seconds(300, read('FIBA Art. 8.7, as given on a rules page')),
    startsOnThrowIn: { value: 'when the ball touches or is legally touched by a player on the court', source: fromMemory('FIBA Art. 49; the 2012 text, Art. 50.1, was seen') },
    stopsAfterGoalLastPeriod: seconds(120, secondHand('FIBA Art. 49: last two minutes of the fourth period and of overtime')),
    stopsAfterGoalOtherPeriods: seconds(0, secondHand('FIBA Art. 49')),
    leastTouch: undefined,
  },
  screens: {
    blindSideSteps: count(1, read('FIBA Art. 33.7, 2010, quoted')),
    movingSteps: {
      least: count(1, read('FIBA Art. 33.7, 2010, quoted')),
      most: count(2, read('FIBA Art. 33.7, 2010, quoted')),
    },
  },
  halfLineIsBackcourt: { value: true, source: fromMemory('FIBA Art. 2.4.1 and 28') },
  remarks: [
    { text: 'Later editions exist (2024, amended 2026); article numbers are stable, wording is not.', source: secondHand('a page on the 2024 text, v1.0b') },
    { text: 'Ring edge to board 0.15 m.', source: computed('1.575 - 1.20 - 0.225 m') },
  ],
};
