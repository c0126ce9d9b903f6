import { describe, expect, it } from 'vitest';
import type { Reading } from '../../language/play/read-play.ts';
import { stateAfterStep, stateBefore } from '../../language/play/state.ts';
import { endOf } from '../../language/play/default-ends.ts';
import { resolvePlace } from '../../language/play/places.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { lighthouse, read, readLines } from './reading.ts';

const court = courtOf(ruleSet('fiba'));
const lineOf = (text: string, words: string) => {
  const lines = text.split('\n');
  return lines.findIndex(line => line.includes(words)) - lines.findIndex(line => line.startsWith('play'));
};
const before = (reading: Reading, words: string) => stateBefore(reading, lineOf(lighthouse, words));

describe('the state before a line', () => {
  const reading = read(lighthouse);

  it('has the ball with 1 at the call, everyone in his place', () => {
    const state = stateBefore(reading, 0);
    expect(state).toMatchObject({ holder: '1', dribble: 'none', ballOut: false, screensSet: [], looksSoFar: [] });
    expect(state.step).toBeUndefined();
    expect(state.places['1']).toEqual(resolvePlace({ kind: 'spot', name: 'top' }, { court, positions: {}, who: '1', spots: {} }));
    expect(Object.keys(state.places)).toEqual(['1', '2', '3', '4', '5']);
  });

  it('follows dribble, screen and cut through the step', () => {
    const state = before(reading, '2 clears');
    expect(state).toMatchObject({ step: 'zip', holder: '1', dribble: 'live', actionsSoFar: ['zip/1.1', 'zip/5.1', 'zip/3.1'] });
    expect(state.screensSet.map(({ by, users }) => [by, users])).toEqual([['5', ['3']]]);
    expect(state.places['3']!.x).toBe(0);
    expect(state.places['1']!.x).toBeLessThan(-5);
  });

  it('goes on along the path of the step, past the looks of its own', () => {
    expect(before(reading, '4 ball-screens')).toMatchObject({ step: 'middle', holder: '3', dribble: 'none' });
    expect(before(reading, 'look 2 "corner"')).toMatchObject({ holder: '3', dribble: 'live', looksSoFar: ['middle?3.1', 'middle?4.1'] });
  });

  it('knows nothing in a counter of what the replaced step does', () => {
    const state = before(reading, '4 slips');
    expect(state).toMatchObject({ step: 'slip', holder: '3', looksSoFar: [] });
    expect(state.screensSet.map(({ action }) => action)).toEqual(['zip/5.1']);
  });

  it('stands though a line above is broken', () => {
    const text = lighthouse.replace('1 dribbles to left wing', '1 dribles to left wing');
    const state = stateBefore(read(text), lineOf(text, '2 clears'));
    expect(state).toMatchObject({ holder: '1', dribble: 'none', actionsSoFar: ['zip/5.1', 'zip/3.1'] });
  });

  it('knows a picked-up dribble, a shot and a throw-in', () => {
    expect(stateBefore(readLines('1 dribbles to left wing', '1 picks up his dribble', '2 lifts'), 3).dribble).toBe('used');
    const shot = stateBefore(readLines('1 shoots', '2 lifts'), 2);
    expect(shot.holder).toBeUndefined();
    const throwIn = readLines('3 inbounds from the left sideline to 1', '1 drives');
    expect(stateBefore(throwIn, 1)).toMatchObject({ holder: '3', ballOut: true });
    expect(stateBefore(throwIn, 2)).toMatchObject({ holder: '1', ballOut: false, dribble: 'none' });
    expect(stateBefore(throwIn, 1).places['3']!.x).toBeLessThan(court.boundary.left);
  });

  it('reads the lines of a step that hangs on nothing from the call', () => {
    expect(stateBefore(readLines('step "A"', '1 passes to 2', 'step "B" after "Z"', '1 passes to 3', '4 rolls'), 5)).toMatchObject({ step: 'b', holder: '3' });
  });

  it('gives the state at the end of a step', () => {
    expect(stateAfterStep(reading, 'middle')).toMatchObject({ step: 'middle', holder: '3', looksSoFar: ['middle?3.1', 'middle?4.1', 'middle?2.1'] });
  });

  it('gives a state for any line number', () => {
    for (const line of [-5, 0, 500, Number.NaN]) expect(() => stateBefore(reading, line)).not.toThrow();
  });
});

describe('where a place is', () => {
  const positions = { '1': { x: -6, y: 5 }, '2': { x: 6, y: 1 }, '3': { x: 0, y: 7 }, '4': { x: 1, y: 4 }, '5': { x: -2.8, y: 1 } } as const;
  const at = (place: Parameters<typeof resolvePlace>[0], who: '1' | '2' | '3' | '4' | '5' = '2', ball: '1' | '3' = '1') => resolvePlace(place, { court, positions, ball, who, spots: { pocket: { x: 1, y: 2 } } });

  it('sends a man in the middle away from the ball, then where fewer of his men stand, then by his number', () => {
    const middle = { x: 0, y: 7 };
    const corner = (who: '2' | '3', others: Partial<Record<'1' | '4' | '5', { x: number; y: number }>>, ball: '1' | '2' | '3') =>
      resolvePlace({ kind: 'spot', name: 'corner' }, { court, positions: { ...others, [who]: middle }, ball, who, spots: {} }).x;
    const left = { '1': { x: -6, y: 5 }, '4': { x: 6, y: 5 }, '5': { x: 6, y: 1 } };
    const right = { '1': { x: 6, y: 5 }, '4': { x: -6, y: 5 }, '5': { x: -6, y: 1 } };
    expect(corner('3', left, '1')).toBeGreaterThan(0);
    expect(corner('3', right, '1')).toBeLessThan(0);
    expect(corner('3', left, '3')).toBeLessThan(0);
    expect(corner('3', right, '3')).toBeGreaterThan(0);
    expect(corner('3', {}, '3')).toBeLessThan(0);
    expect(corner('2', {}, '2')).toBeGreaterThan(0);
  });

  it('gives each of two one of the two spots they share, wherever they come from', () => {
    const among = (a: number, b: number) => (['2', '3'] as const).map(who => Math.sign(resolvePlace({ kind: 'spot', name: 'wing', among: ['2', '3'] }, { court, positions: { '2': { x: a, y: 1 }, '3': { x: b, y: 1 } }, who, spots: {} }).x));
    expect(among(6, 3)).toEqual([1, -1]);
    expect(among(3, 6)).toEqual([-1, 1]);
    expect(among(-6, -3)).toEqual([-1, 1]);
    expect(among(-3, -6)).toEqual([1, -1]);
    expect(among(0, 0)).toEqual([1, -1]);
  });

  it('takes the side the man is on where none is said', () => {
    expect(at({ kind: 'spot', name: 'corner' }, '2').x).toBeGreaterThan(0);
    expect(at({ kind: 'spot', name: 'corner' }, '1').x).toBeLessThan(0);
    expect(at({ kind: 'spot', name: 'corner', side: 'far' }, '2').x).toBeLessThan(0);
    expect(at({ kind: 'spot', name: 'corner', side: 'near' }, '2').x).toBeGreaterThan(0);
  });

  it('finds the ball\'s side and the weak side, and a man\'s own where the ball is in the middle', () => {
    expect(at({ kind: 'spot', name: 'wing', side: 'ball' }).x).toBeLessThan(0);
    expect(at({ kind: 'spot', name: 'wing', side: 'weak' }).x).toBeGreaterThan(0);
    expect(at({ kind: 'spot', name: 'wing', side: 'ball' }, '2', '3').x).toBeGreaterThan(0);
  });

  it('measures from places and men', () => {
    expect(at({ kind: 'offset', by: 1, direction: 'above', from: { kind: 'player', who: '4' } })).toEqual({ x: 1, y: 5 });
    expect(at({ kind: 'offset', by: 0.5, direction: 'inside', from: { kind: 'player', who: '5' } })).toEqual({ x: -2.3, y: 1 });
    expect(at({ kind: 'between', a: '1', b: '2' })).toEqual({ x: 0, y: 3 });
    expect(at({ kind: 'beside', who: '4' })).toEqual({ x: 1.9, y: 4 });
    expect(at({ kind: 'behind', who: '3' })).toEqual({ x: 0, y: 7.9 });
    expect(at({ kind: 'own', name: 'pocket' })).toEqual({ x: 1, y: 2 });
    expect(at({ kind: 'either', options: [{ kind: 'own', name: 'pocket' }, { kind: 'player', who: '1' }] })).toEqual({ x: 1, y: 2 });
    expect(at({ kind: 'spot', name: 'free-throw line', side: 'right', extended: true })).toEqual(at({ kind: 'spot', name: 'wing', side: 'right' }));
  });

  it('is the man\'s own place where the words name none', () => {
    expect(at({ kind: 'own', name: 'nowhere' })).toEqual(positions['2']);
    expect(at({ kind: 'own', name: 'constructor' })).toEqual(positions['2']);
    expect(at({ kind: 'spot', name: 'moon' })).toEqual(positions['2']);
    expect(at({ kind: 'either', options: [] })).toEqual(positions['2']);
  });
});

describe('the open spot', () => {
  it('is the nearest that nobody holds, another than his own', () => {
    const spots = (['left', 'right'] as const).flatMap(side => (['corner', 'wing', 'slot'] as const).map(name => resolvePlace({ kind: 'spot', name, side }, { court, positions: {}, who: '1', spots: {} })));
    const [leftCorner, , leftSlot, rightCorner, rightWing] = spots as [{ x: number; y: number }, ...{ x: number; y: number }[]];
    const fill = { id: 'a/3.1', step: 'a', line: 'a:1', link: 0, who: '3', verb: 'fill', waits: [], origin: 'written', kind: 'move', via: [], off: [], style: 'fill', pace: 'set' } as const;
    const end = endOf(fill, { court, positions: { '1': leftSlot!, '2': rightWing!, '3': leftCorner, '4': rightCorner!, '5': { x: 0, y: 1 } }, ball: '1', who: '3', spots: {} });
    expect(end).toEqual(spots[1]);
    expect(endOf({ ...fill, style: 'space' }, { court, positions: { '3': leftCorner }, who: '3', spots: {} })).toEqual(leftCorner);
  });
});
