import { describe, expect, it } from 'vitest';
import type { Action } from '../../language/play/play.ts';
import { actionsOf, codes, readLines } from './reading.ts';

/** Who does what kind of thing, off whom, to where, waiting for what. */
function say(action: Action): string {
  const off = 'off' in action && action.off.length > 0 ? ` off ${action.off.join('+')}` : '';
  const to = (action.kind === 'move' || action.kind === 'dribble') && action.to !== undefined ? ` to ${'name' in action.to.value ? action.to.value.name : 'who' in action.to.value ? action.to.value.who : ''}` : '';
  const receiver = action.kind === 'pass' ? ` to ${action.to}` : '';
  const clock = action.waits.map(wait => (wait.kind === 'clock' ? ` @${wait.seconds}` : '')).join('');
  return `${action.who} ${action.kind}:${action.verb}${off}${to}${receiver}${clock}`;
}

describe('words that leave open whether he has the ball', () => {
  it.each([
    ['1 comes off 4 to right elbow', '1 dribble:drive off 4 to elbow'],
    ['2 comes off 4 to right elbow', '2 move:cut off 4 to elbow'],
    ['2 comes off 5 then 4 to left wing', '2 move:cut off 5+4 to wing'],
    ["1 uses 4's screen", '1 dribble:drive off 4 to rim'],
    ['1 comes to the top', '1 dribble:dribble to top'],
    ['4 comes to the top', '4 move:move to top'],
    ['1 goes to right elbow', '1 dribble:dribble to elbow'],
    ['3 goes to the corner', '3 move:move to corner'],
  ])('%s: %s', (line, wanted) => {
    expect(actionsOf(line).map(say)).toEqual([wanted]);
  });
});

describe('the screen', () => {
  it('is the one set last for him', () => {
    expect(actionsOf('5 screens for 3', '4 ball-screens for 1', '1 comes off the screen to the nail', '3 cuts off the screen to top').map(say).slice(2)).toEqual(['1 dribble:drive off 4 to nail', '3 move:cut off 5 to top']);
  });
  it('must have been set', () => {
    expect(codes(readLines('2 cuts off the screen to top'))).toContain('who-is-meant');
  });
  it('a defender goes under is the one set for his man', () => {
    const { play } = readLines('4 ball-screens for 1', 'X1 goes under the screen', '1 drives off 4 to rim');
    expect(play.steps[0]!.actions.find(({ who }) => who === 'X1')).toMatchObject({ kind: 'defend', on: '4' });
  });
});

describe('two who change places', () => {
  it.each([['2 and 4 swap'], ['2 exchanges with 4'], ['2 changes places with 4']])('%s: each fills for the other', line => {
    expect(actionsOf(line).map(say)).toEqual(['2 move:fill to 4', '4 move:fill to 2']);
  });
  it('one alone cannot', () => {
    expect(codes(readLines('2 swaps'))).toContain('who-is-meant');
  });
});

describe('the clock', () => {
  it('a hold until 8 on the clock pins what he does next', () => {
    expect(actionsOf('1 waits until 8 on the clock, then drives').map(say)).toEqual(['1 hold:wait @8', '1 dribble:drive to rim']);
  });
  it('he goes to the place at once and waits there', () => {
    expect(actionsOf('2 waits on the left wing until 8 on the clock').map(say).at(-1)).toBe('2 hold:wait @8');
    expect(actionsOf('2 waits on the left wing until 8 on the clock').map(say)[0]).not.toContain('@');
  });
  it('a window with one end runs from the call, or to the horn', () => {
    expect(readLines('call with 20 left', 'shot by 4 on the clock').play.clock).toMatchObject({ call: { from: 20, to: 20 }, between: { from: 20, to: 4 } });
    expect(readLines('call with 20 left', 'no shot before 6 on the clock').play.clock).toMatchObject({ between: { from: 6, to: 0 } });
  });
});

it('a trailer of the offence comes behind the ball to the top', () => {
  expect(actionsOf('3 trails').map(say)).toEqual(['3 move:move to top']);
  expect(codes(readLines('3 trails'))).not.toContain('offence-defends');
  expect(codes(readLines('3 trails 2'))).toContain('offence-defends');
});

describe('to the ball', () => {
  it('of a thrower is three metres before him, of a team-mate at his side', () => {
    const to = (...lines: string[]) => actionsOf(...lines).find(({ who, kind }) => who === '5' && kind === 'move');
    expect(to('3 inbounds from the left sideline', '5 breaks to the ball', '3 inbounds to 5')).toMatchObject({ to: { value: { kind: 'offset', by: 3, direction: 'in front of', from: { who: '3' } } } });
    expect(to('5 breaks to the ball')).toMatchObject({ to: { value: { kind: 'beside', who: '1' } } });
  });
});

describe('a screen on a defender', () => {
  it('is for the man he guards', () => {
    expect(actionsOf("1 screens 4's man").at(-1)).toMatchObject({ kind: 'screen', on: 'X4', users: ['4'] });
    expect(actionsOf('against man', '1 screens X4').at(-1)).toMatchObject({ on: 'X4', users: ['4'] });
  });
  it('of a zone is for whoever comes by', () => {
    expect(actionsOf('against 2-3', '1 screens X4').at(-1)).toMatchObject({ on: 'X4', users: [] });
  });
});

it('along the baseline is down beside the lane, then behind the ring: no step out to the side first', () => {
  expect(actionsOf('from 2 left block', '2 cuts along the baseline to right corner').at(-1)).toMatchObject({ via: [{ kind: 'spot', name: 'dunker spot' }], to: { value: { name: 'corner', side: 'right' } } });
});

it.each([
  ['2 runs the baseline', 'dunker spot', 'far corner'],
  ['2 sprints the baseline off 4', 'dunker spot', 'far corner'],
  ['2 cuts along the baseline', 'dunker spot', 'far corner'],
  ['2 cuts baseline', 'short corner', 'rim'],
])('%s: to the other corner, or to the rim', (line, by, end) => {
  const [, side, name] = /^(?:(far) )?(.*)$/.exec(end)!;
  expect(actionsOf('from 2 left corner', line).at(-1)).toMatchObject({ via: [{ name: by }], to: { value: { name, ...(side && { side }) } } });
});

it('a drive along the baseline is one to the rim', () => {
  expect(actionsOf('1 drives along the baseline').at(-1)).toMatchObject({ via: [{ name: 'short corner' }], to: { value: { name: 'rim' } } });
});

it.each([
  ['1 passes to 2 as he cuts', { who: '2', does: 'cut' }],
  ['1 hits 2 as he comes off 4', { who: '2', does: 'come-off', other: '4' }],
  ['5 hands off to 2 as he comes off 4', { who: '2', does: 'come-off', other: '4' }],
  ['4 screens for 2 as he cuts', { who: '2', does: 'cut' }],
  ['2 cuts off 4 to top, 1 hits him as he comes off 4', { who: '2', does: 'come-off', other: '4' }],
  ['1 hits 2 as he gets there', { who: '2', does: 'arrive' }],
  ['once 2 is by him, 4 rolls to rim', { who: '2', other: '4' }],
  ['1 passes to 2 once he reaches the wing', { who: '1', does: 'reach' }],
  ['3 cuts to rim as he catches', { who: '3', does: 'catch' }],
])('%s: who is meant', (line, event) => {
  expect(actionsOf(line).at(-1)!.waits).toMatchObject([{ event }]);
});

describe('of what stands above', () => {
  const waits = (...lines: string[]) => actionsOf(...lines).at(-1)!.waits.map(wait => ({ ...wait, part: '' }));
  it.each([
    [['1 drives to right elbow'], '3 lifts to left wing with the drive', '3 lifts to left wing as 1 drives'],
    [['1 passes to 5', '5 hands off to 1'], '3 lifts to left wing after the hand-off', '3 lifts to left wing once 5 hands off to 1'],
    [['1 passes to 5'], 'on the catch, 3 cuts to rim', 'once 5 catches, 3 cuts to rim'],
    [['1 passes to 5'], '3 cuts to rim on the pass', '3 cuts to rim as 1 passes to 5'],
    [['4 ball-screens for 1'], '3 lifts to left wing after the screen', '3 lifts to left wing once 4 is set'],
    [['4 ball-screens for 1'], "3 lifts to left wing after 4's screen", '3 lifts to left wing once 4 is set'],
    [['2 cuts to rim'], '3 lifts to left wing at the same time', '3 lifts to left wing as 2 cuts'],
    [['2 cuts to rim', '4 dives'], '3 lifts to left wing at the same time as 2', '3 lifts to left wing as 2 cuts'],
    [['5 pin-screens for 2', '2 curls off 5 to nail'], '5 pops to left wing after 2 has gone by', '5 pops to left wing once 2 clears 5'],
  ])('%j, %s: as %s', (above, spoken, notation) => {
    expect(waits(...above, spoken)).toEqual(waits(...above, notation));
    expect(waits(...above, spoken)).toHaveLength(1);
  });
  it('his own screen a man has left already', () => {
    expect(waits('4 ball-screens for 1', '4 rolls after his screen')).toEqual([]);
    expect(codes(readLines('4 ball-screens for 1', '4 rolls after his screen'))).toEqual([]);
  });
  it('must be told above', () => {
    expect(codes(readLines('3 lifts to left wing with the drive', '1 drives to right elbow'))).toContain('not-told-above');
  });
});

it.each([
  ['2 scrapes off 5 and bursts to the right slot', [{ verb: 'cut', off: ['5'], to: { value: { name: 'slot' } } }]],
  ['2 cuts off 5 and fades to the right corner', [{ style: 'fade', off: ['5'], to: { value: { name: 'corner' } } }]],
  ['2 cuts off 5, then fades to the right corner', [{ style: 'cut' }, { style: 'fade' }]],
])('off a screen and on to a place is one way: %s', (line, ways) => expect(actionsOf(line)).toMatchObject(ways));

it('`5 flashes`, `1 hits him`: who is told of last above', () => {
  expect(actionsOf('5 flashes to nail', '1 hits him').at(-1)).toMatchObject({ kind: 'pass', to: '5' });
  expect(codes(readLines('2 and 3 cut to blocks', '1 hits him'))).toContain('who-is-meant');
});

it.each([
  [['5 screens for 1, then he drives to rim'], { who: '1', kind: 'dribble' }],
  [['1 passes to 2', '2 swings it to 3, and he passes to 4'], { who: '3', to: '4' }],
  [['1 dribbles at 2', '2 takes the hand-off'], { who: '1', kind: 'hand-off', to: '2' }],
])('what is done with the ball its holder does: %j', (lines, last) => expect(actionsOf(...lines).at(-1)).toMatchObject(last));

it('`as 1 comes at him, 2 cuts`: he is the one who waits', () => {
  expect(actionsOf('1 dribbles at 2', 'as 1 dribbles at him, 2 cuts to rim').at(-1)!.waits).toMatchObject([{ event: { who: '1', other: '2' } }]);
});

it('`X4 helps on 3 as she drives`: she is whom he guards', () => {
  const { play, problems } = readLines('  from horns', '  step "One"', '3 drives to rim', 'X4 helps on 3 as she drives');
  expect(problems).toEqual([]);
  expect(play.steps[0]!.actions.at(-1)!.waits).toMatchObject([{ event: { who: '3' } }]);
});

it('`when 1 drives at him` is no drive off a screen', () => {
  expect(actionsOf('1 drives to right elbow', '2 drifts to right corner when 1 drives at him').at(-1)!.waits).toMatchObject([{ event: { who: '1', does: 'dribble', other: '2' } }]);
});

it('`when she is open` is she whom the ball goes to', () => {
  expect(actionsOf('4 flashes to the nail', '1 passes to 4 when she is open').at(-1)!.waits).toMatchObject([{ event: { who: '4', does: 'open' } }]);
});

it('`after he throws it in` is the thrower, whoever is told of above', () => {
  const { play } = readLines('  from box', '  2 inbounds from the left baseline', '  step "One"', '1 pops to left corner', 'look 1: three', 'after he throws it in, 5 cuts to rim');
  expect(play.steps[0]!.actions.at(-1)!.waits).toMatchObject([{ event: { who: '2' } }]);
});

describe('a cut off the man who then hands off to him', () => {
  it('leads to that man, and not by way of the rim', () => {
    const [, cut] = actionsOf('1 passes to 4', '1 cuts off 4', '4 hands off to 1');
    expect(cut).toMatchObject({ who: '1', off: [], to: { value: { kind: 'beside', who: '4' } } });
  });
  it.each([
    [['1 passes to 4', '1 cuts off 4 to right corner', '4 hands off to 1']],
    [['1 passes to 4', '1 cuts off 4', '4 hands off to 2']],
    [['1 passes to 2', '1 cuts off 4', '2 passes to 4', '4 hands off to 1']],
  ])('is a way of its own in %j', (lines) => {
    expect(actionsOf(...lines)[1]).toMatchObject({ who: '1', off: ['4'] });
  });
});

it('a look `on the catch` of the pass it gives is a look', () => {
  const look = (...lines: string[]) => readLines('  from horns', '  step "One"', ...lines).play.steps[0]!.looks[0]!;
  expect(look('3 lifts to left wing', 'look 3 on the catch: three').pin).toBeUndefined();
  expect(look('1 passes to 3', 'look 3 on the catch: three').pin).toMatchObject({ kind: 'on', style: 'catch' });
});

it('`then` before a line: once the line above is done', () => {
  expect(actionsOf('4 cuts to rim', 'then, 5 flashes to nail').at(-1)!.waits).toMatchObject([{ kind: 'once', event: { who: '4', does: 'cut' } }]);
  expect(actionsOf('1 passes to 4', 'after that, 5 flashes to nail').at(-1)!.waits).toMatchObject([{ kind: 'once', event: { who: '4', does: 'catch' } }]);
  expect(actionsOf('5 cuts to rim', 'then, 5 flashes to nail').at(-1)!.waits).toEqual([]);
  expect(actionsOf('4 cuts to rim', 'X2 denies 2', 'then, 5 flashes to nail').at(-1)!.waits).toMatchObject([{ event: { who: '4' } }]);
});

describe('while', () => {
  const told = (...lines: string[]) => actionsOf(...lines).map(({ who, verb, waits }) => `${who} ${verb}${waits.map(wait => ('event' in wait ? ` ${wait.kind} ${wait.event.who}` : '')).join('')}`);
  it.each([
    ['1 dribbles to top while 2 drifts to left corner', ['1 dribble', '2 drift as 1']],
    ['while 2 drifts to left corner, 1 dribbles to top', ['2 drift', '1 dribble as 2']],
    ['1 passes to 2, and while 4 and 5 cut to blocks, 3 lifts to right wing', ['1 pass', '4 cut', '5 cut', '3 lift as 4']],
  ])('what no line tells is a deed of this one: %s', (line, actions) => {
    expect(told(line)).toEqual(actions);
    expect(codes(readLines(line))).toEqual([]);
  });
  it.each([
    [['2 drifts to left corner', '1 dribbles to top while 2 drifts']],
    [['1 dribbles to top while 2 drifts', '2 drifts to left corner']],
    [['2 cuts to left corner', 'while 2 moves, 1 dribbles to top']],
  ])('what a line tells is waited for: %j', (lines) => {
    expect(told(...lines).toSorted()).toEqual(['1 dribble as 2', `2 ${lines.some((line) => line.startsWith('2 cuts')) ? 'cut' : 'drift'}`]);
  });
  it('who does so is no longer everyone else', () => {
    expect(told('1 dribbles to top while 2 drifts to left corner', 'everyone else holds')).toEqual(['1 dribble', '2 drift as 1', '3 hold', '4 hold', '5 hold']);
  });
});

describe('the thrower', () => {
  it.each(['is the thrower', 'is the inbounder', 'is throwing it in', 'has it out of bounds'])('3 %s on the left sideline', (words) => {
    const { play } = readLines('  from 1 at top, 2 at left wing, 4 at right elbow, 5 at left elbow', '  step "One"', `    3 ${words} on the left sideline`, '    3 inbounds to 1');
    expect(play.start.throwIn).toMatchObject({ by: { value: 3 }, from: { value: { side: 'left' } } });
  });
});

describe('what a line speaks of', () => {
  it('may stand in the step before, on the way here', () => {
    const lines = ['  from horns', '  step "Go"', '    1 passes to 5', '  step "On"', '    on the catch, 4 screens for 2'] as const;
    expect(codes(readLines(...lines))).not.toContain('not-told-above');
    expect(readLines(...lines).play.steps[1]!.actions[0]!.waits).toMatchObject([{ kind: 'once', event: { who: '5', does: 'catch' } }]);
    expect(codes(readLines(...lines.slice(0, 2), '    1 dribbles to left slot', ...lines.slice(3)))).toContain('not-told-above');
  });
});

it('a pronoun that would be the passer himself is asked for by its word', () => {
  const { problems } = readLines('4 screens for 2', '2 cuts off 4 to the corner', 'as she comes off 4, 1 passes to her');
  expect(problems.filter(({ code }) => code === 'who-is-meant').map(({ params }) => params)).toEqual([{ word: 'her' }]);
});

describe('a pronoun that would be the man who acts', () => {
  const acts = (line: string) => readLines('  from horns', line).play.steps[0]!.actions;
  it.each([
    ['1 passes to 4 and cuts off her to the right wing', { off: ['4'] }],
    ['1 dribbles at 2 and hands it off to her', { kind: 'hand-off', to: '2' }],
    ['2 cuts to the top and 1 passes to her', { kind: 'pass', to: '2' }],
    ['as 2 cuts, 1 passes to him', { kind: 'pass', to: '2' }],
    ['1 holds until 2 comes off 4, then passes to her', { kind: 'pass', to: '2' }],
  ])('is the other named last before it: %s', (line, last) => expect(acts(line).at(-1)).toMatchObject(last));

  it.each(['1 drives off 5 and kicks to her', '1 hands off to her'])('and is asked for where the line names none: %s', (line) => {
    expect(codes(readLines('  from horns', line))).toContain('who-is-meant');
  });
});

describe('`when she goes` before a line', () => {
  const waits = (...lines: readonly string[]) => readLines('  from horns', ...lines).play.steps[0]!.actions.at(-1)!.waits;
  it('is the man told of last, where nothing is told of the one who waits', () => expect(waits('2 drives to right elbow', 'when she goes, 1 drifts to right corner')).toMatchObject([{ event: { who: '2' } }]));
  it('is the one who waits where he has something to do above', () => expect(waits('4 screens for 2', '2 cuts off 4 to top', 'once she is set, 4 rolls')).toMatchObject([{ event: { who: '4' } }]));
});

it('an attacker who chases somebody to a place is not read as going there himself', () => {
  expect(codes(readLines('  from horns', '1 dribbles at 2 and chases her down to the right corner'))).toContain('offence-defends');
  // In his own word.
  expect(readLines('  from horns', '1 chases 2 to the right corner').problems.map(({ params }) => params['verb'])).toEqual(['chases']);
});

describe('of a pronoun that would be the man who waits, or the wrong side', () => {
  const last = (...lines: readonly string[]) => readLines('  from horns', ...lines).play.steps[0]!.actions.at(-1)!;

  it.each([
    ['4 hands it back to 3 as he goes by', '3'],
    ['1 fills for 4 when he has gone', '4'],
    ["2 screens for 3 and holds it till she's gone", '3'],
  ])('is whom the line names: %s', (line, who) => expect(last('1 passes to 4', line).waits).toMatchObject([{ event: { who } }]));

  it('is who the lines above tell of, where it names nobody', () => expect(last('2 cuts to the rim', '4 stays until he is through').waits).toMatchObject([{ event: { who: '2' } }]));

  it('is who has the ball, where he is trapped', () => expect(last('1 passes to 2', 'X1 and X2 come and trap her')).toMatchObject({ verb: 'trap', on: '2' }));
  it('and his own man, where a defender does it alone', () => expect(last('X2 guards her')).toMatchObject({ who: 'X2', on: '2' }));

  it('off her hip is off whom he has just passed to', () => expect(last('1 passes to 4 and cuts right off her hip')).toMatchObject({ who: '1', off: ['4'] }));
});

describe('whom a defender has to do with', () => {
  const onWhom = (...lines: string[]) => actionsOf(...lines).filter(({ who }) => who.startsWith('X')).map(action => ('on' in action ? action.on : undefined));
  it('who has the ball is run out at, shown on and trapped, whoever the line names first', () => {
    expect(onWhom('1 passes to 4, and X4 closes out on him')).toEqual(['4']);
    expect(onWhom('5 ball-screens for 1, X5 shows on him')).toEqual(['1']);
  });
  it('his own man is denied and guarded, where the line names him', () => {
    expect(onWhom('1 passes to 4, X1 denies him')).toEqual(['1']);
    expect(onWhom('1 passes to 4, X4 denies him')).toEqual(['4']);
  });
  it('who doubles her doubles who has the ball, and so does a step’s condition', () => {
    expect(onWhom('1 passes to 2', 'X1 doubles her')).toEqual(['2']);
    expect(onWhom('1 passes to 2', 'X1 and X3 double the ball')).toEqual(['2', '2']);
    const { play } = readLines('step "A"', '1 passes to 2', 'look 2: three', 'step "B" instead of "A" when X1 doubles her', '2 passes to 3', 'look 3: three', 'step "C" instead of "A" when X2 denies her', '2 back-cuts');
    expect(play.steps.map(({ condition }) => (condition?.kind === 'defence' ? condition.on : undefined))).toEqual([undefined, '2', '2']);
  });
  it('a screener is gone under', () => {
    expect(onWhom('5 screens for 1, X1 goes under him')).toEqual(['5']);
  });
});

describe('behind a man', () => {
  it('whose screen is for another is where the place lies, not round whom he comes', () => {
    expect(actionsOf('5 ball-screens for 1', '5 rolls to rim and 4 lifts to the top behind him').map(say).at(-1)).toBe('4 move:lift to top');
    expect(actionsOf('5 screens for 4', '4 lifts to the top behind 5').map(say).at(-1)).toBe('4 move:lift off 5 to top');
  });
});

describe('two looks in a line', () => {
  it('are two looks, each with its own words', () => {
    const { play, places } = readLines('1 dribbles to top', 'look 4: layup, look 5 "dish": drop off, layup', '3 cuts to rim');
    const { looks, actions } = play.steps[0]!;
    expect(looks.map(({ id, tail }) => [id, ...tail.map(say)])).toEqual([['start?4.1', '1 pass:pass to 4', '4 shot:shoot'], ['start?5.1', '1 pass:pass to 5', '5 shot:shoot']]);
    expect([places.get('start?4.1'), places.get('start?5.1')]).toEqual([{ line: 2, at: 0, to: 13 }, { line: 2, at: 15, to: 45 }]);
    expect(actions.map(({ line }) => line)).toEqual(['start:1', 'start:3']);
  });
});

describe('a look that hangs on a defender', () => {
  it('is called by what he does: whether he does it is seen in the game', () => {
    const { play, problems } = readLines('1 drives to right elbow', 'look 2 when his man helps: kick out, three');
    expect(play.steps[0]!.looks[0]).toMatchObject({ who: [2], label: 'when his man helps' });
    expect(problems).toEqual([]);
  });
});

describe('waits that are told by the way', () => {
  const waits = (...lines: string[]) => actionsOf(...lines).at(-1)!.waits.map(wait => ('event' in wait ? [wait.kind, wait.event.who, wait.event.does, wait.event.other] : [wait.kind]));
  it('for his screener who turns the corner is by him', () => {
    expect(waits('5 ball-screens for 1', '1 drives off 5 to right elbow', 'as 1 turns the corner, 5 rolls')).toEqual([['as', '1', 'clear', '5']]);
    expect(waits('5 ball-screens for 1', '1 drives off 5 to right elbow', 'as 1 turns the corner, 3 drifts')).toEqual([['as', '1', 'turn-the-corner', undefined]]);
  });
  it('a screener who pops `and` with the cut off him stays until the cutter is by', () => {
    expect(waits('3 screens for 1', '1 cuts off 3 to rim and 3 pops to left wing')).toEqual([['as', '1', 'clear', '3']]);
  });
  it('a defender does one thing until something happens, and then the next', () => {
    const [shows, recovers] = actionsOf('5 ball-screens for 1', 'X5 shows on 1 until 1 is past 5, then recovers to 5').slice(1);
    expect(shows!.waits).toEqual([]);
    expect(recovers!.waits).toMatchObject([{ kind: 'once', event: { who: '1', does: 'clear', other: '5' } }]);
  });
  it('defenders wait for each other', () => {
    expect(waits('X5 shows on 1', 'X5 recovers to 5', 'X4 recovers to 4 once X5 has recovered')).toEqual([['once', 'X5', 'recover', undefined]]);
    expect(codes(readLines('2 cuts to rim when X4 shows'))).toContain('wait-on-defender');
  });
});
