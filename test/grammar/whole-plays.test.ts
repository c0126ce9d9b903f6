import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { childrenOf, type TreeNode } from '../../language/grammar/tree.ts';
import { shape } from './shape.ts';

/** From whole plays as coaches write them: what stands there, and the line of the notation that has the same tree. */
const rows: readonly (readonly [spoken: string, notation: string])[] = [
  // a place without its little word
  ['2 dives weak-side block', '2 dives to weak-side block'],
  ['3 holds left corner', '3 holds at left corner'],
  ['2 cuts left wing and 3 holds right corner', '2 cuts to left wing and 3 holds at right corner'],
  ['1 drives left elbow', '1 drives to left elbow'],
  ['2 clears out, left corner', '2 clears out to left corner'],
  ['4 takes it out, far baseline', '4 takes it out from far baseline'],
  // where it is thrown in
  ['3 takes it out under the basket, right side', '3 takes it out from the right baseline'],
  ['3 inbounds under the basket on the left', '3 inbounds from the left baseline'],
  // words that say something of their own
  ['5 flashes middle, just over half court', '5 flashes to half court'],
  ['1 passes back to 2, early', '1 passes back to 2 early'],
  ['1 skips it to 2, so X2 has to run back at him', '1 skips it to 2 and X2 closes out on him'],
  ['everybody else crashes', 'rebound everybody else crashes'],
  // several sentences in a line
  ['4 curls off 2 to the nail. 2 pops to top', '4 curls off 2 to the nail, 2 pops to top'],
  ['1 hits 5. 5 turns, faces up', '1 hits 5, 5 turns, faces up'],
  ['2 cuts to rim... Then 5 pops', '2 cuts to rim, then 5 pops'],
  ['2 cuts to rim. Once 4 clears, 5 ducks in', '2 cuts to rim, and once 4 clears, 5 ducks in'],
  ['4 drives down the lane; 5 backdoors', '4 drives down the lane and 5 backdoors'],
  ['look 1: pull up. Then look 5: three', 'look 1: jumper, then look 5: three'],
  ['look 4: layup and look 5: drop off, layup', 'look 4: layup, look 5: drop off, layup'],
  // signs and glued words
  ['4 + 5 stagger for 2', '4 and 5 stagger for 2'],
  ['rebound 3, 4, 5 crash, 1 & 2 get back', 'rebound 3, 4, 5 crash, 1 and 2 get back'],
  ['3 backcuts', '3 back-cuts'],
  ['3 lcuts', '3 l-cuts'],
  ['5 downscreens for 2', '5 down-screens for 2'],
  // a pass without its verb
  ['1 to 2', '1 passes to 2'],
  ['1 kicks it to 2, 2 back to 1', '1 kicks it to 2, 2 passes back to 1'],
  ['2 back out to 1, 1 skips to 3', '2 passes back out to 1, 1 skips to 3'],
  ['3 in to 2 at right corner', '3 inbounds to 2 at right corner'],
  // a line that ends the play
  ['3 pushes it to left wing and ends with no shot', '3 pushes it to left wing, ends with no shot'],
  // whom and what is meant
  ['2 backdoors, 4 fills his spot', '2 backdoors, 4 fills for him'],
  ['look 2 when his man helps: kick out, three', 'look 2 when X2 helps: kick out, three'],
  ['look 2 if X2 helps: kick out, three', 'look 2 when X2 helps: kick out, three'],
  ['5 rolls to the rim, and X4 goes back to his man', '5 rolls to the rim, and X4 recovers to 4'],
  ["If we don't have it, 4 comes up and he and 5 set a staggered screen for 3", '4 comes up and 4 and 5 stagger-screen for 3'],
  ['5 dribbles to the top, and if nothing is there he hands off to 2 coming up from the right wing', '5 dribbles to the top, and he hands off to 2'],
  ['5 pops to the top once he has been used', '5 pops to the top after the screen'],
  // ways
  ['1 dribbles hard at right wing', '1 dribbles to right wing'],
  ['2 comes off 5 then 4, up to left slot', '2 comes off 5 then 4 to left slot'],
  ['3 starts at the block, comes off 5 first and then off 4 and catches it at the top', '3 comes off 5 then 4 to the top'],
  ['2 runs his man into 4 and fades to the right corner', '2 cuts off 4 and fades to the right corner'],
  ['1 cuts hard off 3 along the baseline side to the rim', '1 cuts off 3 along the baseline to the rim'],
  ['1 cuts to rim, out to left corner', '1 cuts to rim, goes to left corner'],
  ['2 drives left off 5, all the way', '2 drives left off 5 to rim'],
  ['5 turns around and screens again for 1, and this time 1 goes left off him', '5 turns and re-screens for 1, and 1 goes left off him'],
  ['when he has position 3 feeds him with a bounce pass', 'when he is there 3 bounce-passes to him'],
  ['4 dribbles to the left slot, where 5 comes to meet him and takes the hand-off', '4 dribbles to the left slot and 5 comes to the ball and takes the hand-off'],
  ['look 5: he catches it in the short corner and goes baseline, layup', 'look 5: drives baseline, layup'],
  // the areas of a zone
  ['1 runs through the middle of the zone and ends up in the right corner', '1 runs through the middle and goes in the right corner'],
  ['5 flashes to the middle of the 2-3 zone', '5 flashes to the middle'],
  ['5 flashes to the gap between X1 and X2', '5 flashes to between X1 and X2'],
  ['1 dribbles into the gap between X1 and X2', '1 dribbles into between X1 and X2'],
  ['5 cuts behind the zone', '5 cuts to the short corner'],
  ['5 runs behind the zone', '5 runs along the baseline'],
  // defenders
  ['X1 fights over the top of 5 while X4 tags the roller in the lane', 'X1 goes over 5 while X4 helps in the lane'],
  ['X2 sags one step into the lane', 'X2 sags to the lane'],
  ['X4 rotates to 5 and X2 comes up to take away the pass to 4', 'X4 rotates to 5 and X2 denies 4'],
  // on a clipboard
  ['1 pops R corner', '1 pops right corner'],
  ['3 cuts to the L wing', '3 cuts to the left wing'],
  ['2 goes R', '2 goes right'],
  ['3 steps in to L corner', '3 steps in to left corner'],
  ['from horns, 1 w/ ball', 'from horns, 1 has the ball'],
  ['3 -> 2', '3 passes to 2'],
  ['3 -> 2 -> 1', '3 passes to 2 to 1'],
  ['3 → corner', '3 goes to the corner'],
  ['4 up to set high pick for 1, rolls hard', '4 comes and picks for 1, rolls'],
  ['1 off 4 downhill', '1 comes off 4'],
  ['2 off 5 to the top', '2 comes off 5 to the top'],
  ['2 and 3 stay corners', '2 and 3 stay at corners'],
  ['2 zips up off 5 pindown', '2 cuts off 5 to the top'],
  ['2 cuts off 5 flare to the corner', "2 cuts off 5's flare to the corner"],
  ['2 curls off 4 5 stagger to the top', '2 curls off 4 and 5 to the top'],
  ['2 and 4 stack at the elbow', '2 and 4 line up at the elbow, 1 m apart'],
  ['4 and 5 stack up on the left block', '4 and 5 line up on the left block, 1 m apart'],
  // from elsewhere
  ['The 1 makes dribble to right wing', '1 dribbles to right wing'],
  ['The 4 makes screen to 1', '4 screens for 1'],
  ['5 makes block in back to 2', '5 back-screens for 2'],
  ['2 makes the throw-in from the right sideline', '2 inbounds from the right sideline'],
  ['4 makes not the screen, he cuts direct to the basket', '4 cuts to the basket'],
  ['4 does not set the screen, he cuts to the rim', '4 cuts to the rim'],
  ['2 passes skip to 1', '2 skips to 1'],
  ['1 passes in 5', '1 passes inside to 5'],
  ['3 returns the ball to 2', '3 passes back to 2'],
  ['3 remains on the left side', '3 stays on the left side'],
  ['2 enters to the field and runs to the basket', '2 steps in and runs to the basket'],
  ['4 opens to the basket', '4 rolls to the basket'],
  ['The 5 from left elbow goes to the position of left low post', '5 goes to left low post'],
  ['if is nothing, 5 passes out to 2', 'if nothing is there, 5 passes out to 2'],
  // where he stands, before what he does
  ['2, on the right wing, relocates to the right corner', '2 relocates to the right corner'],
  ['2 in the corner lifts to the wing', '2 lifts to the wing'],
  // who has come there catches it there
  ['3 passes to 4, who has come out to the left wing', '3 passes to 4 at the left wing'],
  ['4 sprints into a step-up screen for 5 after the catch', '4 screens for 5 after the catch'],
  ['4 flashes to the nail as soon as 2 has cleared the lane', '4 flashes to the nail as soon as 2 has cleared'],
  ['4 drives right, with one dribble, to the rim', '4 drives right to the rim'],
  ['after inbound 3 steps in', 'after the throw-in, 3 steps in'],
  ['1 goes back to half way', '1 goes back to half court'],
  ['3 inbounds from the baseline, to the right of the basket', '3 inbounds from the right baseline'],
  ['2 takes it out underneath on the left side', '2 takes it out from the left baseline'],
  ['2 takes it out underneath', '2 takes it out under the basket'],
  ['1 retreats one dribble and hits 4 on the short roll', '1 backs out and hits 4 on the roll'],
  ['5 ducks in once 4 is past the foul line', '5 ducks in once 4 reaches the foul line'],
  ['3 drops back as the safety', '3 is the safety'],
  ['3 drops back for safety near half court', '3 is the safety at half court'],
  // in parentheses, and behind a stroke
  ['from 4-out 1-in (5 on the left block)', 'from 4-out 1-in, 5 on the left block'],
  ['look: 5 on the seal (bounce pass)', 'look 5 on the seal: bounce pass'],
  ['look 1 in the corner (skip): three', 'look 1 in the corner: skip, three'],
  ['1 passes to 2 (on the right wing)', '1 passes to 2 on the right wing'],
  ['4 rolls (hard)', '4 rolls'],
  ['2 cuts to (3, 4) m', '2 cuts to (3, 4) m'],
  ['- against man', 'against man'],
  ['- meanwhile 5 seals', 'at the same time, 5 seals'],
  ['look 2: jumper, 15 ft', 'look 2: jumper'],
  ['1 goes to half court, he is the outlet', '1 goes to half court, he is the safety'],
  // a cut for the ball is no way of its own
  ['1 cuts off 4, 4 hands off to 1', '4 hands off to 1'],
  ['1 comes off 4 and 4 hands it off to him', '4 hands it off to 1'],
  ['1 cuts off 4 and takes the hand-off from 4', '4 hands off to 1'],
  // heads, looks, defenders
  ['rules fiba mini', 'rules mini'],
  ['against zone 2-3', 'against 2-3'],
  ['call with 16 to 18 on the clock, shot clock off', 'call with 16 to 18 on the clock'],
  ['look 2 second: kick-out, three', 'look 2: kick-out, three'],
  ['look 3 last: three', 'look 3: three'],
  ['look 1: shot of three points', 'look 1: three'],
  ['Third option is 3 with the three points shot in left corner', 'look 3: three in left corner'],
  ['first look: 4 shoots', 'look 4: shoots'],
  ['step "S" instead of "C" when X5 and X2 switch the cross-screen', 'step "S" instead of "C" when X5 and X2 switch the screen'],
  ['step "S" instead of "C" when X1 cheats over the top of the hand-off', 'step "S" instead of "C" when X1 goes over the hand-off'],
  ['step "S" instead of "C" if defender of 4 shows on 1', 'step "S" instead of "C" if X4 shows on 1'],
];

describe('the words of a line that is read otherwise', () => {
  it.each(rows)('%s: each part has columns in it', (spoken) => {
    const visit = (node: TreeNode): void => {
      expect(node.at >= 0 && node.to <= spoken.length && node.at <= node.to, node.$type).toBe(true);
      for (const child of childrenOf(node)) {
        expect(child.at >= node.at && child.to <= node.to, `${child.$type} in ${node.$type}`).toBe(true);
        visit(child);
      }
    };
    visit(parseLine(spoken).tree!);
  });
  it('a wait keeps the words that say it', () => {
    const { tree } = parseLine('after inbound 3 steps in');
    const lead = tree?.$type === 'Statement' ? tree.lead : undefined;
    expect(lead && 'after inbound 3 steps in'.slice(lead.at, lead.to)).toBe('after inbound');
  });
});

describe('what one does behind “but” is done', () => {
  it.each([
    ['5 sprints from the left corner as if to screen for 1, but slips out to the left wing', '5 sprints from the left corner and slips to the left wing'],
    ['4 dribbles at 2 as if to hand off, but keeps it', '4 dribbles at 2 and keeps it'],
  ])('%s', (line, plain) => {
    expect(parseLine(line).warnings.map(({ code }) => code)).toEqual(['not-drawn']);
    expect(shape(line)).toEqual(shape(plain));
  });
});

describe('a whole play as coaches write it', () => {
  it.each(['1, 2 to 3', '1 and 2 to 3', 'from 1 to 2', '1 to the top'])('%s leaves open what is meant', (line) => {
    expect(parseLine(line).fault).toBeDefined();
  });
  it.each(rows)('%s: %s', (spoken, notation) => {
    expect(shape(spoken)).toEqual(shape(notation));
  });
});
