// What is wrong outside the plays: in a file's header, an alignment, a roster, a book.
import { inWords } from './tell-finding.ts';
import { message } from '../message/message.ts';
import type { Block } from '../book/book.ts';
import type { ParsedLine } from '../grammar/parse-line.ts';
import { newerNotation, NOTATION_VERSION } from '../names/notation-version.ts';
import type { Problem } from '../names/problem.ts';
import type { UnknownPlay } from '../names/section-problems.ts';
import { entryOf } from './catalogue.ts';
import type { Finding, Fix } from './finding.ts';
import { nearestWord, others, theNearest } from './nearest-word.ts';
import { findingsInBlock } from './said-in-blocks.ts';

/** Findings of a block that is no play, in text order. `problems` are those of the file's `use` lines, with parts `use:<line>`; `unknown` the plays a book names in vain; `uncounted` the line of a roster’s first pace. */
export function findingsOfOther(block: Block, problems: readonly Problem[], unknown: readonly UnknownPlay[] = [], uncounted?: number): readonly Finding[] {
  const lines = block.lines.map(({ parsed }) => parsed);
  const uses = problems.flatMap((problem) => told(problem.code, problem.params, Number(problem.part.slice('use:'.length)), lines));
  const stray = block.kind === 'file' ? strayLine(lines) : [];
  const newer = block.kind === 'file' ? newerNotation(lines) : undefined;
  const tooNew = newer === undefined ? [] : told('notation-newer', { version: newer.version, known: NOTATION_VERSION }, newer.line, lines);
  const paces = uncounted === undefined ? [] : told('paces-not-counted', {}, uncounted, lines);
  return [...lines.flatMap((_, line) => findingsInBlock(block, lines, line)), ...tooNew, ...uses, ...stray, ...unknown.flatMap(noSuchPlay), ...paces].toSorted((a, b) => a.place.line - b.place.line || a.place.at - b.place.at);
}

function noSuchPlay({ name, known, place }: UnknownPlay): readonly Finding[] {
  const entry = entryOf('unknown-play');
  if (entry === undefined) return [];
  const near = nearestWord(name, known);
  const fixes: readonly Fix[] = near === undefined ? [] : [{ title: message('Write "{near}"', { near }), preferred: true, edits: [{ ...place, text: near }] }];
  const params = { name, known, near: near === undefined ? (others(known) ?? '') : theNearest(near) };
  return [{ code: 'unknown-play', severity: entry.severity, ...inWords({ template: entry.message, params }), params, place, related: [], fixes }];
}

const ofFile = new Set<string>(['Notation', 'Use', 'Level', 'Rules', 'OwnSpot', 'Note']);

/** The first line of the header that needs a play; the others need the same one. Below an unreadable line it may be that which opened it. */
function strayLine(lines: readonly ParsedLine[]): readonly Finding[] {
  const at = lines.findIndex(({ tree, fault }) => tree !== undefined && fault === undefined && !ofFile.has(tree.$type));
  if (at < 0 || lines.slice(0, at).some(({ fault }) => fault !== undefined)) return [];
  return told('line-elsewhere', { belongs: message('in a play. Write a line such as play "Lighthouse" above it') }, at, lines);
}

function told(code: string, params: Finding['params'], line: number, lines: readonly ParsedLine[]): readonly Finding[] {
  const entry = entryOf(code);
  if (entry === undefined) return [];
  const text = lines[line]?.text ?? '';
  const at = text.search(/\S|$/);
  return [{ code, severity: entry.severity, ...inWords({ template: entry.message, params }), params, place: { line, at, to: text.trimEnd().length }, related: [], fixes: [] }];
}
