import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine, verbMissing } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';

/** The line, the words that are marked, the code, and the line after the first mend (nothing: no mend is offered). */
const rows: readonly (readonly [line: string, marked: string, code: string, mended?: string])[] = [
  ['4 scrrens for 2', 'scrrens', 'unknown-word', '4 screens for 2'],
  ['4 scren for 2', 'scren', 'unknown-word', '4 screens for 2'],
  ['4 and 5 scren for 2', 'scren', 'unknown-word', '4 and 5 screen for 2'],
  ['1 dribles to left wing', 'dribles', 'unknown-word', '1 dribbles to left wing'],
  ['1 passes 2', '2', 'missing-word', '1 passes to 2'],
  ['1 passes too 2', 'too', 'unknown-word', '1 passes to 2'],
  ['1 passes to 2 cuts', 'cuts', 'who-does-it', '1 passes to 2 and cuts'],
  ['3 cuts of 5 to rim', 'of', 'misplaced-word', '3 cuts off 5 to rim'],
  ['3 cuts off 5 to rihgt elbow', 'rihgt', 'unknown-word', '3 cuts off 5 to right elbow'],
  ['3 cuts to wing left', 'wing left', 'word-order', '3 cuts to left wing'],
  ['4 cuts to corner right', 'corner right', 'word-order', '4 cuts to right corner'],
  ['1 dribbles to wing right and passes to 2', 'wing right', 'word-order', '1 dribbles to right wing and passes to 2'],
  ['3 cuts off off 5', 'off', 'extra-word', '3 cuts off 5'],
  ['2 pops to wnig', 'wnig', 'unknown-word', '2 pops to wing'],
  // slips that no nearest word mends
  ['3 cuts cuts to rim', 'cuts', 'extra-word', '3 cuts to rim'],
  ['4 comes comes off 3 to top', 'comes off', 'extra-word', '4 comes off 3 to top'],
  ['look #1 "fade": skip, three', 'look', 'line-unfinished', 'look 1 "fade": skip, three'],
  ['1 passes to 4, #4 passes to 2, #2 passes to 3', ',', 'line-unfinished', '1 passes to 4, 4 passes to 2, 2 passes to 3'],
  ['3 look "corner": kick out, three', '3 look', 'word-order', 'look 3 "corner": kick out, three'],
  ['1 passes at 2', 'at 2', 'misplaced-word', '1 passes to 2'],
  ['3 inbounds for 1', 'for 1', 'misplaced-word', '3 inbounds to 1'],
  ['look 5: bounce-pass and layup', 'and', 'misplaced-word', 'look 5: bounce-pass, layup'],
  ['5 screens for 2 at right bock', 'bock', 'unknown-word', '5 screens for 2 at right block'],
  // a play's head
  ['5 out', '5 out', 'missing-word', 'from 5 out'],
  ['1-4 high, ball with 1', '1-4 high, ball with 1', 'missing-word', 'from 1-4 high, ball with 1'],
  ['no screens', 'no screens', 'missing-word', 'must have no screens'],
  ['everyone must touch the ball', 'everyone must touch the ball', 'missing-word', 'must have every player touch the ball'],
  ['1 has the ball', '1 has the ball', 'misplaced-word', 'ball with 1'],
  ['rebound 3, 4, 5', '5', 'line-unfinished', 'rebound 3, 4, 5 crash'],
  ['from box, 3 taking it out under the basket', 'taking', 'misplaced-word'],
  ['from stack at the left elbow: 2, 4, 5, 1', '1', 'line-unfinished', 'from stack at the left elbow: 2, 4, 5, 1 from the baseline up'],
  ['1 rejects the screen', 'rejects', 'unknown-word'],
  ['5 flashes into the middle when the top guard commits to 1', 'when the top guard commits to 1', 'misplaced-word', '5 flashes into the middle'],
  ['shot clock 24', 'shot clock 24', 'misplaced-word'],
  ['3 inbounds to 1 within 3 seconds', 'within 3 seconds', 'extra-word', '3 inbounds to 1'],
  ['4 flashes to the high post between the guards', 'between the guards', 'misplaced-word'],
  ['1 splits', 'splits', 'unknown-word'],
  ['1 and 4 run pick and roll', 'pick and roll', 'misplaced-word', '4 ball-screens for 1, then rolls'],
  ['4 slaps the ball and everybody goes', 'slaps', 'unknown-word', 'note "4 slaps the ball and everybody goes"'],
  ['4 screens the screener', 'screener', 'unknown-word'],
  ['1 hits the roller', 'roller', 'unknown-word'],
  ['2 and 1 play catch', 'play catch', 'misplaced-word', '2 passes to 1, 1 passes to 2'],
  ['4 kicks it to 2 when the defence collapses', 'when the defence', 'misplaced-word'],
  // a place is never passed over
  ['2 curls off the pindown, catches it at the elbow and faces up', 'catches it', 'misplaced-word'],
  // what a look leaves, what nobody waits for, how close behind
  ['4 carries on to the opposite block if he doesn\'t get it', 'if he doesn\'t get it', 'extra-word', '4 carries on to the opposite block'],
  ['4 gets out to the right corner if she doesn\'t get it', 'if she doesn\'t get it', 'extra-word', '4 gets out to the right corner'],
  ['5 dives if nothing is there', 'if nothing is there', 'extra-word', '5 dives'],
  ['2 goes backdoor if his man is not looking', 'if', 'unknown-word'],
  ['1 passes to the post on the left block', 'post', 'misplaced-word'],
  ['3 makes way for 4', 'makes', 'unknown-word', 'note 3 "makes way for 4"'],
  ['2 swings it back to 1 on the close-out', 'on the close-out', 'misplaced-word', '2 swings it back to 1'],
  ['on her heels, 4 peels off and steps to the ball', 'on her heels', 'unknown-word', 'at the same time, 4 peels off and steps to the ball'],
  ['3 chases her pass and takes it back from 2 in a hand-off', 'takes it back from 2 in a hand-off', 'unknown-word', '3 chases her pass, 2 hands off to 3'],
  ['1 drives the other way', 'other way', 'unknown-word', '1 drives to the left'],
  ['3 cuts behind his man if X3 turns his head', 'if', 'unknown-word'],
  // late in a game, and how a defender guards
  ['X1 fouls 1', 'fouls', 'unknown-word', 'note "X1 fouls 1"'],
  ['1 misses on purpose', 'misses', 'unknown-word', 'note "1 misses on purpose"'],
  ['1 shoots a free throw', 'shoots', 'unknown-word', 'note "1 shoots a free throw"'],
  ['X1 covers the passing lane to 1', 'covers the passing lane to 1', 'unknown-word', 'X1 denies 1'],
  ['X2 faceguards 2', 'faceguards 2', 'unknown-word', 'X2 denies 2'],
  ['against box and one', 'box and one', 'misplaced-word', 'against man'],
  ['1 dribbles down the clock to 8 seconds', 'dribbles down the clock to 8 seconds', 'misplaced-word', '1 keeps his dribble until 8 on the clock'],
  // looks and choices
  ['look 1 drift: three', 'drift', 'missing-word', 'look 1 on the drift: three'],
  ['look 1 to the rim: layup', 'to', 'missing-word', 'look 1 going to the rim: layup'],
  ['look 4 slip layup', 'slip', 'missing-word', 'look 4 on the slip layup'],
  ['look 2 3', '3', 'missing-word', 'look 2: three'],
  ['5 hits 2 or 3', 'or', 'misplaced-word', 'look 2 or 3'],
  ['otherwise 4 pops', 'otherwise', 'misplaced-word'],
  ['step 1', '1', 'name-without-quotes', 'step "1"'],
  // a head line without its word, or with another
  ['down by 2', 'down by 2', 'missing-word', 'situation down 2'],
  ['after a timeout', 'after a timeout', 'missing-word', 'situation after a time-out'],
  ['side out of bounds', 'side out of bounds', 'missing-word', 'situation sideline throw-in'],
  ['situation side throw in, down by 2', 'situation side throw in, down by 2', 'missing-word', 'situation sideline throw-in, down 2'],
  ['11 seconds left', '11 seconds left', 'missing-word', 'call with 11 on the clock'],
  ['clock 0:11', 'clock 0:11', 'missing-word', 'call with 11 on the clock'],
  ['defense: man to man', 'defense: man to man', 'missing-word', 'against man'],
  ['they play a 2-3 zone', 'they play a 2-3 zone', 'missing-word', 'against 2-3 zone'],
  ['box set', 'box set', 'missing-word', 'from box set'],
  ['players start in a box', 'players start in a box', 'missing-word', 'from box'],
  ['They line up in horns', 'They line up in horns', 'missing-word', 'from horns'],
  ['inbounder 3 on the right side', 'inbounder 3 on the right side', 'missing-word', '3 inbounds from the right sideline'],
  ['3 throws in from the left', '3 throws in from the left', 'missing-word', '3 inbounds from the left sideline'],
  ['age 13', 'age 13', 'missing-word', 'level u14'],
  ['name: Side Heron', 'name: Side Heron', 'missing-word', 'play "Side Heron"'],
  ['option "Keep It" when X4 switches', 'option "Keep It" when X4 switches', 'misplaced-word', 'step "Keep It" when X4 switches'],
  ['1 cuts off 4 for a handoff', 'for a handoff', 'misplaced-word', '4 hands off to 1'],
  ['1 comes off 4 for the hand off to the rim', 'for the hand off', 'misplaced-word', '4 hands off to 1, 1 drives to the rim'],
  ['1 looks for 5', 'looks', 'misplaced-word', 'look 5'],
  ['4 looks to give it back', 'looks', 'misplaced-word'],
  ['3 lobs to 2 or passes to 5', 'or', 'misplaced-word'],
  ['3 passes ahead to 5 for a lay up', 'for a lay up', 'misplaced-word', '3 passes ahead to 5, 5 lays it up'],
  ['if they jump out on 2, 5 slips', 'if they', 'misplaced-word'],
  // phrases that one line says with other words
  ['5 makes a basket cut', 'makes a basket cut', 'unknown-word', '5 basket-cuts'],
  ['1 makes a hard back cut', 'makes a hard back cut', 'unknown-word', '1 back-cuts'],
  ['2 makes a shallow cut to the wing', 'makes a shallow cut', 'unknown-word', '2 shallow-cuts to the wing'],
  ['1 drags the ball out to the top', 'drags the ball out', 'unknown-word', '1 pulls it out to the top'],
  ['1 drags it out and resets', 'drags it out', 'unknown-word'],
  ['1 pitches it ahead to 2', 'pitches it ahead to 2', 'unknown-word', '1 passes ahead to 2'],
  ['1 gives and goes with 4', 'gives and goes with 4', 'unknown-word', '1 passes to 4, then basket-cuts'],
  ['3 fills up', 'fills up', 'unknown-word', '3 fills the open spot'],
  ['2 and 3 fill up', 'fill up', 'unknown-word', '2 and 3 fill the open spot'],
  ['4 sets a ghost screen for 1', 'sets a ghost screen for 1', 'unknown-word', '4 slips'],
  ['1 isolates on the wing', 'isolates', 'unknown-word', '1 keeps his dribble on the wing'],
  ['5 flattens out to the baseline', 'flattens out', 'unknown-word', '5 drifts to the baseline'],
  ['4 ducks into the left block', 'ducks into', 'unknown-word', '4 seals at the left block'],
  ['4 and 5 short roll', 'short roll', 'unknown-word', '4 and 5 roll to the nail'],
  ['1 passes to 5 in the short roll', 'in the short roll', 'unknown-word', '1 passes to 5 on the nail'],
  ['situation side out of bounds', 'situation side out of bounds', 'missing-word', 'situation sideline throw-in'],
  ['1 turns down the screen', 'turns', 'unknown-word'],
  // moves, screens, passes
  ['1 swings it to the weak side', 'weak side', 'misplaced-word'],
  ['4 screens the bottom man of the zone', 'bottom', 'unknown-word'],
  ['5 pins the bottom man of the zone', 'pins', 'unknown-word'],
  ['5 pins X4', 'pins', 'unknown-word', '5 pin-screens X4'],
  ['1 hits 3 off the flare', 'off the flare', 'misplaced-word', '1 hits 3 as he comes off the flare'],
  ['1 takes two dribbles and passes to 3', 'takes two dribbles', 'unknown-word', '1 dribbles to the right elbow and passes to 3'],
  ['everyone rotates up one spot', 'rotates up one spot', 'misplaced-word'],
  ['3 rotates up one spot', 'rotates up one spot', 'misplaced-word', '3 fills the open spot'],
  ['situation 8 seconds left', '8 seconds left', 'misplaced-word', 'call with 8 on the clock'],
  ['situation down 1, 8 seconds left', '8 seconds left', 'misplaced-word', 'situation down 1, "8 seconds left"'],
  ['3 dribbles it at the defense', 'defense', 'unknown-word', '3 dribbles it to top'],
  ["4 rotates up to 2's spot", "rotates up to 2's spot", 'misplaced-word', '4 fills for 2'],
  ['1 isolates at the top', 'isolates', 'unknown-word', '1 keeps his dribble at the top'],
  ['2 breaks long', 'long', 'unknown-word', '2 breaks to the rim'],
  ['two cuts to rim', 'two', 'unknown-word', '2 cuts to rim'],
  ['everyone els holds', 'els', 'unknown-word', 'everyone else holds'],
  ['4 rolls thn 5 pops', 'thn', 'unknown-word', '4 rolls then 5 pops'],
  ['5 avoids to rim', 'avoids', 'unknown-word'],
  ['5 flies about', 'flies', 'unknown-word', 'note 5 "flies about"'],
  ['3 to rim', '3 to', 'verb-missing', '3 cuts to rim'],
  ['4 for 2', '4 for', 'verb-missing', '4 screens for 2'],
  ['3cuts to rim', '3cuts', 'unknown-word', '3 cuts to rim'],
  ['3 cuts torim', 'torim', 'unknown-word', '3 cuts to rim'],
  ['3 cuts to lefte lbow', 'lefte lbow', 'unknown-word', '3 cuts to left elbow'],
  ['laeve 4 seconds after a miss', 'laeve', 'unknown-word', 'leave 4 seconds after a miss'],
  ['from 14 high', '14', 'misplaced-word', 'from 1-4 high'],
  ['step "B" "A" otherwise', '"A"', 'missing-word', 'step "B" after "A" otherwise'],
  ['step Zip', 'Zip', 'name-without-quotes', 'step "Zip"'],
  ['step Big Zip', 'Big Zip', 'name-without-quotes', 'step "Big Zip"'],
  ['step Slip instead of "Middle" when X4 shows', 'Slip', 'name-without-quotes', 'step "Slip" instead of "Middle" when X4 shows'],
  ['step "B" afer "A"', 'afer', 'unknown-word', 'step "B" after "A"'],
  ['step "B" after A', 'A', 'name-without-quotes', 'step "B" after "A"'],
  ['step "B" after A when X2 denies', 'A', 'name-without-quotes', 'step "B" after "A" when X2 denies'],
  ['step The Middle', 'The Middle', 'name-without-quotes', 'step "The Middle"'],
  ['step "B" insted of "A"', 'insted of', 'unknown-word', 'step "B" instead of "A"'],
  ['play Lighthouse', 'Lighthouse', 'name-without-quotes', 'play "Lighthouse"'],
  ['use alignments.play', 'alignments.play', 'name-without-quotes', 'use "alignments.play"'],
  ['spot pocket is 3 ft inside right elbow', 'pocket', 'name-without-quotes', 'spot "pocket" is 3 ft inside right elbow'],
  ['note keep low # here', 'keep low', 'name-without-quotes', 'note "keep low" # here'],
  ['note "keep low', '"keep low', 'open-quote', 'note "keep low"'],
  ['look 3 "pull-up: jumper', '"pull-up: jumper', 'open-quote', 'look 3 "pull-up": jumper'],
  ['note "number #1', '"number #1', 'open-quote', 'note "number #1"'],
  ['look 2 cornr', 'cornr', 'unknown-word', 'look 2 "cornr"'],
  ['look 3: jumpr', 'jumpr', 'unknown-word', 'look 3: jumper'],
  ['call with 22 on clck', 'on clck', 'misplaced-word', 'call with 22 on the clock'],
  ['must at least 3 passes', 'at least', 'missing-word', 'must have at least 3 passes'],
  ['ends whit no shot', 'whit no shot', 'unknown-word', 'ends with no shot'],
  ['from hrons', 'hrons', 'unknown-word', 'from horns'],
  ['from horns ball with 1', 'ball with', 'missing-word', 'from horns, ball with 1'],
  ['rules fiba also nfhs', 'also', 'missing-word', 'rules fiba, also nfhs'],
  ['against 23', '23', 'misplaced-word', 'against 2-3'],
  ['rebound 2, 4, 5 crsh, 1, 3 get back', 'crsh', 'unknown-word', 'rebound 2, 4, 5 crash, 1, 3 get back'],
  ['once 4 set, 3 cuts', 'set', 'unknown-word', 'once 4 is set, 3 cuts'],
  ['X4 swiches to 2', 'swiches', 'unknown-word', 'X4 switches to 2'],
  ['X7 denies 2', 'X7', 'no-such-player'],
  ['6 cuts to rim', '6', 'no-such-player'],
  ['1 passes to 6', '6', 'no-such-player'],
  ['4 cuts to 2 above elbow', '2', 'unit-missing', '4 cuts to 2 ft above elbow'],
  ['leave 4 after a miss', '4', 'unit-missing', 'leave 4 seconds after a miss'],
  ['inbound within 5', '5', 'unit-missing', 'inbound within 5 seconds'],
  ['pass 1 to 5', 'pass 1', 'verb-first', '1 passes to 5'],
  ['screens 4 for 2', 'screens 4', 'verb-first', '4 screens for 2'],
  ['cuts to rim', 'cuts', 'verb-first'],
  // eleven sets more, said aloud
  ['level u18', 'u18', 'unknown-word', 'level hs'],
  ['level mini', 'mini', 'unknown-word', 'level u10'],
  ['rules high school', 'high school', 'unknown-word', 'rules nfhs'],
  ['from 1 at top, 5 deep under our basket', 'deep under our basket', 'unknown-word', 'from 1 at top, 5 at the rim'],
  ['from sideline, ball with 1', 'sideline', 'misplaced-word', '1 inbounds from the sideline'],
  ['from the right baseline', 'right baseline', 'misplaced-word', 'situation baseline throw-in, "from the right"'],
  ['from a side throw-in', 'side throw-in', 'misplaced-word', 'situation sideline throw-in'],
  ['from side out', 'side out', 'misplaced-word', 'situation sideline throw-in'],
  ['ends with the ball in 1\'s hands', 'with the ball in 1\'s hands', 'misplaced-word', 'ends once 1 has the ball'],
  ['5 turns and sets a side pick-and-roll with 2', 'pick-and-roll', 'misplaced-word', '5 ball-screens for 2, then rolls'],
  ['1 comes back for a handoff from 4', 'for a handoff from 4', 'misplaced-word', '1 comes, 4 hands off to 1'],
  ['1 attacks 2 on 1 with 5', 'attacks 2 on 1', 'misplaced-word', '1 drives to the rim'],
  ['1 runs the far sideline', 'far sideline', 'misplaced-word', '1 runs to far hash'],
  ['1 spots up opposite', 'opposite', 'misplaced-word', '1 spots up in the opposite corner'],
  ['1 probes', 'probes', 'unknown-word', '1 keeps his dribble'],
  ['1 probes to the elbow', 'probes', 'unknown-word', '1 dribbles to the elbow'],
  ['X1 ices the screen', 'ices', 'unknown-word'],
  ['everyone watches for the backdoor', 'watches', 'unknown-word', 'note "watches for the backdoor"'],
  ['4 and 5 close it behind 2', 'close it behind 2', 'unknown-word', '4 and 5 close behind 2'],
  ['shot with 3 to 5 on the clock', 'with 3 to 5', 'misplaced-word', 'shot between 5 and 3 on the clock'],
  ['call with 24 on the shot clock', '24 on the shot clock', 'misplaced-word'],
  ['step "C" repeats "A" and "B" until somebody is open', 'until somebody is open', 'misplaced-word', 'step "C" repeats "A" and "B" for 15 seconds'],
  ['no shot but a layup', 'no', 'misplaced-word', 'note "no shot but a layup"'],
  // nothing near: what there is
  ['from octopus', 'octopus', 'unknown-word'],
  ['2 cuts to the left squirrel', 'squirrel', 'unknown-word', '2 cuts to the "left squirrel"'],
  ['look 2: zinger', 'zinger', 'unknown-word'],
  // what coaches say that no line can say so: the mend keeps the meaning, or there is none
  ['unless X2 denies, 1 passes to 2', 'unless', 'unknown-word'],
  ['if X4 switches, 4 slips', 'if', 'unknown-word'],
  ['1 passes to 4 if he is open', 'if', 'unknown-word', 'look 4'],
  ['before 1 passes, 2 cuts', 'before', 'misplaced-word', 'once 2 cuts, 1 passes'],
  ['2 cuts to rim before 1 passes', 'before', 'misplaced-word', 'once 2 cuts to rim, 1 passes'],
  ['2 waits for 5 to set the screen', 'for 5 to set the screen', 'misplaced-word', '2 waits until 5 is set'],
  ['1 waits for the screen', 'for the screen', 'misplaced-word'],
  ['1 fakes to 2', 'fakes', 'unknown-word', 'note 1 "fakes to 2"'],
  ['1 gets the ball back from 5', 'gets the ball', 'unknown-word', '5 passes to 1'],
  ['2 takes X2 to the corner', 'takes X2', 'misplaced-word', '2 clears to the corner'],
  ['5, then 4, screen for 2', '5, then 4, screen', 'misplaced-word', '5 and 4 stagger for 2'],
  ['when the ball goes to right wing, 5 rolls', 'ball goes to', 'misplaced-word', 'when the ball reaches right wing, 5 rolls'],
  ['start at 8 on the clock', 'start at', 'misplaced-word', 'call with 8 on the clock'],
  ['against zone', 'zone', 'misplaced-word', 'against 2-3'],
  ['4 screens the middle man', 'middle', 'misplaced-word'],
  ['1 passes to 2 or 3', 'or', 'misplaced-word', 'look 2 or 3'],
  ['1 passes to whoever is open', 'whoever', 'unknown-word'],
  ['4 and 5 double for 2', 'double', 'misplaced-word', '4 and 5 double-screen for 2'],
  ['everyone clears the right side', 'right side', 'missing-word', 'everyone clears to the left side'],
  ['X1 picks up 1 at half court', 'picks up', 'misplaced-word', 'X1 guards 1 at half court'],
  ['2 cuts high', 'high', 'unknown-word', '2 cuts to the top'],
  ['4 screens low for 2', 'low', 'unknown-word', '4 screens at the block for 2'],
  ['the bigs screen for 2', 'bigs', 'unknown-word', '4 and 5 screen for 2'],
  ['1 at the left slot, 5 on the left block, 2 in the right corner', '1', 'missing-word', 'from 1 at the left slot, 5 on the left block, 2 in the right corner'],
  ['5 turns and faces', 'faces', 'unknown-word', '5 turns and faces up'],
  ['4 scrrens for 2, thn rolls', 'scrrens', 'unknown-word', '4 screens for 2, thn rolls'],
  ['4 screens for', 'for', 'line-unfinished'],
  ['1 passes to 2 and', 'and', 'line-unfinished'],
  ['4', '4', 'line-unfinished'],
  ['look', 'look', 'line-unfinished'],
  ['3 cuts to the short', 'short', 'line-unfinished'],
  ['4 scr', 'scr', 'line-unfinished'],
  ['hello', 'hello', 'unknown-word'],
  ['(', '(', 'misplaced-word'],
];

describe('a wrong line', () => {
  it.each(rows.map(([line, ...wanted]) => ({ line, wanted })))('$line', ({ line, wanted: [marked, code, mended] }) => {
    const { fault } = parseLine(line);
    expect(fault?.code).toBe(code);
    expect(line.slice(fault!.at, fault!.to)).toBe(marked);
    expect(fault!.fixes[0] && applyEdits(line, fault!.fixes[0].edits)).toBe(mended);
  });

  it.each(rows.flatMap(([line, , , mended]) => (mended !== undefined && !line.includes('thn rolls') ? [line] : [])))('every mend of "%s" can be read', (line) => {
    for (const fix of parseLine(line).fault!.fixes) expect(parseLine(applyEdits(line, fix.edits)).fault, inEnglish(fix.title)).toBeUndefined();
  });

  it('behind a comment and an indent is marked where it stands', () => {
    const line = '\t  é 🏀';
    expect(parseLine(line).fault).toMatchObject({ at: 3, to: 4 });
    expect(parseLine('    4 scrrens for 2   # 4 screens').fault).toMatchObject({ at: 6, to: 13 });
  });
});

it.each(['3 passes from 2', '1 hands off from 4'])('no mend of "%s" has the ball go the other way', (line) => {
  for (const { edits } of parseLine(line).fault?.fixes ?? []) expect(applyEdits(line, edits)).not.toMatch(/\bto [1-5]/);
});

describe('a mend never turns the line round', () => {
  const first = (line: string): string[] => parseLine(line).fault!.fixes.map((fix) => applyEdits(line, fix.edits));
  it('offers 1 to 5 no verb of a defender, and a defender no shot', () => {
    for (const line of ['5 clozes out', '3 trals', '4 hellps', '2 denys']) for (const mended of first(line)) expect(mended).not.toMatch(/stay home|close out|closes out|trails|helps|denies/);
    for (const line of ['X2 shots', 'X4 dunkz', 'X1 driveses']) for (const mended of first(line)) expect(mended).not.toMatch(/shoots|dunks|drives/);
  });
  it('offers no screen and no pass for an opponent', () => {
    for (const line of ['4 ball-screens X3 for', '1 passes X2']) for (const mended of first(line)) expect(mended).not.toMatch(/(for|to) X/);
  });
  it('leaves out no word that says when, where or whether', () => {
    for (const line of ['unless 2 catches, 5 rolls', '5 rolls unless 2 catches', '2 cuts high', '3 curls low', 'never 2 cuts', '5 rolls without 2']) for (const mended of first(line)) expect(mended.length).toBeGreaterThan(line.length - 3);
  });
});

describe('messages', () => {
  it.each([
    ['4 scrrens for 2', '"scrrens" is no word I know here. Did you mean "screens"?'],
    ['4 screens for', 'The line stops too early. After "screens for" comes a player (1 to 5).'],
    ['5 avoids to rim', '"avoids" is no verb I know. Say it with one of those in the reference under Actions (cuts, passes, screens …). A note (note "…") moves nobody.'],
    ['6 cuts to rim', 'There is no player 6. The offence is 1 to 5, the defence X1 to X5.'],
    ['pass 1 to 5', 'The player comes first: "1 passes …".'],
    ['1 passes 2', 'A word is missing before "2". Did you mean "to 2"?'],
    ['leave 4 after a miss', 'A time needs its unit: "4 seconds".'],
    ['step Zip', 'A name or a text stands in quotes: "Zip".'],
    ['note "keep', 'This quote is never closed. Put a " behind the last word that belongs to it.'],
    ['hello', '"hello" is no word I know here. A line begins with a player and what he does ("3 cuts to rim") or with a word like step, look, note, from or call.'],
  ])('%s: %s', (line, message) => {
    expect(inEnglish(parseLine(line).fault?.message ?? '')).toBe(message);
  });

  it('a line too long is said to be, with both numbers', () => {
    expect(parseLine(`note "${'a'.repeat(3000)}"`).fault).toMatchObject({ code: 'line-too-long', params: { length: 3007, limit: 2000 } });
  });
});

describe('a line still being typed', () => {
  it.each(['4', '4 ', '4 scr', '4 screens for', '4 screens for ', '1 passes t', 'step', 'step "Zi', 'look 3 "', 'from', 'from ho', '3 cuts to the short ', '3 cuts off 4 to the', '3 cuts to a ', 'once 4 is set,', 'call with 22 on', '4 rolls, th'])('"%s" is unfinished, not wrong', (line) => {
    expect(parseLine(line).fault?.unfinished).toBe(true);
  });
  it.each(['4 scrrens for 2', '1 passes 2', '5 avoids to rim', '6 cuts to rim'])('"%s" is wrong', (line) => {
    expect(parseLine(line).fault?.unfinished).toBe(false);
  });
  it('every beginning of a right line is right or unfinished where it ends in a blank', () => {
    for (const line of ['4 ball-screens for 3, then rolls ', 'step "Slip" instead of "Middle" when X4 shows on 3 ', 'call with 22 to 26 on the clock, shot clock 24 ', 'look 3 "pull-up" as he comes off 4: jumper ', 'rebound 2, 4, 5 crash, 1, 3 get back ']) {
      for (let at = 1; at <= line.length; at++) {
        if (line[at - 1] !== ' ') continue;
        const { fault } = parseLine(line.slice(0, at));
        if (fault) expect(fault.unfinished, line.slice(0, at)).toBe(true);
      }
    }
  });
});

describe('number of verbs', () => {
  it.each([
    ['2 cut to wing', '2 cuts to wing'],
    ['2 and 3 cuts to wing', '2 and 3 cut to wing'],
    ['4 screens for 1 and 2 cut', '4 screens for 1 and 2 cuts'],
    ['everyone else hold', 'everyone else holds'],
    ['1 passes to 2 and cut to rim', '1 passes to 2 and cuts to rim'],
    ['rebound 2 crash', 'rebound 2 crashes'],
    ['4 screen for 2', '4 screens for 2'],
  ])('%s is read, and mended to %s', (line, mended) => {
    const read = parseLine(line);
    expect(read.fault).toBeUndefined();
    expect(read.warnings).toHaveLength(1);
    expect(applyEdits(line, read.warnings[0]!.fixes[0]!.edits)).toBe(mended);
    expect(parseLine(mended).warnings).toEqual([]);
  });
});

describe('a place without a verb in a step', () => {
  it.each([
    ['3 left wing', '3 cuts to left wing'],
    ['3 at left wing', '3 cuts to left wing'],
    ['2 and 3 wings', '2 and 3 cut to wings'],
  ])('%s: a verb is missing', (line, mended) => {
    const { tree } = parseLine(line);
    if (tree?.$type !== 'Placing') throw new Error('no placing');
    const fault = verbMissing(tree);
    expect(applyEdits(line, fault.fixes[0]!.edits)).toBe(mended);
    for (const fix of fault.fixes) expect(parseLine(applyEdits(line, fix.edits)).tree?.$type).toBe('Statement');
  });
});
