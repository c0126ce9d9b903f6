// `setwright page FILE`: one HTML file with the plays moving; with --watch written again as often as the text changes.
import { createHash } from 'node:crypto';
import { watch } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { deflateSync } from 'node:zlib';
import type { Command } from 'commander';
import { script, style } from 'virtual:player';
import { pageHtml } from '../../client/preview/page.ts';
import { fileNameOf } from '../../language/book/slug.ts';
import { CallError } from './call-error.ts';
import { readFiles } from './files.ts';
import { freeName } from './free-name.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook, type OpenedFile } from './open-book.ts';
import { playsInOrder, remarkOnSameName } from './plays-named.ts';
import { makeFolder, writeResult } from './write-result.ts';
import { withExamples } from './examples.ts';
import { remark } from './terminal.ts';

interface PageOptions {
  readonly play?: string;
  readonly output?: string;
  readonly watch?: boolean;
}

export function addPage(program: Command): void {
  const command = program
    .command('page')
    .argument('<file>', 'a file, a folder or a pattern; - reads standard input')
    .option('--play <name>', 'only the play of this name, or the one that stands at FILE:LINE')
    .option('-o, --output <file>', 'the file to write; for several plays also a folder, which gets a page for each; - writes to standard output. Without it the name of what is read, with .html')
    .option('-w, --watch', 'write again whenever the text changes, until stopped with Ctrl+C')
    .summary('write a page with the plays moving')
    .description('Writes one HTML file that needs nothing else: the plays moving, their run-throughs, times and findings, a list to choose from where there are several. It can be mailed, or opened from a stick, on a phone too; printed, it gives a sheet for each play, on top of several a call sheet for the bench (what each needs on the clock), and last each player’s own jobs, to be cut out; of five plays and more that is asked for on the page, and each player has sheets of his own.')
    .action((name: string, options: PageOptions) => {
      if (options.watch === true && (name === '-' || options.output === '-')) throw new CallError('--watch needs a file to read and a file to write.');
      writePages(name, options);
      if (options.watch === true) watchFile(name, options);
    });
  withExamples(command, 'setwright page examples/lighthouse.play', 'setwright page plays/all.play --play "Lighthouse" -o lighthouse.html', 'setwright page plays -o playbook.html', 'setwright page plays/all.play -o pages/', 'setwright page plays/lighthouse.play --watch');
}

/** One page, whatever it holds; a folder to write to gets a page for each play. */
function writePages(name: string, options: PageOptions): void {
  const files = openBook(readFiles([name]));
  const plays = playsInOrder(files, options.play);
  if (options.play !== undefined) remarkOnSameName(plays, 'all');
  remarkOnLinesNotRead(plays);
  const { output } = options;
  if (plays.length === 1 || output === undefined || output === '-' || output.toLowerCase().endsWith('.html')) {
    const title = plays.length === 1 ? plays[0]!.play.play.name : (bookOf(files) ?? titleOf(name));
    return writeResult(htmlOf(plays, title), output ?? (name === '-' ? '-' : `${titleOf(name)}.html`));
  }
  makeFolder(output);
  const used = new Set<string>();
  for (const play of plays) writeResult(htmlOf([play], play.play.play.name), join(output, `${freeName(fileNameOf(play.play.play.name), used)}.html`));
}

/** The name of the only book among the files. */
function bookOf(files: readonly OpenedFile[]): string | undefined {
  const names = files.flatMap(({ blocks }) => blocks.filter(({ kind }) => kind === 'book').map(({ lines }) => lines[0]?.parsed.openName));
  return names.length === 1 && names[0] !== '' ? names[0] : undefined;
}

/** `quick` of `plays/quick.play`, `plays` of the folder and of `plays/*.play`. */
function titleOf(name: string): string {
  const plain = /[*?[\]{}]/.test(name) ? dirname(name) : name;
  return name === '-' ? 'Plays' : basename(resolve(plain)).replace(/\.play$/, '') || 'plays';
}

function htmlOf(plays: ReturnType<typeof playsInOrder>, title: string): string {
  return pageHtml(plays.map(({ file, play }) => playbackOf(file.named(play))), script, style, { sha256, deflate, title, sections: plays.map(({ section }) => section) });
}

function deflate(text: string): string {
  return deflateSync(text, { level: 9 }).toString('base64');
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
      remark(`setwright: ${error.message}`);
    }
  };
  // Files it uses may lie beside it: any text of the folder counts.
  watch(dirname(resolve(name)), (_, changed) => {
    if (changed !== null && !changed.endsWith('.play') && changed !== basename(name)) return;
    clearTimeout(waiting);
    waiting = setTimeout(again, settleMs);
  });
  remark('Watching for changes; Ctrl+C stops.');
}

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}
