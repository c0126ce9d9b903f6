// Every finding that has one usual mend, mended: one after the other, each kept only if the text is better for it.
import { editFile, textOf, type Book } from '../book/book.ts';
import type { BlockEdit, Finding } from '../checks/finding.ts';
import type { FileEdit } from '../names/rename.ts';

/** A finding with the line of the file its block starts on. */
export type Found = Finding & { readonly firstLine: number };

/** No file has more slips of the pen than a coach would mend by hand first. */
const most = 200;

/** The edit that does it, one for the whole stretch that changes; none where nothing can be mended so. `findingsOf` tells all that is wrong with the file in a book. */
export function fixAll(book: Book, uri: string, findingsOf: (book: Book) => readonly Found[]): readonly FileEdit[] {
  let now = book;
  let findings = findingsOf(now);
  const tried = new Set<string>();
  for (let round = 0; round < most; round++) {
    const next = findings.find((finding) => usual(finding) !== undefined && !tried.has(nameOf(finding)));
    if (next === undefined) break;
    tried.add(nameOf(next));
    const then = usual(next)!.toReversed().reduce((text, edit) => editFile(text, uri, [fileEdit(next.firstLine, edit)]), now);
    const after = findingsOf(then);
    // A line that can be read again may bring up what the checks could not see before.
    const isBetter = next.part === undefined ? ofLines(after) < ofLines(findings) : after.length < findings.length;
    if (!isBetter) continue;
    now = then;
    findings = after;
    // What did not help before may help now.
    tried.clear();
  }
  const [before, text] = [book, now].map((one) => textOf(one.files.get(uri)!)) as [string, string];
  return before === text ? [] : [changedStretch(uri, before, text)];
}

/** How such a line was to end nobody but the coach knows. */
const stopsShort: ReadonlySet<string> = new Set(['line-unfinished', 'open-quote']);
const usual = ({ code, fixes }: Finding): readonly BlockEdit[] | undefined => (stopsShort.has(code) ? undefined : fixes.find(({ preferred }) => preferred === true)?.edits);
const nameOf = ({ code, firstLine, place }: Found): string => `${code} ${firstLine + place.line} ${place.at}`;
const ofLines = (findings: readonly Finding[]): number => findings.filter(({ part }) => part === undefined).length;

function fileEdit(firstLine: number, { line, at, to, text, newLine, wholeLine }: BlockEdit) {
  const here = firstLine + line;
  if (newLine === true) return { range: { start: { line: here, character: 0 }, end: { line: here, character: 0 } }, text: `${text}\n` };
  if (wholeLine === true) return { range: { start: { line: here, character: 0 }, end: { line: here + 1, character: 0 } }, text: '' };
  return { range: { start: { line: here, character: at }, end: { line: here, character: to } }, text };
}

/** From the first line that differs to the last. */
function changedStretch(uri: string, before: string, after: string): FileEdit {
  const [old, fresh] = [before, after].map((text) => text.split(/(?<=\n)/)) as [string[], string[]];
  let head = 0;
  while (head < old.length && head < fresh.length && old[head] === fresh[head]) head++;
  let tail = 0;
  while (tail < old.length - head && tail < fresh.length - head && old[old.length - 1 - tail] === fresh[fresh.length - 1 - tail]) tail++;
  const behind = old.length - tail;
  const end = behind < old.length || before.endsWith('\n') ? { line: behind, character: 0 } : { line: old.length - 1, character: old.at(-1)!.length };
  return { uri, range: { start: { line: head, character: 0 }, end }, text: fresh.slice(head, fresh.length - tail).join('') };
}
