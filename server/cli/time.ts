// `setwright time FILE…`: when each look comes, and with how much on the clock to call the play.
import type { Command } from 'commander';
import type { Compiled } from '../../language/compile.ts';
import type { LookTime, Needed } from '../../language/timeline/timeline.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';
import { readFiles } from './files.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook } from './open-book.ts';
import { placeOf, playsNamed, remarkOnSameName, type PlayInFile } from './plays-named.ts';
import { indented, table } from './table.ts';
import { withExamples } from './examples.ts';
import { print } from './terminal.ts';

export function addTime(program: Command): void {
  const command = program
    .command('time')
    .argument('<files...>', 'files, folders, patterns; - reads standard input')
    .option('--play <name>', 'only the play of this name, or the one that stands at FILE:LINE')
    .summary('when each look comes, and when to call it')
    .description(
      'Prints for each look how long after the call its shot leaves the hand: typically, and late (nine runs of ten are quicker); then how much must be on the clock when the play is called. Figures of a model, not a promise: time your own team.',
    )
    .action((names: string[], options: { readonly play?: string }) => {
      const plays = playsNamed(openBook(readFiles(names)), options.play);
      remarkOnLinesNotRead(plays);
      if (options.play !== undefined) remarkOnSameName(plays, 'all');
      const named = (one: PlayInFile) => plays.filter(({ play }) => play.play.name === one.play.play.name).length;
      print(plays.map((one) => timesOf(one.play, named(one) > 1 ? placeOf(one) : undefined)).join('\n\n'));
    });
  withExamples(command, 'setwright time examples/lighthouse.play', 'setwright time plays --play "Lighthouse"');
}

/** `place`: where it stands, if its name is that of several. */
function timesOf(compiled: Compiled, place: string | undefined): string {
  const { play, timeline } = compiled;
  const { looks, firstLook, allLooks } = timeline.times;
  const measured = play.start.throwIn === undefined ? 'from the call, getting into place included' : 'from the hand-over; the clock runs from the touch';
  const title = `${play.name} (${[play.level.value, measured, ...(place === undefined ? [] : [place])].join(', ')})`;
  const written = play.steps.flatMap((step) => step.looks);
  if (written.length === 0) return `${title}\n  no look, so nothing to time`;
  const timed = new Map(looks.map((time) => [time.look, time]));
  const rows = written.map((look) => {
    const time = timed.get(look.id);
    const step = play.steps.find(({ key }) => key === look.step)?.name ?? look.step;
    return [look.who.join(' or '), look.label ?? '', step, ...(time === undefined ? [untimed, untimed, untimed] : [sayMoment(time.typical), sayMoment(time.late), sayMoment(onTheClock(compiled, time))])];
  });
  const missing = written.length > timed.size ? [`  ${untimed} no shot comes of it as the play stands: setwright check says why`] : [];
  const needed = [neededLine('first look', firstLook), neededLine('all looks', allLooks)].filter((line) => line !== undefined);
  return [title, indented(table(['look for', 'called', 'in step', 'typical', 'late', 'clock, late'], rows)), ...missing, ...needed].join('\n');
}

/** In place of a time that cannot be told. */
const untimed = '–';

/** What the game clock has run by the late release. */
function onTheClock({ timeline }: Compiled, time: LookTime): number {
  const run = timeline.runs.find(({ id }) => id === time.run);
  return time.late - (run?.clockStartsAt ?? 0);
}

function neededLine(what: string, needed: Needed | undefined): string | undefined {
  if (needed === undefined) return undefined;
  const { fromCall, alreadySet } = needed;
  const set = alreadySet === fromCall ? '' : `; already set: ${alreadySet} or more`;
  return `  ${`${what}:`.padEnd(12)}call it with ${fromCall} or more on the clock${set}`;
}
