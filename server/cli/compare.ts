// `setwright compare BEFORE AFTER`: what has changed between two versions of a playbook, as a coach would ask an assistant.
import type { Command } from 'commander';
import type { Colors } from 'picocolors/types';
import type { Finding } from '../../language/checks/finding.ts';
import { comparePlays, type Between, type PartChange, type PlayChange, type WhatChanged } from '../../language/compare/compare-plays.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';
import { CallError } from './call-error.ts';
import { colorOption, colorsFor, type ColorWhen } from './colors.ts';
import { withExamples } from './examples.ts';
import { readFiles } from './files.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook } from './open-book.ts';
import type { PlayInFile } from './plays-named.ts';
import { table } from './table.ts';
import { print } from './terminal.ts';

export function addCompare(program: Command): void {
  const command = program
    .command('compare')
    .argument('<before>', 'a file, a folder or a pattern; - reads standard input')
    .argument('<after>', 'the same in its newer version')
    .addOption(colorOption())
    .summary('say what has changed between two versions')
    .description(
      'Says play by play what has changed between two versions of a playbook: lines, looks and their times, when to call it, what is wrong since and what no longer is. How a play is written makes no difference, only what it means. Ends with 0 whatever has changed.',
    )
    .action((before: string, after: string, options: { readonly color: ColorWhen }) => {
      if (before === '-' && after === '-') throw new CallError('Standard input can be one of the two versions, not both.');
      const [was, is] = [playsIn(before), playsIn(after)];
      if (was.length + is.length === 0) throw new CallError(`There is no play in ${before} or ${after}. A play starts with a line such as: play "Lighthouse"`);
      remarkOnLinesNotRead([...was, ...is]);
      const changes = comparePlays(was.map(({ play }) => play), is.map(({ play }) => play));
      const fileOf = new Map([...was, ...is].map(({ file, play }) => [play, file.name]));
      print([...changes.map((change) => told(change, fileOf, colorsFor(options.color))), summary(changes, is.length)].join('\n\n'));
    });
  withExamples(command, 'setwright compare last-season plays', 'git show main:plays/all.play | setwright compare - plays/all.play');
}

type Change = PlayChange<PlayInFile['play']>;

function playsIn(name: string): readonly PlayInFile[] {
  return openBook(readFiles([name])).flatMap((file) => file.plays().map((play) => ({ file, play })));
}

function told(change: Change, fileOf: ReadonlyMap<PlayInFile['play'], string>, colors: Colors): string {
  const version = change.kind === 'went' ? change.before : change.after;
  const head = (what: string) => `${colors.bold(version.play.name)}  ${what}  ${colors.dim(fileOf.get(version)!)}`;
  if (change.kind === 'came') return head(colors.green('new'));
  if (change.kind === 'went') return head(colors.red('gone'));
  return [head(change.renamed ? `was called “${change.before.play.name}”` : 'changed'), ...change.parts.flatMap((part) => partLines(part, colors)), ...looksLines(change), ...callLines(change), ...findingLines(change, colors)].join('\n');
}

function partLines({ step, only, lines }: PartChange, colors: Colors): readonly string[] {
  const where = step === undefined ? 'above the steps' : `step ${step}`;
  const what = only === undefined ? '' : only === 'came' ? ', new' : ', gone';
  return [`  ${where}${what}`, ...lines.map(({ kind, text }) => (kind === 'came' ? colors.green(`    + ${text}`) : colors.red(`    - ${text}`)))];
}

function looksLines({ looks }: WhatChanged): readonly string[] {
  if (looks.length === 0) return [];
  const rows = looks.map(({ name, before, after }) => [name, change(before && sayMoment(before.typical), after && sayMoment(after.typical)), change(before && sayMoment(before.late), after && sayMoment(after.late))]);
  return [table(['look', 'typical', 'late'], rows).replace(/^/gm, '  ')];
}

function callLines({ firstLook, allLooks }: WhatChanged): readonly string[] {
  const line = (what: string, between: Between<number> | undefined) => (between === undefined ? [] : [`  on the clock for ${what}: ${change(seconds(between.before), seconds(between.after))}`]);
  return [...line('the first look', firstLook), ...line('every look', allLooks)];
}

const seconds = (value: number | undefined): string | undefined => (value === undefined ? undefined : `${value} s`);

/** `6.4 s → 6.9 s`; where there was or is none, which of the two. */
function change(before: string | undefined, after: string | undefined): string {
  if (before === undefined) return `${after} (new)`;
  return after === undefined ? `${before} (gone)` : before === after ? before : `${before} → ${after}`;
}

function findingLines({ findings: { came, went } }: WhatChanged, colors: Colors): readonly string[] {
  const line = (told: string, { code, message }: Finding) => `  ${told}, ${colors.dim(code)}: ${message}`;
  return [...came.map((finding) => line(`new ${finding.severity}`, finding)), ...went.map((finding) => line(`${finding.severity} gone`, finding))];
}

function summary(changes: readonly Change[], plays: number): string {
  const count = (kind: Change['kind']) => changes.filter((one) => one.kind === kind).length;
  const [came, went, changed] = [count('came'), count('went'), count('changed')];
  const same = plays - came - changed;
  if (changes.length === 0) return `${plays === 1 ? 'The play is' : `All ${plays} plays are`} as before.`;
  const said = [[changed, 'changed'], [came, 'new'], [went, 'gone'], [same, 'as before']] as const;
  return `Plays: ${said.filter(([number]) => number > 0).map(([number, what]) => `${number} ${what}`).join(', ')}.`;
}
