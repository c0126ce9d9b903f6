import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { linesOfTrials } from './lines-of-trials.ts';
import { shape } from './shape.ts';

/** What a coach says, and the line of the notation that has the same tree. */
const rows: readonly (readonly [spoken: string, notation: string])[] = [
  // of women and girls
  ['1 passes to 3 as she cuts', '1 passes to 3 as he cuts'],
  ['4 ball-screens for 1, then she rolls', '4 ball-screens for 1, then he rolls'],
  ['look 3 as she comes off 4: jumper', 'look 3 as he comes off 4: jumper'],
  ['2 cuts to the left corner and 1 passes to her', '2 cuts to the left corner and 1 passes to him'],
  ['5 closes behind her', '5 closes behind him'],
  ['1 keeps her dribble', '1 keeps his dribble'],
  ['5 seals her girl', '5 seals his man'],
  // where it is thrown in from
  ['3 inbounds from the baseline on the left', '3 inbounds from the left baseline'],
  ['3 triggers it from under the basket on the right', '3 triggers it from the right baseline'],
  ['3 takes it out on the sideline on the left', '3 takes it out on the left sideline'],
  // what was refused with these words before
  ['4 turns and looks up the floor', '4 turns'],
  ['2 fakes a cut and pops', '2 pops'],
  // what a second trial found
  ['4 and 5 slam the door behind her', '4 and 5 close behind him'],
  ['2 empties out to the right corner', '2 clears out to the right corner'],
  ['2 slices off 5 to the ball-side block', '2 cuts off 5 to the ball-side block'],
  ['3 rips it down the left side to the basket', '3 drives it down the left side to the basket'],
  ['1 gives 3 a dribble hand-off at the left wing', '1 hands off to 3 at the left wing'],
  ['5 gets out of the lane to the right corner', '5 goes out of the lane to the right corner'],
  // while something else goes on
  ['3 sinks to the left corner while that happens', '3 sinks to the left corner at the same time'],
  ['as all of this is going on, 3 sinks to the left corner', 'at the same time, 3 sinks to the left corner'],
  ['whilst 2 cuts, 3 sinks to the left corner', 'while 2 cuts, 3 sinks to the left corner'],
  ['when she does, 3 sinks to the left corner', 'at the same time, 3 sinks to the left corner'],
  ['1 passes to 2, and as she does 3 sinks to the left corner', '1 passes to 2, and at the same time, 3 sinks to the left corner'],
  ['1 passes to 2, and meanwhile 3 sinks to the left corner', '1 passes to 2, and at the same time, 3 sinks to the left corner'],
  ['meanwhile 3 sinks to the left corner', 'at the same time, 3 sinks to the left corner'],
  ['in the meantime, 3 sinks to the left corner', 'at the same time, 3 sinks to the left corner'],
  ['at that moment, 5 dives', 'at the same time, 5 dives'],
  ['look 2 off the curl: jumper', 'look 2 on the curl: jumper'],
  ['look 5 out of the roll: layup', 'look 5 on the roll: layup'],
  ['look 2 coming out of the curl: three', 'look 2 on the curl: three'],
  ['look 1 off the dribble: jumper', 'look 1: jumper'],
  // what he keeps doing, has to do, comes doing
  ['2 keeps on running to the far corner', '2 runs to the far corner'],
  ['2 keeps running to the far corner', '2 runs to the far corner'],
  ['3 comes sprinting off 4 to the wing', '3 sprints off 4 to the wing'],
  ['3 comes flying off 4', '3 sprints off 4'],
  ['1 starts dribbling to the left wing', '1 dribbles to the left wing'],
  ['4 and 5 keep moving to the blocks', '4 and 5 move to the blocks'],
  ['X2 has to close out on 2', 'X2 closes out on 2'],
  ['4 and 5 have to screen for 2', '4 and 5 screen for 2'],
  ['4 must screen for 2', '4 screens for 2'],
  ['5 is going to roll', '5 rolls'],
  // verbs of moving
  ['3 drops down to the left corner', '3 moves to the left corner'],
  ['5 rotates up to the top', '5 moves to the top'],
  ['1 backs up toward half court', '1 goes toward half court'],
  ['1 falls back to the top', '1 goes to the top'],
  ['2 hangs out in the right corner', '2 stays in the right corner'],
  ['2 shoots up the middle to the top', '2 sprints up the middle to the top'],
  ['4 shows to the ball', '4 moves to the ball'],
  ['4 opens to the ball', '4 opens up'],
  ['3 pops in and circles under to the opposite corner', '3 steps in and circles via under the basket to the opposite corner'],
  ['3 comes back the other way to the left wing', '3 comes to the left wing'],
  ['2 comes back to meet the ball at the left elbow', '2 comes to the left elbow'],
  ['2 comes back to meet the ball in the backcourt on the left', '2 comes to backcourt left'],
  ['4 goes to the far side of the rim', '4 goes to the far block'],
  ['4 fills the right lane wide and runs to the right wing', '4 sprints down the right side to the right wing'],
  ['2 runs through the doors to the top', '2 runs through the gate to the top'],
  ['2 runs between the two screeners to the top', '2 runs through the gate to the top'],
  ['2 runs through the gate between 4 and 5 to the top', '2 runs between 4 and 5 to the top'],
  ['4 and 5 come together at the free-throw line', '4 and 5 come at the free-throw line, 1 m apart'],
  ['4 and 5 stand shoulder to shoulder at the elbows', '4 and 5 stand at the elbows'],
  ['4 and 5 stand side by side on the left block', '4 and 5 stand at the left block, 1 m apart'],
  // past a screen, and round again
  ['3 ducks under it and comes out to the left corner', '3 uses it and comes to the left corner'],
  ['4 goes over the top of it to the far block', '4 uses it to the far block'],
  ['2 goes over the top of 4 to the rim', '2 uses 4 to the rim'],
  ['2 goes under the screen to the corner', '2 uses the screen to the corner'],
  ['2 curls it tight into the paint', '2 curls off it into the paint'],
  ['2 curls the screen', '2 curls off the screen'],
  ['5 flips the angle and re-screens for 3', '5 re-screens for 3'],
  ['5 changes the angle of the screen and rolls', '5 rolls'],
  ['5 flips the screen for 3', '5 re-screens for 3'],
  ['5 sets a cross screen for 3 under the rim', '5 cross-screens for 3 at under the rim'],
  // the ball
  ['1 bounces it over to the left slot', '1 dribbles to the left slot'],
  ['1 bounces it to 5', '1 bounce-passes it to 5'],
  ['1 walks it up', '1 brings it up'],
  ['1 carries it to the left wing', '1 dribbles it to the left wing'],
  ['2 tosses it up to 5', '2 lobs it to 5'],
  ['3 gets it to 5', '3 passes to 5'],
  ['3 gets the ball back out to 1', '3 passes to 1'],
  ['1 hits 3 coming off the screen', '1 hits 3 as he comes off the screen'],
  ['1 hits 3 coming off', '1 hits 3 as he comes off the screen'],
  ['1 passes to 3 coming off the flare', '1 passes to 3 as he comes off the flare'],
  ['1 hits 5 rolling to the rim', '1 hits 5 as he rolls to the rim'],
  ['1 finds 2 cutting backdoor', '1 finds 2 as he cuts backdoor'],
  ['4 kicks it out to 3 spotting up', '4 kicks it out to 3'],
  ['4 kicks it out to 3 waiting in the corner', '4 kicks it out to 3 in the corner'],
  ['3 attacks the close-out', '3 attacks'],
  ['3 takes it out of the net and inbounds from the far baseline', '3 inbounds from the far baseline'],
  ['4 gets it out of the net', '4 takes it out from the far baseline'],
  // defenders
  ['X2 has to run out at 2', 'X2 closes out on 2'],
  ['X5 comes out to 3', 'X5 closes out on 3'],
  ['X5 jumps out at 1', 'X5 shows on 1'],
  ['step "A" instead of "B" if X3 cheats under the stagger', 'step "A" instead of "B" if X3 goes under the stagger'],
  ['5 drops back down to the block', '5 moves to the block'],
  ['5 comes back up to the top', '5 comes to the top'],
  ['2 bolts out of the corner up to the wing, using 5', '2 bolts out of the corner to the wing off 5'],
  ['2 ends up in the right corner', '2 goes in the right corner'],
  ['3 crosses under the basket to the other side', '3 moves via under the basket to the other side'],
  ['3 crosses to the left wing', '3 moves to the left wing'],
  ['5 rim-runs', '5 dives'],
  ['2 loses her man off 4 and runs to the corner', '2 uses 4 and runs to the corner'],
  ['5 pulls away from the screen and dives', '5 dives'],
  ['2 cuts right off the hand-off to the rim', '2 cuts off the hand-off to the rim'],
  ['1 jump-stops in the paint and kicks it out to 2', '1 stops in the paint and kicks it out to 2'],
  ['3 catches and rips baseline', '3 drives baseline'],
  ['2 swings it on to 3', '2 swings it to 3'],
  ['3 one more to 4', '3 passes to 4'],
  ['1 waits for 2 to clear out', '1 waits until 2 clears out'],
  ['1 holds for 3 to catch', '1 holds until 3 catches'],
  ['1 flares off 5\'s shoulder out to the left wing', '1 flares off 5\'s shoulder to the left wing'],
  ['2 cuts off 4 up to the top', '2 cuts off 4 to the top'],
  ['5 flashes across from the low post to the short corner', '5 flashes from the low post to the short corner'],
  ['2 slices off her shoulder to the ball-side block', '2 cuts off it to the ball-side block'],
  ['one count later 5 screens up for 1', '1 second later, 5 screens up for 1'],
  ['1 turns and pushes it up the floor', '1 turns and pushes it up'],
  ['1 dribbles at 4, who goes backdoor', '1 dribbles at 4, 4 goes backdoor'],
  ['5 rolls to the rim when 1 is off', '5 rolls to the rim when 1 is through'],
  ['look 3 off the pass: three', 'look 3: three'],
  ['3 gets back to the top', '3 goes to the top'],
  ['2 goes under the basket to the far corner', '2 goes via under the basket to the far corner'],
  ['5 posts on the left block', '5 posts up on the left block'],
  ['3 falls back on defense', '3 gets back'],
  ['1 puts it up', '1 shoots'],
  ['1 shoots it across to 3', '1 passes to 3'],
  // straight, no side; with the ball `right` is one
  ['4 slips right to the rim', '4 slips to the rim'],
  ['4 slips right down the middle', '4 slips down the middle'],
  ['1 drives right down the lane', '1 drives down the lane'],
  // `on` before a place
  ['from 1 on top, 2 and 3 on the wings, 4 and 5 on the blocks', 'from 1 top, 2 and 3 wings, 4 and 5 blocks'],
  ['from stack, 4 on top', 'from stack, 4 top'],
  ['from 1 top, 2 in the right corner', 'from 1 top, 2 right corner'],
  ['5 posts up on the left block', '5 posts up at the left block'],
  ['4 ball-screens for 1 on the right side', '4 ball-screens for 1 at the right side'],
  ['1 passes to 2 on the right wing', '1 passes to 2 at the right wing'],
  ['look 4 on the left block: layup', 'look 4 at the left block: layup'],
  // passes
  ['1 feeds 5', '1 passes to 5'],
  ['1 hits 3', '1 passes to 3'],
  ['1 finds 2 in the corner', '1 passes to 2 in the corner'],
  ['1 feeds it to 5', '1 passes it to 5'],
  ['5 gives it back to 1', '5 passes it back to 1'],
  ['1 dumps it to 5', '1 passes it to 5'],
  ['1 dumps it in to 5', '1 passes it to 5'],
  ['1 enters to 4', '1 passes to 4'],
  ['5 outlets to 1', '5 passes to 1'],
  ['1 kicks to 2', '1 kicks out to 2'],
  ['1 kicks it out to 2', '1 kicks out it to 2'],
  ['5 kicks out to 1', '5 kicks to 1'],
  ['5 passes out to 1', '5 passes to 1'],
  ['1 throws long to 5', '1 throws baseball to 5'],
  ['1 throws it in to 2', '1 inbounds to 2'],
  ['3 takes the ball out on the right sideline', '3 inbounds at the right sideline'],
  ['look 5 "dump": dump-off, layup', 'look 5 "dump": pass, layup'],
  // past a screen
  ['4 comes around the screen to right corner', '4 moves off the screen to right corner'],
  ['4 runs around the stagger to top', '4 runs off the stagger to top'],
  ['1 drives over the ball screen to rim', '1 drives off the ball screen to rim'],
  ['4 comes around 5 to right corner', '4 goes around 5 to right corner'],
  ['4 comes around to right corner', '4 comes to right corner'],
  // moves
  ['4 comes to the top', '4 moves to the top'],
  ['4 comes up to the top', '4 moves to the top'],
  ['4 comes up and ball-screens for 1', '4 comes and ball-screens for 1'],
  ['3 goes to rim', '3 moves to rim'],
  ['3 slides to the corner', '3 moves to the corner'],
  ['4 steps up to right elbow', '4 moves to right elbow'],
  ['5 moves up to the left wing', '5 moves to the left wing'],
  ['2 lifts up to the wing', '2 lifts to the wing'],
  ['4 pops out to the top', '4 pops to the top'],
  ['4 pops back to top', '4 pops to top'],
  ['4 pops out', '4 pops'],
  ['2 and 3 stay wide', '2 and 3 stay'],
  ['3 cuts hard to rim', '3 cuts to rim'],
  ['4 rolls hard', '4 rolls'],
  ['3 catches and drives to the rim', '3 drives to the rim'],
  ['1 passes to 3, 3 catches, then drives to the rim', '1 passes to 3, 3 drives to the rim'],
  ['2 curls tight off 5', '2 curls off 5'],
  ['5 posts up low on the block', '5 posts up at the block'],
  ['2 cuts backdoor', '2 back-cuts'],
  ['2 goes back door', '2 back-cuts'],
  ['2 gets open on the wing', '2 v-cuts at the wing'],
  ['1 replaces 3', '1 fills for 3'],
  ['2 exchanges with 4', '2 swaps with 4'],
  ['2 and 4 change places', '2 and 4 swap'],
  ['5 ducks in', '5 seals'],
  ['5 seals his man', '5 seals'],
  ['1 pops to the other wing', '1 pops to the opposite wing'],
  ['2 cuts off 5\'s screen to top', '2 cuts off 5 to top'],
  ['2 comes off 5’s screen', '2 comes off 5'],
  // the ball
  ['1 brings the ball to left wing', '1 dribbles to left wing'],
  ['1 takes it to left wing', '1 dribbles to left wing'],
  ['1 pushes the ball up', '1 brings the ball up'],
  ['1 pulls it out', '1 backs out'],
  ['1 attacks the basket', '1 drives to the basket'],
  ['1 attacks off 4', '1 drives off 4'],
  ['5 faces up', '5 holds'],
  // shots
  ['look 1: floater', 'look 1: jumper'],
  ['look 1: pull-up jumper', 'look 1: jumper'],
  ['look 1: runner or floater', 'look 1: jumper or jumper'],
  ['look 5: put-back', 'look 5: layup'],
  ['look 4: trailer three', 'look 4: three'],
  ['look 5: catch and shoot three', 'look 5: three'],
  ['look 5: open corner three', 'look 5: three'],
  // order and clock
  ['as soon as 2 catches, 5 rolls', 'once 2 catches, 5 rolls'],
  ['after 1 passes, 2 cuts', 'once 1 passes, 2 cuts'],
  ['with 8 seconds left, 4 screens for 1', 'at 8 seconds on the clock, 4 screens for 1'],
  ['at 6 left, 1 drives', 'at 6 on the clock, 1 drives'],
  ['1 waits until 8 left', '1 waits until 8 on the clock'],
  ['1 waits until 8 are left', '1 waits until 8 on the clock'],
  ['ends when 3 crosses half court', 'ends once 3 is over half court'],
  ['call with 20 left', 'call with 20 on the clock'],
  ['call it at 20 on the clock', 'call with 20 on the clock'],
  ['shot between 8 and 4 left', 'shot between 8 and 4 on the clock'],
  // the start and the defence
  ['against man-to-man', 'against man'],
  ['against man to man', 'against man'],
  ['against a 2-3 zone', 'against 2-3'],
  ['against 2-2-1 full-court press', 'against 2-2-1 press'],
  ['from horns with 4 and 5 swapped', 'from horns, 4 and 5 swapped'],
  ['from 5 out', 'from 5-out'],
  ['from 4 out 1 in, ball with 2', 'from 4-out 1-in, ball with 2'],
  ['rebound 4, 5 crash, the rest get back', 'rebound 4, 5 crash, others get back'],
  ['4 screens X3', '4 screens on X3'],
  ['X4 hedges hard', 'X4 hedges'],
  ['X1 fights over 4', 'X1 goes over 4'],
  ['X2 ducks under 4', 'X2 goes under 4'],
  ['look 4 in the middle', 'look 4 in the nail'],
  // ten sets, said aloud
  ['vs man to man', 'against man'],
  ['against full court man press', 'against man press'],
  ['against full-court man', 'against man press'],
  ['situation slob, down 2, after a timeout', 'situation sideline throw-in, down 2, after a time-out'],
  ['situation blob, tie game', 'situation baseline throw-in, tied'],
  ['situation vs press, need a 3', 'situation against a press, need a three'],
  ['from 1-4 high, 1 has the ball', 'from 1-4 high, ball with 1'],
  ['from 1 up top, 2 under the basket, 3 left corner', 'from 1 top, 2 at rim, 3 left corner'],
  ['from stack at left lane line: 2, 4, 5, 1 from the top down', 'from stack on left lane line: 2, 4, 5, 1 from the top down'],
  ['rebound: 4 and 5 crash, everyone else gets back', 'rebound 4 and 5 crash, everyone else gets back'],
  ['inbound in under 5 seconds', 'inbound within 5 seconds'],
  ['must inbound within 5 sec', 'inbound within 5 sec'],
  ['leave 3 secs for the rebound', 'leave 3 secs after a miss'],
  ['no shot until 4 on the clock', 'no shot before 4 on the clock'],
  ['3 throws in from under the basket', '3 inbounds from the baseline'],
  ['1 fades off of 5’s screen to the right wing', '1 fades off 5 to the right wing'],
  ['1 comes off 2’s shoulder to the corner', '1 comes off 2 to the corner'],
  ['3 runs off a pindown from 5', '3 runs off 5'],
  ['3 comes in off a down screen by 4', '3 moves off 4'],
  ['3 runs off a double screen by 4 and 5 to left corner', '3 runs off the double of 4 and 5 to left corner'],
  ['2 cuts backdoor off the back screen', '2 cuts backdoor off the screen'],
  ["1 screens 4's man, and 4 dives to the hoop", '1 screens X4 and 4 dives to the rim'],
  ["step \"B\" when 4's man helps", 'step "B" when X4 helps'],
  ['step "B" if X4 tags', 'step "B" when X4 helps'],
  ['3 takes it to the hole', '3 dribbles to rim'],
  ['3 dribbles it to the key', '3 dribbles to the lane'],
  ['5 breaks to the ball', '5 cuts to the ball'],
  ['2 steps back to the top', '2 moves to the top'],
  ['2 steps to the wing', '2 moves to the wing'],
  ['3 backdoors', '3 back-cuts'],
  ['4 holds for a second then rolls', '4 holds for 1 second then rolls'],
  ['half a second later, 4 rolls', '0.5 s later, 4 rolls'],
  ['a half second later, 4 rolls', '0.5 s later, 4 rolls'],
  ['a second and a half later, 4 rolls', '1.5 s later, 4 rolls'],
  ['two and a half seconds later, 4 rolls', '2.5 s later, 4 rolls'],
  ['a couple of seconds later, 4 rolls', '2 s later, 4 rolls'],
  ['HALF   A  BEAT later, 4 rolls', '0.5 s later, 4 rolls'],
  ['1 dumps it off to 5', '1 dumps it to 5'],
  ['1 hits 2 at the top of the arc', '1 hits 2 at the top'],
  ['4 and 5 hit the glass', '4 and 5 crash'],
  ['2 and 3 get back on D', '2 and 3 get back'],
  ['look 5 slipping: layup', 'look 5 on the slip: layup'],
  ['look 2 cutting: bounce pass, layup', 'look 2 on the cut: bounce pass, layup'],
  ['look 4 ducking in: high-low pass, layup', 'look 4 on the seal: pass, layup'],
  ['look 3 on the backdoor: layup', 'look 3 on the back-cut: layup'],
  ['look for 3: 3 pointer', 'look 3: three'],
  ['look 3: catch-and-shoot 3', 'look 3: three'],
  ['look 2: kick out, corner 3', 'look 2: kick out, three'],
  ['look 2: step-back jumper or a 3', 'look 2: jumper or three'],
  ['look 3: elbow jumper', 'look 3: jumper'],
  ['look 4: lob, lay-in', 'look 4: lob, layup'],
  ['look 2: alley-oop, dunk', 'look 2: lob, dunk'],
  ['look 1: give and go, layup', 'look 1: pass, layup'],
  ['3 shoots a 3', '3 shoots a three'],
  ['5 dunks it', '5 dunks'],
  ['2, 3, and 4 cut to the wings', '2, 3 and 4 cut to the wings'],
  ['1 passes to 2, and 2 drives', '1 passes to 2 and 2 drives'],
  ...linesOfTrials,
  // eleven sets more, said aloud
  ['4 picks for 3', '4 screens for 3'],
  ['4 flat screens for 1', '4 screens for 1'],
  ['4 back picks for 2', '4 back-screens for 2'],
  ['look 3: shot', 'look 3: shoots'],
  ['look 2: catch and shoot', 'look 2: shoots'],
  ['look 1: catch, three', 'look 1: three'],
  ['look 5: drop step, layup', 'look 5: layup'],
  ['look 1: layup, or pull-up', 'look 1: layup or jumper'],
  ['look 2 backdoor: layup', 'look 2 on the backdoor: layup'],
  ['look 4 slips: layup', 'look 4 on the slip: layup'],
  ['look 4 slips the screen: layup', 'look 4 on the slip: layup'],
  ['look 2 turning the corner: layup', 'look 2 on the drive: layup'],
  ['look 4 diving: pocket pass, layup', 'look 4 on the dive: bounce pass, layup'],
  ['look 1 off 4: jumper', 'look 1 off the screen by 4: jumper'],
  ['4 and 5, both roll', '4 and 5 roll'],
  ['4 then pops to the top', '4 pops to the top'],
  ['1 cuts to the rim and out to the left corner', '1 cuts to the rim then to the left corner'],
  ['1 fades off 4\'s flare to the right wing', '1 fades off 4 to the right wing'],
  ['2 runs off staggered screens by 4 and 5', '2 runs off 4 and 5'],
  ['2 comes off it to the left', '2 comes off the screen to the left'],
  ['from 1 at half court left side, 2 top', 'from 1 at left half court, 2 top'],
  ['from 1 at midcourt, 2 top', 'from 1 at half court, 2 top'],
  ['1 at left elbow in the backcourt', '1 at left backcourt elbow'],
  ['2 at backcourt left side', '2 at left backcourt'],
  ['3 at own free-throw line', '3 at far free-throw line'],
  ['1 dribbles across half court', '1 dribbles to half court'],
  ['4 dives to the front of the rim', '4 dives to the rim'],
  ['2 dribbles toward 3', '2 dribbles at 3'],
  ['2 hands it off to 3', '2 hands off to 3'],
  ['3 goes one on one', '3 drives'],
  ['2 sinks to the right corner', '2 drifts to the right corner'],
  ['3 steps inbounds', '3 steps in'],
  ['1 stays back', '1 gets back'],
  ['3 triggers from the right sideline', '3 inbounds from the right sideline'],
  ['must have 4 passes or more', 'must have at least 4 passes'],
  ['must not shoot before 10 on the clock', 'no shot before 10 on the clock'],
  ['step "B" again from "A" with 2 as 1, twice', 'step "B" again from "A" with 2 as 1, 2 times'],
  // ten sets more
  ['2 takes it out on the right side of the baseline', '2 inbounds on the right baseline'],
  ['1 runs off the double to the left corner', '1 runs off the screen to the left corner'],
  ['1 and 2 cross', '1 and 2 swap'],
  ['1 comes to the ball on the left', '1 moves to the ball at the left side'],
  ['look 5 long: baseball pass, layup', 'look 5: baseball pass, layup'],
  ['4 hits 2 on the run', '4 passes to 2 early'],
  ['look 5: baseline jumper', 'look 5: jumper'],
  ['must have at least 5 passes before a shot', 'must have at least 5 passes'],
  ['shot before the buzzer', 'shot before the horn'],
  ['5 sprints up and flat screens for 1', '5 sprints and screens for 1'],
  ['from five out', 'from 5-out'],
  ['from 1 on the left wing with the ball, 2 top', 'from 1 with the ball on the left wing, 2 top'],
  ['1 shuffle cuts off 5 to the right block', '1 cuts off 5 to the right block'],
  ['2 uses the screen going middle', '2 uses the screen middle'],
  ['4 lifts to the wing...', '4 lifts to the wing'],
  // what was refused with the right words before
  ['1 takes a hard dribble to the left slot', '1 dribbles to the left slot'],
  ['1 gets two dribbles downhill to the left elbow', '1 dribbles to the left elbow'],
  ['4 screens down 2', '4 screens down for 2'],
  ['4 ball screens 3', '4 ball screens for 3'],
  ['look 5 on the block, layup', 'look 5 on the block: layup'],
  ['look for 1, three', 'look for 1: three'],
  ['1 throws a skip pass to 3', '1 skips to 3'],
  ['4 and 5 ghost', '4 and 5 slip'],
  ['5 opens up to the ball', '5 seals'],
  ['5 short rolls to the nail', '5 rolls to the nail'],
  ['3 drifts to the corner behind the screen', '3 drifts to the corner off the screen'],
  ['5 runs the right lane', '5 sprints to right corner'],
  ['1 fills the open corner', '1 fills the open spot'],
  ['4 and 5 close the gate', '4 and 5 close behind him'],
  ['4 short rolls', '4 rolls to the nail'],
  ['5 comes up and sets a back pick for 2', '5 comes up and back-screens for 2'],
  ['4 sets a screen for 2', '4 screens for 2'],
  ['4 and 5 set a down screen for 2', '4 and 5 down-screen for 2'],
  ['5 sets a ball screen for 1, then rolls', '5 ball-screens for 1, then rolls'],
  ['4 comes up and sets a flat screen for 1', '4 comes up and screens for 1'],
  ['3 screens for 2 then opens up', '3 screens for 2 then seals'],
  ['2 sets up his man, then cuts', '2 v-cuts, then cuts'],
  ['step "B" instead of "A" when X2 is overplaying 2', 'step "B" instead of "A" when X2 overplays 2'],
  ['4 and 5 set a double screen for 2 on the left block', '4 and 5 double-screen for 2 on the left block'],
  ['4 gives a screen for 2', '4 screens for 2'],
  ['2 gets to the corner', '2 moves to the corner'],
];

describe('what coaches say is read as the notation has it', () => {
  it.each(rows)('%s: %s', (spoken, notation) => {
    expect(shape(spoken)).toEqual(shape(notation));
  });
  it.each(rows)('%s: every part has columns of the line', (spoken) => {
    const faults: unknown[] = [];
    JSON.stringify(parseLine(spoken).tree, (_, part: unknown) => {
      const { at, to, $type } = Object(part) as { at?: unknown; to?: unknown; $type?: string };
      if ($type !== undefined && !(Number(at) >= 0 && Number(at) <= Number(to) && Number(to) <= spoken.length)) faults.push({ $type, at, to });
      return part;
    });
    expect(faults).toEqual([]);
  });
  it.each(['2 and 4 cross to the wings', '4 and 5 cross the lane', '4 and 5 toss it up to 2'])('%s: the verb in its place has the number of the coach’s', (line) => {
    expect(parseLine(line).warnings).toEqual([]);
  });
});

const action = (line: string) => {
  const { tree, fault } = parseLine(line);
  expect(fault?.message).toBeUndefined();
  return tree?.$type === 'Statement' ? tree.first.action : undefined;
};

describe('words with a tree of their own', () => {
  it('"comes off" and "uses" keep their verb: whether he has the ball, the line does not know', () => {
    expect(action('1 comes off 4 to right elbow')).toMatchObject({ $type: 'Move', verb: 'comes off', parts: [{ $type: 'Off', players: [{ number: 4 }] }, { $type: 'To' }] });
    expect(action('2 comes off 5 then 4 to left wing')).toMatchObject({ parts: [{ $type: 'Off', then: true, players: [{ number: 5 }, { number: 4 }] }, { $type: 'To' }] });
    expect(action("1 uses 4's screen")).toMatchObject({ $type: 'Move', verb: 'uses', parts: [{ $type: 'Off', players: [{ number: 4 }] }] });
  });
  it('"the screen" is the last one set for him', () => {
    expect(action('1 uses the screen and drives to right elbow')).toMatchObject({ parts: [{ $type: 'Off', screen: true, players: [] }] });
    expect(action('4 cuts baseline off the screen')).toMatchObject({ parts: [{ $type: 'Heading' }, { $type: 'Off', screen: true }] });
    expect(action('X2 goes under the screen')).toMatchObject({ $type: 'Defend', parts: [{ $type: 'TheScreen' }] });
  });
  it('"as he comes off 4" stays an event', () => {
    const { tree } = parseLine('look 3 as he comes off 4: jumper');
    expect(tree).toMatchObject({ $type: 'Look', pins: [{ $type: 'Wait', event: { $type: 'PlayerEvent', verb: 'comes off', by: { number: 4 } } }] });
  });
  it('"fills the top" says the place without "to"', () => {
    expect(action('5 fills the top')).toMatchObject({ $type: 'Move', parts: [{ $type: 'To', spots: [{ name: 'top' }] }] });
  });
  it('"until 8 on the clock" belongs to the hold', () => {
    expect(action('1 waits until 8 seconds are left')).toMatchObject({ $type: 'Hold', parts: [{ $type: 'OnClock', time: { seconds: 8 }, clock: 'on the clock' }] });
  });
  it('a window may say one end', () => {
    expect(parseLine('shot by 4 on the clock').tree).toMatchObject({ $type: 'ShotWindow', by: { seconds: 4 } });
    expect(parseLine('no shot before 6 on the clock').tree).toMatchObject({ $type: 'ShotWindow', notBefore: { seconds: 6 } });
    expect(parseLine('shot within 10 seconds').tree).toMatchObject({ $type: 'ShotWindow', within: { seconds: 10 } });
  });
  it('a player may cross half court, and the ball be at a place', () => {
    expect(parseLine('when 1 crosses half court, 2 cuts').fault).toBeUndefined();
    expect(parseLine('when the ball is at right wing, 5 flashes').tree).toMatchObject({ lead: { event: { $type: 'BallEvent', spot: { name: 'wing' } } } });
  });
  it.each(['back-cut', 'v-cut', 'l-cut', 'basket-cut', 'shallow-cut', 'lift', 'drift', 'fill', 'step-out'])('a look is pinned on the %s', (move) => {
    expect(parseLine(`look 2 on the ${move}`).tree).toMatchObject({ pins: [{ $type: 'OnMove', move }] });
  });
});
