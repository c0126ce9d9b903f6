// `setwright check FILE…`: what can't work, as text or JSON.
import { tellFinding } from '../../language/checks/tell-finding.ts';
import { Option, type Command } from 'commander';
import type { FileFinding } from '../../language/compile.ts';
import type { TextPlace } from '../../language/play/play.ts';
import type { CheckedFile, CheckOutput, JsonFinding, JsonPlace } from './check-json.ts';
import { colorOption, colorsFor, type ColorWhen } from './colors.ts';
import { readFiles } from './files.ts';
import { openReadable, type OpenedFile } from './open-book.ts';
import { withProgress } from './progress.ts';
import { showFinding } from './show-finding.ts';

interface CheckOptions {
  readonly json?: boolean;
  readonly hints: boolean;
  readonly color: ColorWhen;
}

export function addCheck(program: Command): void {
  program
    .command('check')
    .argument('<files...>', 'files, folders, patterns; - reads standard input')
    .summary('say what can’t work')
    .description('Reads plays and prints what can’t work, each finding with its line. Ends with 0 when all is well, 1 when there are errors or warnings, 2 when the call itself is wrong or a file is written in a newer notation; the other files are read all the same.')
    .addOption(new Option('--json', 'print JSON, version 1: files, findings, counts; lines and columns from 1'))
    .addOption(new Option('--no-hints', 'leave out hints'))
    .addOption(colorOption())
    .addHelpText('after', '\nExamples:\n  setwright check examples/lighthouse.play\n  setwright check plays "archive/**/*.play"\n  setwright check plays --json --no-hints\n  setwright check - < lighthouse.play')
    .action((names: string[], options: CheckOptions) => {
      const { files, refused } = openReadable(readFiles(names));
      for (const why of refused) console.error(`setwright: ${why}`);
      if (refused.length > 0) process.exitCode = 2;
      if (files.length === 0) return;
      const colors = colorsFor(options.color);
      const kept = withProgress(files, 'files', (file): Checked => {
        const findings = file.findings().filter(({ severity }) => options.hints || severity !== 'hint');
        const shown = options.json === true ? [] : findings.map((finding) => asText(file, finding, colors));
        file.done();
        return { file, findings, shown };
      });
      console.log(options.json === true ? JSON.stringify(toJson(kept), null, 2) : [...kept.flatMap(({ shown }) => shown), summary(kept)].join('\n\n'));
      if (kept.some(({ findings }) => findings.some(({ severity }) => severity !== 'hint'))) process.exitCode ??= 1;
    });
}

interface Checked {
  readonly file: OpenedFile;
  readonly findings: readonly FileFinding[];
  /** The findings as text; empty where JSON is asked for. */
  readonly shown: readonly string[];
}

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

export function toJson(checked: readonly Checked[]): CheckOutput {
  const files = checked.map(({ file, findings }): CheckedFile => ({ file: file.name, findings: findings.map(findingToJson) }));
  const all = checked.flatMap(({ findings }) => findings);
  const count = (severity: FileFinding['severity']) => all.filter((finding) => finding.severity === severity).length;
  return {
    version: 1,
    files,
    counts: { files: files.length, plays: checked.reduce((sum, { file }) => sum + file.count, 0), error: count('error'), warning: count('warning'), hint: count('hint') },
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
