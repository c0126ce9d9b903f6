import type { BlockEdit } from '../checks/finding.ts';

/** A block's lines with edits made: the ones at the end first, so that none shifts another. A `newLine` edit adds its text as a line of its own, a `wholeLine` edit takes its line out. */
export function applyBlockEdits(lines: readonly string[], edits: readonly BlockEdit[]): readonly string[] {
  const result = [...lines];
  for (const edit of inReverse(edits)) {
    const line = result[edit.line] ?? '';
    if (edit.newLine === true) result.splice(edit.line, 0, edit.text);
    else if (edit.wholeLine === true) result.splice(edit.line, 1);
    else result[edit.line] = line.slice(0, edit.at) + edit.text + line.slice(edit.to);
  }
  return result;
}

function inReverse(edits: readonly BlockEdit[]): readonly BlockEdit[] {
  return edits.toSorted((a, b) => b.line - a.line || Number(a.newLine ?? false) - Number(b.newLine ?? false) || b.at - a.at);
}
