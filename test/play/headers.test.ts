import { describe, expect, it } from 'vitest';
import { spotPoint } from '../../language/court/spots.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import type { Place, PlayerNumber } from '../../language/play/play.ts';
import { resolvePlace } from '../../language/play/places.ts';
import { codes, read, readLines } from './reading.ts';

function say(place: Place): string {
  if (place.kind === 'spot') return [place.side, place.name].filter(Boolean).join(' ');
  if (place.kind === 'offset') return `${place.by} ${place.direction} ${say(place.from)}`;
  return place.kind === 'point' ? `(${place.point.x}, ${place.point.y})` : place.kind;
}

function startOf(...lines: string[]): string[] {
  const { start } = readLines(...lines).play;
  return ([1, 2, 3, 4, 5] as PlayerNumber[]).map(player => say(start.places[player].value));
}

describe('where a play starts', () => {
  it.each([
    ['from box', ['top', 'right block', 'left block', 'right elbow', 'left elbow']],
    ['from 1-4 high', ['top', 'right wing', 'left wing', 'right elbow', 'left elbow']],
    ['from 1-4', ['top', 'right wing', 'left wing', 'right elbow', 'left elbow']],
    ['from 1-3-1', ['top', 'right wing', 'left wing', 'nail', 'right block']],
    ['from box mirrored', ['top', 'left block', 'right block', 'left elbow', 'right elbow']],
    ['from horns, 2 and 3 swapped, 4 at left corner', ['top', 'left corner', 'right corner', 'left corner', 'left elbow']],
    ['from 1 top, 2 and 3 blocks, 4 and 5 elbows', ['top', 'right block', 'left block', 'right elbow', 'left elbow']],
    ['from 1 top, 2 and 4 wings, 3 right corner, 5 nail', ['top', 'left wing', 'right corner', 'right wing', 'nail']],
    ['from box, 2 and 3 at the nail, 1 m apart', ['top', '0.5 left of nail', '0.5 right of nail', 'right elbow', 'left elbow']],
    ['from box, 2 at 3 ft above left elbow', ['top', '0.914 above left elbow', 'left block', 'right elbow', 'left elbow']],
    ['ball with 1', ['top', 'right wing', 'left wing', 'right corner', 'left corner']],
  ])('%s', (line, places) => {
    expect(startOf(line)).toEqual(places);
    expect(codes(readLines(line))).toEqual([]);
  });

  it('lists a stack up the lane line', () => {
    const { start } = readLines('from stack on right lane line: 2, 3, 4, 5 from the baseline up').play;
    const court = courtOf(ruleSet('fiba'));
    const heights = ([2, 3, 4, 5] as PlayerNumber[]).map(player => resolvePlace(start.places[player].value, { court, positions: {}, who: '1', spots: {} }));
    expect(heights.every(point => point.x > court.lane.right)).toBe(true);
    expect(heights.map(point => point.y)).toEqual([...heights.map(point => point.y)].sort((a, b) => a - b));
    expect(say(start.places[1].value)).toBe('top');
    const down = readLines('from stack on left lane line: 2, 3, 4, 5 from the top down').play.start.places;
    expect(resolvePlace(down[5].value, { court, positions: {}, who: '1', spots: {} }).x).toBeLessThan(0);
  });

  it('swaps nobody with a defender, and says so', () => {
    const reading = readLines('from horns, X2 and 3 swapped');
    expect(reading.problems).toEqual([{ code: 'defender-attacks', part: 'from', params: { who: 'X2', verb: 'swapped' } }]);
    expect(reading.play.start.places).toEqual(readLines('from horns').play.start.places);
  });

  it('gives the ball to 1 unless said', () => {
    expect(readLines('from box').play.start.ball).toEqual({ value: 1, origin: 'default' });
    expect(readLines('from box, ball with 4').play.start.ball).toEqual({ value: 4, origin: 'written' });
    expect(readLines('from box', 'ball with 5').play.start.ball).toEqual({ value: 5, origin: 'written' });
  });

  it('names the men a listed line forgets, and an alignment nobody knows', () => {
    expect(readLines('from 1 top, 2 and 3 blocks').problems.map(({ params }) => params)).toEqual([{ who: '4' }, { who: '5' }]);
    expect(readLines('from "Widebox"').problems).toEqual([{ code: 'unknown-alignment', part: 'from#alignment', params: { name: 'Widebox', known: [] } }]);
  });

  it('takes the coach\'s own alignment, also mirrored', () => {
    const text = (from: string) => `play "A"\n  ${from}\nalignment "Wide box"\n  1 at top\n  2 and 3 blocks\n  4 at left corner\n  5 right corner\nalignment "Narrow" mirrors "Wide box"\nalignment "Eddy" mirrors "Eddy"`;
    const places = (from: string) => ([1, 2, 3, 4, 5] as PlayerNumber[]).map(player => say(read(text(from)).play.start.places[player].value));
    expect(places('from "Wide box"')).toEqual(['top', 'right block', 'left block', 'left corner', 'right corner']);
    expect(places('from "wide box" mirrored, 1 at left slot')).toEqual(['left slot', 'left block', 'right block', 'right corner', 'left corner']);
    expect(places('from "Narrow"')).toEqual(['top', 'left block', 'right block', 'right corner', 'left corner']);
    expect(codes(read(text('from "Eddy"')))).toEqual(['copy-loop']);
  });
});

it('chains without an end are told, and cost neither the stack nor much time', () => {
  const chain = (line: (n: number) => string) => Array.from({ length: 3000 }, (_, n) => line(n)).join('\n');
  expect(codes(read(`${chain((n) => `alignment "P${n}" mirrors "P${n + 1}"`)}\nplay "A"\n  from "P0"`))).toContain('copy-loop');
  expect(codes(read(`${chain((n) => `spot "p${n}" is 1 ft above "p${n + 1}"`)}\nplay "A"\n  2 cuts to "p0"`))).toContain('unknown-spot');
  expect(codes(read(`${chain((n) => `play "P${n}" mirrors "P${n + 1}"`)}`))).toContain('copy-loop');
});

describe('a throw-in', () => {
  it.each([
    ['3 inbounds from the left sideline', 'left sideline', 'sideline'],
    ['3 inbounds to 2', 'left baseline', 'baseline'],
    ['3 inbounds from the right baseline to 2', 'right baseline', 'baseline'],
    ['3 inbounds from the baseline', 'baseline', 'baseline'],
    ['3 is the thrower', 'left baseline', 'baseline'],
  ])('%s', (line, from, side) => {
    const { play } = readLines('from box', line, 'step "Zip"', '3 passes to 1');
    expect(play.start.throwIn).toMatchObject({ by: { value: 3 }, side });
    expect(say(play.start.throwIn!.from.value)).toBe(from);
    expect(play.start.places[3].value).toEqual(play.start.throwIn!.from.value);
    expect(play.start.ball).toEqual({ value: 3, origin: 'derived' });
    expect(play.start.dead).toBe(true);
    expect(play.steps.flatMap(({ actions }) => actions).filter(action => action.kind === 'pass').map(action => action.throwIn)[0]).toBe(true);
  });

  it('brings the ball in once: later passes are passes', () => {
    const { play } = readLines('3 inbounds from the left sideline, 3 inbounds to 1', '1 passes to 2');
    expect(play.steps[0]!.actions.map(action => action.kind === 'pass' && action.throwIn)).toEqual([true, false]);
  });

  it('puts the other four on the throw-in places of the alignment', () => {
    const { start } = readLines('from box', '3 inbounds from the left baseline', 'step "Zip"').play;
    expect([1, 2, 4, 5].map(player => say(start.places[player as PlayerNumber].value))).toEqual(['right elbow', 'left elbow', 'right block', 'left block']);
  });

  it.each([
    ['from 3 at left sideline, 1 top, 2 right corner, 4 left elbow, 5 right elbow', '3 inbounds to 1', 'left sideline'],
    ['from 1 backcourt left, 2 backcourt right, 3 far baseline, 4 half court, 5 top', '3 throws it in to 1', 'far baseline'],
    ['from box, 3 at right side', '3 is the thrower', 'right sideline'],
    ['from 3 at left sideline, 1 top, 2 right corner, 4 left elbow, 5 right elbow, ball with 3', '3 passes to 1', 'left sideline'],
    ['from box, 3 with the ball at the right baseline', '3 passes to 1', 'right baseline'],
  ])('stands where the from line puts him: %s', (from, line, place) => {
    const { play, places } = readLines(from, line);
    expect(play.start.throwIn).toMatchObject({ by: { value: 3 }, from: { origin: 'written' } });
    expect(say(play.start.places[3].value)).toBe(place);
    expect(play.start.ball.value).toBe(3);
    expect(places.get('throw-in#from')!.line).toBe(1);
    expect(play.steps.flatMap(({ actions }) => actions).filter(action => action.kind === 'pass').map(action => action.throwIn)).toEqual(line.includes('thrower') ? [] : [true]);
  });

  it.each([
    ['the right side', 'right sideline'],
    ['the left hash', 'left sideline'],
    ['the left short corner', 'left baseline'],
    ['the right corner', '1 right of right corner'],
    ['half court', '4 left of left half court'],
  ])('nobody throws in from the floor: from %s', (where, place) => {
    const { start } = readLines('from box', `3 inbounds from ${where} to 1`).play;
    expect(say(start.places[3].value)).toBe(place);
  });

  it('in the backcourt is from behind the far baseline', () => {
    expect(say(readLines('situation backcourt throw-in, after a made basket', '3 inbounds to 1').play.start.places[3].value)).toBe('far baseline');
  });

  it('is none where a man on the line lacks the ball, or he who has it stands inside', () => {
    expect(readLines('from box, 3 at left sideline, ball with 1', '1 passes to 2').play.start.throwIn).toBeUndefined();
    expect(readLines('from box, 3 at right side, ball with 3', '3 passes to 2').play.start.throwIn).toBeUndefined();
  });

  it('has the ball with the thrower, whatever the ball line says', () => {
    const reading = readLines('from box, ball with 1', '3 inbounds to 1');
    expect(reading.play.start.ball.value).toBe(3);
    expect(reading.problems).toEqual([{ code: 'ball-not-with-thrower', part: 'ball', params: { thrower: '3', written: '1' }, related: ['throw-in'] }]);
  });

  it('tags and what the game is like may stand in several lines', () => {
    const reading = readLines('situation sideline throw-in', 'tags quick', 'situation down 1, tied', 'tags man', '3 inbounds to 1');
    expect(reading.play.situation).toEqual(['sideline throw-in', 'down 1', 'tied']);
    expect(reading.play.tags).toEqual(['quick', 'man']);
    expect(reading.problems).toEqual([]);
  });

  it('takes the sideline from the situation', () => {
    const { start, situation } = readLines('situation sideline throw-in, after a time-out, down 1', '3 inbounds to 1').play;
    expect(start.throwIn!.side).toBe('sideline');
    expect(situation).toEqual(['sideline throw-in', 'after a time-out', 'down 1']);
  });
});

describe('what a coach asks of the clock', () => {
  it.each([
    ['call with 22 to 26 on the clock', { call: { from: 22, to: 26 } }],
    ['call with 38 on the clock, shot clock 24', { call: { from: 38, to: 38 }, shotClock: 24 }],
    ['clock at 3 seconds', { call: { from: 3, to: 3 } }],
    ['clock at 40 seconds, shot clock 5', { call: { from: 40, to: 40 }, shotClock: 5 }],
    ['shot within 16 seconds of the call', { within: { seconds: 16, of: 'call' } }],
    ['shot between 30 and 28 on the clock', { between: { from: 30, to: 28 } }],
    ['shot before the horn', { between: { from: 600, to: 0 } }],
    ['leave 4 seconds after a miss', { leave: 4 }],
    ['inbound within 5 seconds', { inboundWithin: 5 }],
  ])('%s', (line, clock) => {
    expect(readLines(line).play.clock).toEqual(clock);
  });

  it('asks nothing that was not written', () => {
    expect(readLines('1 drives').play.clock).toEqual({});
  });

  it('takes the first of two lines and names the second', () => {
    const reading = readLines('leave 4 seconds', 'leave 6 seconds');
    expect(reading.play.clock.leave).toBe(4);
    expect(reading.problems).toEqual([{ code: 'header-twice', part: 'leave@2', params: { word: 'leave' }, related: ['leave'] }]);
  });
});

describe('what else stands above the steps', () => {
  it('takes level and rules from the play, else from the file, else its own', () => {
    expect(read('level u10\nrules nba\nplay "A"\n  level u16').play).toMatchObject({ level: { value: 'u16', origin: 'written' }, rules: { value: 'nba', origin: 'derived' } });
    expect(read('play "A"').play).toMatchObject({ level: { value: 'u14', origin: 'default' }, rules: { value: 'fiba', origin: 'default' }, alsoRules: [] });
    expect(read('rules fiba, also nfhs\nplay "A"').play.alsoRules).toEqual(['nfhs']);
  });

  it.each([
    ['against man', { kind: 'man' }],
    ['against 2-3', { kind: 'zone', zone: '2-3' }],
    ['against 2-2-1 press', { kind: 'zone', zone: '2-2-1 press' }],
  ])('%s', (line, value) => {
    expect(readLines(line).play.defence).toEqual({ value, origin: 'written' });
  });

  it('everybody else who crashes is all but the safety', () => {
    expect(readLines('1 drives', '3 is the safety at top', 'everybody else crashes').play.rebounds).toMatchObject([{ crash: [1, 2, 4, 5], back: [] }]);
  });

  it('reads notes, rebounds, demands and exceptions into the innermost open block', () => {
    const { play } = readLines(
      'note "eyes up"', 'rebound 2, 4, 5 crash, everyone else gets back', 'must have every player touch the ball', 'must have no screens', 'must have at least 3 passes', 'must not hold it 5 seconds',
      'allow crowding "a tight stack"', 'step "Zip"', 'note 3 "shoulder to hip"', 'rebound 1 crashes', 'must have exactly 2 cuts', '1 drives',
    );
    expect(play.notes).toEqual([{ part: 'note', within: 'play', text: 'eyes up' }, { part: 'zip#note', within: 'zip', who: 3, text: 'shoulder to hip' }]);
    expect(play.rebounds).toEqual([{ part: 'rebound', within: 'play', crash: [2, 4, 5], back: [1, 3] }, { part: 'zip#rebound', within: 'zip', crash: [1], back: [] }]);
    expect(play.demands.map(({ part, must, what }) => [part, must, what])).toEqual([
      ['must', true, { kind: 'every-touch' }],
      ['must.2', true, { kind: 'screen', count: 0, bound: 'at most' }],
      ['must.3', true, { kind: 'pass', count: 3, bound: 'at least' }],
      ['must.4', false, { kind: 'hold', seconds: 5 }],
      ['zip#must', true, { kind: 'cut', count: 2, bound: 'at least' }],
      ['zip#must', true, { kind: 'cut', count: 2, bound: 'at most' }],
    ]);
    expect(play.allowances).toEqual([{ part: 'allow', within: 'play', check: 'crowding', why: 'a tight stack' }]);
  });

  it('knows the own spots of the play and of its file, as points', () => {
    const text = 'spot "dock" is 1 m below left wing\nplay "A"\n  spot "pocket" is 3 ft inside right elbow\n  2 cuts to "pocket"\n  3 cuts to "Dock"\n  4 cuts to "quay"';
    const { play, problems } = read(text);
    const court = courtOf(ruleSet('fiba'));
    expect(play.spots['pocket']!.x).toBeCloseTo(spotPoint(court, 'elbow', 'right')!.x - 0.914, 3);
    expect(play.spots['dock']!.y).toBeCloseTo(spotPoint(court, 'wing', 'left')!.y - 1, 3);
    expect(play.steps[0]!.actions.map(action => action.kind === 'move' && action.to?.value)).toEqual([{ kind: 'own', name: 'pocket' }, { kind: 'own', name: 'dock' }, undefined]);
    expect(problems).toEqual([{ code: 'unknown-spot', part: 'start/4.1', params: { name: 'quay' } }]);
  });

  it('has no fixed spot beside a man', () => {
    expect(codes(readLines('spot "pal" is beside 5'))).toEqual(['spot-not-fixed']);
  });

  it('reports a line that belongs elsewhere', () => {
    expect(readLines('section "Last"', '4 "Ada"', 'notation 1').problems.map(({ params }) => params)).toEqual([{ belongs: 'book' }, { belongs: 'roster' }, { belongs: 'file' }]);
  });
});
