// The defence that guards by itself, as lines: whom each of the five takes, for the coach to change.
import { message } from '../message/message.ts';
import { guardRuns } from '../defence/guard.ts';
import { DEFENCE } from '../play/play.ts';
import type { Reading } from '../play/reading.ts';
import { schedule } from '../timeline/schedule.ts';
import { linesAbove, linesBehind, readAfter, refuse, textAt, treeAt, type Here, type Offer, type Rewritten } from './here.ts';

/** Offered where the defence is named, on the first line of the play, and in a line of its own of a defender. */
export function writeDefence(here: Here): Offer | undefined {
  const { play } = here.reading;
  const tree = treeAt(here, here.line);
  if (tree?.$type !== 'PlayHead' && tree?.$type !== 'Against') return undefined;
  // A zone guards the floor and not a man: it has no such lines.
  if (play.defence.value.kind !== 'man' || play.steps.length === 0 || missing(here.reading).length === 0) return undefined;
  return { id: 'write-defence', title: message('Write out who guards whom'), kind: 'rewrite', write: () => write(here) };
}

/** Defenders of whom no line says yet whom he guards. */
function missing({ play }: Reading): readonly string[] {
  const written = new Set(play.steps.flatMap(({ actions }) => actions.flatMap((action) => (action.kind === 'defend' && action.verb === 'guard' && action.on !== undefined ? [action.who] : []))));
  return DEFENCE.filter((who) => !written.has(who));
}

function write(here: Here): Rewritten {
  const { lines, play } = here.reading;
  const { key } = play.steps[0]!;
  const first = lines.findIndex(({ kind, step }) => step === key && (kind === 'step' || kind === 'action' || kind === 'look' || kind === 'end'));
  if (first < 0) return refuse(message('Its lines stand in another play or step. Write who guards whom there.'));
  const hasHead = lines[first]!.kind === 'step';
  const blanks = hasHead ? '    ' : (/^\s*/.exec(textAt(here, first))![0] || '  ');
  const said = missing(here.reading).map((who) => `${blanks}${who} guards ${who.slice(1)}`);
  const edit = hasHead ? linesBehind(here, lastOfHead(here, first), said) : linesAbove(here, first, said);
  const [before, after] = [readAfter(here, []), readAfter(here, [edit])];
  if (before === undefined || after === undefined || after.problems.length > before.problems.length || missing(after).length > 0 || shown(before) !== shown(after)) {
    return refuse(message('Other lines already tell the defenders what to do here, and these would change it. Write the ones you want yourself: “X1 guards 1”.'));
  }
  return { edits: [edit] };
}

/** Notes and the like right below the line of a step belong to it. */
function lastOfHead({ reading: { lines } }: Here, head: number): number {
  let line = head;
  while (lines[line + 1]?.kind === 'annotation') line++;
  return line;
}

/** Everything that is seen of the ten players on every way through the play. */
function shown({ play }: Reading): string {
  const { runs, times } = schedule(play);
  return JSON.stringify([times, runs.map(({ steps, look, end, tracks, ball }) => [steps, look, end, tracks, ball]), guardRuns(play, runs)]);
}
