// What is still missing is told more quietly while it can be on its way: of the play whose end is being written, that it has no ending yet; of
// the line being written, that it stops, or that it says no receiver yet. Nothing is left out, and nothing is quieter on the command line, where
// nobody writes.
import type { ParsedLine } from '../grammar/parse-line.ts';
import { entryOf } from './catalogue.ts';
import type { Finding } from './finding.ts';

/** Where a play is being written. */
export interface WrittenAt {
  /** Of the last edit, counted from the play's first. */
  readonly line: number;
  /** The cursor stands in it no more: what the line itself lacks is told in full. */
  readonly left?: boolean;
}

/** The findings of a play of these lines while it is being written there. */
export function whileWritten<Told extends Finding>(findings: readonly Told[], lines: readonly { readonly parsed: ParsedLine }[], { line, left = false }: WrittenAt): readonly Told[] {
  const written = lines[line];
  if (written === undefined) return findings;
  const isEnd = !lines.slice(line + 1).some(({ parsed }) => saysSomething(parsed));
  const { fault } = written.parsed;
  const isComing = ({ code, place }: Told): boolean => {
    const coming = entryOf(code)?.stillToCome;
    if (coming === 'below' && isEnd && place.line <= line) return true;
    return !left && place.line === line && (coming === 'in-line' || (fault?.unfinished === true && fault.code === code));
  };
  return findings.map((finding) => (isComing(finding) ? { ...finding, severity: 'hint', unfinished: true } : finding));
}

const saysSomething = ({ tree, fault }: ParsedLine): boolean => tree !== undefined || fault !== undefined;
