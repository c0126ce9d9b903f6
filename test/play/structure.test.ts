import { describe, expect, it } from 'vitest';
import { runThroughs } from '../../language/play/run-throughs.ts';
import { codes, lighthouse, lookOf, read, readLines, short, stepOf, readPlayWith } from './reading.ts';

describe('steps', () => {
  it('makes an unnamed first step of the lines above the first step', () => {
    const { play } = readLines('1 passes to 2', 'step "Next"', '2 drives');
    expect(play.steps.map(({ key, parent }) => [key, parent])).toEqual([['start', null], ['next', 'start']]);
  });

  it('makes none of notes, rebounds and who throws in', () => {
    const { play } = readLines('note "eyes up"', 'rebound 2, 4, 5 crash', '3 inbounds from the left sideline', 'step "Zip"', '3 passes to 1');
    expect(play.steps.map(({ key }) => key)).toEqual(['zip']);
    expect(play.start.throwIn).toEqual({ by: { value: 3, origin: 'written' }, from: { value: { kind: 'spot', name: 'sideline', side: 'left' }, origin: 'written' }, side: 'sideline' });
  });

  it('hangs steps where their words put them', () => {
    const { play, problems } = readLines(
      'step "A"', '1 passes to 2',
      'step "B"', '2 drives',
      'step "C" after "A" when X2 denies', '1 drives',
      'step "D" instead of "B" when X4 shows on 3', '3 cuts to rim',
      'step "E"', '2 shoots',
      'step "F" first, when X1 denies 2', '1 drives',
      'step "G" instead of "A" when "they trap"', '1 drives',
      'step "H" after "A" otherwise', '1 shoots',
    );
    expect(problems).toEqual([]);
    expect(play.steps.map(({ key, parent, how, insteadOf }) => [key, parent, how, insteadOf])).toEqual([
      ['a', null, 'plain', undefined],
      ['b', 'a', 'plain', undefined],
      ['c', 'a', 'after', undefined],
      ['d', 'a', 'instead', 'b'],
      ['e', 'b', 'plain', undefined],
      ['f', null, 'first', undefined],
      ['g', null, 'instead', 'a'],
      ['h', 'a', 'after', undefined],
    ]);
    expect(play.steps.map(step => step.condition).filter(Boolean)).toEqual([
      { kind: 'defence', who: 'X2', verb: 'deny', text: 'X2 denies' },
      { kind: 'defence', who: 'X4', verb: 'show', on: '3', text: 'X4 shows on 3' },
      { kind: 'defence', who: 'X1', verb: 'deny', on: '2', text: 'X1 denies 2' },
      { kind: 'remark', text: 'they trap' },
      { kind: 'remark', text: 'otherwise' },
    ]);
    expect(runThroughs(play).map(({ id, steps }) => [id, steps.join(' ')])).toEqual([
      ['c', 'a c'], ['d', 'a d'], ['e', 'a b e'], ['f', 'f'], ['g', 'g'], ['h', 'a h'],
    ]);
  });

  it('leaves out a step after an unknown one and what hangs on it, and reads the rest', () => {
    const reading = readLines('step "A"', '1 passes to 2', 'step "B" after "Z" when X2 denies', '2 drives', 'step "C" after "B" when X2 denies', '2 shoots');
    expect(reading.play.steps.map(({ key }) => key)).toEqual(['a']);
    expect(reading.leftOut.map(({ key }) => key)).toEqual(['b', 'c']);
    expect(reading.problems).toEqual([{ code: 'unknown-step', part: 'b', params: { name: 'Z', step: 'B' } }]);
  });

  it('leaves out a circle of steps, said once', () => {
    const reading = readLines('step "A"', '1 passes to 2', 'step "B" after "C" when X2 denies', 'step "C" after "B" when X1 denies', 'step "D" instead of "D" when X3 denies');
    expect(reading.play.steps.map(({ key }) => key)).toEqual(['a']);
    expect(codes(reading)).toEqual(['step-loop', 'step-loop']);
  });

  it('numbers a second step of the same name, and says so', () => {
    const reading = readLines('step "A"', 'step "a"');
    expect(reading.play.steps.map(({ key }) => key)).toEqual(['a', 'a#2']);
    expect(reading.problems).toEqual([{ code: 'duplicate-name', part: 'a#2', params: { kind: 'step', name: 'a' }, related: ['a'] }]);
  });

  it('reports two ways on without a condition', () => {
    const reading = readLines('step "A"', 'step "B"', 'step "C" after "A"');
    expect(reading.problems).toEqual([{ code: 'two-ways-on', part: 'c', params: { name: 'C', other: 'B', after: 'A' }, related: ['b'] }]);
  });

  it('says what it cannot carry out yet', () => {
    expect(codes(readLines('step "A"', '1 passes to 2', 'step "B"', '2 inbounds to 3'))).toEqual(['not-yet']);
    expect(codes(readLines('step "A"', '1 passes to 2', 'step "B"', '2 inbounds from the left sideline'))).toEqual(['not-yet']);
  });

  it('waits for the clock where its line says how much is left', () => {
    const when = (words: string) => readLines('step "A"', '1 passes to 2', `step "B" ${words}`, '2 drives').play.steps[1]!.condition;
    expect(when('when 5 to 8 seconds are left')).toEqual({ kind: 'clock', clock: 'period', from: 5, to: 8, text: '5 to 8 seconds are left' });
    expect(when('when 6 seconds are left on the shot clock')).toMatchObject({ kind: 'clock', clock: 'shot', from: 6, to: 6 });
    expect(when('when X4 and X1 trap 1')).toMatchObject({ kind: 'defence', who: 'X4', also: ['X1'], verb: 'trap', on: '1' });
  });

  it('runs to a stated end, also where looks stand before it', () => {
    const { play } = readLines('1 passes to 2', 'look 2: three', 'ends once 2 has the ball over half court, within 8 seconds');
    expect(stepOf({ play } as never, 'start').end).toEqual({
      part: 'start#end', text: 'ends once 2 has the ball over half court, within 8 seconds', shot: false, withinSeconds: 8,
      event: { who: '2', does: 'reach', place: { kind: 'spot', name: 'half court' } },
    });
    expect(runThroughs(play).map(({ id }) => id)).toEqual(['start?2.1', 'start']);
  });
});

describe('a step that stands instead of another', () => {
  const kept = (...counter: string[]) => {
    const { play } = readLines(
      'step "A"', '1 dribbles to left wing',
      'step "B"', '5 screens down for 3, then rolls', '3 cuts off 5 to top', '2 and 4 lift', '1 passes to 3', 'look 3: three',
      'step "C" instead of "B" when X3 denies 1', ...counter,
    );
    return stepOf({ play } as never, 'c').kept.map(action => [action.id, ...(action.kind === 'move' ? [action.off.join('+')] : [])]);
  };

  it('keeps lines that its own lines do not touch', () => {
    expect(kept('1 drives')).toEqual([['b/5.1'], ['b/5.2', ''], ['b/3.1', '5'], ['b/2.1', ''], ['b/4.1', '']]);
  });

  it('leaves out the screen nobody kept uses, and the roll that hangs on it', () => {
    expect(kept('3 back-cuts to rim').map(([id]) => id)).toEqual(['b/2.1', 'b/4.1']);
  });

  it('keeps a cut off a screen that is gone as a straight cut', () => {
    expect(kept('5 lifts')).toEqual([['b/3.1', ''], ['b/2.1', ''], ['b/4.1', ''], ['b/1.1']]);
  });

  it('takes only the man named out of a shared subject', () => {
    expect(kept('2 cuts to rim').map(([id]) => id)).toEqual(['b/5.1', 'b/5.2', 'b/3.1', 'b/4.1', 'b/1.1']);
  });

  it('keeps nothing of a line that passes to a man it names', () => {
    expect(kept('3 cuts to rim').map(([id]) => id)).not.toContain('b/1.1');
  });

  it('knows a line that it repeats word for word', () => {
    const slip = stepOf(read(lighthouse), 'slip');
    expect(slip.actions.map(({ id, repeats }) => [id, repeats])).toEqual([['slip/1.1', 'middle/1.1'], ['slip/4.1', undefined]]);
    expect(slip.kept).toEqual([]);
  });

  it('starts with the ball where the kept passes leave it', () => {
    const reading = readLines('step "A"', '2 lifts', 'step "B"', '1 passes to 3', '4 rolls', 'step "C" instead of "B" when X4 shows', '4 pops', 'look 4');
    expect(lookOf(reading, 'c?4.1').tail.map(short)[0]).toMatchObject({ kind: 'pass', who: '3', to: '4', origin: 'derived' });
  });
});

describe('looks', () => {
  const tail = (...lines: string[]) => readLines(...lines).play.steps[0]!.looks[0]!.tail.map(action =>
    [action.who, action.kind, 'to' in action && typeof action.to === 'string' ? action.to : '', action.kind === 'shot' ? action.shot.value : action.kind === 'pass' ? action.pass.value : '', action.origin].join(' '));

  it.each([
    ['look 1: jumper', ['1 shot  jumper written']],
    ['look 2: three', ['1 pass 2 pass derived', '2 shot  three written']],
    ['look 2', ['1 pass 2 pass derived', '2 shot  shot derived']],
    ['look 2 or 3: three', ['1 pass 2 pass derived', '2 shot  three written']],
    ['look 4: lob, layup', ['1 pass 4 lob written', '4 shot  layup written']],
    ['look 4: lob, dunk', ['1 pass 4 lob written', '4 shot  dunk written']],
    ['look 4: lob', ['1 pass 4 lob written', '4 shot  shot derived']],
    ['look 4: 1 lobs to 4, 4 dunks', ['1 pass 4 lob written', '4 shot  dunk written']],
    ['look 1: drives baseline, layup', ['1 dribble   written', '1 shot  layup written']],
    ['look 2: drives baseline, layup', ['1 pass 2 pass derived', '2 dribble   written', '2 shot  layup written']],
    ['look 2: cuts to rim, layup', ['2 move   written', '1 pass 2 pass derived', '2 shot  layup written']],
    ['look 2: three or jumper', ['1 pass 2 pass derived', '2 shot  three written']],
    ['look 2: hand-off, layup', ['1 hand-off 2  written', '2 shot  layup written']],
  ])('%s', (line, expected) => {
    expect(tail(line)).toEqual(expected);
  });

  it('takes the passer from the text above', () => {
    expect(tail('1 passes to 3', 'look 2: three')[0]).toBe('3 pass 2 pass derived');
    expect(tail('1 passes to 3 to 2', 'look 2: three')).toEqual(['2 shot  three written']);
  });

  it('leaves the ball where it was when a look is passed up', () => {
    const { play } = readLines('1 passes to 3', 'look 2: three', 'look 4: layup');
    expect(play.steps[0]!.looks[1]!.tail[0]).toMatchObject({ kind: 'pass', who: '3', to: '4' });
  });

  it('says when nobody has the ball, or the looker has it already', () => {
    expect(codes(readLines('1 shoots', 'look 2: three'))).toEqual(['no-holder-for-look']);
    expect(codes(readLines('look 1: lob, layup'))).toEqual(['looker-has-ball']);
  });

  it.each([
    ['look 4 on the roll: layup', { kind: 'on', style: 'roll' }],
    ['look 3 as he comes off 4: jumper', { kind: 'off', screener: '4' }],
    ['look 3 as 5 rolls: jumper', { kind: 'as', event: { who: '5', does: 'roll' } }],
    ['look 2 at about 3 s after the start: three', { kind: 'at', seconds: 3, of: 'start' }],
    ['look 2 at left corner: three', { kind: 'place', place: { kind: 'spot', name: 'corner', side: 'left' } }],
    ['look 2 2 seconds later: three', { kind: 'later', seconds: 2 }],
    ['look 2 at 6 on the clock: three', { kind: 'at', seconds: 6, of: 'period' }],
    ['look 2 when 8 seconds are left on the shot clock: three', { kind: 'at', seconds: 8, of: 'shot' }],
    ['look 3 "pull-up" on the drive: jumper', { kind: 'on', style: 'drive' }],
  ])('%s is pinned', (line, pin) => {
    const reading = readLines(line);
    expect(reading.play.steps[0]!.looks[0]!.pin).toEqual(pin);
    expect(codes(reading)).toEqual([]);
  });

  it('reads who goes to the boards on a miss', () => {
    const { play } = readLines('look 4: jumper, on a miss 2 crashes');
    expect(play.steps[0]!.looks[0]!.rebounds).toEqual([{ part: 'start?4.1#rebound', within: 'start?4.1', crash: [2], back: [] }]);
  });

  it('numbers the looks of a man in his step', () => {
    expect(readLines('look 2', 'look 3', 'look 2').play.steps[0]!.looks.map(({ id }) => id)).toEqual(['start?2.1', 'start?3.1', 'start?2.2']);
  });
});

describe('steps copied from others', () => {
  const copies = (...lines: string[]) => readLines('step "A"', '1 passes to 2', '1 cuts to rim', 'look 1', 'step "B"', '2 passes to 3 at left wing', ...lines);
  const course = (reading: ReturnType<typeof readLines>) => reading.play.steps.map(step => [step.key, step.parent, step.actions.filter(({ kind }) => kind === 'pass').map(action => `${action.who}>${action.kind === 'pass' ? action.to : ''}`).join()]);

  it('run again with the parts given, taken once more each time, and the next plain step follows the last copy', () => {
    const reading = copies('step "More" again from "A" with 2 as 1, 3 as 2, 1 as 3, up to 2 times', 'step "End"', '4 rolls', 'step "Trap" after "More" when X1 traps 1', '5 rolls');
    expect(reading.problems).toEqual([]);
    expect(course(reading)).toEqual([
      ['a', null, '1>2'], ['b', 'a', '2>3'], ['more~1', 'b', '2>3'], ['more~2', 'more~1', '3>1'], ['more~3', 'more~2', '3>1'], ['more~4', 'more~3', '1>2'],
      ['end', 'more~4', ''], ['trap', 'more~4', ''],
    ]);
    expect(runThroughs(reading.play).map(({ id }) => id)).toEqual(['a?1.1', 'more~1?2.1', 'more~3?3.1', 'end', 'trap']);
    for (const action of reading.play.steps.flatMap(step => [...step.actions, ...step.looks.flatMap(look => look.tail)])) expect(reading.places.has(action.id)).toBe(true);
    expect(reading.places.get('more~2/3.1#at')).toEqual(reading.places.get('more~1'));
  });

  it('give the ball\'s man the part of the one who had it at the first start', () => {
    expect(course(copies('step "More" again from "A"')).slice(2)).toEqual([['more~1', 'b', '3>2'], ['more~2', 'more~1', '2>1']]);
    expect(course(copies('step "More" repeats "A" 2 times')).slice(2)).toEqual([['more~1', 'b', '3>2'], ['more~2', 'more~1', '2>1']]);
  });

  it('give a defender nobody\'s part, and say so', () => {
    const reading = copies('step "More" again from "A" with X4 as 1, 1 as 3, up to 2 times');
    expect(reading.problems).toEqual([{ code: 'defender-attacks', part: 'more', params: { who: 'X4', verb: 'X4 as 1' } }]);
    const ids = reading.play.steps.flatMap(step => step.actions.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter(id => id.includes('/X'))).toEqual([]);
  });

  it('are named by the step that asks for them', () => {
    expect(copies('step "More" again from "A", up to 2 times').play.steps.slice(2).map(({ name }) => name)).toEqual(['More: A, 1st time', 'More: B, 1st time', 'More: A, 2nd time', 'More: B, 2nd time']);
    expect(copies('step "More" repeats "A"').play.steps.slice(2).map(({ name }) => name)).toEqual(['More']);
    expect(copies('step "More" repeats "A" 12 times').play.steps.slice(-2).map(({ name }) => name)).toEqual(['More, 11th time', 'More, 12th time']);
  });

  it('are made of one step as often as it is named', () => {
    expect(course(copies('step "More" repeats "B", "B"')).slice(2).map(([key]) => key)).toEqual(['more~1', 'more~2']);
  });

  it('come before the lines of the step that asks for them', () => {
    expect(course(copies('step "More" again from "A"', '3 passes to 5')).at(-1)).toEqual(['more', 'more~2', '3>5']);
  });

  it('are not made of a step nobody knows', () => {
    const reading = copies('step "More" again from "Z"', 'step "End"', '4 rolls');
    expect(codes(reading)).toEqual(['unknown-step']);
    expect(course(reading).at(-1)).toEqual(['end', 'b', '']);
  });

  it('never grow without end', () => {
    expect(copies('step "More" again from "A", up to 99999 times').play.steps.length).toBeLessThan(50);
  });
});

describe('a play made from another', () => {
  const two = `${lighthouse}\nplay "Lighthouse left" mirrors "Lighthouse"\n  leave 6 seconds\n`;

  it('has left for right in every place, the same words elsewhere', () => {
    const source = read(two, 'Lighthouse').play;
    const { play, problems, places } = read(two, 'Lighthouse left');
    expect(problems).toEqual([]);
    expect(play.steps.map(({ key, parent }) => [key, parent])).toEqual(source.steps.map(({ key, parent }) => [key, parent]));
    expect(stepOf({ play } as never, 'zip').actions.map(action => ('to' in action && typeof action.to === 'object' ? action.to.value : undefined))).toEqual([
      { kind: 'spot', name: 'wing', side: 'right' }, undefined, { kind: 'spot', name: 'top' }, { kind: 'spot', name: 'corner', side: 'left' },
    ]);
    expect(play.start.places[2]).toEqual({ value: { kind: 'spot', name: 'block', side: 'left' }, origin: 'copied' });
    expect(play.clock).toEqual({ ...source.clock, leave: 6 });
    expect(play.defence.value).toEqual({ kind: 'man' });
    expect(play.rebounds).toEqual(source.rebounds);
    for (const action of play.steps.flatMap(step => [...step.actions, ...step.looks.flatMap(look => look.tail)])) expect(places.get(action.id)!.line).toBe(0);
  });

  it('mirrored twice is the play itself', () => {
    const again = read(`${two}play "Back" mirrors "Lighthouse left"`, 'Back').play;
    const strip = (value: unknown) => JSON.parse(JSON.stringify(value, (key, part) => (key === 'origin' ? undefined : part)));
    const source = read(two, 'Lighthouse').play;
    expect(strip(again.steps)).toEqual(strip(source.steps));
    expect(strip(again.start)).toEqual(strip(source.start));
  });

  it('continues where the named step leaves everyone, already set', () => {
    const reading = read(`${lighthouse}\nplay "Counter" continues "Lighthouse" after "Zip"\n  1 passes to 2\n  look 2: three`, 'Counter');
    expect(reading.problems).toEqual([]);
    expect(reading.play.start).toMatchObject({ ball: { value: 1 }, alreadySet: true });
    expect(reading.play.start.places[3].value).toMatchObject({ kind: 'point', point: { x: 0 } });
    expect(reading.play.steps.map(({ key }) => key)).toEqual(['start']);
  });

  it('is not made of itself, nor of a play or a step nobody knows', () => {
    expect(codes(read('play "A" mirrors "B"\nplay "B" mirrors "A"', 'A'))).toEqual(['copy-loop']);
    expect(codes(read('play "A" mirrors "A"'))).toEqual(['copy-loop']);
    expect(codes(read('play "A" mirrors "Z"'))).toEqual(['unknown-play']);
    expect(codes(read('play "A" continues "B" after "Z"\nplay "B"\n  1 drives'))).toEqual(['unknown-step']);
  });
});

describe('the safety', () => {
  it('goes to his place and gets the ball when the last look is passed up, on a way of its own', () => {
    const reading = readLines('2 is the safety at top', 'step "A"', '1 passes to 3', 'look 3: three');
    expect(reading.problems).toEqual([]);
    expect(reading.play.steps.map(({ key, parent, how }) => [key, parent, how])).toEqual([['a', null, 'plain'], ['a~safety', 'a', 'after']]);
    expect(reading.play.steps[0]!.actions.map(({ id, verb }) => [id, verb])).toEqual([['a/2.1', 'safety'], ['a/1.1', 'pass']]);
    expect(reading.play.steps[1]).toMatchObject({ actions: [{ kind: 'pass', who: '3', to: '2', throwIn: false }], end: { shot: false } });
    expect(runThroughs(reading.play).map(({ id }) => id)).toEqual(['a?3.1', 'a~safety']);
    for (const part of ['a/2.1', 'a/2.1#to', 'a~safety', 'a~safety/3.1', 'a~safety#end']) expect(reading.places.get(part)).toMatchObject({ line: 1 });
    expect(reading.lines[1]).toMatchObject({ kind: 'action', step: 'a', actions: ['a/2.1'] });
  });

  it('is thrown the ball where it is still out of bounds', () => {
    const { play } = readLines('3 inbounds from the left sideline', '2 is the safety', 'step "A"', '4 cuts to rim', 'look 4: layup');
    expect(play.steps[1]!.actions).toMatchObject([{ who: '3', to: '2', throwIn: true }]);
  });

  it('needs a look that can be passed up, and a ball in other hands', () => {
    expect(readLines('2 is the safety at top', 'step "A"', '1 passes to 3').play.steps).toHaveLength(1);
    expect(readLines('2 is the safety at top', 'step "A"', '1 passes to 2', 'look 3').play.steps).toHaveLength(1);
    expect(readLines('2 is the safety at top', 'step "A"', '1 passes to 3', 'look 3', 'ends with no shot').play.steps).toHaveLength(1);
  });
});

describe('a step that mirrors another', () => {
  const both = (...lines: string[]) => readLines('step "Right"', '1 passes to 2 at right wing', '1 cuts to right corner', 'look 1 at right corner: three', ...lines);

  it('has its lines with left for right, then its own', () => {
    const reading = both('step "Left" mirrors "Right" instead of "Right" when X2 denies', '3 cuts to rim', 'look 3');
    expect(reading.problems).toEqual([]);
    const left = stepOf(reading, 'left');
    expect(left.actions.map(({ id, line, origin }) => [id, line, origin])).toEqual([['left/1.1', 'left:1', 'copied'], ['left/1.2', 'left:2', 'copied'], ['left/3.1', 'left:4', 'written']]);
    expect(left.actions[1]).toMatchObject({ to: { value: { side: 'left' } } });
    expect(left.looks.map(({ id, pin }) => [id, pin])).toEqual([['left?1.1', { kind: 'place', place: { kind: 'spot', name: 'corner', side: 'left' } }], ['left?3.1', undefined]]);
    expect(left).toMatchObject({ how: 'instead', insteadOf: 'right', kept: [] });
    for (const action of left.actions) expect(reading.places.has(action.id)).toBe(true);
  });

  it('gives the ball\'s man the part of the one who had it', () => {
    expect(stepOf(both('step "Left" mirrors "Right"'), 'left').actions.map(({ who }) => who)).toEqual(['2', '2']);
    expect(stepOf(both('step "Left" mirrors "Right"'), 'left').actions[0]).toMatchObject({ to: '1', at: { value: { side: 'left' } } });
  });

  it('is not made of a step that does not stand above it', () => {
    expect(codes(both('step "Left" mirrors "Up"'))).toEqual(['unknown-step']);
    expect(codes(both('step "Left" mirrors "Left"'))).toEqual(['unknown-step']);
    expect(codes(readLines('step "Left" mirrors "Right"', 'step "Right"', '1 drives'))).toEqual(['unknown-step']);
  });
});

describe('a play that mirrors another', () => {
  const two = (...lines: string[]) => read(['play "A"', 'step "Zip"', '1 passes to 2', 'step "End"', '2 drives to right elbow', 'look 2', 'play "B" mirrors "A"', ...lines].join('\n'), 'B');

  it('goes on with steps of its own', () => {
    const reading = two('step "More"', '2 passes to 3', 'look 3', 'step "Other" instead of "End" when X2 denies', '1 drives');
    expect(reading.problems).toEqual([]);
    expect(reading.play.steps.map(({ key, parent, insteadOf }) => [key, parent, insteadOf])).toEqual([['zip', null, undefined], ['end', 'zip', undefined], ['more', 'end', undefined], ['other', 'zip', 'end']]);
    expect(stepOf(reading, 'more').actions).toMatchObject([{ id: 'more/2.1', origin: 'written' }]);
    expect(reading.leftOut).toEqual([]);
  });

  it('keeps keys apart from those of the other', () => {
    const reading = two('step "Zip"', '2 passes to 3');
    expect(reading.play.steps.map(({ key }) => key)).toEqual(['zip', 'end', 'zip#2']);
    expect(codes(reading)).toEqual(['duplicate-name']);
  });

  it('can run steps of the other again', () => {
    expect(two('step "More" again from "Zip" with 2 as 1, 3 as 2').play.steps.map(({ key, parent }) => [key, parent])).toEqual([['zip', null], ['end', 'zip'], ['more~1', 'end'], ['more~2', 'more~1']]);
  });
});

describe('steps repeated for a time', () => {
  it('come until the first that would start past it', () => {
    const text = 'play "A"\nstep "Swing"\n1 passes to 2\n2 passes to 1\nstep "Run" repeats "Swing" for 5 seconds\nstep "End"\n1 drives';
    const opensAt = (every: number) => readPlayWith(text, play => new Map(play.steps.map(({ key }, index) => [key, 400 + index * every])));
    expect(opensAt(2000).play.steps.map(({ key }) => key)).toEqual(['swing', 'run~1', 'run~2', 'run~3', 'end']);
    expect(opensAt(2500).play.steps.map(({ key }) => key)).toEqual(['swing', 'run~1', 'run~2', 'end']);
    expect(opensAt(9000).play.steps.map(({ key, parent }) => [key, parent])).toEqual([['swing', null], ['run~1', 'swing'], ['end', 'run~1']]);
    expect(opensAt(0).play.steps.map(({ key }) => key)).toEqual(['swing', 'run~1', 'end']);
  });

  it('are shown once, and that is said, where nobody tells the time', () => {
    expect(codes(readLines('step "A"', '1 passes to 2', 'step "Run" repeats "A" for 15 seconds'))).toEqual(['not-yet']);
  });
});

describe('parts given for a run', () => {
  it('are one for each man, whatever is left unsaid', () => {
    const { play } = readLines('step "A"', '1 passes to 2', '5 cuts to rim', '3 cuts to rim', 'step "More" again from "A" with 3 as 5, 1 as 3');
    expect(play.steps[1]!.actions.map(({ id }) => id)).toEqual(['more~1/5.1', 'more~1/3.1', 'more~1/1.1']);
  });
});
