// What each verb means to a coach, with a line that shows it. Keyed by the verb's base form as the grammar's table of verbs has it; the test
// finds a verb without words and an example that is not clean. Meanings are common usage, no source; where a way ends by itself is not
// written here but worked out from the model (actions-page.ts).
import type { VerbClass } from '../../language/grammar/verbs.ts';

export interface VerbWords {
  readonly says: string;
  /** The line or lines shown, and drawn with what stands above and below. */
  readonly example: string;
  readonly above?: string;
  readonly below?: string;
  /** The man for whom the verb alone is tried, to say where it ends by itself. */
  readonly alone?: '1' | '3' | '5';
}

export type ActionClass = Exclude<VerbClass, 'event'>;

export interface Group {
  readonly title: string;
  readonly says: string;
  readonly classes: readonly ActionClass[];
}

export const groups: readonly Group[] = [
  { title: 'Moves without the ball', says: 'Say where with `to`, past what with `via`, round whom with `off`. Without a place he goes where this move usually ends.', classes: ['move', 'seal', 'rebound'] },
  { title: 'With the ball', says: 'A drive that goes on is one dribble; once he has picked the ball up he cannot dribble again.', classes: ['dribble'] },
  { title: 'Passes and hand-offs', says: 'To a man at rest the pass goes at once. To a man with a move still to do it goes so that ball and man meet where his move ends; `early` is the first place they can meet.', classes: ['pass', 'hand-off'] },
  { title: 'Screens', says: 'Where a screen stands follows from what its user does next; `at` and `on` say otherwise. The user leaves so as to reach the screener’s shoulder a beat after the screen is set. The screener is free when his last user has passed.', classes: ['screen', 'close'] },
  { title: 'Shots', says: 'Mostly written behind a look’s colon (`look 3: jumper`). As a line of its own a shot ends the play.', classes: ['shot'] },
  { title: 'Standing, waiting', says: 'Whoever is named in no line stays where he is; these say so, or for how long.', classes: ['hold'] },
  { title: 'Throw-ins', says: 'Time 0 is when the thrower gets the ball; five seconds are counted from there to the release. The game clock starts when somebody on the court touches it.', classes: ['throw-in', 'role'] },
  { title: 'Defence', says: '`against man` guards by itself; such a line says what a defender does instead. In a counter the same sentence stands behind `when`.', classes: ['defend'] },
];

const five = 'from 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 left elbow';
const low = 'from 1 top, 2 right wing, 3 left wing, 4 right block, 5 left block';
const wide = 'from 5-out';
const sideline = 'from 1 at right wing, 2 at left slot, 4 at left elbow, 5 at right block';

const move: Record<string, VerbWords> = {
  cut: { says: 'Runs hard without the ball, ready to catch.', above: five, example: '3 cuts to rim', alone: '3' },
  'basket-cut': { says: 'Cuts straight to the rim, mostly after a pass.', above: wide, example: '1 passes to 3\n1 basket-cuts', alone: '3' },
  'back-cut': { says: 'Goes behind a defender who plays between him and the ball.', above: wide, example: '2 back-cuts', alone: '3' },
  'v-cut': { says: 'Takes his man towards the rim and comes back to catch.', above: five, example: '3 v-cuts', alone: '3' },
  'l-cut': { says: 'Comes up along the lane, then out to the wing at a right angle.', above: low, example: '5 l-cuts to left wing', alone: '5', below: '3 clears to left corner\nends with no shot' },
  'shallow-cut': { says: 'Cuts across the top, below the ball, to the place there that is open.', above: wide, example: '3 shallow-cuts to right slot', alone: '3' },
  'straight-cut': { says: 'Cuts straight on, round nobody; off a screen he comes straight up, to the next spot of the arc.', above: wide, example: '5 straight-cuts to left block', alone: '5' },
  curl: { says: 'Goes tightly round a screener and in.', above: 'from 1 right slot, 2 right corner, 3 left block, 4 right block, 5 left elbow\n5 screens down for 3', example: '3 curls off 5 to nail', alone: '3' },
  fade: { says: 'Drifts away from the ball, behind a screen or as the defence sinks.', above: five, example: '3 fades to left corner', alone: '3' },
  flash: { says: 'Breaks quickly towards the ball into open floor.', above: low, example: '5 flashes to nail', alone: '5' },
  roll: { says: 'Turns to the rim after his screen, the ball in sight.', above: five, example: '4 ball-screens for 1, then rolls\n1 drives off 4 to right wing', alone: '5', below: '2 clears to right corner\nends with no shot' },
  pop: { says: 'Steps out behind the arc after his screen.', above: five, example: '4 ball-screens for 1, then pops to top\n1 drives off 4 to right elbow', alone: '5' },
  slip: { says: 'Leaves for the rim instead of setting the screen, or just as it would be used.', above: five, example: '4 slips', alone: '5' },
  dive: { says: 'Goes straight to the rim from where he stands.', above: five, example: '5 dives', alone: '5' },
  'post up': { says: 'Takes a place at the lane with his back to the rim and asks for the ball.', above: five, example: '5 posts up at left block', alone: '5' },
  lift: { says: 'Moves up along the arc, away from the baseline, to its next spot.', above: 'from 1 top, 2 right corner, 3 left corner, 4 right elbow, 5 left elbow', example: '3 lifts to left wing', alone: '3' },
  drift: { says: 'Moves along the arc towards the corner to keep his room.', above: five, example: '3 drifts to left corner', alone: '3' },
  fill: { says: 'Takes a place that has become empty: a man’s with `for`, or the nearest with `the open spot`.', above: wide, example: '1 passes to 2 and cuts to left block\n3 fills for 1', alone: '3' },
  'step out': { says: 'Moves out behind the arc.', above: five, example: '5 steps out to left slot', alone: '5' },
  'step in': { says: 'The thrower comes in from behind the line.', above: `${sideline}\n3 inbounds from the left sideline\n2 cuts to top\n3 inbounds to 2`, example: '3 steps in to left wing' },
  clear: { says: 'Leaves a side or the lane so that others have room.', above: five, example: '3 clears to right corner', alone: '3' },
  space: { says: 'Goes to the nearest open place behind the arc.', above: five, example: '5 spaces', alone: '5' },
  'spot up': { says: 'Finds an open place behind the arc and gets ready to shoot.', above: five, example: '5 spots up', alone: '5' },
  sprint: { says: 'Runs as fast as his legs go.', above: five, example: '3 sprints to right corner' },
  run: { says: 'Runs at the pace of a set.', above: five, example: '3 runs to left corner' },
  jog: { says: 'Goes at an easy pace.', above: five, example: '3 jogs to left corner' },
  walk: { says: 'Walks, so that nobody looks at him.', above: five, example: '3 walks to left corner' },
  move: { says: 'Goes there; nothing more is meant. With the ball `comes`, `goes` and `returns` are dribbles.', above: five, example: '3 moves to left corner' },
  'same cut': { says: 'Makes the cut written last, off the man this line names.', above: `${low}\n1 dribbles to top\n4 and 5 screen up for 2 and 3\n2 curls off 4 to right elbow`, example: '3 makes the same cut off 5 to left elbow' },
  'come off': { says: 'Goes round a screener; with the ball he drives off him.', above: `${low}\n5 screens for 3`, example: '3 comes off 5 to left slot' },
  swap: { says: 'Two men change places.', above: wide, example: '2 and 4 swap' },
};

const seal: Record<string, VerbWords> = {
  seal: { says: 'Turns so that his defender stays behind him, and asks for the ball.', above: low, example: '5 seals X5 at left block' },
};

const rebound: Record<string, VerbWords> = {
  crash: { says: 'Goes to the boards. As a line of a step he goes there and then; for the end of the play write a [`rebound`](notation.md#rebound) line.', above: wide, example: '4 crashes' },
  'get back': { says: 'Runs back to half court, so that a miss is no fast break.', above: wide, example: '1 passes to 2, 1 gets back' },
  'box out': { says: 'Keeps his man away from the rim with his back.', above: low, example: '5 boxes out' },
};

const dribble: Record<string, VerbWords> = {
  dribble: { says: 'Takes the ball somewhere. `dribbles at 2` goes to a team-mate to hand off or to send him away.', above: five, example: '1 dribbles to right slot', alone: '1' },
  drive: { says: 'Attacks the rim or a place on the way to it at speed.', above: five, example: '1 drives to rim', alone: '1', below: 'look 1: layup' },
  'turn the corner': { says: 'Gets past the screen and the man who showed, and goes in.', above: five, example: '4 ball-screens for 1\n1 drives off 4 to right elbow, turns the corner', below: 'look 1: layup' },
  'bring the ball up': { says: 'Dribbles up the floor.', above: 'from 1 at half court, 2 right wing, 3 left wing, 4 right elbow, 5 left elbow', example: '1 brings the ball up to top', alone: '1' },
  'back out': { says: 'Dribbles away from pressure, back towards half court.', above: 'from 1 nail, 2 right wing, 3 left wing, 4 right block, 5 left block', example: '1 backs out to left slot', alone: '1' },
};

const pass: Record<string, VerbWords> = {
  pass: { says: 'The ordinary pass. `1 passes to 2 to 3` is two of them.', above: five, example: '1 passes to 3' },
  'bounce-pass': { says: 'Off the floor, under the hands of a defender.', above: five, example: '1 bounce-passes to 5' },
  'chest-pass': { says: 'With both hands from the chest.', above: five, example: '1 chest-passes to 2' },
  lob: { says: 'High over the defence; slow, so the man must be on his way.', above: five, example: '5 cuts to rim\n1 lobs to 5' },
  skip: { says: 'Over the defence to the far side.', above: 'from 1 left wing, 2 right corner, 3 left corner, 4 right elbow, 5 left elbow', example: '1 skips to 2' },
  throw: { says: 'From over the head; with `a baseball pass` one-handed, over half the floor.', above: 'from 1 at half court, 2 right corner, 3 left wing, 4 right elbow, 5 left elbow', example: '1 throws a baseball pass to 2' },
  tip: { says: 'Touches the ball on without catching it.', above: `${five}\n1 passes to 5`, example: '5 tips to 3' },
  swing: { says: 'Moves the ball on to the other side.', above: `${wide}\n1 passes to 3`, example: '3 swings to 1 to 2' },
  reverse: { says: 'Brings the ball back to the side it came from.', above: `${wide}\n1 passes to 2, 2 passes to 1`, example: '1 reverses to 3' },
  'kick out': { says: 'From inside to a man behind the arc.', above: `${five}\n1 drives to nail`, example: '1 kicks out to 3' },
};

const handOff: Record<string, VerbWords> = {
  'hand off': { says: 'Gives the ball from hand to hand. They meet at the holder’s place; the taker comes even if no line says so.', above: `${five}\n1 dribbles at 3`, example: '1 hands off to 3' },
};

const screen: Record<string, VerbWords> = {
  screen: { says: 'Stands in the way of a defender so that a team-mate gets free. `down`, `up`, `across` and `away` say which way he comes.', above: low, example: '5 screens for 3\n3 cuts off 5 to left slot' },
  'ball-screen': { says: 'Screens for the man with the ball.', above: five, example: '4 ball-screens for 1\n1 drives off 4 to right elbow', below: 'look 1: jumper' },
  'back-screen': { says: 'Screens behind a defender who does not see him; he must leave him room for a step.', above: five, example: '5 back-screens for 3\n3 cuts off 5 to rim' },
  'flare-screen': { says: 'Screens so that his man goes away from the ball.', above: 'from 1 left slot, 2 right slot, 3 left corner, 4 right elbow, 5 left block', example: '4 flare-screens for 2\n2 fades off 4 to right corner' },
  'cross-screen': { says: 'Screens across the lane, from block to block.', above: 'from 1 left wing, 2 right wing, 3 left corner, 4 right block, 5 left block', example: '5 cross-screens for 4\n4 cuts off 5 to left block' },
  'down-screen': { says: 'Comes down towards the baseline and frees a man who comes up.', above: 'from 1 top, 2 right corner, 3 left block, 4 right elbow, 5 left elbow', example: '5 down-screens for 3\n3 cuts off 5 to left wing' },
  'up-screen': { says: 'Comes up from below and frees a man who goes down.', above: 'from 1 right slot, 2 right corner, 3 left slot, 4 right block, 5 left block', example: '5 up-screens for 3\n3 cuts off 5 to rim' },
  'pin-screen': { says: 'Pins the defender low while his man comes out along the arc.', above: 'from 1 top, 2 right corner, 3 left block, 4 right elbow, 5 left elbow', example: '5 pin-screens for 3\n3 cuts off 5 to left wing' },
  're-screen': { says: 'Screens once more for the same man, from the other side.', above: five, example: '4 ball-screens for 1\n1 dribbles off 4 to right slot\n4 re-screens for 1\n1 drives off 4 to nail', below: 'look 1: jumper' },
  'stagger-screen': { says: 'Two screens one behind the other for the same man.', above: 'from 1 right slot, 2 right corner, 3 left corner, 4 left elbow, 5 left mid-post', example: '4 and 5 stagger for 3\n3 cuts off 4 then 5 to top' },
  'double-screen': { says: 'Two screeners shoulder to shoulder.', above: 'from 1 right slot, 2 right corner, 3 left corner, 4 left elbow, 5 left mid-post', example: '4 and 5 double-screen for 3\n3 cuts off the double of 4 and 5 to top' },
};

const close: Record<string, VerbWords> = {
  'close behind': { says: 'Two men shut the gap behind one who has gone between them: `between 4 and 5`, or `through the gate` between the two told of last.', above: 'from 1 left wing, 2 right block, 3 left corner, 4 right elbow, 5 left elbow\n4 and 5 hold\n2 cuts through the gate to top', example: '4 and 5 close behind 2' },
};

const shot: Record<string, VerbWords> = {
  shoot: { says: 'Shoots; the kind stands behind it. Without one it is taken as a jump shot.', above: `${five}\n1 passes to 3`, example: '3 shoots a three', below: '' },
  dunk: { says: 'Puts the ball in from above.', above: `${five}\n5 cuts to rim\n1 lobs to 5`, example: '5 dunks', below: '' },
  'lay up': { says: 'Lays the ball in off two steps.', above: `${five}\n1 drives to rim`, example: '1 lays it up', below: '' },
  'pull up': { says: 'Stops out of the dribble and shoots.', above: `${five}\n4 clears to right corner\n1 drives to right elbow`, example: '1 pulls up', below: '' },
  'tip in': { says: 'Taps the ball in without catching it.', above: `${five}\n5 cuts to rim\n1 lobs to 5`, example: '5 tips in', below: '' },
  hook: { says: 'Shoots over his own shoulder, close to the rim.', above: `${low}\n1 passes to 5`, example: '5 hooks', below: '' },
};

const hold: Record<string, VerbWords> = {
  hold: { says: 'Stays where he is, with the ball or without; `until` ends it.', above: five, example: '3 holds until 1 reaches left slot\n1 dribbles to left slot' },
  wait: { says: 'Does nothing for a while; `for 2 seconds`, or `until`.', above: five, example: '3 waits for 1 second, then cuts to rim' },
  stay: { says: 'Keeps his place.', above: five, example: '1 dribbles to right slot\n5 stays' },
  'keep dribble': { says: 'Keeps the ball bouncing where he stands, so that he may still go.', above: five, example: '1 keeps his dribble\n5 cuts to rim' },
  'pick up': { says: 'Ends his dribble; after it he may only pass or shoot.', above: `${five}\n1 dribbles to left slot`, example: '1 picks up his dribble, 1 passes to 3' },
};

const throwIn: Record<string, VerbWords> = {
  inbound: { says: 'Throws the ball in. A line with `from` says where he stands, one with `to` is the pass itself.', above: sideline, example: '3 inbounds from the left sideline\n2 cuts to top\n3 inbounds to 2' },
};

const role: Record<string, VerbWords> = {
  safety: { says: 'The outlet: he gets the ball when the last look is passed up.', above: `${sideline}\n3 inbounds from the left sideline`, example: '1 is the safety at right wing\n2 cuts to top\n3 inbounds to 2' },
  thrower: { says: 'Who throws the ball in.', above: 'from box', example: '3 is the thrower at the left sideline\n2 cuts to top\n3 inbounds to 2' },
};

const man = `${five}\nagainst man`;
const defend: Record<string, VerbWords> = {
  switch: { says: 'Takes another man; whoever guarded him takes his.', above: `${man}\n4 ball-screens for 1\n1 drives off 4 to right elbow`, example: 'X4 switches to 1' },
  'go under': { says: 'Goes round a screen on the far side of the screener, away from the ball.', above: `${man}\n4 ball-screens for 1\n1 drives off 4 to right elbow`, example: 'X1 goes under 4' },
  'go over': { says: 'Fights over the screen, between it and his man.', above: `${man}\n4 ball-screens for 1\n1 drives off 4 to right elbow`, example: 'X1 goes over 4' },
  'go through': { says: 'Slips through between the screener and the screener’s defender.', above: `${man}\n5 screens for 3\n3 cuts off 5 to left slot`, example: 'X3 goes through' },
  'go behind': { says: 'Goes behind a team-mate and the screen.', above: `${man}\n5 screens for 3\n3 cuts off 5 to left slot`, example: 'X3 goes behind 5' },
  trail: { says: 'Follows his man round the screen. Said of an attacker it means the last man up the floor, who comes behind the ball.', above: `${man}\n5 screens for 3\n3 cuts off 5 to left slot`, example: 'X3 trails 3' },
  help: { says: 'Leaves his man to stop the ball.', above: `${man}\n1 drives to nail`, example: 'X5 helps at rim' },
  deny: { says: 'Stands between his man and the ball.', above: `${man}\n1 dribbles to left slot`, example: 'X3 denies 3' },
  show: { says: 'Steps out in front of the ball for a moment, then goes back to his man.', above: `${man}\n4 ball-screens for 1\n1 drives off 4 to right elbow`, example: 'X4 shows on 1' },
  trap: { says: 'Two men close in on the ball.', above: `${man}\n1 dribbles to left slot`, example: 'X1 and X3 trap 1' },
  drop: { says: 'Sinks towards the rim as the screen is used.', above: `${man}\n4 ball-screens for 1\n1 drives off 4 to right elbow`, example: 'X4 drops' },
  guard: { says: 'Guards this man.', above: `${man}\n1 dribbles to left slot`, example: 'X2 guards 2' },
  recover: { says: 'Runs back to his man.', above: `${man}\n1 drives to nail\nX5 helps at rim`, example: 'X5 recovers to 5' },
  rotate: { says: 'Takes over from a team-mate who had to help.', above: `${man}\n1 drives to nail`, example: 'X3 rotates to 5' },
  front: { says: 'Stands before his man in the post, on the side of the ball.', above: `${low}\nagainst man\n1 dribbles to left slot`, example: 'X5 fronts 5' },
  'close out': { says: 'Runs at a man who is about to catch.', above: `${man}\n1 passes to 3`, example: 'X3 closes out on 3' },
  sag: { says: 'Drops off his man towards the lane.', above: `${man}\n1 dribbles to left slot`, example: 'X2 sags' },
  jump: { says: 'Steps suddenly into a pass or a dribble.', above: `${man}\n1 dribbles to left slot`, example: 'X2 jumps to 1' },
  'stay home': { says: 'Stays with his man and does not help.', above: `${man}\n1 drives to nail`, example: 'X2 stays home' },
};

export const verbWords: Readonly<Record<ActionClass, Readonly<Record<string, VerbWords>>>> = {
  move, seal, rebound, dribble, pass, 'hand-off': handOff, screen, close, shot, hold, 'throw-in': throwIn, role, defend,
};

/** The play an example is compiled and drawn from. */
export function playOf({ above = wide, example, below = 'ends with no shot' }: VerbWords): string {
  return ['play "Example"', above, example, below].filter((lines) => lines !== '').join('\n');
}

/** Where the verb alone is tried. */
export const triedFrom = { start: 'from 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 left elbow', inside: 'from 1 top, 2 right wing, 3 right corner, 4 right elbow, 5 left elbow', places: { 1: 'the top, with the ball', 3: 'left wing', 5: 'left elbow' } } as const;
