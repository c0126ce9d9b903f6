// The head of a play in the words of coaches who know the README and no more: each line is told with the line that is meant.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';

const told: readonly (readonly [said: string, mended: string])[] = [
  // how they stand
  ['box, 4 and 5 up, 2 and 3 down, 1 out front with it', 'from box, 4 and 5 elbows, 2 and 3 blocks, 1 top, ball with 1'],
  ['1 starts in the middle with the ball, 2 on the right side, 3 on the left side, 4 in the right corner, 5 in the left corner', 'from 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left corner, ball with 1'],
  ['1 is up top with the ball, 2 left side, 3 right corner, 4 under the basket on the left, 5 at the free throw line', 'from 1 top, 2 left wing, 3 right corner, 4 left low post, 5 free-throw line, ball with 1'],
  ['1-4 high: 1 on the rock, 2 RW, 3 LW, 4 L elbow, 5 R elbow', 'from 1-4 high, 2 right wing, 3 left wing, 4 left elbow, 5 right elbow, ball with 1'],
  ['start from horns, the ball has 1', 'from horns, ball with 1'],
  ['horns 1 has ball', 'from horns, ball with 1'],
  ['five outside: 1 middle, 2 left wing, 3 right wing, 4 right corner, 5 left corner', 'from 5-out, 1 top, 2 left wing, 3 right wing, 4 right corner, 5 left corner'],
  ['horns, rock with 1', 'from horns, ball with 1'],
  ['five out, 1 up top, bigs trailing on the left', 'from 5-out, 1 top # bigs trailing on the left'],
  ['spread floor, 1 has it up top, 5 on the right elbow', 'from spread, 1 top, 5 right elbow, ball with 1'],
  ['the ball is to 1, in the axis', 'ball with 1 # in the axis'],
  ['ball by 1', 'ball with 1'],
  ['1 has the ball.', 'ball with 1'],
  ['1 with the ball in the center, 2 and 3 in the corners, 4 and 5 in the elbows', 'from 1 top, 2 and 3 corners, 4 and 5 elbows, ball with 1'],
  ['1 up with the ball, 2 left wing, 3 right wing, 4 low post right, 5 low post left', 'from 1 top, 2 left wing, 3 right wing, 4 right low post, 5 left low post, ball with 1'],
  ['1 point, 2 right wing, 3 left wing, 4 high post, 5 right block', 'from 1 top, 2 right wing, 3 left wing, 4 high post, 5 right block'],
  ['two guard front: 1 left slot with the ball, 2 right slot, 3 left corner, 4 right corner, 5 in the middle at the foul line', 'from 1 left slot, 2 right slot, 3 left corner, 4 right corner, 5 free-throw line, ball with 1 # two guard front'],
  ['box: 4 right block, 2 left block, 5 right elbow, 1 left elbow', 'from box, 4 right block, 2 left block, 5 right elbow, 1 left elbow'],
  ['box. 1 top w ball 2 l block 3 r block 4 l elbow 5 r elbow', 'from box, 1 top, 2 left block, 3 right block, 4 left elbow, 5 right elbow, ball with 1'],
  ['The play starts from a four-out: 1 is at the top, 2 is on the right wing, 3 is on the left wing, 4 is in the left corner and 5 is on the right block.', 'from 4-out, 1 top, 2 right wing, 3 left wing, 4 left corner, 5 right block'],
  // who throws in
  ['baseline throw-in, right of the basket, 3 takes it out', '3 inbounds from the right baseline'],
  ['side out on the right, 3 takes it out', '3 inbounds from the right sideline'],
  ['sideline throw-in on the left, 3 throws it in', '3 inbounds from the left sideline'],
  ['press break, after their basket, 4 takes it out', '4 inbounds from the far baseline'],
  // who goes to the boards
  ['3, 4, 5 board, 1 and 2 back', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['4, 5 board, 3 takes the long one, 1, 2 back', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ["if it doesn't go in, 4 and 5 go and get it, 3 helps them, 1 and 2 run back", 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ["4 and 5 get the rebound, 3 too if she's close, 1 and 2 go home", "rebound 4, 5, 3 crash, 1, 2 get back # 4 and 5 get the rebound, 3 too if she's close, 1 and 2 go home"],
  ['at the rebound: 3, 4, 5; in defensive retreat: 1 and 2', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['rebound 3, 4 and 5, 1 and 2 run back', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['boards 4 and 5, everybody else back', 'rebound 4, 5 crash, others get back'],
  ["rebound 4, 5 and 2, 3 too if he didn't shoot, 1 is the safety", "rebound 4, 5, 2, 3 crash, 1 gets back # rebound 4, 5 and 2, 3 too if he didn't shoot, 1 is the safety"],
  // what is left
  ['want 3 left if we miss', 'leave 3 seconds'],
  ['save 4 for the board', 'leave 4 seconds'],
  ['4, 5 crash, 3 corner crash, 1, 2 get back', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ['to the rebound go 3, 4, 5, back go 1, 2', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['4, 5 rebound, 3 also, 1 and 2 secure behind', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ['go to rebound 3, 4 and 5, in balance 1 and 2', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['4, 5 and 3 hit the glass, 1 and 2 are back', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ['4 and 5 crash, 3 too, 1 is safety, 2 goes back with him', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ['reb 3 4 5 , 1 2 bk', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  ['4 5 crash 3 mid 1 2 home', 'rebound 4, 5, 3 crash, 1, 2 get back'],
  ['After the shot 3, 4 and 5 go to the offensive rebound, while 1 and 2 protect our basket.', 'rebound 3, 4, 5 crash, 1, 2 get back'],
  // when it is called
  ['need 9 seconds', 'call with 9 on the clock'],
  ['we need about 15 seconds for this one', 'call with 15 on the clock'],
  ['call it when there are 10 seconds or more', 'call with 10 on the clock'],
  ['early clock or 12 and under', 'call with 12 on the clock'],
  ['announce with 15 seconds on the clock', 'call with 15 on the clock'],
  ['until 11 seconds playable', 'call with 11 on the clock'],
  ['to ask with 14 seconds or more', 'call with 14 on the clock'],
  ['good with 3 to 8 seconds left', 'call with 3 to 8 on the clock'],
  ['5 seconds, or 6, not less than 4', 'call with 4 to 6 on the clock'],
  ['call w 13 left', 'call with 13 on the clock'],
  ['dial it up at 16', 'call with 16 on the clock'],
  ['call at 9, nothing fancy', 'call with 9 on the clock # nothing fancy'],
  ['7 secs ok', 'call with 7 on the clock'],
  ['Call it with 17 seconds on the clock, because we want to see both sides.', 'call with 17 on the clock # because we want to see both sides'],
];

/** What is left, and what goes below it. */
const onOneLine: readonly (readonly [said: string, first: string, below: string])[] = [
  ['from horns, call with 12', 'from horns', 'call with 12'],
  ['level u14, rules fiba', 'level u14', 'rules fiba'],
  ['call at 20, shot before 5', 'call at 20', 'shot before 5 on the clock'],
  ['call with 12 on the clock, shot by 4', 'call with 12 on the clock', 'shot by 4 on the clock'],
  ['situation after a time-out, call with 12 on the clock', 'situation after a time-out', 'call with 12 on the clock'],
  ['against man, 1 has the ball', 'against man', 'ball with 1'],
  ['ball with 1, call it with 18 or more', 'ball with 1', 'call with 18 on the clock'],
  ['1 top, 2 right wing, 3 left wing, ball with 1, call with 9', 'from 1 top, 2 right wing, 3 left wing', 'ball with 1, call with 9'],
  ['call with 8 on the clock, we need two', 'call with 8 on the clock', 'situation need a two'],
  ['sideline on the left, 4 throws in, call with 14, score tied', '4 inbounds from the left sideline', 'call with 14, score tied'],
  ['we need about 14 seconds, want 3 left if we miss', 'call with 14 on the clock', 'leave 3 seconds'],
  ['horns, ball by 1, call with 12', 'from horns', 'ball by 1, call with 12'],
  ['ball by 1, call with 12', 'ball with 1', 'call with 12'],
  ['box, 4 and 5 up, 1 out front with it, call with 9', 'from box, 4 and 5 elbows, 1 top, ball with 1', 'call with 9'],
  ['play "Flood" against 2-3', 'play "Flood"', '  against 2-3'],
  ['play "Pier" for u12', 'play "Pier"', '  level u12'],
  ['step "Gate": 1 passes to 2', 'step "Gate"', '  1 passes to 2'],
  ['step "Gate" look 2: layup', 'step "Gate"', '  look 2: layup'],
  ['from horns, ball with 1, call with 12 on the clock, 4 and 5 crash', 'from horns', 'ball with 1, call with 12 on the clock, 4 and 5 crash'],
];

/** Lines of steps, slips and beginnings: none is told as a head. */
const notHeads = [
  '1 passes to 2, 3 goes to the boards, 4 and 5 cut and get back', '1 dribbles to right wing, 2 cuts left corner and 3 top', '4 and 5 screen down, 2 and 3 come to the wings', '2 gets it in to 4, or to 5 if they switch',
  '1 waits 3 seconds, 2 lifs', 'look 4: layup with 3 seconds lft', '1 keeps the dribble alive and uses up 10 seconds', 'call it with 5, clock 2 s', 'from horns, ball with 1, call', 'rebound 2, 4, 5 crsh, 1, 3 get back',
  'we need 3', 'need 2', 'we have 8 seconds to get over half court', 'nobody rebounds but 5, we want four back', 'no time-out left, everybody knows the count', 'once 3 has the ball, 4 and 5 up, 1 back home rebound 2 3',
];

const mendOf = (line: string) => parseLine(line).fault?.fixes[0];

describe('a head in free words', () => {
  it.each(told)('“%s” is told with “%s”', (said, mended) => {
    const fix = mendOf(said);
    expect(fix && applyEdits(said, fix.edits)).toBe(mended);
    expect(parseLine(mended).fault).toBeUndefined();
  });

  it.each(onOneLine)('“%s” is parted into “%s” and “%s”', (said, first, below) => {
    const fix = mendOf(`  ${said} # of old`)!;
    expect(applyEdits(`  ${said} # of old`, fix.edits)).toBe(`  ${first} # of old`);
    expect(fix.below).toBe(below);
    expect(parseLine(first).fault).toBeUndefined();
  });

  it.each(notHeads)('“%s” is none', (line) => {
    const { fault } = parseLine(line);
    expect(fault === undefined ? '' : inEnglish(fault.message)).not.toMatch(/is the "from" line of the play|is the "rebound" line|has a line of its own: "call with/);
  });

  it('a torn from line puts nothing aside', () => {
    expect(parseLine('from 1 at court, 2 right corner, 3 left corner, 4 left wing, 5 right slt').fault!.fixes.every((fix) => !fix.edits.some(({ text }) => text.includes('#')))).toBe(true);
  });

  it('no text takes long', () => {
    const started = performance.now();
    for (const line of ['1 2 3 4 5 '.repeat(200), 'box, 4 and 5 up, '.repeat(100), '5 seconds, or 6, '.repeat(110), 'rebound 3, 4, 5 board, '.repeat(80), ', call with 12'.repeat(140)]) parseLine(line);
    expect(performance.now() - started).toBeLessThan(2000);
  });
});
