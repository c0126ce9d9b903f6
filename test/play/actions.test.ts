import { describe, expect, it } from 'vitest';
import type { Action } from '../../language/play/play.ts';
import { actionsOf, codes, readLines } from './reading.ts';

/** One line for each action: who, verb and what matters of the rest. */
function say(action: Action): string {
  const words: string[] = [action.who, action.verb];
  const add = (word: string, value: unknown) => {
    if (value !== undefined && !(Array.isArray(value) && value.length === 0)) words.push(`${word}=${typeof value === 'string' ? value : JSON.stringify(value)}`);
  };
  if (action.kind !== 'hold') words[1] = `${action.kind}:${action.verb}`;
  if ('style' in action) add('style', action.style);
  if (action.kind === 'screen') {
    add('for', action.users.join('+') || undefined);
    add('on', action.on);
    add('at', place(action.at?.value));
    if (action.formation !== 'single') add(action.formation, action.together.join('+'));
  }
  if (action.kind === 'move' || action.kind === 'dribble') {
    add('off', action.off.join('+') || undefined);
    add('via', action.via.map(place).join('+') || undefined);
    add('to', place(action.to?.value));
  }
  if (action.kind === 'move' && action.pace !== 'set') add('pace', action.pace);
  if (action.kind === 'dribble') add('at', action.at);
  if (action.kind === 'move' || action.kind === 'hold') add('on', action.on);
  if (action.kind === 'pass') {
    words.push(`${action.pass.value}>${action.to}`);
    add('at', place(action.at?.value));
    if (action.early) words.push('early');
    add('way', action.way);
    if (action.throwIn) words.push('throw-in');
  }
  if (action.kind === 'hand-off') words.push(`>${action.to}`);
  if (action.kind === 'shot') {
    words.push([action.shot.value, ...action.or].join('|'));
    add('from', place(action.from?.value));
  }
  if (action.kind === 'hold') add('seconds', action.seconds);
  if (action.kind === 'defend') {
    add('on', action.on);
    add('to', place(action.to?.value));
  }
  for (const wait of action.waits) {
    if (wait.kind === 'later') words.push(`+${wait.seconds}s`);
    else if (wait.kind === 'clock') words.push(`${wait.clock}@${wait.seconds}`);
    else words.push(`${wait.kind}(${wait.event.who} ${wait.event.does}${wait.event.other === undefined ? '' : ` ${wait.event.other}`}${wait.event.place === undefined ? '' : ` ${place(wait.event.place)}`})`);
  }
  return words.join(' ');
}

function place(value: Parameters<typeof JSON.stringify>[0]): string | undefined {
  if (value === undefined) return undefined;
  if (value.kind === 'spot') return [value.side, value.name, value.extended ? 'extended' : undefined, value.among && `among ${value.among.join('+')}`].filter(Boolean).join(' ');
  if (value.kind === 'offset') return `${value.by} ${value.direction} ${place(value.from)}`;
  if (value.kind === 'between') return `between ${typeof value.a === 'string' ? value.a : place(value.a)} & ${typeof value.b === 'string' ? value.b : place(value.b)}`;
  if (value.kind === 'either') return value.options.map(place).join(' or ');
  if (value.kind === 'point') return `(${value.point.x}, ${value.point.y})`;
  if (value.kind === 'own') return `"${value.name}"`;
  return `${value.kind} ${value.who}`;
}

const rows: readonly (readonly [line: string, ...actions: string[]])[] = [
  // moves
  ['3 cuts off 5 to top', '3 move:cut style=cut off=5 to=top'],
  ['3 cuts off 5 then 4 to rim', '3 move:cut style=cut off=5+4 to=rim'],
  ['3 cuts off the double of 4 and 5 to right wing', '3 move:cut style=cut off=4+5 to=right wing'],
  ['3 curls off 5 to the left elbow', '3 move:curl style=curl off=5 to=left elbow'],
  ['3 back-cuts to rim', '3 move:back-cut style=back-cut to=rim'],
  ['2 v-cuts to right wing', '2 move:v-cut style=v-cut to=right wing'],
  ['4 rolls', '4 move:roll style=roll'],
  ['4 pops to top', '4 move:pop style=pop to=top'],
  ['4 slips before the screen', '4 move:slip style=slip'],
  ['5 posts up at left block', '5 move:post-up style=post-up to=left block'],
  ['5 seals X5', '5 move:seal style=seal on=X5'],
  ['5 seals X2', '5 move:seal style=seal to=0.9 in front of player 2 on=X2'],
  ['5 boxes out X3', '5 box-out on=X3'],
  ['2 cuts between 4 and 5 to top, 4 and 5 close behind him', '2 move:cut style=cut via=between 4 & 5 to=top', '4 move:close-behind style=straight to=between between 4 & 5 & 4 once(2 reach between 4 & 5)', '5 move:close-behind style=straight to=between between 4 & 5 & 5 once(2 reach between 4 & 5)'],
  ['2 cuts to the open spot', '2 move:cut style=fill'],
  ['2 cuts through to left corner', '2 move:cut style=cut via=rim to=left corner'],
  ['2 holds at left wing', '2 move:move style=straight to=left wing', '2 hold'],
  ['1 holds at left wing', '1 dribble:dribble style=dribble to=left wing', '1 hold'],
  ['2 holds at left wing until 3 catches', '2 move:move style=straight to=left wing', '2 hold until(3 catch)'],
  ['4 and 5 screen for 2, 2 cuts between 4 and 5 to top', '4 screen:screen style=screen for=2 stagger=4+5', '5 screen:screen style=screen for=2 stagger=4+5', '2 move:cut style=cut off=4+5 via=between 4 & 5 to=top'],
  ['2 sprints to right corner', '2 move:sprint style=straight to=right corner pace=sprint'],
  ['2 jogs to right corner via right wing', '2 move:jog style=straight via=right wing to=right corner pace=jog'],
  ['2 steps out to the short corner', '2 move:step-out style=step-out to=short corner'],
  ['3 cuts between 4 and 5 to rim', '3 move:cut style=cut via=between 4 & 5 to=rim'],
  ['3 cuts over 4 and 5 to right wing', '3 move:cut style=cut off=4+5 to=right wing'],
  ['2 fills for 1', '2 move:fill style=fill to=player 1'],
  ['2 fills the open spot', '2 move:fill style=fill'],
  ['2 and 3 pop to the wings', '2 move:pop style=pop to=wing among 2+3', '3 move:pop style=pop to=wing among 2+3'],
  ['4 and 5 post up at the nail, 1 m apart', '4 move:post-up style=post-up to=0.5 left of nail', '5 move:post-up style=post-up to=0.5 right of nail'],
  ['2 and 3 cut to left corner and right corner', '2 move:cut style=cut to=left corner', '3 move:cut style=cut to=right corner'],
  ['2 cuts to left wing or left elbow', '2 move:cut style=cut to=left wing or left elbow'],
  ['3 cuts off 5 to rim, 2 makes the same cut off 4', '3 move:cut style=cut off=5 to=rim', '2 move:same-cut style=cut off=4 to=rim'],
  // places
  ['2 cuts to 2 ft above left elbow', '2 move:cut style=cut to=0.61 above left elbow'],
  ['2 cuts to between left wing and left corner', '2 move:cut style=cut to=between left wing & left corner'],
  ['2 cuts to beside 5', '2 move:cut style=cut to=beside 5'],
  ['2 cuts to behind 5', '2 move:cut style=cut to=behind 5'],
  ['2 cuts to (4.2, 3.0) m', '2 move:cut style=cut to=(4.2, 3)'],
  ['2 cuts to the ball-side corner', '2 move:cut style=cut to=ball corner'],
  ['2 cuts to the weak-side wing', '2 move:cut style=cut to=weak wing'],
  ['2 cuts to far corner', '2 move:cut style=cut to=far corner'],
  ['2 cuts to left free-throw line extended', '2 move:cut style=cut to=left free-throw line extended'],
  // the ball
  ['1 dribbles to left wing', '1 dribble:dribble style=dribble to=left wing'],
  ['1 drives', '1 dribble:drive style=drive to=rim'],
  ['1 drives baseline', '1 dribble:drive style=drive via=short corner to=rim'],
  ['1 drives off 4 to right elbow', '1 dribble:drive style=drive off=4 to=right elbow'],
  ['1 dribbles at 2', '1 dribble:dribble style=dribble-at at=2'],
  ['1 keeps his dribble', '1 dribble:keep-dribble style=keep'],
  ['1 passes to 2', '1 pass:pass pass>2'],
  ['1 bounce-passes to 2', '1 pass:bounce-pass bounce>2'],
  ['1 lobs to 5', '1 pass:lob lob>5'],
  ['1 skips to 2', '1 pass:skip skip>2'],
  ['1 throws overhead to 2', '1 pass:throw overhead>2'],
  ['1 throws a baseball pass to 2', '1 pass:throw baseball>2'],
  ['1 passes to 2 at right wing', '1 pass:pass pass>2 at=right wing'],
  ['1 passes to 2 early', '1 pass:pass pass>2 early'],
  ['1 passes to 2 to 3', '1 pass:pass pass>2', '2 pass:pass pass>3'],
  ['1 hands off to 2', '1 hand-off:hand-off >2'],
  ['1 hands off to 2 at right wing', '1 dribble:dribble style=dribble to=right wing', '1 hand-off:hand-off >2'],
  ['1 passes along the baseline to 2', '1 pass:pass pass>2 way=along the baseline'],
  ['1 passes over the top to 5', '1 pass:pass lob>5 way=over the top'],
  ['1 shoots a three from left corner', '1 shot:shoot three from=left corner'],
  ['1 shoots', '1 shot:shoot shot'],
  ['1 shoots a three or jumper', '1 shot:shoot three|jumper'],
  ['1 pulls up', '1 shot:pull-up jumper'],
  // screens
  ['5 screens down for 3', '5 screen:screen style=down for=3'],
  ['4 back-screens for 2', '4 screen:back-screen style=back for=2'],
  ['4 ball-screens for 1', '4 screen:ball-screen style=ball for=1'],
  ['4 screens for 2 at left elbow', '4 screen:screen style=screen for=2 at=left elbow'],
  ['4 screens on X5', '4 screen:screen style=screen for=5 on=X5'],
  ['5 screens for 2 and 3', '5 screen:screen style=screen for=2+3'],
  ['4 and 5 screen for 2', '4 screen:screen style=screen for=2 stagger=4+5', '5 screen:screen style=screen for=2 stagger=4+5'],
  ['4 and 5 double-screen for 2', '4 screen:double-screen style=screen for=2 double=4+5', '5 screen:double-screen style=screen for=2 double=4+5'],
  ['4 and 5 screen for 2 and 3', '4 screen:screen style=screen for=2', '5 screen:screen style=screen for=3'],
  ['4 and 5 screen for 2 and 3 at left slot and left elbow', '4 screen:screen style=screen for=2 at=left slot', '5 screen:screen style=screen for=3 at=left elbow'],
  ['4 screens for 5, then for 2', '4 screen:screen style=screen for=5', '4 screen:screen style=screen for=2'],
  ['4 ball-screens for 1, then re-screens', '4 screen:ball-screen style=ball for=1', '4 screen:re-screen style=ball for=1'],
  // chains and subjects
  ['1 passes to 2 and cuts to rim', '1 pass:pass pass>2', '1 move:cut style=cut to=rim'],
  ['1 passes to 2, 2 drives', '1 pass:pass pass>2', '2 dribble:drive style=drive to=rim'],
  ['5 screens for 1, then rolls', '5 screen:screen style=screen for=1', '5 move:roll style=roll'],
  ['5 screens for 1, 1 drives off him', '5 screen:screen style=screen for=1', '1 dribble:drive style=drive off=5 to=rim'],
  ['3 lobs to 5, 5 dunks', '3 pass:lob lob>5', '5 shot:dunk dunk'],
  ['1 drives, everyone else holds', '1 dribble:drive style=drive to=rim', '2 hold', '3 hold', '4 hold', '5 hold'],
  ['4 and 5 screen for 2, both roll', '4 screen:screen style=screen for=2 stagger=4+5', '5 screen:screen style=screen for=2 stagger=4+5', '4 move:roll style=roll', '5 move:roll style=roll'],
  ['2 stays', '2 stay'],
  ['2 holds for 3 seconds', '2 hold seconds=3'],
  // waits
  ['as 5 rolls, 2 lifts', '2 move:lift style=lift as(5 roll)'],
  ['2 lifts as 5 rolls', '2 move:lift style=lift as(5 roll)'],
  ['once 4 is set, 3 cuts off 4 to top, then 4 rolls', '3 move:cut style=cut off=4 to=top once(4 set)', '4 move:roll style=roll'],
  ['3 cuts to rim when 2 catches', '3 move:cut style=cut to=rim when(2 catch)'],
  ['3 cuts to rim as 1 reaches the lane', '3 move:cut style=cut to=rim as(1 reach lane)'],
  ['3 cuts to rim once 3 clears 4', '3 move:cut style=cut to=rim once(3 clear 4)'],
  ['2 seconds later, 3 cuts to rim', '3 move:cut style=cut to=rim +2s'],
  ['at 6 on the clock, 3 cuts to rim', '3 move:cut style=cut to=rim period@6'],
  ['3 cuts to rim at 6 on the shot clock', '3 move:cut style=cut to=rim shot@6'],
  ['2 holds until 4 is set', '2 hold until(4 set)'],
  // the defence
  ['X4 switches to 2', 'X4 defend:switch on=2'],
  ['X2 goes under 4', 'X2 defend:go-under on=4'],
  ['X5 helps at rim', 'X5 defend:help to=rim'],
  ['X1 and X5 trap 1', 'X1 defend:trap on=1', 'X5 defend:trap on=1'],
];

describe('a line of a step', () => {
  it.each(rows)('%s', (line, ...actions) => {
    const reading = readLines(line);
    expect(reading.play.steps[0]?.actions.map(say)).toEqual(actions);
    expect(codes(reading)).toEqual([]);
  });

  it('marks a slip that cancels its screen', () => {
    expect(actionsOf('4 slips before the screen')[0]).toMatchObject({ beforeScreen: true });
  });

  it('numbers the links of a line, all subjects of one link alike', () => {
    expect(actionsOf('4 and 5 screen for 2, then roll').map(({ id, link }) => [id, link])).toEqual([
      ['start/4.1', 0], ['start/5.1', 0], ['start/4.2', 1], ['start/5.2', 1],
    ]);
  });
});

describe('a line that cannot be meant', () => {
  it.each([
    ['1 passes', 'pass-to-nobody'],
    ['both roll', 'who-is-meant'],
    ['2 makes the same cut off 3', 'who-is-meant'],
    ['2 denies 3', 'offence-defends'],
    ['X2 shoots', 'defender-attacks'],
    ['2 cuts to rim when X4 shows', 'wait-on-defender'],
    ['2 cuts to "poket"', 'unknown-spot'],
    ['2 cuts to left nail', 'spot-without-side'],
    ['2 at left wing', 'verb-missing'],
    ['2 passes behind the board to 3', 'not-yet'],
    ['X2 overplays 2 baseline', 'not-yet'],
  ])('%s: %s', (line, code) => {
    expect(codes(readLines('1 drives', line))).toContain(code);
  });
});
