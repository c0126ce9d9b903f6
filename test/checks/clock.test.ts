import { describe, expect, test } from 'vitest';
import { compileText } from './compiled.ts';
import { inEnglish } from '../../language/message/message.ts';
import { codesIn, messageOf } from './codes.ts';

const set = (headers: string, level = 'u14') => compileText(`level ${level}\nplay "A"\n${headers}\n  from 5-out\n  1 dribbles to left slot\n  2 cuts to rim\n  2 cuts to right short corner\n  look 1: jumper\n  look 2: jumper\n`);
const codesOf = (headers: string, level?: string) => set(headers, level).findings.map(({ code }) => code);
const late = (headers = '') => set(headers).plays[0]!.timeline.times.looks.map(({ late: time }) => time / 1000);
const typical = () => set('').plays[0]!.timeline.times.looks.map(({ fromStart }) => fromStart.typical / 1000);

describe('the set’s window', () => {
  test('a look typically past it is an error with both times', () => {
    const within = Math.floor(typical()[1]!);
    const found = set(`  shot within ${within} seconds of the start`).findings.filter(({ code }) => code === 'past-window');
    expect(found.length).toBeGreaterThan(0);
    expect(found.at(-1)!.message).toContain(`within ${within} s`);
    expect(found.at(-1)!.message).toMatch(/comes \d+(\.\d)? s after the start/);
  });

  test('a look past it only when it goes slowly is a warning', () => {
    const look = set('').plays[0]!.timeline.times.looks.at(-1)!;
    const between = (look.fromStart.typical + look.fromStart.late) / 2;
    expect(codesOf(`  shot within ${(between / 1000).toFixed(1)} seconds of the start`)).toContain('past-window-when-late');
  });

  test('the start is the first action, not the call', () => {
    const { plays } = set('  already set');
    const [run] = plays[0]!.timeline.runs;
    const [look] = plays[0]!.timeline.times.looks;
    expect(run!.startsAt).toBeGreaterThan(0);
    expect(look!.fromStart.typical).toBe(look!.typical - run!.startsAt);
  });

  test('a window wide enough says nothing', () => expect(codesOf('  shot within 30 seconds of the start')).toEqual([]));
  test('nobody is asked who wrote no window', () => expect(codesOf('')).toEqual([]));
});

describe('the clock it is called with', () => {
  test('must let the late ball leave the hand', () => {
    const called = Math.floor(late()[1]!) - 1;
    const found = set(`  call with ${called} on the clock`).findings.find(({ code, part }) => code === 'call-too-late' && part?.includes('2.1'));
    expect(found?.message).toContain(`${called} s on the clock`);
    expect(inEnglish(found!.fixes[0]!.title)).toMatch(/^Call it with \d+ or more$/);
  });

  test('and its mend is the figure that stands above the play, where a miss has to leave something too', () => {
    const { findings, plays } = set('  call with 2 on the clock\n  leave 4 seconds after a miss');
    const told = findings.filter(({ code }) => code === 'call-too-late').map(({ message }) => Number(/Call it with (\d+) s or more, which leaves 4 s after a miss/.exec(message)?.[1]));
    expect(Math.max(...told)).toBe(plays[0]!.timeline.times.allLooks!.fromCall);
    expect(codesOf(`  call with ${Math.max(...told)} on the clock\n  leave 4 seconds after a miss`)).toEqual([]);
  });

  test('and leave what was asked for after a miss', () => {
    const called = Math.ceil(late()[1]!) + 3;
    expect(codesOf(`  call with ${called} on the clock\n  leave 4 seconds after a miss`)).toContain('little-left');
    expect(codesOf(`  call with ${called + 8} on the clock\n  leave 4 seconds after a miss`)).toEqual([]);
  });

  test('the lower end of a range counts', () => {
    const enough = Math.ceil(late()[1]!) + 8;
    expect(codesOf(`  call with ${enough - 6} to ${enough} on the clock\n  leave 4 seconds after a miss`)).toContain('little-left');
  });

  test('its fix makes the finding go', () => {
    const called = Math.ceil(late()[1]!) + 3;
    const { findings } = set(`  call with ${called} on the clock\n  leave 4 seconds after a miss`);
    const needed = Math.max(...findings.filter(({ code }) => code === 'little-left').map(({ fixes }) => Number(/with (\d+) or more/.exec(inEnglish(fixes[0]!.title))![1])));
    expect(codesOf(`  call with ${needed} on the clock\n  leave 4 seconds after a miss`)).toEqual([]);
  });
});

test('a line that waits for the clock is as late on the clock whenever the play is called', () => {
  const { findings } = compileText('level u14\nplay "A"\n  from 5-out\n  call with 14 to 20 on the clock\n  leave 2 seconds after a miss\n  1 dribbles to left slot\n  at 10 on the clock, 1 drives to rim\n  look 1: layup\n');
  expect(findings.map(({ code }) => code)).toEqual([]);
});

describe('a time asked of the first shot', () => {
  const codesOf = (clock: string) => codesIn(`${clock}\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper\nlook 4: three\nlook 2: three`);
  test('a later look outside it is a hint with its time, none where the first misses it already', () => {
    expect(codesOf('call with 20 on the clock\nshot between 17 and 14 on the clock')).toEqual(['later-shot-outside-clock']);
    expect(messageOf('later-shot-outside-clock', 'call with 20 on the clock\nshot between 17 and 14 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\nlook 1: jumper\nlook 4 "kick": three')).toMatch(/^Called with 20 s, the “kick” for 4 has its shot away with 13\.\d s on the clock: outside the 17 s to 14 s/);
    expect(codesOf('call with 20 on the clock\nshot between 17 and 10 on the clock')).toEqual([]);
    expect(codesOf('call with 20 on the clock\nshot between 10 and 8 on the clock')).toEqual(['shot-outside-clock']);
  });
  test('after the horn it is called too late, and nothing else is said', () => {
    expect(codesIn('clock at 3 seconds\nshot before the horn\nalready set\nfrom 5-out\n1 drives to rim\nlook 1: layup')).toEqual(['call-too-late']);
  });
});
