// docs/README.md: the index, and a first play for somebody who has never programmed. Each snippet is compiled by the test.
import { stripFrames } from '../../language/picture/frames.ts';
import { drawFrame, drawStrip } from '../../language/picture/strip.ts';
import { entries } from '../../language/checks/catalogue.ts';
import { alignmentNames } from '../../language/court/alignments.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import { compileExample, playbackOfExample } from './compile-example.ts';
import { adaptive, boxRound, palette } from './drawing.ts';
import { drawn, type Files } from './files.ts';
import { fenced, page, picture } from './markdown.ts';

const head = 'level u14\n\nplay "First light"\n  from horns';
const open = '\n\n  step "Open"\n    4 ball-screens for 1, then rolls\n    1 drives off 4 to right elbow';
const looks = '\n    look 1: jumper\n    look 4 on the roll: layup';
const clock = '\n  call with 14 on the clock\n  leave 3 seconds after a miss\n  rebound 3, 4, 5 crash, 1, 2 get back';
const counter = '\n\n  step "Slip" instead of "Open" when X4 shows on 1\n    4 slips\n    look 4: lob, layup';

/** The play as it grows, each stage a whole file. */
export const stages = {
  stand: head,
  move: head + open,
  look: head + open + looks,
  clock: head + clock + open + looks,
  counter: `${head}\n  against man${clock}${open}${looks}${counter}`,
};

/** A mistake on purpose, and what it brings. */
export const mistake = { text: `${head}\n\n  step "Open"\n    1 ball-screens for 2\n    2 cuts to top\n    look 2: three`, code: 'screen-with-ball' };

const saidCall = (first: number, all: number): string =>
  first === all ? `call it with ${all} or more on the clock, for every look` : `call it with ${first} or more on the clock for the first look, ${all} or more for all of them`;

export function firstPlayPage(): Files {
  const times = compileExample(stages.clock).plays[0]!.timeline.times;
  const said = compileExample(mistake.text).findings.find(({ code }) => code === mistake.code)?.message ?? '';
  const called = times.firstLook === undefined || times.allLooks === undefined ? '' : saidCall(times.firstLook.fromCall, times.allLooks.fromCall);
  const files = (['stand', 'move'] as const).map((stage) => [`${drawn}/first-play/${stage}.svg`, framed(stages[stage])] as const);
  const strip = `${drawn}/first-play/counter.svg`;
  const playback = playbackOfExample(stages.counter);
  const ways = playback.runs.map(({ label }) => label);
  const text = page(
    '# Reference',
    'For coaches. To install it and to open the editor, see the [front page](../README.md).',
    [
      '- [Your first play](#your-first-play), on this page',
      '- [Every kind of line](notation.md), with diagrams',
      '- [Actions](actions.md): what each verb means, and where it ends by itself',
      `- [Spots](spots.md): drawn · [Alignments](alignments.md): ${alignmentNames.length}, drawn`,
      `- [Checks](checks.md): the ${entries.length} things the tool can say, and why`,
      `- [Courts and counts](courts.md): ${ruleSets.map(({ name }) => name).join(', ')}`,
      '- [Assumptions](assumptions.md): how fast legs and ball are taken to be, from where, and what it changes',
      '- [Rules of order](RULES-OF-ORDER.md): who waits for whom',
      '- [Command line](command-line.md) · [Other editors](other-editors.md): Neovim, Emacs, any other',
    ].join('\n'),
    '## Your first play',
    'You need no more than what you say on the bench. Make a file whose name ends in `.play`, open the floor beside it, and type. Nothing has to be in capitals, and how far a line is indented is up to you.',
    '**1. How do you stand?** A play has a name in quotes. `from` says how you stand at the call; [horns](alignments.md#horns) is one of the alignments it knows. The players are 1 to 5, and 1 has the ball unless you say otherwise. Left and right are as you face the basket.',
    fenced(stages.stand),
    picture(files[0]![0], 'Horns: 1 at the top with the ball, 4 and 5 at the elbows, 2 and 3 in the corners', 360),
    '**2. Who does what?** One thought a line: who, what, where. 4 sets a screen for 1 and rolls; 1 drives off it. Where the screen stands, when 1 may go and where the roll ends is worked out for you. `step` opens a part of the play and gives it a name to shout.',
    fenced(stages.move),
    picture(files[1]![0], '4 screens for 1 at the top and rolls to the rim; 1 drives off him to the right elbow', 360),
    '**3. What do you look for?** A `look` is a chance to score, in the order you want them read. What stands behind the colon happens only if that look is taken.',
    fenced(stages.look),
    'Now the play has two ways to end, and the picture can show both: 1 shoots, or he does not and 4 gets the ball at the rim.',
    '**4. When do you call it?** Say what the clock shows, what a miss should leave, and who goes to the boards. The tool answers with the seconds the play needs, and tells you where they do not suffice.',
    fenced(stages.clock),
    called === '' ? undefined : `For this play it says: ${called}. These are figures of a model with legs of an under-14 team, so time your own.`,
    '**5. What if they take it away?** A counter is a step that stands instead of another, when a defender does something. X4 is the defender of 4.',
    fenced(stages.counter),
    picture(strip, 'The counter drawn: 4 slips to the rim and gets the lob', 380),
    `The ways through it are now: ${ways.join('; ')}.`,
    '**6. When something cannot work** the line is underlined and says so. Somebody who has the ball cannot screen:',
    fenced(mistake.text),
    said === '' ? undefined : `> ${said}`,
    'Every such sentence has an entry in [checks](checks.md), with the reason and the same lines right.',
    '**7. Hand it out.** Above the play `Draw` writes it as a picture with one frame a step, `Page` as a page on which it moves, for any phone. The book at the head of the playbook makes one page of all plays: it has a call sheet, which says what still fits with so many seconds left, and its printer gives a sheet for each play, with the call sheet on top:',
    '<img src="pictures/call-sheet.png" alt="The call sheet: under each section of the book its plays, with the seconds each needs on the clock, and its looks in order" width="480">',
    'Last come **each player’s own jobs**, strips to be cut out: where he starts, what he does in each step and each counter and when, his looks, what comes after the shot. Of five plays and more each player has sheets of his own, which are printed when **Print the players’ sheets too** is ticked, beside the floor; of fewer it is ticked already. On the screen a click on a player, or on his number beside the floor, lists the same, and each job leads to its moment (where they lie further down, as on a phone, a button leads to them; on the keyboard `J` goes from player to player); on the command line it is `setwright jobs` ([command line](command-line.md#jobs)).',
    '<img src="pictures/jobs.png" alt="Lighthouse for the players: five strips, each with one player’s lines on the floor and his jobs, with their seconds" width="480">',
    '**8. What did your assistant change?** `setwright compare` tells it of two versions of a playbook: which plays, which lines, what they cost in seconds, and what is wrong since ([command line](command-line.md#compare)).',
    'From here: the [actions](actions.md) are the words you will look for most, and the folder [examples](../examples) is a whole club’s playbook.',
  );
  return [...files, [strip, adaptive(drawStrip(playback, playback.runs.at(-1)!.id, { theme: palette, key: true }))], ['README.md', text]];
}

function framed(text: string): string {
  const playback = playbackOfExample(`${text}\n    ends with no shot`);
  const frame = stripFrames(playback, 0)[0]!;
  return adaptive(drawFrame(playback, { ...frame, title: playback.play.name, labels: [] }, palette, boxRound(playback.court, frame.bodies.map(({ at }) => at))));
}
