// `setwright list FILE…`: which plays there are.
import type { Command } from 'commander';
import { readFiles } from './files.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook } from './open-book.ts';
import { CallError } from './call-error.ts';
import { playsNamed, type PlayInFile } from './plays-named.ts';
import { table } from './table.ts';
import { withExamples } from './examples.ts';
import { print } from './terminal.ts';

export function addList(program: Command): void {
  const command = program
    .command('list')
    .argument('<files...>', 'files, folders, patterns; - reads standard input')
    .option('--tag <tag>', 'only plays with this tag')
    .summary('list the plays')
    .description('Lists the plays with their file, level, what is asked of the clock, how many looks they have, and their tags.')
    .action((names: string[], options: { readonly tag?: string }) => {
      const plays = playsNamed(openBook(readFiles(names)), undefined);
      const listed = tagged(plays, options.tag);
      remarkOnLinesNotRead(listed);
      const rows = listed.map(({ file, play: { play, timeline } }) => [
        play.name, file.name, play.level.value, called(play.clock.call), String(timeline.times.firstLook?.fromCall ?? '-'), String(play.steps.flatMap(({ looks }) => looks).length), play.tags.join(', '),
      ]);
      print(table(['play', 'file', 'level', 'call with', 'needs', 'looks', 'tags'], rows));
    });
  withExamples(command, 'setwright list plays', 'setwright list plays --tag last-shot');
}

function tagged(plays: readonly PlayInFile[], tag: string | undefined): readonly PlayInFile[] {
  if (tag === undefined) return plays;
  const found = plays.filter(({ play }) => play.play.tags.includes(tag.trim().toLowerCase()));
  if (found.length > 0) return found;
  const tags = [...new Set(plays.flatMap(({ play }) => play.play.tags))].sort();
  throw new CallError(`No play has the tag ${tag}. ${tags.length === 0 ? 'None has any: a play gets its tags with a line such as: tags last-shot' : `There are: ${tags.join(', ')}.`}`);
}

function called(call: { readonly from: number; readonly to: number } | undefined): string {
  if (call === undefined) return '-';
  return call.from === call.to ? String(call.to) : `${call.from}-${call.to}`;
}
