// Each finding's fixes, as the light bulb's quick fixes.
import { CodeActionKind, type CodeAction, type Diagnostic, type Range } from 'vscode-languageserver-types';
import { blockOfKey } from '../../language/book/book.ts';
import type { FileFinding } from '../../language/compile.ts';
import type { Fix } from '../../language/checks/finding.ts';
import type { OpenDocument } from './documents.ts';
import { meet, textEditOf, visibleRange } from './positions.ts';

/** What mends the findings that touch the range; the fix a finding prefers stands first. `only`: kinds the editor asks for. */
export function codeActions(document: OpenDocument, findings: readonly FileFinding[], range: Range, diagnostics: readonly Diagnostic[], only?: readonly string[]): CodeAction[] {
  if (only !== undefined && !only.some((kind) => CodeActionKind.QuickFix.startsWith(kind))) return [];
  return findings.flatMap((finding) => {
    const block = blockOfKey(document.file, finding.block);
    if (block === undefined) return [];
    const place = visibleRange(block, finding.firstLine, finding.place);
    if (!meet(place, range)) return [];
    const solves = diagnostics.filter(({ code, range: { start } }) => code === finding.code && start.line === place.start.line);
    return preferredFirst(finding.fixes).map((fix): CodeAction => ({
      title: fix.title,
      kind: CodeActionKind.QuickFix,
      ...(fix.preferred === true && { isPreferred: true }),
      ...(solves.length > 0 && { diagnostics: solves }),
      edit: { documentChanges: [{ textDocument: { uri: document.uri, version: document.version }, edits: fix.edits.map((edit) => textEditOf(block, finding.firstLine, edit)) }] },
    }));
  });
}

const preferredFirst = (fixes: readonly Fix[]): readonly Fix[] => fixes.toSorted((a, b) => Number(b.preferred === true) - Number(a.preferred === true));
