// What has changed, on a terminal.
import type { Colors } from 'picocolors/types';
import type { Finding } from '../../language/checks/finding.ts';
import type { ChangedLine } from '../../language/compare/changed-lines.ts';
import type { BlockChange } from '../../language/compare/compare-blocks.ts';
import type { Between, FindingsChange, WhatChanged } from '../../language/compare/compare-plays.ts';
import type { Change, Comparison, PlacedFinding } from './comparison.ts';
import { lastVersion, lookCells, sayCall, sayBlock, sayBlockKind, sayKind, sayPart, saySection, sayUse, summary } from './say-change.ts';
import { table } from './table.ts';

export function compareText(comparison: Comparison, colors: Colors): string {
  const beside = findingsText(comparison.beside, placeOf, placeOf, colors);
  return [
    ...comparison.changes.map((change) => playText(change, comparison, colors)),
    ...comparison.blocks.map((change) => blockText(change, comparison, colors)),
    ...(beside.length === 0 ? [] : [['Outside the plays', ...beside].join('\n')]),
    summary(comparison),
  ].join('\n\n');
}

const placeOf = ({ file, line }: PlacedFinding): string => `${file}, line ${line}`;

function playText(change: Change, { fileOf, lineOf }: Comparison, colors: Colors): string {
  const paint = change.kind === 'came' ? colors.green : change.kind === 'went' ? colors.red : String;
  const version = lastVersion(change);
  const head = `${colors.bold(version.play.name)}  ${paint(sayKind(change))}  ${colors.dim(fileOf(version))}`;
  if (change.kind === 'went') return head;
  if (change.kind === 'came') {
    const { times } = version.timeline;
    const needed = [['the first look', times.firstLook], ['every look', times.allLooks]] as const;
    return [head, ...needed.flatMap(([what, need]) => (need === undefined ? [] : [`  on the clock for ${what}: ${need.fromCall} s`])), ...version.findings.map((finding) => findingText(finding.severity, finding, `line ${lineOf(version, finding)}`, colors))].join('\n');
  }
  return [
    head,
    ...change.parts.flatMap((part) => [`  ${sayPart(part)}`, ...part.lines.map((line) => lineText(line, colors, '    '))]),
    ...looksText(change),
    ...callText('the first look', change.firstLook),
    ...callText('every look', change.allLooks),
    ...findingsText(change.findings, (finding) => `line ${lineOf(change.after, finding)}`, (finding) => `line ${lineOf(change.before, finding)}`, colors),
  ].join('\n');
}

function findingsText<One extends Finding>({ came, went, otherwise }: FindingsChange<One>, whereNow: (finding: One) => string, whereThen: (finding: One) => string, colors: Colors): readonly string[] {
  return [
    ...came.map((finding) => findingText(`new ${finding.severity}`, finding, whereNow(finding), colors)),
    ...went.map((finding) => findingText(`${finding.severity} gone`, finding, whereThen(finding), colors)),
    ...otherwise.map(({ after }) => findingText(`${after.severity} with other numbers`, after, whereNow(after), colors)),
  ];
}

function findingText(what: string, { code, message }: Finding, where: string, colors: Colors): string {
  return `  ${what}, ${colors.dim(code)}: ${message} ${colors.dim(`(${where})`)}`;
}

function lineText({ kind, text }: ChangedLine, colors: Colors, margin: string): string {
  return kind === 'came' ? colors.green(`${margin}+ ${text}`) : colors.red(`${margin}- ${text}`);
}

function looksText({ looks }: WhatChanged): readonly string[] {
  return looks.length === 0 ? [] : [table(['look', 'typical', 'late'], looks.map(lookCells)).replace(/^/gm, '  ')];
}

const callText = (what: string, between: Between<number> | undefined): readonly string[] => sayCall(what, between).map((words) => `  ${words}`);

function blockText(change: BlockChange, { fileOfBlock }: Comparison, colors: Colors): string {
  const use = sayUse(change);
  return [
    `${colors.bold(sayBlock(change))}  ${sayBlockKind(change)}  ${colors.dim(fileOfBlock(change))}`,
    ...change.lines.map((line) => lineText(line, colors, '  ')),
    ...change.sections.map((section) => `  ${saySection(section)}`),
    ...(use === undefined ? [] : [`  ${use}`]),
  ].join('\n');
}
