// `setwright check FILE…`: what can't work, as text, JSON or SARIF.
import { tellFinding } from '../../language/checks/tell-finding.ts';
import { Option, type Command } from 'commander';
import type { FileFinding } from '../../language/keeper.ts';
import type { TextPlace } from '../../language/play/play.ts';
import type { CheckedFile, CheckOutput, JsonFinding, JsonPlace } from './check-json.ts';
import { toSarif } from './check-sarif.ts';
import { colorOption, colorsFor, type ColorWhen } from './colors.ts';
import { findFiles, isUnreadable, type SourceFile, type UnreadableFile } from './files.ts';
import { openReadable, type OpenedFile } from './open-book.ts';
import { withProgress } from './progress.ts';
import { showFinding, showUnreadable } from './show-finding.ts';
import { withExamples } from './examples.ts';
import { remark } from './terminal.ts';

interface CheckOptions {
  readonly json?: boolean;
  readonly sarif?: boolean;
  readonly hints: boolean;
  readonly color: ColorWhen;
}

export function addCheck(program: Command): void {
  const command = program
    .command('check')
    .argument('<files...>', 'files, folders, patterns; - reads standard input')
    .summary('say what can’t work')
    .description('Reads plays and prints what can’t work, each finding with its line. Ends with 0 when all is well, 1 when there are errors or warnings, or a file cannot be read, 2 when the call itself is wrong or a file is written in a newer notation; the other files are read all the same.')
    .addOption(new Option('--json', 'print JSON, version 1: files, findings, counts; lines and columns from 1'))
    .addOption(new Option('--sarif', 'print SARIF 2.1.0, which review services read: each finding stands at its line, with its manual entry').conflicts('json'))
    .addOption(new Option('--no-hints', 'leave out hints'))
    .addOption(colorOption())
    .action((names: string[], options: CheckOptions) => {
      const forMachines = options.json === true || options.sarif === true;
      const found = findFiles(names);
      const { files, refused } = openReadable(found.filter((file): file is SourceFile => !isUnreadable(file)));
      for (const why of refused) remark(`setwright: ${why}`);
      if (refused.length > 0) process.exitCode = 2;
      const colors = colorsFor(options.color);
      const checked = withProgress(files, 'files checked', (file): Checked => {
        const findings = file.findings().filter(({ severity }) => options.hints || severity !== 'hint');
        const shown = forMachines ? [] : findings.map((finding) => asText(file, finding, colors));
        file.done();
        return { file, findings, shown };
      });
      // In the order of the call, what cannot be read at its place.
      const byName = new Map(checked.map((one) => [one.file?.name, one]));
      const kept = found.flatMap((one): readonly Checked[] => {
        if (isUnreadable(one)) return [{ unreadable: one, shown: [showUnreadable(one, colors)] }];
        const own = byName.get(one.name);
        return own === undefined ? [] : [own];
      });
      if (options.sarif === true) console.log(JSON.stringify(toSarif(kept, refused, program.version() ?? ''), null, 2));
      if (kept.length === 0) return;
      if (options.sarif !== true) console.log(options.json === true ? JSON.stringify(toJson(kept), null, 2) : [...kept.flatMap(({ shown }) => shown), summary(kept)].join('\n\n'));
      if (kept.some(({ findings = [], unreadable }) => unreadable !== undefined || findings.some(({ severity }) => severity !== 'hint'))) process.exitCode ??= 1;
    });
  withExamples(command, 'setwright check examples/lighthouse.play', 'setwright check plays "archive/**/*.play"', 'setwright check plays --json --no-hints', 'setwright check plays --sarif > plays.sarif', 'setwright check - < lighthouse.play');
}

/** A file with its findings, or one that cannot be read; `shown` is what is printed of it, empty where JSON is asked for. */
type Checked = { readonly shown: readonly string[] } & (
  | { readonly file: OpenedFile; readonly findings: readonly FileFinding[]; readonly unreadable?: undefined }
  | { readonly unreadable: UnreadableFile; readonly file?: undefined; readonly findings?: undefined }
);

function asText(file: OpenedFile, finding: FileFinding, colors: ReturnType<typeof colorsFor>): string {
  const fileLine = finding.firstLine + finding.place.line;
  return showFinding(file.name, { ...finding, fileLine, text: file.line(fileLine), ...file.wayOf(finding) }, colors);
}

function summary(checked: readonly Checked[]): string {
  const { counts } = toJson(checked);
  const where = `${several(counts.plays, 'play')} in ${several(counts.files, 'file')}`;
  const said = (['error', 'warning', 'hint'] as const).filter((severity) => counts[severity] > 0).map((severity) => several(counts[severity], severity));
  return said.length === 0 ? `${where}: nothing to mend.` : `${where}: ${said.join(', ')}.`;
}

/** `1 play`, `3 plays`. */
function several(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function toJson(checked: readonly Checked[]): CheckOutput {
  const files = checked.map(({ file, findings, unreadable }): CheckedFile => (unreadable !== undefined ? { file: unreadable.name, findings: [], unreadable: unreadable.why } : { file: file.name, findings: findings.map(findingToJson) }));
  const all = checked.flatMap(({ findings = [] }) => findings);
  const unreadable = checked.filter((one) => one.unreadable !== undefined).length;
  const count = (severity: FileFinding['severity']) => all.filter((finding) => finding.severity === severity).length;
  return {
    version: 1,
    files,
    counts: { files: files.length, plays: checked.reduce((sum, { file }) => sum + (file?.count ?? 0), 0), error: count('error') + unreadable, warning: count('warning'), hint: count('hint') },
  };
}

function findingToJson(finding: FileFinding): JsonFinding {
  const { firstLine } = finding;
  const { code, severity, message, params, play, part, run, moment, spot, source, related, fixes } = { ...finding, ...tellFinding(finding) };
  const place = (at: TextPlace): JsonPlace => ({ line: firstLine + at.line + 1, column: at.at + 1, endColumn: at.to + 1 });
  return {
    ...place(finding.place),
    code, severity, message, params,
    ...(play !== undefined && { play }),
    ...(part !== undefined && { part }),
    ...(run !== undefined && { run }),
    ...(moment !== undefined && { moment }),
    ...(spot !== undefined && { spot }),
    ...(source !== undefined && { source }),
    related: related.map((other) => ({ ...place(other.place), message: other.message })),
    fixes: fixes.map(({ title, edits }) => ({ title, edits: edits.map((edit) => ({ ...place(edit), text: edit.text, newLine: edit.newLine === true, wholeLine: edit.wholeLine === true })) })),
  };
}
