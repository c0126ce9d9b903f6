// The words of one line as they are usually set: single blanks, none before a comma, the verb in its subject's number.
import type { LineTree } from '../grammar/tree.ts';
import { meaningOf } from '../book/meaning.ts';
import { parseLine, type ParsedLine } from '../grammar/parse-line.ts';

const kept = new WeakMap<ParsedLine, string>();

/** The words of a line that can be read, without indentation and comment; undefined for a line that is blank, broken or only a comment. */
export function formatWords(parsed: ParsedLine): string | undefined {
  if (parsed.tree === undefined || parsed.fault !== undefined) return undefined;
  const known = kept.get(parsed);
  if (known !== undefined) return known;
  const words = setWords(parsed, parsed.tree);
  kept.set(parsed, words);
  return words;
}

function setWords(parsed: ParsedLine, tree: LineTree): string {
  const { text, comment } = parsed;
  const written = text.slice(0, comment?.at);
  const says = (words: string): boolean => {
    const read = parseLine(words);
    return read.fault === undefined && read.comment === undefined && read.tree !== undefined && meaningOf(read.tree) === meaningOf(tree);
  };
  const asWritten = written.trim();
  return [spaced(agreeing(written, parsed)), spaced(written)].find((words) => words === asWritten || says(words)) ?? asWritten;
}

/** `4 screen` → `4 screens`, as the grammar's own warning mends it. */
function agreeing(written: string, { warnings }: ParsedLine): string {
  const edits = warnings.flatMap(({ code, fixes }) => (code === 'verb-number' ? (fixes[0]?.edits ?? []) : []));
  return edits.toSorted((a, b) => b.at - a.at).reduce((words, { at, to, text }) => words.slice(0, at) + text + words.slice(to), written);
}

/** What stands between quotes is the coach's own. */
function spaced(written: string): string {
  const names: string[] = [];
  const open = written.replace(/"[^"]*"|“[^“”"]*”/gu, (name) => ` \u0000${names.push(name) - 1}\u0000 `);
  const set = open.replace(/\s+/gu, ' ').replace(/ ?([,:]) ?/g, '$1 ').replace(/\( /g, '(').replace(/ \)/g, ')').trim();
  return set.replace(/\u0000(\d+)\u0000/g, (_, at: string) => names[Number(at)]!);
}
