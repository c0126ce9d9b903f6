// Findings as the editor's squiggles.
import { DiagnosticSeverity, DiagnosticTag, type Diagnostic, type DiagnosticRelatedInformation } from 'vscode-languageserver-types';
import type { Finding } from '../../language/checks/finding.ts';
import type { Block } from '../../language/book/book.ts';
import { tellFinding } from '../../language/checks/tell-finding.ts';
import { inEnglish, type Say } from '../../language/message/message.ts';
import { visibleRange } from './positions.ts';

const severities = { error: DiagnosticSeverity.Error, warning: DiagnosticSeverity.Warning, hint: DiagnosticSeverity.Hint } as const;
/** What can be left out of the text without changing the play. */
const unnecessary: ReadonlySet<string> = new Set(['allow-unused']);

/** `manual`: the address of a code’s manual entry, with `{code}` for the code. */
export function diagnosticOf(uri: string, block: Block, firstLine: number, untold: Finding, manual?: string, say: Say = inEnglish): Diagnostic {
  const finding = tellFinding(untold, say);
  const related: DiagnosticRelatedInformation[] = finding.related.map(({ place, message }) => ({ location: { uri, range: visibleRange(block, firstLine, place) }, message }));
  return {
    range: visibleRange(block, firstLine, finding.place),
    severity: severities[finding.severity],
    code: finding.code,
    ...(manual !== undefined && { codeDescription: { href: manual.replace('{code}', finding.code) } }),
    source: 'setwright',
    message: finding.message,
    ...(unnecessary.has(finding.code) && { tags: [DiagnosticTag.Unnecessary] }),
    ...(related.length > 0 && { relatedInformation: related }),
  };
}
