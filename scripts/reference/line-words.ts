// What each kind of line is for, in a coach's words, with examples that are compiled by the test. Keyed by the rule of the grammar.

/** What stands round an example before it is compiled: `whole` stands alone. */
export type Around = 'whole' | 'file' | 'play' | 'step';

export interface Words {
  readonly title: string;
  readonly says: string;
  readonly example: string;
  readonly around: Around;
  /** Lines above the example that it needs and that are not shown. */
  readonly above?: string;
  /** Lines below it. */
  readonly below?: string;
}

export interface Chapter {
  readonly title: string;
  readonly says: string;
  readonly rules: readonly string[];
}

/** In the order a coach meets them. A rule of the grammar that stands in no chapter is reported by the test. */
export const chapters: readonly Chapter[] = [
  { title: 'A play and its head', says: 'A play begins with its name. The lines under it say how everybody stands, what the clock shows and what is asked of the set. Each of them can be left out.', rules: ['PlayHead', 'From', 'BallWith', 'Against', 'Tags', 'Situation', 'AlreadySet'] },
  { title: 'The clock', says: 'What the rules count (three, five, eight or ten seconds, the shot clock) is always checked. What you ask of the clock yourself is checked where you write it.', rules: ['Call', 'ShotWindow', 'Leave', 'ClockAt', 'InboundWithin'] },
  { title: 'Steps', says: 'A step is what a team does before it looks up again. Steps follow each other as they are written; a counter says what it stands instead of, or what it comes after.', rules: ['StepHead'] },
  { title: 'What the players do', says: 'One line says who does what, and where. Lines of a step run side by side; the links of one line run one after the other.', rules: ['Statement'] },
  { title: 'Looks and endings', says: 'A look is a chance to score. What stands behind the colon happens only if the look is taken; what happens either way is a line of the step.', rules: ['Look', 'Ends', 'Rebound'] },
  { title: 'Points, demands, exceptions', says: 'These belong to the step they stand in. Above the first step they belong to the whole play.', rules: ['Note', 'Demand', 'Allow'] },
  { title: 'The file', says: 'These lines stand above the first play and hold for all plays of the file. `level`, `rules` and `spot` may also stand in a play and hold for it alone.', rules: ['Notation', 'Level', 'Rules', 'Use', 'OwnSpot'] },
  { title: 'Alignments, rosters, books', says: 'Blocks beside the plays.', rules: ['AlignmentHead', 'Placing', 'RosterHead', 'Entry', 'BookHead', 'Section'] },
];

const screenAndCut = 'from horns\n4 ball-screens for 1\n1 drives off 4 to right elbow';

export const lineWords: Readonly<Record<string, Words>> = {
  PlayHead: {
    title: 'play', around: 'whole',
    says: 'Opens a play. `mirrors` makes it the same play with left and right swapped; `continues` takes another play as far as one of its steps and goes on from there.',
    example: 'play "First light"\n  from horns\n  step "Open"\n    4 ball-screens for 1, then rolls\n    1 drives off 4 to right elbow\n    look 1: jumper\n\nplay "First light left" mirrors "First light"',
  },
  From: {
    title: 'from', around: 'play',
    says: 'Where everybody stands at the call: an alignment by its name, with changes behind commas, or each man’s place. Without it they stand 5-out. The numbers of each place are in [alignments](alignments.md).',
    example: 'from horns, 2 and 3 swapped, 4 at left block',
  },
  BallWith: { title: 'ball with', around: 'play', says: 'Who has the ball as the play begins. Without it 1 has it. It may also stand in the `from` line behind a comma.', example: 'ball with 2\n2 dribbles to right slot\nlook 2: jumper', below: '' },
  Against: { title: 'against', around: 'play', says: 'The defence that is drawn and that the checks have in mind: `man`, or a zone by its form; `press` for one that begins in the backcourt.', example: 'against man' },
  Tags: { title: 'tags', around: 'play', says: 'Words to find the play by, one or more behind commas; several lines count together.', example: 'tags last-shot, man' },
  Situation: { title: 'situation', around: 'play', says: 'What the game is like when the play is called, for sorting and for the bench; several lines count together.', example: 'situation sideline throw-in, after a time-out, down 1' },
  AlreadySet: { title: 'already set', around: 'play', says: 'Everybody is in his place at the call, so that no time is counted for getting there.', example: 'already set' },
  Call: { title: 'call with', around: 'play', says: 'What the period clock shows when the play is called. With two numbers the picture begins at the higher one and the checks look at both.', example: 'call with 22 to 26 on the clock, shot clock 24' },
  ShotWindow: {
    title: 'shot', around: 'play',
    says: 'The window the shot has to go in. `within` counts from the first action (`of the start`) or from the call, and holds for every look; the others name the clock.',
    example: 'call with 20 on the clock\nshot within 16 seconds of the start',
  },
  Leave: { title: 'leave', around: 'play', says: 'What a miss has to leave on the clock for the rebound and the put-back.', example: 'call with 20 on the clock\nleave 4 seconds after a miss' },
  ClockAt: { title: 'clock at', around: 'play', says: 'What the clock shows as the play begins, where nobody calls it, as on a throw-in; the shot clock stands behind a comma.', example: 'clock at 8 seconds, shot clock 7' },
  InboundWithin: { title: 'inbound within', around: 'play', says: 'How soon the thrower has to let go. Five seconds are counted anyhow, from the hand-over to the release.', example: 'from 1 at right wing, 2 at left slot, 4 at left elbow, 5 at right block\n3 inbounds from the left sideline\ninbound within 4 seconds\n2 cuts to top\n3 inbounds to 2\nlook 2: jumper', below: '' },
  StepHead: {
    title: 'step', around: 'play',
    says: 'Opens a step. Written plainly it follows the step above. `after` names another one, `instead of` makes it a counter, and `when` says what the defence does to bring it about: a sentence about a defender, who then does it, or a remark in quotes that is only shown; what names no defender by his number is read as such a remark, and told. A counter keeps the lines of the step it stands instead of, for the men it does not name itself; its looks are its own. Who first does something with the ball in it (`4 keeps it`) has been given it as in that step. A line that stands in both, word for word, is one and the same. `again from "Open" with 3 as 1` plays on from that step once more, 3 doing what 1 did; `repeats "Open"` runs that one step again as it is.',
    example: 'step "Open"\n  1 dribbles to left slot\n  look 1: jumper\nstep "Go behind" instead of "Open" when X2 denies 2\n  2 back-cuts\n  look 2: bounce-pass, layup',
    below: '',
  },
  Statement: {
    title: 'Who does what', around: 'step', above: 'from horns',
    says: 'Who, then what. A comma, `then` or `and` puts the next link behind it. A wait stands first with a comma behind it, or last without. What can be worked out is not written: where a screen stands, how long a cut takes, when a pass leaves so that it meets the cutter.',
    example: '4 ball-screens for 1, then rolls\n1 drives off 4 to right elbow\nas 4 rolls, 5 pops',
  },
  Look: {
    title: 'look', around: 'step', above: screenAndCut,
    says: 'A chance to score for this man, in the order you want them read. If he lacks the ball, whoever has it passes to him. Behind the colon stand the pass, his way and the shot; a name in quotes is what you shout. `on the roll` and the like tie it to a move; `when X2 helps` is its name, for whether he does is seen in the game. Behind a comma the next look of the line begins.',
    example: 'look 1 "pull-up": jumper\nlook 4 "inside": lob, layup\nlook 2 or 3: three', below: '',
  },
  Ends: { title: 'ends', around: 'step', above: 'from horns\n1 dribbles to left wing', says: 'How the play ends without a shot of its own: once something has happened, or simply without one.', example: 'ends with no shot', below: '' },
  Rebound: { title: 'rebound', around: 'play', says: 'Who goes to the boards and who gets back. The verb ends each list. It may stand for the play, for a step, or behind a look with `on a miss`.', example: 'rebound 2, 4, 5 crash, 1, 3 get back' },
  Note: { title: 'note', around: 'play', says: 'A coaching point, with a number for one player.', example: 'note 3 "come off his hip, not his shadow"' },
  Demand: { title: 'must', around: 'play', says: 'What every way through the play has to fulfil.', example: 'must have no screens' },
  Allow: {
    title: 'allow', around: 'step', above: 'from horns',
    says: 'Silences one check here, by its code, and says why. One that silences nothing is reported itself, so that it cannot hide a later mistake. All codes are in [checks](checks.md).',
    example: 'allow screen-unused "4 only pretends to screen"\n4 screens down for 2\n1 dribbles to left wing',
  },
  Notation: { title: 'notation', around: 'file', says: 'The edition of these words the file is written in, so that later ones can still read it.', example: 'notation 1' },
  Level: { title: 'level', around: 'file', says: 'Whose legs the play is for. The figures, and which it is without the line, are in [assumptions](assumptions.md).', example: 'level u14' },
  Rules: { title: 'rules', around: 'file', says: 'Which court and which counts. `also` names further rule sets. What they differ in, and which it is without the line, is in [courts](courts.md).', example: 'rules fiba, also nfhs' },
  Use: { title: 'use', around: 'whole', says: 'Makes the spots, alignments and plays of another file known here.', example: 'use "alignments.play"\n\nplay "Long way"\n  from "Wide box"\n  1 dribbles to left slot\n  look 1: jumper' },
  OwnSpot: { title: 'spot', around: 'file', says: 'A spot of your own. Its name stands in quotes wherever it is used, so that a slip of the pen is never taken for one.', example: 'spot "pocket" is 3 ft inside right elbow' },
  AlignmentHead: { title: 'alignment', around: 'whole', says: 'Opens an alignment of your own; its lines say where each man stands.', example: 'alignment "Wide box"\n  1 top\n  2 and 3 corners\n  4 at right elbow\n  5 at left elbow' },
  Placing: { title: 'A man’s place', around: 'whole', says: 'In an alignment: who stands where. With a plural each man takes the one on his side.', example: 'alignment "Four low"\n  1 top\n  2 and 3 corners\n  4 and 5 blocks' },
  RosterHead: { title: 'roster', around: 'whole', says: 'Opens the list of your players. First names or nicknames are enough, and the safest.', example: 'roster "Under 14"\n  4 "Mia"\n  7 "Bo", fast' },
  Entry: { title: 'A player of the roster', around: 'whole', says: 'The number on the shirt and the name, with the player’s own pace where you have measured it. The names of 1 to 5 stand beside their jobs in the plays of this file, of files that `use` it, and of files without a roster whose plays a book of this file lists. Their paces count in the first two: what a play takes depends on no book; `fast` and `slow` are one standard deviation of the level.', example: 'roster\n  4 "Mia", 20 m in 3.6 s\n  7 "Bo", pace 6 m/s\n  11 "Ida", slow' },
  BookHead: { title: 'book', around: 'whole', says: 'Opens a playbook: it puts plays in order for printing and for the bench.', example: 'book "Season"\n  section "Last shots": "First light"\n\nplay "First light"\n  1 dribbles to left slot\n  look 1: jumper' },
  Section: { title: 'section', around: 'whole', says: 'A chapter of the book with its plays, in order, all in its line.', example: 'book\n  section "Last shots": "First light"\n\nplay "First light"\n  1 dribbles to left slot\n  look 1: jumper' },
};

/** Parts of actions, drawn in the page of actions. */
export const actionParts: Readonly<Record<string, string>> = { MovePart: 'more of the way', DribblePart: 'more of the dribble', PassPart: 'more of the pass', ScreenPart: 'more of the screen', HoldPart: 'how long', ThrowInPart: 'more of the throw-in', DefendPart: 'more of the defence' };

/** Parts that several lines share: each has a diagram of its own and is a box in the others. */
export const partWords: Readonly<Record<string, Words>> = {
  Clause: { title: 'clause', around: 'step', says: 'Who does one thing, and what it waits for.', above: 'from horns\n1 passes to 3', example: '2 cuts to rim once 3 catches' },
  Link: { title: 'next link', around: 'step', says: 'What follows on the same line. After a comma a number is the new man; `and` or `then` with a verb keeps the man before. Another man’s way behind `and` begins together with the one before it, behind a comma or `then` once that is done.', above: 'from horns', example: '1 passes to 3 and cuts to left block, 4 pops' },
  LedClause: { title: 'clause with its wait', around: 'step', says: 'Behind `and` or `then` what comes next may have a wait of its own before it.', above: 'from horns', example: '1 passes to 3, and as he catches it, 5 cuts to rim' },
  Subjects: { title: 'who', around: 'step', says: 'One man or several. 1 to 5 have the ball, X1 to X5 are their defenders.', above: 'from horns\n1 dribbles to left wing', example: '4 and 5 cut to blocks\neveryone else holds' },
  Trigger: { title: 'wait', around: 'step', says: '`as` means as the other starts; `once` and `when` mean when he is done, plus a reaction; `until` ends what goes on. `2 seconds later` adds to the start, `half a second after 3 goes` counts from what is told. What a man does `while` another acts is told with it, unless another line tells it.', above: 'from horns', example: '1 dribbles to left wing\nonce 1 reaches left wing, 4 rolls\n2 drifts 1 second later\nhalf a second after 4 rolls, 5 pops' },
  ClauseTrigger: { title: 'wait of an action', around: 'step', says: 'A wait, or a moment that a line above tells: `with the drive`, `after the hand-off`, `at the same time`.', above: 'from 5-out', example: '1 drives to right elbow\n3 lifts to left wing with the drive' },
  Event: { title: 'event', around: 'step', says: 'What a wait or an ending waits for: something a player does, or where the ball is.', above: 'from horns', example: '1 passes to 3\nwhen 3 catches, 5 cuts to rim' },
  Condition: {
    title: 'condition', around: 'play', says: 'What brings a counter about: what a defender does, a remark in quotes, or the seconds that are left.',
    example: 'step "Open"\n  1 dribbles to left slot\n  look 1: jumper\nstep "Round" instead of "Open" when "they are back already"\n  1 dribbles to top\n  look 1: three', below: '',
  },
  Origin: {
    title: 'its place among the steps', around: 'play', says: 'Where a step hangs. Without it the step follows the one above.',
    above: 'from 5-out', example: 'step "Swing"\n  1 passes to 2\n  1 screens for 3\n  3 cuts off 1 to top\n  1 pops to left wing\n  2 passes to 3\n  look 3: three\nstep "Swing again" again from "Swing" with 3 as 1, 1 as 3', below: '',
  },
  LookPin: { title: 'moment of a look', around: 'step', says: 'Ties a look to a move or to a time. Without it the look comes as soon as the ball and the man are there.', above: 'from horns\n4 ball-screens for 1, then rolls\n1 drives off 4 to right elbow', example: 'look 4 on the roll: lob, layup', below: '' },
  TailItem: { title: 'finish', around: 'step', says: 'What happens if the look is taken: a kind of pass, a way, a shot. If nothing is said he just shoots.', above: 'from horns\n1 passes to 3', example: 'look 3: drives to rim, layup', below: '' },
  AlignmentRef: { title: 'alignment', around: 'play', says: 'An alignment by its name, or one of your own in quotes; a listed stack names its men.', example: 'from stack on right lane line: 2, 3, 4, 5 from the baseline up' },
  FromChange: { title: 'change', around: 'play', says: 'What is different from the alignment named.', example: 'from box, 2 and 3 swapped, 5 at left corner' },
  Spot: { title: 'place', around: 'step', says: 'A spot, or a place said from one: between two, beside a man, so many feet above, or metres from the floor under the ring (x to the right, y towards half court).', above: 'from horns', example: '1 dribbles to 2 ft above left wing\n2 cuts to right short corner\n5 clears to (-4.2, 3) m' },
  Place: { title: 'spot', around: 'step', says: 'A spot of the court with its side. Left and right are as the offence faces the basket. The side may hang on the ball or on the man (`ball-side`, `near`) and is worked out when the line starts. All spots are drawn in [spots](spots.md).', above: 'from stack', example: '1 dribbles to left wing\n4 cuts to ball-side elbow\n3 clears to weak-side corner' },
  To: { title: 'to a place', around: 'step', says: 'Where the way ends. Joined by `or` they are a choice, of which the first is shown; joined by `and` each man takes one.', above: 'from horns\n1 dribbles to top', example: '2 and 3 cut to left slot and right slot' },
  Off: { title: 'off a screener', around: 'step', says: 'Round whom. He leaves so as to reach the screener’s shoulder a beat after the screen is set, never before.', above: 'from stack\n1 dribbles to left wing\n4 screens down for 2', example: '2 cuts off 4 to top' },
  At: { title: 'at a place', around: 'step', says: 'Where it is done: a pass caught, a screen set, a post taken.', above: 'from horns', example: '1 passes to 3 at left wing' },
};

const opening = 'play "Example"';
const standIn = '1 dribbles to left slot\nlook 1: jumper';

/** The file in which an example is compiled. */
export function fileOf({ example, around, above = '', below }: Words): string {
  switch (around) {
    case 'whole': return example;
    case 'file': return [example, opening, standIn].join('\n');
    case 'play': return [opening, above, example, below ?? standIn].filter((lines) => lines !== '').join('\n');
    case 'step': return [opening, above, example, below ?? 'ends with no shot'].filter((lines) => lines !== '').join('\n');
  }
}
