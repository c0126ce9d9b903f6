// What players do, as coaches of different tongues write it who have read little more than the notation's first page: read as meant, told with the line
// that is meant, or refused without one.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { shape } from './shape.ts';

/** What is said, and the line of the notation that has the same tree; a remark in it may be told of. */
const read: readonly (readonly [said: string, plain: string])[] = [
  // a man without his verb
  ['3 back door', '3 back-cuts'],
  ['2 out r corner', '2 goes to right corner'],
  ['2 and 3 out to the corners', '2 and 3 go to the corners'],
  ['3 up to top for spacing', '3 goes to top'],
  ['4 out other side r wing', '4 goes to right wing'],
  ['1 runs by, right corner', '1 runs to right corner'],
  ['1 back to 3 and gets it again', '1 passes back to 3 and 3 passes to 1'],
  // as one writes on a phone
  ['1 pass to 5 l elbow', '1 pass to 5 at left elbow'],
  ['3 pops wing l', '3 pops to left wing'],
  ['4 n 5 pin down for 2 n 3', '4 and 5 pin down for 2 and 3'],
  ['1 comes bk gets handoff frm 5', '1 comes back and gets handoff from 5'],
  ['2 pops l wing 3 curls r elbow', '2 pops to left wing and 3 curls to right elbow'],
  // names of the trade
  ['4 45 cuts to the dunker', '4 cuts to the dunker spot'],
  ['1 reverses to 2, chin cuts off 5', '1 reverses to 2, cuts off 5'],
  ['4 hammers for 3, 3 drifts to the right corner', '4 back-screens for 3, 3 drifts to the right corner'],
  ['4 pindowns for 3', '4 pins down for 3'],
  ['5 sets the step-up for 1, short rolls', '5 ball-screens for 1, rolls to the nail'],
  ["2 lifts, ghosts 1's man, out to the top", '2 lifts, slips to the top'],
  ['3 comes off to the right slot', '3 comes off it to the right slot'],
  ['2 comes off downhill to the nail', '2 comes off it to the nail'],
  ['1 turns it down the baseline', '1 drives baseline'],
  ['1 dribbles past 5, nice and close, toward the right', '1 dribbles around 5 to the right'],
  ['5 slips behind to the rim', '5 slips to the rim'],
  ['5 moves up to where 3 was', '5 fills for 3'],
  ['1 sprints at the ball, stops, and cuts away to the left corner', '1 sprints toward the ball, stops, and cuts to the left corner'],
  ['1 chases his pass, hand-off', '1 takes the hand-off'],
  ['3 turns and goes, 2 and 5 are wide', '3 turns and goes, 2 and 5 stay'],
  ['1 backs up with the ball, two dribbles', '1 backs out'],
  ['1 keeps the dribble alive and uses up 10 seconds', '1 keeps his dribble for 10 seconds'],
  ['5 sets the same screen for 1', '5 screens for 1'],
  ['5 screens for 1, but he does not go to the rim; he stops at the free-throw line.', '5 screens for 1, rolls to the free-throw line'],
  ["5 rolls to the rim once 1's shoulder has passed his hip.", '5 rolls to the rim once 1 has gone by'],
  ['1 breaks to the left corner of the back court', '1 breaks to the left corner of the backcourt'],
  ['3 flashes to the middle, just our side of half court', '3 flashes to 3 ft above half court'],
  // of another tongue
  ['5 runs after his pass and gives 2 a block', '5 runs after his pass and screens for 2'],
  ['5 goes up and puts direct block to 1', '5 goes up and ball-screens for 1'],
  ['5 crosses the paint and blocks indirect for 2', '5 moves across the lane and screens for 2'],
  ['5 passes further to 2', '5 passes to 2'],
  ['3 puts it through to 2', '3 passes it to 2'],
  ['1 plays the ball to 4', '1 passes the ball to 4'],
  ['1 plays the ball over the defence', '1 passes over the top'],
  ['1 puts the pass bounced to 4', '1 bounce-passes to 4'],
  ['1 dribbles toward 3 and gives him the ball in the hand', '1 dribbles toward 3 and hands off to him'],
  ['3 passes by 4 and takes it hand to hand', '3 runs off 4 and takes the hand-off'],
  ['3 stays standing in the right corner', '3 stays in the right corner'],
  ['5 goes out behind the three point line, middle', '5 goes to top'],
  ['4 opens to the three line, frontal', '4 pops to top'],
  ['4 goes by the door behind', '4 back-cuts'],
  ['2 runs in the back of his man to the basket', '2 back-cuts to the basket'],
  ['4 back-screens the defender of 1', '4 back-screens X1'],
  // why, and how not
  ['A count later 3 lifts to the top, where 1 can always find him.', 'A count later 3 lifts to the top'],
  ['2 stays in the right corner, wide, so that X2 must choose.', '2 stays in the right corner'],
  ['2 clears to the left corner because X4 must not help', '2 clears to the left corner'],
  ['4 throws in to 1, never under the basket', '4 throws in to 1'],
  ['1 backs off two dribbles and pivots, no panic', '1 backs off two dribbles and pivots'],
  ['1 takes two dribbles backwards in order to stretch the trap.', '1 backs out'],
  ['5 walks across as if to screen for 4, then sets it for 2', '5 walks, then screens for 2'],
];

/** What is said, and the line with the first mend. */
const mended: readonly (readonly [said: string, meant: string])[] = [
  ['5 comes up and stands next to the girl who guards 1, feet still', '5 comes up and screens the girl who guards 1, feet still'],
  ['5 comes up next to the girl who guards 1', '5 comes up and screens the girl who guards 1'],
  ['4 and 5 stand beside X2', '4 and 5 screen X2'],
  ['4 goes up to the elbow and touches the defender of 1', '4 goes up to the elbow and screens the defender of 1'],
  ['2 Meridian cuts over 5 and 4 to the left wing', '2 cuts over 5 and 4 to the left wing'],
  ['5 sprints into a middle PnR with 2', '5 ball-screens for 2, then rolls'],
  ['4 pindowns for 3 into the zoom with 2', '4 pindowns for 3, 3 comes off 4 to beside 2, 2 hands off to 3'],
  ['1 dribbles over the block on the right side', '1 dribbles off the screen to the right'],
  ['1 attacks the block by the right', '1 dribbles off the screen to the right'],
  ['4 rolls off', '4 rolls'],
  ['4 shows the block only and cuts direct to the basket', '4 slips to the basket'],
  ['4 flashes ball side into the gap', '4 flashes to the ball-side elbow'],
  ['5 ducks in behind the middle man', '5 seals X5'],
  ['1 dribbles at the top man and swings it to 2', '1 dribbles at X1 and swings it to 2'],
  ['2 beats them up the sideline', '2 dribbles down the sideline'],
  ['otherwise 3 pulls it out and gives it to 1', '3 pulls it out and gives it to 1'],
  ['2 out other side r cornr', '2 out other side r corner'],
  ['1 fake handoff goes l corner', '1 goes l corner'],
  ['5 keeps it post up small guy on l block', '5 keeps it and posts up on l block'],
];

/** No mend knows what is meant, or the words must not be passed over. */
const refused: readonly string[] = [
  "4 steps up and screens the screener's man",
  '5 rolls, not to the rim',
  '1 passes to 2, not to 3',
  '5 rolls, never under the basket',
  '2 never cuts to the rim',
  '3 fills the wing 2 clears',
  '4 opens to the three line',
  '2 clears to the left corner because if X4 helps he is open',
];

describe('a deed in a coach’s own words', () => {
  it.each(read)('“%s” is read as “%s”', (said, plain) => {
    expect(parseLine(plain).fault).toBeUndefined();
    expect(parseLine(said).fault).toBeUndefined();
    expect(shape(said)).toEqual(shape(plain));
  });
  it.each(mended)('“%s” is told with “%s”', (said, meant) => {
    const { fault } = parseLine(said);
    expect(fault?.fixes[0] && applyEdits(said, fault.fixes[0].edits)).toBe(meant);
    for (const fix of fault!.fixes) expect(parseLine(applyEdits(said, fix.edits)).fault).toBeUndefined();
  });
  it.each(refused)('“%s” is refused', (said) => {
    const { fault } = parseLine(said);
    expect(fault).toBeDefined();
  });
});
