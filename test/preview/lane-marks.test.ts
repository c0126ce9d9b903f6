import { describe, expect, it } from 'vitest';
import { clockRemark, gameClock } from '../../client/preview/clock.ts';
import { lanesOf, ticksOf } from '../../client/preview/lane-marks.ts';
import { callWith } from '../../client/preview/runs.ts';
import { clockWords, factsOf, tenths } from '../../client/preview/words.ts';
import { sayMoment, sayWithTime } from '../../client/preview/told.ts';
import { at } from '../../language/playback/at.ts';
import { lighthouse } from '../support/playback-fixture.ts';

const run = lighthouse.runs[0]!;
const throwIn = { ...lighthouse, play: { ...lighthouse.play, throwIn: true, callWith: 8 } };
const inbound = { ...run, clockStartsAt: 1500, startsAt: 400 };

describe('the lanes', () => {
  const lanes = lanesOf(lighthouse, run);

  it('are one a player and one for the ball', () => {
    expect(lanes.map(({ id }) => id)).toEqual(['1', '2', '3', '4', '5', 'ball']);
  });

  it('hold each action in its man’s lane, passes and shots in the ball’s', () => {
    const parts = Object.fromEntries(lanes.map(({ id, marks }) => [id, marks.flatMap(({ part, kind }) => (part === undefined || kind === 'finding' ? [] : [part]))]));
    expect(parts['5']).toEqual(['zip/5.1', 'middle/5.1']);
    expect(parts['3']).toEqual(['zip/3.1', 'middle/3.1', 'middle?3.1']);
    expect(parts.ball).toEqual(['middle/1.1', 'middle?3.1/3.1']);
  });

  it('say who has the ball from the call to the shot', () => {
    const held = lanes.at(-1)!.marks.filter(({ kind }) => kind === 'held');
    expect(held.map(({ short }) => short)).toEqual(['1', '3']);
    expect(held[0]!.from).toBe(0);
  });

  it('carry the findings of this run-through only', () => {
    const findings = (of: (typeof lighthouse.runs)[number]) => lanesOf(lighthouse, of).flatMap(({ marks }) => marks.filter(({ kind }) => kind === 'finding'));
    expect(findings(run).map(({ finding }) => finding)).toEqual([1]);
    expect(findings(lighthouse.runs[1]!).map(({ finding }) => finding).toSorted()).toEqual([0, 1]);
  });

  it('show a look that is passed up as such', () => {
    const looks = lanesOf(lighthouse, lighthouse.runs[1]!).flatMap(({ marks }) => marks.filter(({ kind }) => kind === 'look'));
    expect(looks.map(({ part, taken }) => [part, taken])).toEqual([['middle?3.1', false], ['middle?4.1', true]]);
  });
});

describe('when to call it', () => {
  const times = (first: number, all: number) => ({ ...lighthouse.times, firstLook: { fromCall: first, alreadySet: first }, allLooks: { fromCall: all, alreadySet: all } });

  it('is said once where every look needs the same, and of a throw-in in the same words', () => {
    expect(callWith({ ...lighthouse, times: times(9, 9) })).toBe('Call with 9 s or more.');
    expect(callWith({ ...throwIn, times: times(4, 4) })).toBe('Call with 4 s or more.');
    expect(callWith({ ...throwIn, times: times(4, 6) })).toBe('Call with 4 s or more for the first look, with 6 s for every look.');
  });
});

describe('the clock', () => {
  it('counts down from when the play is called', () => {
    expect(gameClock(lighthouse, run, 0)).toBe(26);
    expect(gameClock(lighthouse, run, 6600)).toBeCloseTo(19.4);
  });

  it('stands on a throw-in until the touch', () => {
    expect(gameClock(throwIn, inbound, 1400)).toBe(8);
    expect(gameClock(throwIn, inbound, 2500)).toBe(7);
    expect(clockRemark(throwIn, inbound, 1400)).toBe('clock stands until the touch');
    expect(clockRemark(throwIn, inbound, 1600)).toBe('');
  });

  it('says when time is out', () => {
    expect(clockRemark({ ...lighthouse, play: { ...lighthouse.play, callWith: 5 } }, run, 6000)).toBe('the horn has gone');
  });

  it('leaves it to the words below the floor that a team is still getting into place: nothing is said twice', () => {
    expect(clockRemark(lighthouse, run, 1000)).toBe('');
    expect(sayMoment(lighthouse, run, at(lighthouse, run.id, 1000))).toBe('getting into place');
    expect(sayWithTime(lighthouse, run, at(lighthouse, run.id, 1000))).toBe('1.0 seconds. getting into place.');
    expect(sayMoment(lighthouse, run, at(lighthouse, run.id, 3200))).toContain('1 dribbles to the left wing');
    expect(sayMoment(lighthouse, run, at(lighthouse, run.id, run.end))).toBe('');
  });

  it.each([[64.2, '1:05'], [60, '1:00'], [59.94, '60.0'], [24.31, '24.4'], [0.01, '0.1'], [0, '0.0'], [-3, '0.0']])('%s s left reads %s', (left, words) => {
    expect(clockWords(left)).toBe(words);
  });

  it('seconds since the call never look fewer than they are', () => {
    expect([tenths(8701), tenths(8700), tenths(0), tenths(-5)]).toEqual(['8.8', '8.7', '0.0', '0.0']);
  });

  it('has round figures on its line, the first at the call', () => {
    expect(ticksOf(lighthouse, run).map(({ words }) => words)).toEqual(['26', '25', '24', '23', '22', '21', '20', '19', '18', '17', '16', '15']);
    expect(ticksOf(throwIn, inbound).slice(0, 3)).toEqual([{ at: 0, words: '8' }, { at: 2500, words: '7' }, { at: 3500, words: '6' }]);
  });

  it('leaves out a figure that would lie on the first', () => {
    const long = { ...run, end: 20_000, clockStartsAt: 0 };
    const from = (callWith: number) => ticksOf({ ...lighthouse, play: { ...lighthouse.play, callWith } }, long).slice(0, 3).map(({ words }) => words);
    expect(from(45)).toEqual(['45', '42', '40']);
    expect(from(44)).toEqual(['44', '42', '40']);
  });
});

describe('the facts under the name', () => {
  const facts = (more: Partial<typeof lighthouse.play>) => factsOf({ ...lighthouse.play, tags: ['last-shot'], ...more }).replaceAll('\u00a0', ' ');

  it.each([
    [{}, 'against man'],
    [{ press: true as const }, 'against a man press'],
    [{ zone: '2-3' }, 'against a 2-3 zone'],
    [{ zone: '2-2-1', press: true as const }, 'against a 2-2-1 press'],
  ])('say which defence the play is against: %o', (against, words) => {
    expect(facts({ against })).toBe(`Under 14 · FIBA · ${words} · last shot`);
  });

  it('say nothing of a defence that nobody has named', () => {
    const { against: _, ...unnamed } = lighthouse.play;
    expect(factsOf({ ...unnamed, tags: ['last-shot'] }).replaceAll('\u00a0', ' ')).toBe('Under 14 · FIBA · last shot');
  });

  it('leave out a tag that says the defence again', () => {
    expect(facts({ against: { zone: '2-3' }, tags: ['zone', 'corner'] })).toBe('Under 14 · FIBA · against a 2-3 zone · corner');
  });
});
