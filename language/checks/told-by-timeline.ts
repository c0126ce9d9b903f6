// What scheduling notes as wrong, in a coach's words. The record is complete by type: a new code of `timeline/` without an entry here
// does not compile, and neither does a message that asks for a parameter its code does not bring.
import { commonPractice } from '../court/sources.ts';
import type { TimelineProblemCode, TimelineProblems } from '../timeline/problem-codes.ts';
import { ballNeeded } from './ball-needed.ts';
import type { Entry } from './check.ts';
import { inboundLate } from './inbound-late.ts';
import { legalScreen } from './screen-rules.ts';
import type { ParamNames } from '../message/template.ts';
import { timeNotKept } from './time-not-kept.ts';

type Told<Code extends TimelineProblemCode, Template extends string> = Omit<Entry<Code, Template>, 'code'> & {
  /** Only parameters that the code brings, and the mend that `sayParams` adds. */
  readonly message: ParamNames<Template> extends keyof TimelineProblems[Code] | 'mend' ? Template : never;
};

function told<const Code extends TimelineProblemCode, const Template extends string>(code: Code, entry: Told<Code, Template>): Entry<Code, Template> {
  return { code, ...entry };
}

/** A code that a check tells with more than the schedule knows; the check carries the manual and, where it differs, its own code. */
export const toldByChecks = { 'ball-elsewhere': ballNeeded, 'throw-in-late': inboundLate, 'time-not-kept': timeNotKept } as const;

export const toldByTimeline = {
  'bodies-overlap': told('bodies-overlap', {
    severity: 'warning',
    needs: 'way',
    source: 'what can happen on a floor',
    message: '{who} and {other} run into each other: at their closest they are {gap} m apart. Give one of them another way, or send him later.',
    manual: { title: 'Two players run into each other', why: 'A straight way, a way round on either side and a short delay were tried, and none leaves both enough room. Partners of a screen or a hand-off may touch.', wrong: 'from 5-out\n1 dribbles to right slot\n5 cuts to right elbow\n4 cuts to right elbow\nlook 1: three', right: 'from 5-out\n1 dribbles to right slot\n5 cuts to left elbow\n4 cuts to right elbow\nlook 1: three' },
  }),
  'spot-taken': told('spot-taken', {
    severity: 'warning',
    needs: 'way',
    source: commonPractice(),
    message: '{who} is sent to the spot where {other} stands, and stops beside him. Send one of them elsewhere.',
    manual: {
      title: 'Two on one spot',
      why: 'One defender can then guard two men. The later one is shown a body away.',
      wrong: '1 dribbles to left slot\n2 cuts to right block\n4 cuts to right block\nlook 1: jumper',
      right: '1 dribbles to left slot\n2 cuts to left block\n4 cuts to right block\nlook 1: jumper',
    },
  }),
  'screen-refused': told('screen-refused', {
    related: 'his way',
    severity: 'warning',
    needs: 'way',
    source: 'the words of the notation',
    message: '{who} does not come off {screener}’s screen: his way leads elsewhere. Write “off {screener}” where he is to use it.',
    manual: { title: 'A screen that its user leaves aside', why: 'A screen is set for a man whose next move does not pass the screener. Either he is to come off it, or the screen is not needed.', wrong: 'from horns\n4 clears to right short corner\n5 screens for 3 at left wing\n3 cuts to right elbow\nlook 3: jumper', right: 'from horns\n4 clears to right short corner\n5 screens for 3 at left wing\n3 cuts off 5 to left elbow\nlook 3: jumper' },
  }),
  'screen-unused': told('screen-unused', {
    severity: 'warning',
    needs: 'way',
    source: commonPractice(),
    stillToCome: 'below',
    message: 'Nobody uses {who}’s screen. Let its man cut or drive off it, or take it out.',
    manual: {
      title: 'A screen nobody uses',
      why: 'A screen costs time, and a screener who stands for nobody takes his defender to the ball.',
      wrong: '1 dribbles to left slot\n5 screens up for 3\nlook 1: jumper',
      right: '1 dribbles to left slot\n5 screens up for 3\n3 cuts off 5 to top\nlook 1: jumper',
    },
  }),
  'screen-left-early': told('screen-left-early', {
    related: 'this screen',
    severity: 'warning',
    needs: 'way',
    message: '{who} leaves his screen {seconds:seconds} before {user} has passed: contact then is a moving screen. Let him stay until {user} is by.',
    manual: { title: 'A screen left too early', why: 'A screener who moves when contact occurs is called for an illegal screen. A written time pulls him away before his user has gone by.', wrong: 'from horns\n4 clears to right short corner\n5 ball-screens for 1\n2 seconds later, 1 drives off 5 to left wing\n3 cuts to left block\nas 3 cuts, 5 cuts to right block\nlook 1: three', right: 'from horns\n4 clears to right short corner\n5 ball-screens for 1, then dives to right block\n2 seconds later, 1 drives off 5 to left wing\n3 cuts to left block\nlook 1: three' },
    source: legalScreen,
  }),
  'screen-holds-for-later': told('screen-holds-for-later', {
    severity: 'hint',
    needs: 'way',
    source: 'the words of the notation',
    message: '{who} must hold his screen {seconds:seconds}, until {user} comes off it in “{step}”. If he is to be free before, move the screen to that step.',
    manual: { title: 'A screen held until a later step', why: 'The screen is set in one step and used in a later one; until then the screener stands.', wrong: 'from stack\nstep "Set"\n5 screens for 3, then rolls\n1 dribbles to right wing, 1 dribbles to right slot\n2 and 4 clear to corners\nstep "Go"\n3 cuts off 5 to left wing\nlook 3: three', right: 'from stack\nstep "Set"\n1 dribbles to right wing, 1 dribbles to right slot\n2 and 4 clear to corners\nstep "Go"\n5 screens for 3, then rolls\n3 cuts off 5 to left wing\nlook 3: three' },
  }),
  'off-nobody': told('off-nobody', {
    severity: 'warning',
    needs: 'before',
    source: 'the words of the notation',
    message: '{who} is to come off {screener}, but {screener} is nowhere near his way. Write the screen first, or leave out “off {screener}”.',
    manual: { title: 'Off a screener who is not there', why: '`off 4` means 4’s screen, or 4 himself standing on the way. With neither the cut is drawn straight.', wrong: 'from 5-out\n2 cuts off 3 to right elbow\nlook 2: jumper', right: 'from 5-out\n2 cuts to right elbow\nlook 2: jumper' },
  }),
  'screen-order': told('screen-order', {
    severity: 'warning',
    needs: 'way',
    source: 'what the play itself asks for',
    message: '{who} meets {second} before {first}, the other way round than written. Swap the screeners or their places.',
    manual: { title: 'Screens met in another order than written', why: '`off 5 then 4` says which screen comes first, and the places of the screeners say otherwise.', wrong: 'from 4-out 1-in\n5 screens for 2 at right elbow\n4 screens for 2 at right block\n2 cuts off 4 then 5 to rim\nlook 2: layup', right: 'from 4-out 1-in\n5 screens for 2 at right elbow\n4 screens for 2 at right block\n2 cuts off 5 then 4 to rim\nlook 2: layup' },
  }),
  'pass-waits': told('pass-waits', {
    related: 'what he waits for',
    severity: 'warning',
    needs: 'before',
    source: commonPractice('the rule set’s closely-guarded count; two seconds at rest are common practice, no source'),
    message: '{who} has to wait {seconds:seconds} with the ball until {to} is there; more than {limit:seconds} is too long. {mend}',
    manual: { title: 'A passer who has to wait', why: 'Ball and cutter meet at the end of the cut. A passer who stands longer than the closely-guarded count, or two seconds at rest, is trapped or called; while he keeps his dribble the count is the longer one.', wrong: 'from 5-out\n2 holds for 4 seconds, then cuts to rim\n1 passes to 2\nlook 2: layup', right: 'from 5-out\n2 cuts to rim\n1 passes to 2\nlook 2: layup' },
  }),
  'pin-late': told('pin-late', {
    severity: 'warning',
    needs: 'before',
    source: 'the words of the notation',
    message: 'The look for {who} is pinned to a moment that is {seconds:seconds} past when its turn comes. Write it higher up, or take the pin out.',
    manual: { title: 'A look that comes too late for its moment', why: 'Looks are read in the order written. A look “on the roll” that stands below a slower one is reached when the roll is over; the ball then goes to where the man is by then.', wrong: 'from horns\n4 clears to right short corner\n5 ball-screens for 1, then rolls\n1 drives off 5 to left wing, 1 dribbles to left slot, 1 dribbles to right slot\nlook 1: three\nlook 5 on the roll: layup', right: 'from horns\n4 clears to right short corner\n5 ball-screens for 1, then rolls\n1 drives off 5 to left wing\nlook 5 on the roll: layup\nlook 1: three' },
  }),
  'pin-unknown': told('pin-unknown', {
    severity: 'error',
    needs: 'before',
    source: 'the words of the notation',
    message: 'The look for {who} waits for {does}, and that never happens before it. Write that first, or leave it out of the look.',
    manual: { title: 'A look pinned to nothing', why: 'A look `on the roll` or `as he comes off 4` needs that roll, or that screen, on its way through the play.', wrong: 'from horns\n5 clears to left short corner\n1 dribbles to left slot\nlook 4 on the roll: layup', right: 'from horns\n5 clears to left short corner\n4 ball-screens for 1, then rolls\n1 drives off 4 to right elbow\nlook 4 on the roll: layup' },
  }),
  'wait-unknown': told('wait-unknown', {
    related: 'what it stands in',
    severity: 'error',
    needs: 'before',
    source: 'the words of the notation',
    message: '{who} never does that here (“{does}”), so there is nothing to wait for. The wait is left out. Name something that happens before it, or write it as a line of its own.',
    manual: {
      title: 'A wait for something that never happens',
      why: '`as`, `once`, `when` and `until` wait for something another player does on the same way through the play.',
      wrong: '1 dribbles to left slot\nonce 4 rolls, 3 cuts to top\nlook 3: jumper',
      right: '1 dribbles to left slot\n4 clears to right short corner\nonce 4 clears, 3 cuts to top\nlook 3: jumper',
    },
  }),
  'waits-in-circle': told('waits-in-circle', {
    related: 'this line waits too',
    severity: 'error',
    needs: 'before',
    source: 'the words of the notation',
    message: 'These {lines} lines wait for each other, so none can begin. Take one of the waits out.',
    manual: { title: 'Lines that wait for each other', why: 'The first waits for the second and the second for the first. One wait is left out so that the rest can be shown.', wrong: 'from 5-out\nonce 3 cuts, 2 cuts to right block\nonce 2 cuts, 3 cuts to left block\nlook 1: three', right: 'from 5-out\n2 cuts to right block\nonce 2 cuts, 3 cuts to left block\nlook 1: three' },
  }),
  'clock-unknown': told('clock-unknown', {
    severity: 'warning',
    needs: 'play',
    source: 'the words of the notation',
    message: '{who} waits for a time {clock}, and the play does not say what it shows. Add a line such as “call with 22 on the clock”.',
    manual: { title: 'A time on a clock that is not given', why: 'Without `call with` the tool cannot know what the clock shows when the play is called.', wrong: 'at 8 on the clock, 1 drives to rim\nlook 1: layup', right: 'call with 20 on the clock\nat 8 on the clock, 1 drives to rim\nlook 1: layup' },
  }),
  'either-takes-longer': told('either-takes-longer', {
    severity: 'hint',
    needs: 'before',
    source: 'what this tool can show',
    message: '{who} needs {seconds:seconds} more to the other place that is written, and the times shown are those of the first. Write the farther one first if they are to hold for both.',
    manual: {
      title: 'The other of two places takes longer',
      why: 'Of `to left wing or left elbow` the first is shown and timed. Where the other is clearly farther, a team that chooses it is later than the play says.',
      wrong: 'from 1 top, 2 right corner, 3 left wing, 4 right block, 5 left elbow\n1 dribbles to right slot\n5 cuts to left block or left corner\nlook 5: jumper',
      right: 'from 1 top, 2 right corner, 3 left wing, 4 right block, 5 left elbow\n1 dribbles to right slot\n5 cuts to left corner or left block\nlook 5: jumper',
    },
  }),
  'end-never-comes': told('end-never-comes', {
    severity: 'warning',
    needs: 'way',
    source: 'what the play itself asks for',
    message: 'The end that is stated for {who} never comes on this way, so it is shown to the last action. Write what brings it about, or another end.',
    manual: {
      title: 'A stated end that never comes',
      why: '`ends once 2 has the ball over half court` needs somebody to bring it there: a pass to 2, a dribble of his own.',
      wrong: 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\n1 dribbles to backcourt left\nends once 1 has the ball over half court',
      right: 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\n1 dribbles to half court\nends once 1 has the ball over half court',
    },
  }),
  'play-too-long': told('play-too-long', {
    severity: 'warning',
    needs: 'play',
    source: 'what this tool can show',
    message: 'Only the first {steps} steps of this play are shown, all ways through it counted. Cut it into several plays.',
    manual: { title: 'A play with too many steps', why: 'Every way through a play is worked out anew. A play far longer than any team could run would make all others wait.' },
  }),
} as const satisfies { readonly [Code in Exclude<TimelineProblemCode, keyof typeof toldByChecks>]: Entry<Code> };
