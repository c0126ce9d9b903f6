// What is still missing is told more quietly while it can be on its way: of the play whose end is being written, that it has no ending yet; of
// the line being written, that it says no receiver yet. Nothing is left out, and nothing is quieter on the command line, where nobody writes.
import type { ParsedLine } from '../grammar/parse-line.ts';
import { entryOf } from './catalogue.ts';
import type { Finding } from './finding.ts';

/** The findings of a play of these lines while `line` of it (counted from its first) is being written. */
export function whileWritten<Told extends Finding>(findings: readonly Told[], lines: readonly { readonly parsed: ParsedLine }[], line: number): readonly Told[] {
  if (line < 0 || line >= lines.length) return findings;
  const isEnd = !lines.slice(line + 1).some(({ parsed }) => saysSomething(parsed));
  return findings.map((finding) => {
    const coming = entryOf(finding.code)?.stillToCome;
    const isComing = coming === 'in-line' ? finding.place.line === line : coming === 'below' && isEnd && finding.place.line <= line;
    return isComing ? { ...finding, severity: 'hint', unfinished: true } : finding;
  });
}

const saysSomething = ({ tree, fault }: ParsedLine): boolean => tree !== undefined || fault !== undefined;
