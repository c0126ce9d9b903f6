// `setwright list FILE…`: which plays there are.
import type { Command } from 'commander';
import { readFiles } from './files.ts';
import { openBook } from './open-book.ts';
import { playsNamed } from './plays-named.ts';
import { table } from './table.ts';

export function addList(program: Command): void {
  program
    .command('list')
    .argument('<files...>', 'files, folders, patterns; - reads standard input')
    .option('--tag <tag>', 'only plays with this tag')
    .summary('list the plays')
    .description('Lists the plays with their file, level, what is asked of the clock, how many looks they have, and their tags.')
    .addHelpText('after', '\nExamples:\n  setwright list plays\n  setwright list plays --tag last-shot')
    .action((names: string[], options: { readonly tag?: string }) => {
      const plays = playsNamed(openBook(readFiles(names)), undefined);
      const rows = plays
        .filter(({ play }) => options.tag === undefined || play.play.tags.includes(options.tag.toLowerCase()))
        .map(({ file, play: { play, timeline } }) => [
          play.name, file.name, play.level.value, called(play.clock.call), String(timeline.times.firstLook?.fromCall ?? '-'), String(play.steps.flatMap(({ looks }) => looks).length), play.tags.join(', '),
        ]);
      console.log(table(['play', 'file', 'level', 'call with', 'needs', 'looks', 'tags'], rows));
    });
}

function called(call: { readonly from: number; readonly to: number } | undefined): string {
  if (call === undefined) return '-';
  return call.from === call.to ? String(call.to) : `${call.from}-${call.to}`;
}
