import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/broken-line.ts';
import { parseLine, verbMissing } from '../../language/grammar/parse-line.ts';

/** The line, the words that are marked, the code, and the line after the first mend (nothing: no mend is offered). */
const rows: readonly (readonly [line: string, marked: string, code: string, mended?: string])[] = [
  ['4 scrrens for 2', 'scrrens', 'unknown-word', '4 screens for 2'],
  ['4 scren for 2', 'scren', 'unknown-word', '4 screens for 2'],
  ['4 and 5 scren for 2', 'scren', 'unknown-word', '4 and 5 screen for 2'],
  ['1 dribles to left wing', 'dribles', 'unknown-word', '1 dribbles to left wing'],
  ['4 screens down 2', '2', 'missing-word', '4 screens down for 2'],
  ['4 ball screens 3', '3', 'missing-word', '4 ball screens for 3'],
  ['1 passes 2', '2', 'missing-word', '1 passes to 2'],
  ['1 passes too 2', 'too', 'unknown-word', '1 passes to 2'],
  ['1 passes to 2 cuts', 'cuts', 'who-does-it', '1 passes to 2 and cuts'],
  ['when 2 catches 5 rolls', '5', 'missing-word', 'when 2 catches, 5 rolls'],
  ['3 cuts of 5 to rim', 'of', 'misplaced-word', '3 cuts off 5 to rim'],
  ['3 cuts off 5 to rihgt elbow', 'rihgt', 'unknown-word', '3 cuts off 5 to right elbow'],
  ['3 cuts to wing left', 'wing left', 'word-order', '3 cuts to left wing'],
  ['3 cuts hard to rim', 'hard', 'unknown-word', '3 cuts to rim'],
  ['3 cuts off off 5', 'off', 'extra-word', '3 cuts off 5'],
  ['2 pops to wnig', 'wnig', 'unknown-word', '2 pops to wing'],
  ['3 goes to rim', 'goes', 'unknown-word', '3 cuts to rim'],
  ['4 picks for 3', 'picks', 'unknown-word', '4 screens for 3'],
  ['3 cuts to the hoop', 'hoop', 'unknown-word', '3 cuts to the rim'],
  ['two cuts to rim', 'two', 'unknown-word', '2 cuts to rim'],
  ['everyone els holds', 'els', 'unknown-word', 'everyone else holds'],
  ['4 rolls thn 5 pops', 'thn', 'unknown-word', '4 rolls then 5 pops'],
  ['5 flies to rim', 'flies', 'unknown-word'],
  ['3 to rim', '3 to', 'verb-missing', '3 cuts to rim'],
  ['4 for 2', '4 for', 'verb-missing', '4 screens for 2'],
  ['3cuts to rim', '3cuts', 'unknown-word', '3 cuts to rim'],
  ['3 cuts torim', 'torim', 'unknown-word', '3 cuts to rim'],
  ['3 cuts to lefte lbow', 'lefte lbow', 'unknown-word', '3 cuts to left elbow'],
  ['3 lcuts', 'lcuts', 'unknown-word', '3 l-cuts'],
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
  ['step "B" after "A" when they go zone', 'they go zone', 'name-without-quotes', 'step "B" after "A" when "they go zone"'],
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
  ['4 sets a screen for 2', 'sets a screen', 'noun-for-verb', '4 screens for 2'],
  ['4 and 5 set a down screen for 2', 'set a down screen', 'noun-for-verb', '4 and 5 down-screen for 2'],
  ['5 sets a ball screen for 1, then rolls', 'sets a ball screen', 'noun-for-verb', '5 ball-screens for 1, then rolls'],
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
    for (const fix of parseLine(line).fault!.fixes) expect(parseLine(applyEdits(line, fix.edits)).fault, fix.title).toBeUndefined();
  });

  it('behind a comment and an indent is marked where it stands', () => {
    const line = '\t  é 🏀';
    expect(parseLine(line).fault).toMatchObject({ at: 3, to: 4 });
    expect(parseLine('    4 scrrens for 2   # 4 screens').fault).toMatchObject({ at: 6, to: 13 });
  });
});

describe('messages', () => {
  it.each([
    ['4 scrrens for 2', '"scrrens" is no word I know here. Did you mean "screens"?'],
    ['4 screens for', 'The line stops too early. After "screens for" comes a player (1 to 5).'],
    ['5 flies to rim', '"flies" is no word I know here. What can stand here: a verb (cuts, passes, screens …).'],
    ['6 cuts to rim', 'There is no player 6. The offence is 1 to 5, the defence X1 to X5.'],
    ['pass 1 to 5', 'The player comes first: "1 passes …".'],
    ['4 sets a screen for 2', 'Say it with the verb alone: "screens".'],
    ['4 screens down 2', 'A word is missing before "2". Did you mean "for 2"?'],
    ['leave 4 after a miss', 'A time needs its unit: "4 seconds".'],
    ['step Zip', 'A name or a text stands in quotes: "Zip".'],
    ['note "keep', 'This quote is never closed. Put a " behind the last word that belongs to it.'],
    ['hello', '"hello" is no word I know here. A line begins with a player and what he does ("3 cuts to rim") or with a word like step, look, note, from or call.'],
  ])('%s: %s', (line, message) => {
    expect(parseLine(line).fault?.message).toBe(message);
  });

  it('a line too long is said to be, with both numbers', () => {
    expect(parseLine(`note "${'a'.repeat(3000)}"`).fault).toMatchObject({ code: 'line-too-long', params: { length: 3007, limit: 2000 } });
  });
});

describe('a line still being typed', () => {
  it.each(['4', '4 ', '4 scr', '4 screens for', '4 screens for ', '1 passes t', 'step', 'step "Zi', 'look 3 "', 'from', 'from ho', '3 cuts to the short ', 'once 4 is set,', 'call with 22 on', '4 rolls, th'])('"%s" is unfinished, not wrong', (line) => {
    expect(parseLine(line).fault?.unfinished).toBe(true);
  });
  it.each(['4 scrrens for 2', '1 passes 2', '5 flies to rim', '6 cuts to rim'])('"%s" is wrong', (line) => {
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
