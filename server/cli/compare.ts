// `setwright compare BEFORE AFTER`: what has changed between two versions of a playbook, as a coach would ask an assistant.
import type { Command } from 'commander';
import { join } from 'node:path';
import { statSync } from 'node:fs';
import { CallError } from './call-error.ts';
import { colorOption, colorsFor, type ColorWhen } from './colors.ts';
import { compareMarkdown } from './compare-markdown.ts';
import { writePictures } from './compare-pictures.ts';
import { compareText } from './compare-text.ts';
import { compareVersions, type Change, type VersionToRead } from './comparison.ts';
import { withExamples } from './examples.ts';
import { readFiles, readFilesIfThere } from './files.ts';
import { repositoryOf } from './git.ts';
import { print, remark } from './terminal.ts';

interface CompareOptions {
  readonly since?: string;
  readonly until?: string;
  readonly markdown?: boolean;
  readonly pictures?: string;
  readonly picturesAt?: string;
  readonly color: ColorWhen;
}

export function addCompare(program: Command): void {
  const command = program
    .command('compare')
    .argument('[before]', 'a file, a folder or a pattern; - reads standard input')
    .argument('[after]', 'the same in its newer version')
    .option('--since <version>', 'ask git for the older version: what has changed since a branch, a tag or a commit; only one name then, a file or a folder, without it the folder you are in')
    .option('--until <version>', 'with --since: take the newer version from git too, instead of the files as they lie there')
    .option('--markdown', 'print Markdown, for a comment in a review: a table of the plays with their calls before and after, changed lines, findings')
    .option('--pictures <folder>', 'write each changed play drawn before and after, and a page index.html that shows them beside each other')
    .option('--pictures-at <address>', 'with --markdown and --pictures: the address at which the folder can be seen, so that the comment shows them')
    .addOption(colorOption())
    .summary('say what has changed between two versions')
    .description(
      'Says what has changed between two versions of a playbook: play by play the lines, the looks and their times, when to call it, what is wrong since and what no longer is; then the sections of its books, rosters, alignments and spots of your own. A file with a book brings the plays of the files it uses. A play under another name is the same as long as most of its lines are. How a play is written makes no difference, only what it means. Ends with 0 whatever has changed.',
    )
    .action((before: string | undefined, after: string | undefined, options: CompareOptions) => {
      if (options.picturesAt !== undefined && (options.markdown !== true || options.pictures === undefined)) throw new CallError('--pictures-at says where the pictures of a comment can be seen: it needs --markdown and --pictures FOLDER.');
      const versions = options.since === undefined ? twoVersions(before, after, options) : sinceVersion(options.since, before, after, options.until);
      const comparison = compareVersions(...versions);
      if (comparison.plays + comparison.changes.length + comparison.blocks.length === 0) throw new CallError(`There is no play in ${[before, after].filter((name) => name !== undefined).join(' or ') || 'this folder'}. A play starts with a line such as: play "Lighthouse"`);
      const pictures = options.pictures === undefined ? undefined : writePictures(comparison, options.pictures);
      const shown = pictures && options.picturesAt !== undefined ? { at: options.picturesAt.replace(/\/*$/, '/'), of: (change: Change) => pictures.get(change)! } : undefined;
      print(options.markdown === true ? compareMarkdown(comparison, shown) : compareText(comparison, colorsFor(options.color)));
    });
  withExamples(command, 'setwright compare last-season plays', 'setwright compare --since main plays', 'setwright compare --since v1 --until v2 plays/club.play', 'setwright compare --since main plays --markdown --pictures changes > changes.md', 'git show main:plays/all.play | setwright compare - plays/all.play');
}

type Versions = readonly [before: VersionToRead, after: VersionToRead];

function twoVersions(before: string | undefined, after: string | undefined, { until }: CompareOptions): Versions {
  if (until !== undefined) throw new CallError('--until needs --since: setwright compare --since v1 --until v2 plays');
  if (before === undefined || after === undefined) throw new CallError(`Say which two versions, the older one first, or since which version git knows. For example: ${before === undefined ? 'setwright compare last-season plays' : `setwright compare --since main ${before}`}`);
  if (before === '-' && after === '-') throw new CallError('Standard input can be one of the two versions, not both.');
  return [readBeside(before, after), readBeside(after, before)];
}

/** Standard input stands in the place of the other version: what it uses lies there. */
function readBeside(name: string, other: string): VersionToRead {
  const place = statSync(other, { throwIfNoEntry: false })?.isDirectory() === true ? join(other, 'standard-input.play') : other;
  return { sources: readFiles([name]).map((source) => (name === '-' ? { ...source, path: place } : source)) };
}

/** From where the two lines of versions parted: what others have done to `main` meanwhile is no change of mine. */
function sinceVersion(since: string, wanted = '.', more: string | undefined, until: string | undefined): Versions {
  if (more !== undefined || wanted === '-') throw new CallError(`With --since give one name, a file or a folder: git has the older version. For example: setwright compare --since ${since} plays`);
  if (/[*?]/.test(wanted)) throw new CallError(`With --since give a file or a folder, not a pattern such as ${wanted}.`);
  const repository = repositoryOf(wanted);
  const [tip, end] = [repository.commitOf(since), repository.commitOf(until ?? 'HEAD')];
  const start = repository.parting(tip, end);
  if (start === undefined) remark(`Where this version and ${since} parted is not known here (a clone without its history?): compared with ${since} as it is.`);
  else if (start !== tip) remark(`${since} has gone on meanwhile: compared with ${since} as it was when this version parted from it.`);
  const before = repository.versionAt(start ?? tip, since);
  const after = until === undefined ? { sources: readFilesIfThere(wanted) } : repository.versionAt(end, until);
  if (before.sources.length + after.sources.length === 0) throw new CallError(`There is no play file in ${wanted}, neither now nor in ${since}.`);
  return [before, after];
}
