// What reading notes as wrong, in a coach's words. Complete by type, as `told-by-timeline.ts` is.
import type { ReadingProblemCode, ReadingProblems } from '../play/problem-codes.ts';
import type { Entry } from './check.ts';
import type { ParamNames } from '../message/template.ts';

type Told<Code extends ReadingProblemCode, Template extends string> = Omit<Entry<Code, Template>, 'code' | 'severity' | 'source'> & {
  readonly severity?: Entry['severity'];
  readonly source?: Entry['source'];
  /** Only parameters that the code brings; `near` is the nearest known name, if there is one, `kinds` the `kind` in words. */
  readonly message: ParamNames<Template> extends keyof ReadingProblems[Code] | 'near' | 'kinds' ? Template : never;
};

function told<const Code extends ReadingProblemCode, const Template extends string>(code: Code, entry: Told<Code, Template>): Entry<Code, Template> {
  return { code, severity: 'error', source: 'the words of the notation', ...entry };
}

export const toldByReading = {
  'unknown-spot': told('unknown-spot', {
    needs: 'names',
    message: 'There is no spot called “{name}”{near}.',
    manual: {
      title: 'A spot nobody has named',
      why: 'A name in quotes is a spot of your own, and it has to be said once where it is. The court’s own spots stand without quotes.',
      wrong: '1 dribbles to "pocket"\nlook 1: jumper',
      right: 'spot "pocket" is 3 ft inside right elbow\n1 dribbles to "pocket"\nlook 1: jumper',
    },
  }),
  'unknown-alignment': told('unknown-alignment', {
    needs: 'names',
    message: 'There is no alignment called “{name}”{near}.',
    manual: { title: 'An alignment nobody has named', why: 'A name in quotes is an alignment of your own; box, horns, stack and the others that are known stand without quotes.', wrong: 'from "Wide box"\n1 dribbles to left slot\nlook 1: jumper', right: 'from box\n1 dribbles to left slot\nlook 1: jumper' },
  }),
  'unknown-step': told('unknown-step', {
    needs: 'names',
    message: 'There is no step called “{name}”{near}, so “{step}” and what follows it are left out.',
    manual: { title: 'A step nobody has named', why: '`after`, `instead of`, `mirrors` and `repeats` name another step of the play.', wrong: 'step "Zip"\n1 dribbles to left slot\nlook 1: jumper\nstep "Slip" after "Zap"\n1 drives to rim\nlook 1: layup', right: 'step "Zip"\n1 dribbles to left slot\nlook 1: jumper\nstep "Slip" after "Zip"\n1 drives to rim\nlook 1: layup' },
  }),
  'unknown-play': told('unknown-play', {
    needs: 'names',
    message: 'There is no play called “{name}” in this file or a file it uses{near}.',
    manual: { title: 'A play nobody has named', why: '`mirrors`, `continues` and the sections of a book name another play of this file, or of a file named in a `use` line.', wrong: 'play "Ferry"\n1 passes to 2\nlook 2: jumper\nplay "Ferry left" mirrors "Fery"', right: 'play "Ferry"\n1 passes to 2\nlook 2: jumper\nplay "Ferry left" mirrors "Ferry"' },
  }),
  'unknown-file': told('unknown-file', {
    needs: 'line',
    message: 'There is no file “{name}”. Write its name as seen from this file.',
    manual: { beside: { name: 'sets.play', text: 'alignment "Wide box"\n1 top\n2 and 3 corners\n4 and 5 elbows\n' }, title: 'A file that is not there', why: '`use "alignments.play"` makes the spots, alignments and plays of another file known here.', wrong: 'use "setz.play"\nplay "Ferry"\n1 passes to 2\nlook 2: three', right: 'use "sets.play"\nplay "Ferry"\n1 passes to 2\nlook 2: three' },
  }),
  'duplicate-name': told('duplicate-name', {
    related: 'the other of this name',
    severity: 'warning',
    needs: 'steps',
    message: 'There are two {kinds} called “{name}”. Give one of them another name.',
    manual: { title: 'Two with one name', why: 'A line that names it cannot tell which one is meant.', wrong: 'step "Zip"\n1 dribbles to left slot\nstep "Zip"\n1 drives to rim\nlook 1: layup', right: 'step "Zip"\n1 dribbles to left slot\nstep "Finish"\n1 drives to rim\nlook 1: layup' },
  }),
  'step-loop': told('step-loop', {
    needs: 'steps',
    message: '“{name}” comes after itself, by way of the steps between. Let one of them follow another step.',
    manual: { title: 'Steps in a circle', why: 'A play is a tree: each step has one step before it, and none can come before itself.', wrong: 'step "Zip" after "Slip"\n1 dribbles to left slot\nstep "Slip" after "Zip"\n1 drives to rim\nlook 1: layup', right: 'step "Zip"\n1 dribbles to left slot\nstep "Slip" after "Zip"\n1 drives to rim\nlook 1: layup' },
  }),
  'copy-loop': told('copy-loop', {
    needs: 'names',
    message: '“{name}” is a copy of itself. Let it mirror or continue another one.',
    manual: { title: 'A copy of itself', why: 'What mirrors or continues another has to end at something that is written out.', wrong: 'play "Ferry" mirrors "Ferry left"\nplay "Ferry left" mirrors "Ferry"', right: 'play "Ferry"\n1 passes to 2\nlook 2: jumper\nplay "Ferry left" mirrors "Ferry"' },
  }),
  'use-circle': told('use-circle', {
    severity: 'hint',
    needs: 'line',
    message: '“{name}” uses this file in turn. It works, but one of the two lines is not needed.',
    manual: { beside: { name: 'sets.play', text: 'use "example.play"\nalignment "Wide box"\n1 top\n2 and 3 corners\n4 and 5 elbows\n' }, title: 'Two files that use each other', why: 'Names are looked up here first, then in the files used; a circle does no harm, but it is seldom meant.', wrong: 'use "sets.play"\nplay "Ferry"\n1 passes to 2\nlook 2: three', right: 'play "Ferry"\n1 passes to 2\nlook 2: three' },
  }),
  'two-ways-on': told('two-ways-on', {
    related: 'the other way on',
    severity: 'warning',
    needs: 'steps',
    message: '“{name}” and “{other}” both follow “{after}”, and nothing says which is played. Add “when …” to one of them.',
    manual: { title: 'Two ways on', why: 'Where a play parts, the players need to know what to look at: a sentence about the defence, or a remark in quotes.', wrong: 'step "Zip"\n1 dribbles to left slot\nstep "Drive" after "Zip"\n1 drives to rim\nlook 1: layup\nstep "Kick" after "Zip"\n1 passes to 2\nlook 2: three', right: 'step "Zip"\n1 dribbles to left slot\nstep "Drive" after "Zip"\n1 drives to rim\nlook 1: layup\nstep "Kick" after "Zip" when X2 helps at rim\n1 passes to 2\nlook 2: three' },
  }),
  'spot-not-fixed': told('spot-not-fixed', {
    needs: 'line',
    message: '“{name}” hangs on where a player stands, so it is no fixed spot. Say it from a spot of the court.',
    manual: { title: 'A spot that moves', why: 'A spot of your own is a place on the floor; `beside 5` is said in the line where it is needed.', wrong: 'spot "pocket" is beside 5\n1 dribbles to left slot\nlook 1: jumper', right: 'spot "pocket" is 3 ft inside right elbow\n1 dribbles to "pocket"\nlook 1: jumper' },
  }),
  'spot-without-side': told('spot-without-side', {
    needs: 'line',
    message: 'The {name} is in the middle and has no {side}. Leave out “{side}”, or name another spot.',
    manual: { title: 'A side of a spot in the middle', why: 'Nail and top lie on the middle line of the floor; beside them are the elbows and the slots.', wrong: '1 dribbles to left top\nlook 1: three', right: '1 dribbles to left slot\nlook 1: three' },
  }),
  'who-is-meant': told('who-is-meant', {
    needs: 'before',
    message: 'I cannot tell who “{word}” is here. Write the number.',
    manual: { title: 'A word with nobody behind it', why: '`he` and `him` are the line’s first man, in a look the looker; where he would mean himself, the man told of last before. What `he` does with the ball is done by who has it. Before anyone is named there is nobody to mean.', wrong: 'both cut to rim\n1 dribbles to left slot\nlook 1: jumper', right: '2 and 3 cut to blocks\n1 dribbles to left slot\nlook 1: jumper' },
  }),
  'not-told-above': told('not-told-above', {
    needs: 'before',
    message: '“{words}”: no line above it tells of that. Write it below that line, or say who does it, for example “once 4 is set” or “as 1 drives”.',
    manual: { title: 'A moment that no line above tells', why: '`after the hand-off`, `with the drive` and `at the same time` mean the last one told above, in this step or in those it follows.', wrong: '3 lifts to left wing with the drive\n1 drives to right elbow\nlook 1: jumper', right: '1 drives to right elbow\n3 lifts to left wing with the drive\nlook 1: jumper' },
  }),
  'words-left-over': told('words-left-over', {
    severity: 'warning',
    needs: 'line',
    message: '“{words}” is not carried out: the rest of the link leaves no room for it. Leave it out, or make it a link of its own, behind “then” and with a verb.',
    manual: { title: 'Words that are left over', why: 'A link has one verb and what goes with it. A second place to end at, or a man too many, would be dropped without a word; what comes next is a link of its own.', wrong: '1 dribbles to left slot and right slot\nlook 1: jumper', right: '1 dribbles to left slot, then dribbles to right slot\nlook 1: jumper' },
  }),
  'pass-to-nobody': told('pass-to-nobody', {
    needs: 'line',
    stillToCome: 'in-line',
    message: '{who} passes, but to whom? Write for example: {who} passes to {other}',
    manual: { title: 'A pass without a receiver', why: 'A pass needs the man who is to catch it.', wrong: '1 passes over the top\nlook 2: layup', right: '1 lobs to 2\nlook 2: layup' },
  }),
  'offence-defends': told('offence-defends', {
    needs: 'line',
    message: '{who} has the ball team’s number, but “{verb}” is what a defender does. Write X{who}, or another verb.',
    manual: { title: 'An attacker who defends', why: '1 to 5 is the offence, X1 to X5 the defence.', wrong: '1 dribbles to left slot\n4 switches to 2\nlook 1: jumper', right: '1 dribbles to left slot\nX4 switches to 2\nlook 1: jumper' },
  }),
  'defender-attacks': told('defender-attacks', {
    needs: 'line',
    message: '{who} is a defender, but “{verb}” is what an attacker does. Leave out the X, or use another verb.',
    manual: { title: 'A defender who attacks', why: 'X1 to X5 is the defence, 1 to 5 the offence.', wrong: '1 dribbles to left slot\nX2 screens for 3\nlook 1: jumper', right: '1 dribbles to left slot\n2 screens for 3\n3 cuts off 2 to rim\nlook 1: jumper' },
  }),
  'wait-on-defender': told('wait-on-defender', {
    needs: 'line',
    message: 'What {who} may do or not is another way through the play. Make it a step: step "…" instead of "…" when {who} …',
    manual: { title: 'A wait for the defence', why: 'A line happens on every run. What hangs on the defence is a step of its own, with `when`.', wrong: '1 dribbles to left slot\nwhen X4 helps, 1 passes to 4\nlook 4: layup', right: 'step "Zip"\n1 dribbles to left slot\nlook 1: jumper\nstep "Kick" instead of "Zip" when X4 helps at rim\n1 passes to 4\nlook 4: layup' },
  }),
  'verb-missing': told('verb-missing', {
    needs: 'before',
    message: 'A verb is missing between {who} and the place: “cuts to”, “dribbles to”, or “stays at” of who is there already.',
    manual: { title: 'A place without a verb', why: 'In a step a line says what a player does. Only in `from` and in an alignment does a place alone say where he stands.', wrong: '1 dribbles to left slot\n4 right short corner\nlook 1: jumper', right: '1 dribbles to left slot\n4 clears to right short corner\nlook 1: jumper' },
  }),
  'line-elsewhere': told('line-elsewhere', {
    severity: 'warning',
    needs: 'before',
    message: 'This line says nothing here: it belongs {belongs}.',
    manual: { title: 'A line in the wrong block', why: 'Some lines have their place: `level` in the file or a play, a placing in an alignment, a pace in the roster.', wrong: 'step "Zip"\nsection "Last shots"\n1 dribbles to left slot\nlook 1: jumper', right: 'step "Zip"\n1 dribbles to left slot\nlook 1: jumper' },
  }),
  'header-twice': told('header-twice', {
    related: 'this one counts',
    severity: 'warning',
    needs: 'steps',
    message: '“{word}” stands twice in this play; the first line counts. Take one out.',
    manual: { title: 'The same line twice', why: 'A play has one `from`, one `call`, one `leave`.', wrong: 'call with 20 on the clock\ncall with 18 on the clock\n1 dribbles to left slot\nlook 1: jumper', right: 'call with 18 to 20 on the clock\n1 dribbles to left slot\nlook 1: jumper' },
  }),
  'no-holder-for-look': told('no-holder-for-look', {
    needs: 'before',
    message: 'Nobody has the ball when the look for {who} comes. Let somebody get it first.',
    manual: { title: 'A look without a ball', why: 'A look passes to the looker from whoever has the ball, and there is nobody.', wrong: '1 shoots a three\nlook 2: jumper', right: 'look 1: three\n1 passes to 2\nlook 2: jumper' },
  }),
  'looker-has-ball': told('looker-has-ball', {
    needs: 'before',
    message: '{who} has the ball already, so nobody can pass it to him here. Leave out the kind of pass, or name another looker.',
    manual: { title: 'A pass to the man with the ball', why: 'Behind a look’s colon a kind of pass says how the looker gets the ball. He has it.', wrong: '1 dribbles to left slot\nlook 1: lob, layup', right: '1 dribbles to left slot\nlook 1: jumper' },
  }),
  'ball-not-with-thrower': told('ball-not-with-thrower', {
    related: 'the throw-in',
    needs: 'before',
    message: '{thrower} throws the ball in, so it cannot start with {written}. Leave out “ball with {written}”.',
    manual: { title: 'A throw-in by another than the ball’s man', why: 'On a throw-in the ball starts with the thrower.', wrong: 'from 5-out, ball with 1\n3 inbounds from the left sideline\n3 inbounds to 1\nlook 1: three', right: 'from 5-out\n3 inbounds from the left sideline\n3 inbounds to 1\nlook 1: three' },
  }),
  'not-placed': told('not-placed', {
    severity: 'warning',
    needs: 'before',
    message: 'The “from” line does not say where {who} stands. Add for example: {who} at right corner',
    manual: { title: 'A player without a place', why: 'A list of places has to hold all five, or the figures stand where nobody meant them.', wrong: 'from 1 top, 2 and 3 wings, 4 left block\n1 dribbles to left slot\nlook 1: jumper', right: 'from 1 top, 2 and 3 wings, 4 and 5 blocks\n1 dribbles to left slot\nlook 1: three' },
  }),
  'not-yet': told('not-yet', {
    source: 'what this tool can show',
    severity: 'warning',
    needs: 'play',
    message: 'I read this, but cannot show it yet: {what}.',
    manual: { title: 'Read, but not carried out yet', why: 'The notation has more words than this version can move. The line is kept and changes nothing.', wrong: '1 passes behind the board to 2\nlook 2: layup', right: '1 passes to 2\nlook 2: three' },
  }),
} as const satisfies { readonly [Code in ReadingProblemCode]: Entry<Code> };
