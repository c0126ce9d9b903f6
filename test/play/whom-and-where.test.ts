import { describe, expect, it } from 'vitest';
import type { Action } from '../../language/play/play.ts';
import { actionsOf, codes, readLines } from './reading.ts';

const last = (...lines: string[]): Action => actionsOf(...lines).at(-1)!;

describe('nobody screens for himself', () => {
  it('`ball-screens for him` is for who has the ball', () => {
    expect(last('5 sprints up and ball-screens for him')).toMatchObject({ kind: 'screen', who: '5', users: ['1'] });
    expect(last('2 clears to the right corner', '5 sprints up and sets a drag screen for him')).toMatchObject({ users: ['1'] });
    expect(last('1 passes to 2', '5 comes over and gives him a ball screen')).toMatchObject({ users: ['2'] });
  });
  it('unless the line names another', () => {
    expect(last('5 passes to 2 and ball-screens for him')).toMatchObject({ users: ['2'] });
    expect(last('2 clears to the right corner', '5 comes over and screens for him')).toMatchObject({ users: ['2'] });
  });
  it('a screen of the ball is come off by who has it', () => {
    const reading = readLines('5 screens the ball', '1 uses the screen to the left wing');
    expect(codes(reading)).toEqual([]);
    expect(reading.play.steps[0]!.actions.at(-1)).toMatchObject({ who: '1', off: ['5'] });
  });
});

describe('nobody comes off himself', () => {
  it('`uses them` is those who screen for him', () => {
    expect(last('4 and 5 stagger for 3', '3 uses them to the top')).toMatchObject({ who: '3', off: ['4', '5'] });
  });
  it('else the two told of last', () => {
    expect(last('4 and 5 flash to the elbows', '3 cuts off them to the top')).toMatchObject({ who: '3', off: ['4', '5'] });
  });
});

describe('left and right', () => {
  const wing = { value: { kind: 'spot', name: 'wing', side: 'left' } };
  it('lead to that side of the floor', () => {
    expect(last('1 dribbles left')).toMatchObject({ kind: 'dribble', to: wing, via: [] });
    expect(last('2 goes left')).toMatchObject({ kind: 'move', to: wing, via: [] });
  });
  it('but of who drives, goes by his man with the ball or comes off somebody, to the rim', () => {
    for (const line of ['1 drives left', '1 goes left']) expect(last(line)).toMatchObject({ kind: 'dribble', style: 'drive', via: [{ name: 'elbow', side: 'left' }], to: { value: { name: 'rim' } } });
    expect(last('4 screens for 2', '2 goes left off 4')).toMatchObject({ kind: 'move', via: [{ name: 'elbow', side: 'left' }], to: { value: { name: 'rim' } } });
  });
  it('and a place takes them over', () => {
    expect(last('1 dribbles left to the left slot')).toMatchObject({ to: { value: { name: 'slot', side: 'left' } } });
  });
});

it('along the sideline without a side is along his own', () => {
  for (const way of ['up', 'down', 'along']) expect(last(`2 goes ${way} the sideline`)).toMatchObject({ to: { value: { kind: 'spot', name: 'wing' } } });
  expect(last('2 runs the sideline')).toMatchObject({ to: { value: { kind: 'spot', name: 'wing' } } });
});

describe('a pass back without a name', () => {
  it('is to him of whom he has the ball', () => {
    expect(last('1 passes to 2', '2 throws it right back')).toMatchObject({ kind: 'pass', who: '2', to: '1', pass: { value: 'pass' } });
    expect(last('1 passes to 2', '2 gives it right back and cuts')).toMatchObject({ kind: 'move', who: '2' });
  });
  it('behind a look is to the man of the look, whoever had the ball before', () => {
    for (const words of ['2 gives it right back', '2 passes', '2 skips it over']) {
      const { play } = readLines('1 passes to 2', '1 cuts to rim', `look 3: ${words}, layup`);
      expect(play.steps[0]!.looks[0]!.tail.map(({ kind, who }) => [kind, who])).toEqual([['pass', '2'], ['shot', '3']]);
      expect(play.steps[0]!.looks[0]!.tail[0]).toMatchObject({ to: '3' });
    }
  });
  it('and to nobody where he has it of nobody', () => {
    expect(codes(readLines('1 throws it right back'))).toContain('pass-to-nobody');
  });
});

describe('behind the baseline stands only the thrower', () => {
  it('who waits on the baseline is in the short corner', () => {
    expect(actionsOf('4 waits on the baseline')).toMatchObject([{ to: { value: { name: 'short corner' } } }, { kind: 'hold' }]);
  });
  it('who throws in beside the basket is behind the line there', () => {
    for (const line of ['3 is the inbounder on the right side of the basket', '3 takes it out on the right side of the basket']) expect(readLines(line).play.start.throwIn).toMatchObject({ by: { value: 3 }, from: { value: { name: 'baseline', side: 'right' } } });
  });
});
