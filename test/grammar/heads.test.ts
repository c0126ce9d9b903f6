// How a play begins, in the words coaches use before they know the notation: read as the plain line, or told with a line that can be read.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';
import { shape } from './shape.ts';

/** What a coach says, and the line of the notation that has the same tree. */
const read: readonly (readonly [said: string, plain: string])[] = [
  // how they stand
  ['from 4-out, 1 has the ball', 'from 4-out 1-in, 1 has the ball'],
  ['from 4 out, ball with 1', 'from 4-out 1-in, ball with 1'],
  ['from four out, ball with 1', 'from 4-out 1-in, ball with 1'],
  ['from 3-out, ball with 1', 'from 3-out 2-in, ball with 1'],
  ['from 1-4 flat, ball with 1', 'from 1-4 low, ball with 1'],
  ['from flat, ball with 1', 'from 1-4 low, ball with 1'],
  ['from a double stack, ball with 1', 'from stack, ball with 1'],
  ['from the box set, ball with 1', 'from box, ball with 1'],
  ['start from horns, ball with 1', 'from horns, ball with 1'],
  ['set up in horns, ball with 1', 'from horns, ball with 1'],
  ['line up in a box, ball with 1', 'from box, ball with 1'],
  ['in a box, ball with 1', 'from box, ball with 1'],
  ['formation: horns, ball with 1', 'from horns, ball with 1'],
  ['alignment: horns', 'from horns'],
  ['from 1-4 high but 5 on left block, ball with 1', 'from 1-4 high, 5 on left block, ball with 1'],
  ['from horns, but 2 in left slot, ball with 1', 'from horns, 2 in left slot, ball with 1'],
  // who has the ball
  ['from horns, 1 with the ball', 'from horns, 1 has the ball'],
  ['from horns, 1 with ball', 'from horns, 1 has the ball'],
  ['from horns, ball 1', 'from horns, ball with 1'],
  ["from horns, ball in 1's hands", 'from horns, ball with 1'],
  ['from horns, the ball to 1', 'from horns, ball with 1'],
  // when it is called, against whom, what a miss leaves
  ['call with 14 seconds', 'call with 14 seconds on the clock'],
  ['call at 14', 'call at 14 on the clock'],
  ['versus man-to-man', 'vs man-to-man'],
  ['leave 3 seconds for the rebound and the put-back', 'leave 3 seconds'],
  // who goes to the boards
  ['3, 4, 5 crash, 1, 2 get back', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['3, 4 and 5 rebound, 1 and 2 back', 'rebound 3, 4 and 5 crash, 1 and 2 get back'],
  ['4 and 5 crash the boards, 1, 2 and 3 stay back', 'rebound 4 and 5 crash the boards, 1, 2 and 3 stay back'],
  ['4 and 5 crash the boards', 'rebound 4 and 5 crash the boards'],
  ['3, 4, 5 hit the glass', 'rebound 3, 4, 5 hit the glass'],
  // where a step, a play, a roster begins
  ['Step "One":', 'step "One"'],
  ['play "Pier":', 'play "Pier"'],
  ['play called "Pier"', 'play "Pier"'],
  ['play "Quay" mirror of "Pier"', 'play "Quay" mirrors "Pier"'],
  ['Roster:', 'roster'],
  ['step "Two" after step "One"', 'step "Two" after "One"'],
  // the marks of a list, and of a man
  ['- 4 pops to top', '4 pops to top'],
  ['* 1 shoots', '1 shoots'],
  ['1. 4 pops to top', '4 pops to top'],
  ['2) look 1: jumper', 'look 1: jumper'],
  ['player 4 pops to top', '4 pops to top'],
  // chances in their order
  ['1st look 1: jumper', 'look 1: jumper'],
  ['2nd look 4 on the roll: layup', 'look 4 on the roll: layup'],
  ['then look 2: three', 'look 2: three'],
  ['finally, look 2: three', 'look 2: three'],
  ['looks 4: layup', 'look 4: layup'],
  ['look: 4: layup', 'look 4: layup'],
  ['read 4: layup', 'look 4: layup'],
  ['look 4, then 1', 'look 4, then look 1'],
  ['look 4: layup or 1: jumper', 'look 4: layup, look 1: jumper'],
];

/** What a coach says that stays an error, and what its first mend makes of it. */
const told: readonly (readonly [said: string, mended: string])[] = [
  ['call with 10-14 on the clock', 'call with 10 to 14 on the clock'],
  ['call between 14 and 10 seconds', 'call with 10 to 14 on the clock'],
  ['rebound 3 4 5 crash, 1 2 back', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['rebound 3, 4, 5; 1, 2 back', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['shoot within 8 seconds', 'shot within 8 seconds'],
  ['alignment horns, ball with 1', 'from horns, ball with 1'],
  ['tag quick', 'tags quick'],
  ['age u14', 'level u14'],
  ['age: u14', 'level u14'],
  ['score: down 2', 'situation down 2'],
  ['down 2', 'situation down 2'],
  ['timeout', 'situation after a time-out'],
  ['after a timeout', 'situation after a time-out'],
  ['sideline out of bounds', 'situation sideline throw-in'],
  ['side out', 'situation sideline throw-in'],
  ['throw-in from the left sideline by 3', '3 inbounds from the left sideline'],
  ['first step', 'step "First step"'],
  ['phase B', 'step "Phase B"'],
  ['option 2: "Slip"', 'step "2 Slip"'],
  ['step 1 "Pass and go"', 'step "1 Pass and go"'],
  ['counter "Reject" when X4 hedges', 'step "Reject" when X4 hedges'],
  ['phase 1 when X4 switches', 'step "Phase 1" when X4 switches'],
  ['for u12', 'level u12'],
  ['10 to 14 on the clock', 'call with 10 to 14 on the clock'],
  ['12 on clock', 'call with 12 on the clock'],
  ['the clock shows 18 seconds', 'call with 18 on the clock'],
  ['the shot must be before 4 seconds', 'shot by 4 on the clock'],
  ['must end with a shot before 6 seconds', 'shot by 6 on the clock'],
  ['the attack has 24 seconds', 'shot within 24 seconds of the call'],
  ['4 seconds for the throw-in', 'inbound within 4 seconds'],
  ['we want the shot between 4 and 2 seconds', 'shot between 4 and 2 on the clock'],
  ['must get it in within 4 seconds', 'inbound within 4 seconds'],
  ['the position of start: 1 on top, 3 on left elbow, 4 on right elbow, 5 on right block', 'from 1 on top, 3 on left elbow, 4 on right elbow, 5 on right block'],
  ['all five girls start outside the three point line', 'from 5-out'],
  ['crash 4, 5, 3. back 1, 2', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ['back: 1 and 3', 'rebound 1, 3 get back'],
  ['rebs 4 5', 'rebound 4, 5 crash'],
  ['rebound go 4 and 5 and 3', 'rebound 4, 5, 3 crash'],
  ['in defence go back 1 and 2', 'rebound 1, 2 get back'],
  ['rebound 4, 5, back 1, 2', 'rebound 4, 5 crash, 1, 2 get back'],
  ['rebound 4, 5 and 2; 1 and 3 are back', 'rebound 4, 5, 2 crash, 1, 3 get back'],
  ['safety 1', '1 is the safety'],
  ['security is 1 at half court', '1 is the safety at half court'],
  ['3 out', 'from 3 out'],
  ['SLOB left', 'situation slob, "left"'],
  ['need 3, 6 sec', 'situation need a three, "6 sec"'],
  ['situation: sideline, right side, 7 seconds, we lose by 1', 'situation sideline throw-in, "right side", "7 seconds", down 1'],
  ['throw-in from the left side', 'situation sideline throw-in, "from the left"'],
  ['sideline throw-in by 3', '3 inbounds from the sideline'],
  ['set "Pier"', 'play "Pier"'],
  ['"Pier"', 'play "Pier"'],
  ['team "Ours"', 'roster "Ours"'],
  ['chapter "Zone"', 'section "Zone"'],
  ['include "ours.play"', 'use "ours.play"'],
  ['note: be patient', 'note "be patient"'],
  ['note for 1: be patient', 'note 1 "be patient"'],
  ['coaching point: be patient', 'note "be patient"'],
  ['tip: be patient', 'note "be patient"'],
  // chances said as choices
  ['1 looks for 4: layup', 'look 4: layup'],
  ['1 passes to 4 if he is open', 'look 4'],
  ['pass to 4 if open', 'look 4'],
  ['if 4 is open, layup', 'look 4: layup'],
  ['or 1 shoots', 'look 1'],
  ['otherwise 1 shoots a jumper', 'look 1: jumper'],
  ['last, hand off to 2', 'look 2: hand-off'],
  ['ends with a layup by 4', 'look 4: layup'],
  ['1 scores', 'look 1'],
  ['second look: 4 passes to 2 in the corner, 2 shoots', 'look 2 in the corner: pass from 4, shot'],
  ['last look: 4 passes to 5 under the basket, layup', 'look 5 under the basket: pass from 4, layup'],
  ['1 can shoot', 'look 1'],
  ['The 1 can pass to 4 for layup', 'look 4: pass from 1, layup'],
  ['kick 2 or 3 corner 3', 'look 2 or 3 in the corner: kick out, three'],
  ['look 4: layup after pass of 5', 'look 4: pass from 5, layup'],
  ['look 4: lob or layup', 'look 4: lob, layup'],
  ['look 3: kick-out, three, if X3 comes to help', 'look 3 when X3 comes to help: kick-out, three'],
  ["if it's not there kick it to 3 in the left corner for three", 'look 3 in the left corner: kick out, three'],
  ['look 4 rolling: pocket pass or lob, layup', 'look 4 rolling: pocket pass, layup, look 4 rolling: lob, layup'],
  // of whom it is told
  ['3 receives a block from 4 and comes to the ball', '4 sets a screen for 3, 3 comes to the ball'],
  ['3 gets a back screen from 4', '4 sets a back screen for 3'],
  ['1 passes to 4 and follows his pass for the hand-off', '1 passes to 4, 4 hands off to 1'],
  // men by their positions
  ['PG passes to 4', '1 passes to 4'],
  ['point guard passes to 4', '1 passes to 4'],
  ['the center rolls', '5 rolls'],
  ['from horns, the point guard has the ball', 'from horns, 1 has the ball'],
];

describe('how a play begins', () => {
  it.each(read)('“%s” is read as “%s”', (said, plain) => {
    const { fault } = parseLine(said);
    expect(fault && inEnglish(fault.message)).toBeUndefined();
    expect(shape(said)).toEqual(shape(plain));
  });

  it.each(told)('“%s” is told with “%s”', (said, mended) => {
    const { fault } = parseLine(said);
    expect(fault?.fixes[0] && applyEdits(said, fault.fixes[0].edits)).toBe(mended);
    for (const fix of fault!.fixes) expect(parseLine(applyEdits(said, fix.edits)).fault, inEnglish(fix.title)).toBeUndefined();
  });
});

describe('a mend loses no words and makes up no man', () => {
  it.each(['if 4 is open, 2 cuts to the rim', 'if 4 is open, 1 drives to the rim', 'ends with a shot', 'against man, X5 drops', '8 seconds left on the shot clock', '3 lifts one pass away', '4 catches at the nail', '1 passes to 4 (if open)'])('%s', (line) => {
    expect(parseLine(line).fault?.fixes).toEqual([]);
  });
  it('he who is open, and the pass to him', () => {
    const line = 'if 4 is open, pass to 4';
    expect(applyEdits(line, parseLine(line).fault!.fixes[0]!.edits)).toBe('look 4');
  });
});

describe('what the new words leave as it was', () => {
  it.each([
    ['look 3: 1 lobs to 3, dunk', 'Look'],
    ['4 crashes', 'Statement'],
    ['1 gets back', 'Statement'],
    ['4 sets a flat screen for 1', 'Statement'],
    ['from 1 with ball at top, 2 and 3 wings', 'From'],
    ['look 2: three, on a miss 4 crashes', 'Look'],
  ])('%s', (line, type) => {
    const { fault, tree } = parseLine(line);
    expect(fault).toBeUndefined();
    expect(tree?.$type).toBe(type);
  });
  it('a slip in a rebound line is told as one', () => {
    expect(parseLine('rebound 2, 4, 5 crsh, 1, 3 get back').fault?.code).toBe('unknown-word');
  });
  it('"in" and "set" alone begin no play', () => {
    expect(parseLine('in the corner').fault).toBeDefined();
    expect(parseLine('set a screen').fault).toBeDefined();
  });
});

describe('a number behind the mark of a remark', () => {
  it('is told, with the mark to be left out', () => {
    const { warnings } = parseLine('    #4 pops to top');
    expect(warnings.map(({ code }) => code)).toEqual(['words-not-read']);
    expect(applyEdits('    #4 pops to top', warnings[0]!.fixes[0]!.edits)).toBe('    4 pops to top');
  });
  it.each(['# 4 pops to top', '#4 was the captain', '#4', '# 1'])('%s stays a remark', (line) => {
    expect(parseLine(line).warnings).toEqual([]);
  });
});
