import { describe, expect, test } from 'vitest';
import { compileText } from './compiled.ts';
import { codesIn, messageOf } from './codes.ts';

describe('looks with times', () => {
  test('have to stand in the order of their times, and only that is said', () => {
    const codes = codesIn('from 5-out\nlook 2 at about 9 seconds after the start: three\nlook 3 at about 6 seconds after the start: three');
    expect(codes).toContain('look-out-of-order');
    expect(codes).not.toContain('time-not-kept');
  });
  test('in order say nothing', () => expect(codesIn('from 5-out\nlook 3 at about 6 seconds after the start: three\nlook 2 at about 9 seconds after the start: three')).toEqual([]));
  test('of two counters that never meet on one way stand in any order', () =>
    expect(codesIn('from 5-out\nstep "A"\n1 dribbles to left slot\nstep "B" after "A" when "open"\nlook 2 at about 9 seconds after the start: three\nstep "C" after "A" otherwise\nlook 3 at about 6 seconds after the start: three')).not.toContain('look-out-of-order'));
});

test('a time no legs can keep names what lies before it', () =>
  expect(messageOf('time-not-kept', 'call with 20 on the clock\nalready set\nfrom 4-out 1-in\n2 cuts to left elbow, then clears to right short corner\nat 18 on the clock, 2 cuts to rim\nlook 2: layup')).toMatch(/2 is [\d.]+ s too late for the time written: before it comes “.*clears to right short corner”/));

test('an end after its time is told', () => {
  const end = (within: number) => `from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\n1 dribbles to half court\nends once 1 has the ball over half court, within ${within} seconds`;
  expect(messageOf('end-too-late', end(2))).toMatch(/comes [\d.]+ s after the call, and it is to come within 2 s/);
  expect(codesIn(end(9))).toEqual([]);
});

describe('steps', () => {
  test('behind one that is left out are told at their own line', () => {
    const codes = compileText('play "A"\nfrom 5-out\nstep "A"\n1 passes to 2\nlook 2: three\nstep "B" after "Nope"\n2 passes to 3\nlook 3: three\nstep "C" after "B"\n3 passes to 1\nlook 1: three\n').findings.map(({ code, place }) => `${place.line} ${code}`);
    expect(codes).toEqual(['5 unknown-step', '8 step-not-reached']);
  });
  test('behind a shot are told', () => expect(messageOf('step-after-shot', 'from 5-out\n1 passes to 2\n2 shoots a three\nstep "More"\n3 cuts to rim\nlook 3: layup')).toContain('Make the shot a look: look 2: three'));
});

describe('a player no line names', () => {
  const idle = (places: string) => codesIn(`from ${places}\n1 passes to 2\nlook 2: three`);
  test('and who stands in the way is hinted at', () => expect(idle('1 top, 2 right wing, 3 left wing, 4 left corner, 5 nail')).toEqual(['idle-player']));
  test('standing in a spacing spot is a job', () => expect(idle('1 top, 2 right wing, 3 left wing, 4 left corner, 5 right dunker spot')).toEqual([]));
  test('so is throwing in', () => expect(codesIn('3 inbounds from the left baseline\nfrom 1 top, 2 right wing, 4 left corner, 5 left wing\n3 inbounds to 1\nlook 1: three')).not.toContain('idle-player'));
  test('and being the safety', () => expect(codesIn('from 1 top, 2 right wing, 3 left wing, 4 left corner, 5 nail\n5 is the safety at nail\n1 passes to 2\nlook 2: three')).not.toContain('idle-player'));
  test('and getting back', () => expect(codesIn('from 1 top, 2 right wing, 3 left wing, 4 left corner, 5 nail\nrebound 2, 3, 4 crash, 1, 5 get back\n1 passes to 2\nlook 2: three')).not.toContain('idle-player'));
  test('several are told as several', () => expect(messageOf('idle-player', 'from 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 nail\n1 passes to 2\nlook 2: three')).toContain('4 and 5, and they stand'));
});

describe('rebounds', () => {
  const shot = (rebound: string, move = '') => `from 5-out\n${rebound}\n${move}1 passes to 2\nlook 2: three`;
  test('nobody asks where no line stands', () => expect(codesIn(shot('tags quick'))).toEqual([]));
  test('three who are near make a triangle', () => expect(codesIn(shot('rebound 3, 4, 5 crash, 1, 2 get back'))).toEqual([]));
  test('a man at half court is not there when the ball comes down', () => expect(messageOf('no-triangle', shot('rebound 1, 4, 5 crash, 2, 3 get back', '4 clears to half court\n5 clears to right half court\n').replace('look 2: three', 'look 2: layup'))).toMatch(/4 and 5 are still [\d.]+ and [\d.]+ m from the ring/));
  test('with under a second left nobody counts heads', () => {
    const few = (call: number) => codesIn(`call with ${call} on the clock\nalready set\n${shot('rebound 4 crashes, 1, 2, 3, 5 get back')}`);
    expect(few(20)).toContain('few-on-the-boards');
    expect(few(4)).not.toContain('few-on-the-boards');
  });
});

describe('the second rule set', () => {
  test('speaks under its own name, with its own source', () => {
    const { findings } = compileText('level u14\nrules nfhs, also fiba\nplay "A"\n  from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\n  already set\n  1 holds for 7 seconds\n  1 dribbles to top\n  look 1: three\n');
    expect(findings.map(({ code, message, params, source }) => [code, message.split(':')[0], params.rules, source?.text])).toEqual([['backcourt-count', 'By the FIBA rules', 'FIBA', 'FIBA Art. 28, 2020']]);
  });
  test('does not repeat what the first has said', () => {
    const both = 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\nalready set\n1 holds for 11 seconds\n1 dribbles to top\nlook 1: three';
    expect(compileText(`level u14\nrules fiba, also nfhs\nplay "A"\n${both}\n`).findings.map(({ message }) => message.startsWith('By the'))).toEqual([false]);
  });
  test('is asked on its own floor: a block just outside one lane is not inside the other', () =>
    expect(codesIn('from 1 top, 2 right wing, 3 left wing, 4 right block, 5 left block\n4 stays\n5 stays\n1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to left slot\nlook 1: three', 'level u14\nrules nfhs, also fiba')).toEqual([]));
});

describe('names while a line cannot be read', () => {
  const told = (text: string) => compileText(text).findings.filter(({ code }) => code.startsWith('unknown-') && code !== 'unknown-word').map(({ code, params }) => [code, params['name']]);
  const others = ['play "Jetty" mirrors "Fery"', 'play "Pier"', '  from horns', '  1 passes to 2', '  look 2: three', '  step "Go" after "Zapp"', '    2 drives to rim', '    look 2: layup'];
  const file = (line: string, ...more: readonly string[]) => ['notation 1', 'play "Ferry"', `  ${line}`, '  1 passes to 2', '  look 2: three', ...more, ...others].join('\n');

  test.each([['from hrons, ball with 1'], ['from horns, 2 and 3 swapd'], ['against amn'], ['call wiht 20 on the clock'], ['shot wthin 4'], ['rebound 2 crsh'], ['look 2 three'], ['3 ctus to rim'], ['allow crowding because']])('“%s” names nothing: what nobody has named is told', (line) => {
    expect(told(file(line))).toEqual([['unknown-play', 'Fery'], ['unknown-step', 'Zapp']]);
  });

  test.each([['lpay "Fery"'], ['play Fery"'], ['@@@@']])('“%s” may have named a play: an unknown one waits', (line) => {
    expect(told(file(line)).map(([code]) => code)).not.toContain('unknown-play');
  });

  test('a broken start of the play itself does not keep an unknown step back', () => {
    expect(told(file('from hrons', '  step "Go" after "Zap"', '    2 drives to rim', '    look 2: layup'))).toContainEqual(['unknown-step', 'Zap']);
  });
});

describe('a book', () => {
  const plays = 'notation 1\nplay "Ferry"\n  1 passes to 2\n  look 2: three\n\n';

  test('whose section names a play that is not there is told so, at the name, with the nearest', () => {
    const { findings } = compileText(`${plays}book "Club"\n  section "Quick": "Ferry", "Fery", "Lagoon"`);
    const unknown = findings.filter(({ code }) => code === 'unknown-play');
    expect(unknown.map(({ message, place, firstLine, fixes }) => [message, firstLine + place.line, place.at, place.to, fixes.map(({ edits }) => edits[0]?.text)])).toEqual([
      ['There is no play called “Fery” in this file or a file it uses; the nearest is “Ferry”.', 6, 29, 33, ['Ferry']],
      ['There is no play called “Lagoon” in this file or a file it uses (here there are “Ferry”).', 6, 37, 43, []],
    ]);
  });

  test('that names only what there is, here or in a file it uses, is silent', () => {
    const { findings } = compileText('notation 1\nuse "sets.play"\nbook "Club"\n  section "Quick": "Ferry"', { name: 'sets.play', text: plays });
    expect(findings).toEqual([]);
  });
});
