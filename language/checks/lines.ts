// What is wrong with a line by itself.
import { inWords } from './tell-finding.ts';
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { Finding, Fix } from './finding.ts';
import { toldByLines } from './told-by-lines.ts';

/** A line's fault and its remarks, as findings of the block it is the `line`-th of. */
export function findingsOfLine({ text, fault, warnings }: ParsedLine, line: number): readonly Finding[] {
  const fixes = (list: NonNullable<ParsedLine['fault']>['fixes']): Fix[] =>
    list.map(({ title, edits, below }, at) => ({ title, ...(at === 0 && { preferred: true }), edits: [...edits.map((edit) => ({ line, ...edit })), ...(below === undefined ? [] : [ownLine(below)])] }));
  const ownLine = (words: string): Fix['edits'][number] => ({ line: line + 1, at: 0, to: 0, text: `${/^\s*/.exec(text)![0]}${words}`, newLine: true });
  const remarks = warnings.map((warning): Finding => ({
    code: warning.code, severity: toldByLines[warning.code].severity, ...inWords(warning.message), params: {}, place: { line, at: warning.at, to: warning.to }, related: [], fixes: fixes(warning.fixes),
  }));
  if (fault === undefined) return remarks;
  const broken: Finding = {
    code: fault.code,
    severity: 'error',
    ...inWords(fault.message),
    params: fault.params,
    place: { line, at: fault.at, to: fault.to },
    related: [],
    fixes: fixes(fault.fixes),
  };
  return [broken, ...remarks];
}
