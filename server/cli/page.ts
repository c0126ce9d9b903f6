// `setwright page FILE`: one HTML file a play, with the play moving; with --watch written again as often as the text changes.
import { createHash } from 'node:crypto';
import { mkdirSync, watch } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Command } from 'commander';
import { script, style } from 'virtual:player';
import { pageHtml } from '../../client/preview/page.ts';
import { slugOf } from '../../language/book/slug.ts';
import { CallError } from './call-error.ts';
import { readFiles, reasonOf, standardInput } from './files.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { openBook } from './open-book.ts';
import { playsNamed, type PlayInFile } from './plays-named.ts';
import { writeResult } from './write-result.ts';

interface PageOptions {
  readonly play?: string;
  readonly output?: string;
  readonly watch?: boolean;
}

export function addPage(program: Command): void {
  program
    .command('page')
    .argument('<file>', 'a file; - reads standard input')
    .option('--play <name>', 'only the play of this name')
    .option('-o, --output <file>', 'the file to write, for several plays the folder; - writes one play to standard output. Without it the play’s file name with .html')
    .option('-w, --watch', 'write again whenever the text changes, until stopped with Ctrl+C')
    .summary('write a page with the play moving')
    .description('Writes one HTML file that needs nothing else: the play moving, its run-throughs, times and findings. It can be mailed, or opened from a stick. A file of several plays gives a folder with a page for each.')
    .addHelpText('after', '\nExamples:\n  setwright page examples/lighthouse.play\n  setwright page plays/all.play --play "Lighthouse" -o lighthouse.html\n  setwright page plays/all.play -o pages\n  setwright page plays/lighthouse.play --watch')
    .action((name: string, options: PageOptions) => {
      if (options.watch === true && (name === '-' || options.output === '-')) throw new CallError('--watch needs a file to read and a file to write.');
      writePages(name, options);
      if (options.watch === true) watchFile(name, options);
    });
}

function writePages(name: string, options: PageOptions): void {
  const plays = playsNamed(openBook(readFiles([name])), options.play);
  const [first] = plays;
  if (plays.length === 1) return writeResult(htmlOf(first!), options.output ?? pageName(first!.file.name));
  const folder = folderFor(plays, options.output);
  const used = new Set<string>();
  for (const play of plays) writeResult(htmlOf(play), join(folder, `${freeName(fileNameOf(play.play.play.name), used)}.html`));
}

/** Several plays go into a folder: the one named, else one called as their file. */
function folderFor(plays: readonly PlayInFile[], output: string | undefined): string {
  const file = plays[0]!.file.name;
  const names = plays.map(({ play }) => play.play.name).slice(0, 20).join(', ');
  if (output === '-' || (output === undefined && file === standardInput)) throw new CallError(`There are ${plays.length} plays. Choose one with --play: ${names}.`);
  if (output?.toLowerCase().endsWith('.html') === true) throw new CallError(`There are ${plays.length} plays, and ${output} is one page. Choose one with --play (${names}), or name a folder.`);
  const folder = output ?? basename(file).replace(/\.play$/, '');
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new CallError(`I cannot write ${folder}: ${reasonOf(error)}.`);
  }
  return folder;
}

/** A name no disk objects to, and that leads into no other folder. */
function fileNameOf(name: string): string {
  return slugOf(name).replace(/[\\<>|*"\u0000-\u001F]+/g, '-').slice(0, 80);
}

function freeName(wanted: string, used: Set<string>): string {
  let name = wanted;
  for (let number = 2; used.has(name); number++) name = `${wanted}-${number}`;
  used.add(name);
  return name;
}

function htmlOf({ play }: PlayInFile): string {
  return pageHtml(playbackOf(play), script, style, { sha256 });
}

const settleMs = 80;

/** Watches the folder, since many editors put a new file in the old one's place. What cannot be written now is said, and tried again at the next change. */
function watchFile(name: string, options: PageOptions): void {
  let waiting: NodeJS.Timeout | undefined;
  const again = () => {
    try {
      writePages(name, options);
    } catch (error) {
      if (!(error instanceof CallError)) throw error;
      console.error(`setwright: ${error.message}`);
    }
  };
  // Files it uses may lie beside it: any text of the folder counts.
  watch(dirname(resolve(name)), (_, changed) => {
    if (changed !== null && !changed.endsWith('.play') && changed !== basename(name)) return;
    clearTimeout(waiting);
    waiting = setTimeout(again, settleMs);
  });
  console.error('Watching for changes; Ctrl+C stops.');
}

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}

function pageName(file: string): string {
  return file === standardInput ? '-' : `${basename(file).replace(/\.play$/, '')}.html`;
}
