import type { RuleSet } from '../rule-set.ts';
import { computed, count, fromMemory, metres, read, seconds } from '../sources.ts';
import { fiba } from './fiba.ts';

/** FIBA Mini-Basketball Rules 2005, Art. 1-4; what the part seen does not say stands as in the adult record and is marked. */
export const mini: RuleSet = {
  ...fiba,
  id: 'mini',
  name: 'FIBA mini-basketball',
  edition: 'Mini-Basketball Rules 2005, Art. 1-4; a newer edition may differ',
  court: {
    ...fiba.court,
    length: metres(28, read('FIBA Mini 2005, Art. 2; 26 x 14 m down to 12 x 7 m also allowed')),
    width: metres(15, read('FIBA Mini 2005, Art. 2; 26 x 14 m down to 12 x 7 m also allowed')),
    ringHeight: metres(2.6, read('FIBA Mini 2005, Art. 4: 2.60 m under 11, 3.05 m for ages 11-12')),
    laneWidth: metres(4.9, fromMemory('taken as on the adult FIBA court; the mini diagram was not seen')),
    laneLength: metres(5.2, computed('1.20 m + 4.00 m')),
    freeThrowLineToBoard: metres(4, read('FIBA Mini 2005, Art. 3')),
    threeRadius: undefined,
    threeCorner: undefined,
    restrictedRadius: undefined,
    lineWidth: metres(0.05, read('FIBA Mini 2005, Art. 3')),
  },
  counts: {
    ...fiba.counts,
    throwIn: seconds(5, fromMemory('FIBA Mini 2005, throw-in')),
    backcourt: undefined,
    backcourtStarts: undefined,
    threeSeconds: seconds(3, fromMemory('FIBA Mini 2005, three seconds')),
    shotClock: undefined,
    shotClockAfterOffensiveRebound: undefined,
    shotClockAfterFrontcourtFoul: undefined,
    closelyGuarded: undefined,
  },
  clock: {
    ...fiba.clock,
    periods: count(4, fromMemory('FIBA Mini 2005, playing time')),
    periodSeconds: seconds(600, fromMemory('FIBA Mini 2005, playing time')),
    stopsAfterGoalLastPeriod: seconds(0, fromMemory('FIBA Mini 2005: no such stop recalled')),
  },
  remarks: [
    { text: 'No three-point line and no three-point value.', source: read('FIBA Mini 2005, Art. 3') },
    { text: 'What is not named here is the adult FIBA record’s.', source: fromMemory('FIBA Mini 2005') },
    { text: 'Counts other than the throw-in and three seconds were not seen and are left out; a league may set its own.', source: fromMemory('FIBA Mini 2005') },
    { text: 'No ban on screens or zones in the part seen.', source: read('FIBA Mini 2005, Art. 1-4') },
  ],
};
