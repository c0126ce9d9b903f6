// `setwright page FILE`: one HTML file with the play moving.
import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import type { Command } from 'commander';
import { script, style } from 'virtual:player';
import { pageHtml } from '../../client/preview/page.ts';
import { readFiles, standardInput } from './files.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { openBook } from './open-book.ts';
import { onePlay } from './plays-named.ts';
import { writeResult } from './write-result.ts';

export function addPage(program: Command): void {
  program
    .command('page')
    .argument('<file>', 'a file; - reads standard input')
    .option('--play <name>', 'the play of this name; without it the first')
    .option('-o, --output <file>', 'the file to write; - writes to standard output. Without it the play’s file name with .html')
    .summary('write a page with the play moving')
    .description('Writes one HTML file that needs nothing else: the play moving, its run-throughs, times and findings. It can be mailed, or opened from a stick.')
    .addHelpText('after', '\nExamples:\n  setwright page examples/lighthouse.play\n  setwright page plays/all.play --play "Lighthouse" -o lighthouse.html')
    .action((name: string, options: { readonly play?: string; readonly output?: string }) => {
      const { file, play } = onePlay(openBook(readFiles([name])), options.play);
      writeResult(pageHtml(playbackOf(play), script, style, { sha256 }), options.output ?? pageName(file.name));
    });
}

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}

function pageName(file: string): string {
  return file === standardInput ? '-' : `${basename(file).replace(/\.play$/, '')}.html`;
}
