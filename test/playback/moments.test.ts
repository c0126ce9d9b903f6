import { describe, expect, it } from 'vitest';
import { bodyOfPart, lookOfPart, momentsOf, stepInRun, stepOfPart, stepSpans } from '../../language/playback/moments.ts';
import { lighthouse } from '../support/playback-fixture.ts';

const [pullUp, , slip] = lighthouse.runs;

describe('the moments a coach steps through', () => {
  it('go from the call to the end in order, none twice', () => {
    for (const run of lighthouse.runs) {
      const times = momentsOf(run).map(({ t }) => t);
      expect(times[0]).toBe(0);
      expect(times.at(-1)).toBe(run.end);
      for (let i = 1; i < times.length; i++) expect(times[i]!).toBeGreaterThan(times[i - 1]!);
    }
  });

  it('stop at the pass, the catch, the look and the shot', () => {
    const kinds = momentsOf(pullUp!).map(({ kind }) => kind);
    for (const kind of ['release', 'catch', 'read', 'shot', 'rim']) expect(kinds).toContain(kind);
  });

  it('what starts together is one moment', () => {
    expect(momentsOf(pullUp!).filter(({ t }) => t >= 2500 && t < 2600)).toHaveLength(1);
  });
});

describe('the steps of a run-through', () => {
  it('follow each other without a gap from the call to the end', () => {
    expect(stepSpans(pullUp!)).toEqual([
      { key: 'zip', from: 0, to: 6691 },
      { key: 'middle', from: 6691, to: pullUp!.end },
    ]);
  });

  it('a line kept from a replaced step belongs to the step that is open', () => {
    expect(stepInRun(slip!, 'middle/1.1', 7000)).toBe('slip');
    expect(stepInRun(slip!, 'zip/1.1', 7000)).toBe('zip');
  });
});

describe.each([
  ['zip/3.1', 'zip', '3', undefined],
  ['middle?4.1', 'middle', '4', 'middle?4.1'],
  ['middle?4.1/3.2', 'middle', '3', 'middle?4.1'],
  ['zip/X4.1#to', 'zip', 'X4', undefined],
  ['zip:2', 'zip', undefined, undefined],
  ['from', 'from', undefined, undefined],
])('the part %s', (part, step, body, look) => {
  it('names its step, its man and its look', () => {
    expect([stepOfPart(part), bodyOfPart(part), lookOfPart(part)]).toEqual([step, body, look]);
  });
});
