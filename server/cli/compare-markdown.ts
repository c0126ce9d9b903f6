// What has changed, as a comment in a review: a table of the plays, then each with its lines, its looks and what is wrong. In the Markdown that
// review services share (tables, fenced code, <details>).
import type { Finding } from '../../language/checks/finding.ts';
import type { ChangedLine } from '../../language/compare/changed-lines.ts';
import type { BlockChange } from '../../language/compare/compare-blocks.ts';
import type { FindingsChange } from '../../language/compare/compare-plays.ts';
import type { Compiled } from '../../language/compile.ts';
import { capital } from '../../language/words/sentences.ts';
import { plain } from '../lsp/plain.ts';
import type { PictureNames } from './compare-pictures.ts';
import type { Change, Comparison } from './comparison.ts';
import { lastVersion, lookCells, sayBetween, sayBlock, sayBlockKind, sayKind, sayPart, saySection, sayUse, summary } from './say-change.ts';

/** A comment may have 65,536 characters (from memory, of one service); what is longer is refused whole. */
const mostSigns = 60_000;

export interface Pictures {
  /** Where the folder with the pictures can be seen, with a slash at its end. */
  readonly at: string;
  readonly of: (change: Change) => PictureNames;
}

export function compareMarkdown(comparison: Comparison, pictures?: Pictures): string {
  const { changes, blocks } = comparison;
  const beside = findingItems(comparison.beside, placeOf, placeOf);
  const head = [
    '### What has changed in the plays',
    escaped(summary(comparison)),
    ...(changes.length === 0 ? [] : [table(['play', '', 'on the clock, first look', 'on the clock, every look', 'findings'], changes.map(row)), 'Seconds that must be on the clock when it is called: figures of a model, not a promise.']),
  ];
  const rest = [...blocks.map((change) => blockSection(change, comparison)), ...(beside.length === 0 ? [] : [`#### Outside the plays\n\n${beside.join('\n')}`])];
  const plays = changes.filter((change) => change.kind !== 'went' || pictures !== undefined).map((change) => playSection(change, comparison, pictures));
  const room = mostSigns - [...head, ...rest].join('\n\n').length;
  const told = plays.filter((_, at) => plays.slice(0, at + 1).join('\n\n').length < room);
  const left = plays.length - told.length;
  return [...head, ...told, ...(left === 0 ? [] : [`${left === 1 ? 'One more play has' : `${left} more plays have`} changed than a comment has room for: \`setwright compare\` tells of all.`]), ...rest].join('\n\n');
}

const placeOf = ({ file, line }: Comparison['beside']['came'][number]): string => `${file}, line ${line}`;

/** `| Tide | changed | 7 s → 8 s | 9 s | 1 new error |` */
function row(change: Change): readonly string[] {
  const call = (which: 'firstLook' | 'allLooks') => {
    const seconds = (version: Compiled | undefined) => version?.timeline.times[which]?.fromCall;
    const [was, is] = [seconds(change.kind === 'came' ? undefined : change.before), seconds(change.kind === 'went' ? undefined : change.after)];
    const alone = is ?? was;
    return change.kind === 'changed' ? sayBetween({ ...(was !== undefined && { before: `${was} s` }), ...(is !== undefined && { after: `${is} s` }) }) : alone === undefined ? '' : `${alone} s`;
  };
  const findings = change.kind === 'changed' ? [countOf(change.findings.came, 'new'), countOf(change.findings.went, 'gone')] : change.kind === 'came' ? [countOf(change.after.findings, '')] : [];
  return [`**${escaped(lastVersion(change).play.name)}**`, escaped(sayKind(change)), call('firstLook'), call('allLooks'), findings.filter((some) => some !== '').join('; ')];
}

/** `2 errors, 1 hint new` */
function countOf(findings: readonly Finding[], what: string): string {
  const counts = (['error', 'warning', 'hint'] as const).flatMap((severity) => {
    const count = findings.filter((one) => one.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  return counts.length === 0 ? '' : `${counts.join(', ')} ${what}`.trim();
}

function playSection(change: Change, { fileOf, lineOf }: Comparison, pictures: Pictures | undefined): string {
  const version = lastVersion(change);
  const now = (finding: Finding) => `line ${lineOf(version, finding)}`;
  const told = [
    ...(change.kind !== 'changed' ? [] : change.parts.map((part) => `${capital(escaped(sayPart(part)))}\n\n${diff(part.lines)}`)),
    ...(change.kind !== 'changed' || change.looks.length === 0 ? [] : [table(['look', 'typical', 'late'], change.looks.map((look) => lookCells(look).map(escaped)))]),
    ...(change.kind === 'changed' ? findingItems(change.findings, now, (finding) => `line ${lineOf(change.before, finding)} before`) : change.kind === 'came' ? version.findings.map((finding) => item(finding.severity, finding, now(finding))) : []),
    ...(pictures === undefined ? [] : [picturesOf(change, pictures)]),
  ].filter((text) => text !== '');
  return [`#### ${escaped(version.play.name)}`, `${capital(escaped(sayKind(change)))}, ${code(fileOf(version))}`, ...(told.length === 0 ? [] : [`<details open><summary>Lines, looks, findings</summary>`, joined(told), '</details>'])].join('\n\n');
}

/** Items of one list stand close together. */
function joined(parts: readonly string[]): string {
  return parts.reduce((text, part, at) => (at === 0 ? part : `${text}${part.startsWith('- ') && parts[at - 1]!.startsWith('- ') ? '\n' : '\n\n'}${part}`), '');
}

function findingItems<One extends Finding>({ came, went, otherwise }: FindingsChange<One>, whereNow: (finding: One) => string, whereThen: (finding: One) => string): readonly string[] {
  return [
    ...came.map((finding) => item(`**new ${finding.severity}**`, finding, whereNow(finding))),
    ...went.map((finding) => item(`${finding.severity} gone`, finding, whereThen(finding))),
    ...otherwise.map(({ after }) => item(`${after.severity} with other numbers`, after, whereNow(after))),
  ];
}

function item(what: string, { code: id, message }: Finding, where: string): string {
  return `- ${what}, ${escaped(where)}: ${escaped(message)} (${code(id)})`;
}

function blockSection(change: BlockChange, { fileOfBlock }: Comparison): string {
  const use = sayUse(change);
  const items = [...change.sections.map(saySection), ...(use === undefined ? [] : [use])].map((text) => `- ${escaped(text)}`);
  return [`#### ${escaped(sayBlock(change))}`, `${capital(escaped(sayBlockKind(change)))}, ${code(fileOfBlock(change))}`, ...(change.lines.length === 0 ? [] : [diff(change.lines)]), ...(items.length === 0 ? [] : [items.join('\n')])].join('\n\n');
}

function picturesOf(change: Change, { at, of }: Pictures): string {
  const { before, after } = of(change);
  const shown = (what: string, file: string | undefined) => (file === undefined ? [] : [`<p>${what}</p>\n<img alt="${what}" src="${encodeURI(at)}${encodeURIComponent(file)}" width="600">`]);
  return before === undefined && after === undefined ? '' : [...shown('Before', before), ...shown(before === undefined && change.kind === 'changed' ? 'Before and after' : 'After', after)].join('\n');
}

function diff(lines: readonly ChangedLine[]): string {
  const texts = lines.map(({ kind, text }) => `${kind === 'came' ? '+' : '-'} ${text}`);
  const fence = '`'.repeat(Math.max(2, ...texts.flatMap((text) => [...text.matchAll(/`+/g)].map(([run]) => run.length))) + 1);
  return [`${fence}diff`, ...texts, fence].join('\n');
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** A coach's words with no sign that would set them otherwise, nor call anybody by an @. */
function escaped(text: string): string {
  return plain(text).replaceAll('@', '@\u2060').replaceAll(/\r?\n/g, ' ');
}

function code(text: string): string {
  return text.includes('`') ? escaped(text) : `\`${text.replaceAll('|', '\\|')}\``;
}
