import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';

/** What coaches say in a look, and the look that its first mend makes of it. */
const rows: readonly (readonly [said: string, mended: string])[] = [
  // what it depends on
  ["look 1 in the corner: if she's all alone she can shoot", `look 1 "if she's all alone" in the corner: shoots`],
  ['look 1: If X5 stays back, he shoots the jumper at the elbow.', 'look 1 "if X5 stays back": jumper at the elbow'],
  ['look 5 on the roll: If the big hedges, 1 passes over him and 5 finishes with a layup.', 'look 5 "if the big hedges, over him" on the roll: pass from 1, layup'],
  ['look 2: When X2 helps on the roll, 1 passes to the corner for a three.', 'look 2 "when X2 helps on the roll, to the corner": pass from 1, three'],
  ['look 3: When X3 drops to double the post, 5 passes out to 3 for a three.', 'look 3 "when X3 drops to double the post": kick out from 5, three'],
  ['look 4: If X4 steps up to 5, 5 drops the ball to 4 for the layup.', 'look 4 "if X4 steps up to 5": drop pass from 5, layup'],
  ['look 2: If X2 takes the cutter, 5 throws it to the corner and 2 shoots the three.', 'look 2 "if X2 takes the cutter, to the corner": pass from 5, three'],
  ['look 5: If nobody comes, he shoots from the line himself.', 'look 5 "if nobody comes, from the line himself": shoots'],
  ['look 3: if his defender closes, ball to the corner, triple', 'look 3 "if his defender closes, to the corner": three'],
  ['look 3: three before X5 can get out', 'look 3 "before X5 can get out": three'],
  ["look 2: only if it's a layup", `look 2 "only if it's a layup": layup`],
  ['look 1 dubble comes kick it 3', 'look 1 "dubble comes": kick, three'],
  ['look 1: step back three if they switch', 'look 1 "if they switch": step back three'],
  ['look 4: if his man helps, dump off, dunk', 'look 4 "if his man helps": dump off, dunk'],
  ['look 3: if X2 helps, kick to 3, three', 'look 3 "if X2 helps": kick, three'],
  ['look 4: when X4 doubles, 2 hits him at the rim and he scores', 'look 4 "when X4 doubles": pass from 2, score'],
  ['look 3 "corner": if X3 helps, 5 kicks it out for three', 'look 3 "corner, if X3 helps": kick out from 5, three'],
  // who passes, and how
  ['look 5: throw it back, let it go', 'look 5: throw back, shoots'],
  ['look 1: long pass to the corner, triple', 'look 1 "long pass to the corner": pass, three'],
  ['look 4: bounce pass in the run, layup', 'look 4 "in the run": bounce-pass, layup'],
  ['look 5: lob straight from the throw-in, tip it in', 'look 5 "from the throw-in": lob, tip-in'],
  ['look 2: ahead to 2 on the run, layup', 'look 2 "on the run": pass ahead, layup'],
  ['look 5 slip layup frm 3', 'look 5: slips, pass from 3, layup'],
  ['look 2 3 swings it shot', 'look 2: swing from 3, shoots'],
  ['look 3: 1 to 3, three', 'look 3: pass from 1, three'],
  ['look 4: gets the pass of 1 and makes the layup', 'look 4: pass from 1, layup'],
  ['look 2: dribble hand-off from 5, three', 'look 2: hand-off from 5, three'],
  ['look 5: hit the roller, layup', 'look 5 "hit the roller": pass, layup'],
  ['look 5: lob or bounce at the rim, layup', 'look 5: lob, layup, look 5: bounce-pass, layup'],
  ['look 2: catch, high-low to 4, layup', 'look 2 "high-low": pass, passes to 4, 4 lays it up'],
  // what he does himself
  ['look 1: pulls to the basket, layup', 'look 1: drives to rim, layup'],
  ['look 1: enters until the basket, layup', 'look 1: drives to rim, layup'],
  ['look 5: rolls off, gets the ball under the basket', 'look 5 "under the basket": rolls'],
  ['look 5 in the post: He makes one move and shoots the hook.', 'look 5 "makes one move" in the post: hook'],
  ['look 1 drive lefty layup', 'look 1 "drive lefty": drives, layup'],
  ['look 3: two dribbles and bomb over the big', 'look 3 "two dribbles, over the big": shoots'],
  ['look 3: pump fake, one dribble, jumper', 'look 3 "pump fake, one dribble": jumper'],
  ['look 4: rip and go, layup', 'look 4: drives, layup'],
  ['look 5: get it deep, drop step, power finish', 'look 5 "get it deep": drop step, finish'],
  ['look 3: she gets the ball on the wing and drives baseline for a layup', 'look 3 "on the wing": drives baseline, layup'],
  ['look 1: split the trap and get to the rim', 'look 1 "split the trap": drives to rim'],
  // how it ends, and where
  ['look 2: three, top', 'look 2: three at the top'],
  ['look 3 elbow j', 'look 3: jumper at the elbow'],
  ['look 2 rt corner 3', 'look 2: three at right corner'],
  ['look 2: wide open in the corner, three', 'look 2: three at the corner'],
  ['look 1: stops and pops', 'look 1: pull-up'],
  ['look 3: throws the three', 'look 3: three'],
  ['look 4: easy two', 'look 4: score'],
  // whence he comes, in words of its own
  ['look 3 off the veer: three', 'look 3 "off the veer": three'],
  ['look 1 on the chin: layup', 'look 1 "on the chin": layup'],
  ['look 5 in the continuation: lob of 1, finishes up', 'look 5 "in the continuation": lob from 1, finish'],
  ['look 5 with the mismatch: back to the basket, hook', 'look 5 "with the mismatch, back to the basket": hook'],
];

describe('a look in own words', () => {
  it.each(rows)('“%s” is told with “%s”', (said, mended) => {
    const { fault } = parseLine(said);
    expect(fault?.fixes[0] && applyEdits(said, fault.fixes[0].edits)).toBe(mended);
    for (const { edits, title } of fault!.fixes) {
      const { fault: left, tree, warnings } = parseLine(applyEdits(said, edits));
      expect(left, inEnglish(title)).toBeUndefined();
      expect(tree?.$type).toBe('Look');
      expect(warnings).toEqual([]);
    }
  });

  it('behind a comment and an indent stays where it is', () => {
    const said = '    look 5: throw it back, let it go   # the trailer';
    expect(applyEdits(said, parseLine(said).fault!.fixes[0]!.edits)).toBe('    look 5: throw back, shoots   # the trailer');
  });

  it.each([
    'look 3: no shot, swing it', "look 2: don't shoot, pass to 4", 'look 2: if they foul him, two shots, he makes them',
    'look 4: pops to the ball, 3 comes around him for the hand-off, three', 'look 2: zinger',
  ])('no look is made of “%s”', (said) => {
    for (const { edits } of parseLine(said).fault!.fixes) expect(applyEdits(said, edits)).not.toMatch(/^look .*:.*(?:shoots|three|layup|jumper)$/);
  });

  it.each([['look 4: layp', 'look 4: layup'], ['look 2: three at the rihgt elbow', 'look 2: three at the right elbow'], ['look 4: bounce-paass, layup', 'look 4: bounce-pass, layup']])('a slip of the pen in “%s” is mended where it is', (said, mended) => {
    expect(applyEdits(said, parseLine(said).fault!.fixes[0]!.edits)).toBe(mended);
  });
});
