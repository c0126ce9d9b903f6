// Where a check must hold its tongue: what looks like a mistake and is good basketball. Each silence stands beside the line that does speak.
import { describe, expect, test } from 'vitest';
import { entryOf } from '../../language/checks/catalogue.ts';
import { codesIn } from './codes.ts';

interface Row {
  readonly what: string;
  readonly code: string;
  readonly silent: string;
  readonly speaks: string;
}

const wait = '1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to top';

const rows: readonly Row[] = [
  { what: 'two who stand close together as the play starts are a stack, and not crowded', code: 'crowding',
    silent: 'from stack\n1 dribbles to left slot\n1 dribbles to right slot\nlook 1: three',
    speaks: `from 5-out\n4 clears to 1.5 m below right wing\n${wait}\nlook 1: three` },
  { what: 'a screener and his man stand close', code: 'crowding',
    silent: `from 5-out\n4 screens for 2\n2 cuts off 4 to 1.5 m below right wing\n${wait}\nlook 1: three`,
    speaks: `from 5-out\n4 clears to 1.5 m below right wing\n${wait}\nlook 1: three` },
  { what: 'one who passes through crowds nobody', code: 'crowding',
    silent: 'from 5-out\n4 cuts to left corner via right wing\nlook 1: three',
    speaks: `from 5-out\n4 clears to 1.5 m below right wing\n${wait}\nlook 1: three` },
  { what: 'against a zone an overload is meant', code: 'crowding',
    silent: `against 2-3\nfrom 5-out\n4 clears to 1.5 m below right wing\n${wait}\nlook 1: three`,
    speaks: `against man\nfrom 5-out\n4 clears to 1.5 m below right wing\n${wait}\nlook 1: three` },
  { what: 'a filler may come to the spot that a cutter leaves', code: 'spot-taken',
    silent: 'from 5-out\n2 cuts to rim\n4 fills for 2\nlook 2: layup',
    speaks: 'from 5-out\n4 cuts to right wing\n1 dribbles to left slot\nlook 1: three' },
  { what: 'a place just outside the lane does not count', code: 'three-seconds',
    silent: `from 5-out\n5 cuts to left block\n${wait}\n1 passes to 2\nlook 2: three`,
    speaks: `from 5-out\n5 cuts to rim\n${wait}\n1 passes to 2\nlook 2: three` },
  { what: 'neither does a man who goes through', code: 'three-seconds',
    silent: `from 5-out\n5 cuts to right short corner via rim\n${wait}\n1 passes to 2\nlook 2: three`,
    speaks: `from 5-out\n5 cuts to rim\n${wait}\n1 passes to 2\nlook 2: three` },
  { what: 'before the touch of a throw-in no seconds run in the lane', code: 'three-seconds',
    silent: '3 inbounds from the left sideline\nfrom 1 top, 2 right wing, 4 right corner, 5 rim\n1 holds for 3 seconds, then cuts to left slot\n5 cuts to left short corner\n3 inbounds to 1\nlook 1: three',
    speaks: `from 5-out\n5 cuts to rim\n${wait}\n1 passes to 2\nlook 2: three` },
  { what: 'behind a comma “then” says that he waits', code: 'comma-waits',
    silent: '1 dribbles to left slot, then 2 clears to right short corner\nlook 1: three',
    speaks: '1 dribbles to left slot, 2 clears to right short corner\nlook 1: three' },
  { what: 'who takes the place of the man before, or comes off him, waits for him', code: 'comma-waits',
    silent: '2 cuts to rim, 4 fills for 2\n5 flashes to left elbow, 3 cuts off 5 to top\nlook 2: layup',
    speaks: '2 cuts to rim, 4 lifts to right wing\nlook 2: layup' },
  { what: 'behind a pass the next man goes on with the ball', code: 'comma-waits',
    silent: '1 passes to 2, 2 dribbles to right slot\nlook 2: jumper',
    speaks: '1 dribbles to left slot, 2 clears to right short corner\nlook 1: three' },
  { what: 'if nothing is there, behind the looks of the step before', code: 'nothing-to-pass-up',
    silent: 'step "In"\n1 passes to 2\nlook 2: three\nstep "Out"\nif nothing is there, 2 dribbles to right slot\nlook 2: jumper',
    speaks: 'step "In"\n1 passes to 2\nstep "Out"\nif we don\'t have it, 2 dribbles to right slot\nlook 2: jumper' },
  { what: 'a drive that goes on is one dribble', code: 'second-dribble',
    silent: '1 dribbles to left wing, then drives to left elbow\nlook 1: jumper',
    speaks: '1 dribbles to left wing, then picks up\n1 drives to left elbow\nlook 1: jumper' },
  { what: 'partners of a screen may touch', code: 'bodies-overlap',
    silent: 'from 4-out 1-in\n5 ball-screens for 1\n1 drives off 5 to rim\nlook 1: layup',
    speaks: 'from 5-out\n1 dribbles to right slot\n5 cuts to right elbow\n4 cuts to right elbow\nlook 1: three' },
  { what: 'and so may those of a hand-off', code: 'bodies-overlap',
    silent: 'from 5-out\n1 dribbles at 2\n1 hands off to 2\n2 drives to rim\nlook 2: layup',
    speaks: 'from 5-out\n1 dribbles to right slot\n5 cuts to right elbow\n4 cuts to right elbow\nlook 1: three' },
  { what: 'a screen that a later step uses is not unused', code: 'screen-unused',
    silent: 'from 4-out 1-in\nstep "Set"\n5 screens for 2\n1 passes to 3\nstep "Go"\n2 cuts off 5 to rim\nlook 2: layup',
    speaks: 'from 4-out 1-in\nstep "Set"\n5 screens for 2\n1 passes to 3\nstep "Go"\n3 drives to rim\nlook 3: layup' },
  { what: 'nor is one that only a look uses', code: 'screen-unused',
    silent: 'from 4-out 1-in\n5 screens for 2\nlook 2: cuts off 5 to rim, layup',
    speaks: 'from 4-out 1-in\n5 screens for 2\nlook 3: three' },
  { what: 'nobody counts heads at the boards where no rebound line stands', code: 'few-on-the-boards',
    silent: '1 dribbles to left slot\nlook 1: jumper',
    speaks: 'rebound 4 crashes, 1, 2, 3, 5 get back\n1 dribbles to left slot\nlook 1: jumper' },
  { what: 'where no clock line stands nobody asks how long it takes', code: 'past-window',
    silent: '1 dribbles to left slot, then drives to rim\nlook 1: layup',
    speaks: 'shot within 2 seconds of the start\n1 dribbles to left slot, then drives to rim\nlook 1: layup' },
  { what: 'standing in a corner is a job', code: 'idle-player',
    silent: 'from 5-out\n1 dribbles to left slot\nlook 1: three',
    speaks: 'from horns\n1 dribbles to left slot\nlook 1: three' },
  { what: 'a screen that the screener sets anew is not meant to be used', code: 'screen-unused',
    silent: 'from horns\n4 ball-screens for 1\n4 re-screens for 1\n1 drives off 4 to rim\nlook 1: layup',
    speaks: 'from horns\n4 ball-screens for 1\n1 passes to 2\nlook 2: jumper' },
  { what: 'a cut that goes straight to the ring behind another is no wait for it', code: 'pass-waits',
    silent: 'from 5-out\n2 cuts to rim\n1 passes to 2\nlook 2: layup',
    speaks: 'from 5-out\n2 holds for 4 seconds, then cuts to rim\n1 passes to 2\nlook 2: layup' },
];

describe('what looks like a mistake and is none', () => {
  test.each(rows.map((row) => [row.what, row] as const))('%s', (_, { code, silent, speaks }) => {
    const said = codesIn(silent);
    expect(said).not.toContain(code);
    expect(said.filter((one) => entryOf(one)!.severity === 'error'), 'it can be read and played').toEqual([]);
    expect(codesIn(speaks), 'the check is awake').toContain(code);
  });
});
