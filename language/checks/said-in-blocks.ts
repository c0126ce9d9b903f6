// Lines of a roster, an alignment and a book as coaches write them, where they cannot be read: there a number is no player who does something.
import type { Block } from '../book/book.ts';
import { parseLine, type ParsedLine } from '../grammar/parse-line.ts';
import { message, type Message } from '../message/message.ts';
import type { Finding, Fix } from './finding.ts';
import { nearestWord } from './nearest-word.ts';
import { findingsOfLine } from './lines.ts';
import { inWords } from './tell-finding.ts';

/** The findings of the `line`-th line of a block that is no play. */
export function findingsInBlock(block: Block, lines: readonly ParsedLine[], line: number): readonly Finding[] {
  const found = findingsOfLine(lines[line]!, line);
  const { fault } = lines[line]!;
  if (fault === undefined || fault.code === 'line-too-long') return found;
  const meant = block.kind === 'roster' ? ofRoster(lines[line]!, line) : block.kind === 'alignment' ? ofAlignment(lines[line]!, line) : block.kind === 'book' ? ofBook(lines, line) : undefined;
  if (meant === undefined) return found;
  return found.map((finding, at) => (at === 0 ? { ...finding, ...inWords(meant.message), fixes: [meant.fix] } : finding));
}

interface Meant {
  readonly message: Message;
  readonly fix: Fix;
}

const paces = ['fast', 'average', 'slow'];

/** `1 Ana`, `7: Bo`, `12 - Cy (captain)`: what else is said of him stays, as a remark. A pace, with a number or misspelt (`fst`), is told by its own fault. */
function ofRoster(line: ParsedLine, at: number): Meant | undefined {
  const [, number, name, behindASign, behindADash] = /^(?:no\.?|number)?\s*(\d{1,2})\s*[.:,)–-]?\s*["“]?(\p{L}[^"“”,(]*?)["”]?\s*(?:[,(–]([^\d]*)|\s-([^\d]*))?$/iu.exec(wordsOf(line)) ?? [];
  if (number === undefined) return undefined;
  const remark = (behindASign ?? behindADash)?.replace(/\)\s*$/, '').trim();
  if (remark !== undefined && nearestWord(remark, paces) !== undefined) return undefined;
  return instead(line, at, `${number} "${name!.trim()}"${remark ? ` # ${remark}` : ''}`, (words) => message('A player of the roster is his number and his name in quotes: {words}.', { words }));
}

/** `3: left wing`, `4 - right block` */
function ofAlignment(line: ParsedLine, at: number): Meant | undefined {
  const [, number, place] = /^([1-5])\s*[.:,)–-]+\s*(\S.*)$/u.exec(wordsOf(line)) ?? [];
  return number === undefined ? undefined : instead(line, at, `${number} ${place}`, (words) => message('Who stands where in an alignment is said without signs between: {words}.', { words }));
}

/** The line without its indentation and its remark. */
const wordsOf = ({ text, comment }: ParsedLine): string => text.slice(0, comment?.at).trim();

function instead(line: ParsedLine, number: number, words: string, tell: (words: string) => Message): Meant | undefined {
  if (parseLine(words).fault !== undefined) return undefined;
  const at = line.text.search(/\S/);
  return { message: tell(words), fix: { title: message('Write "{words}"', { words }), preferred: true, edits: [{ line: number, at, to: at + wordsOf(line).length, text: words }] } };
}

/** `"Lighthouse"` on a line of its own below a section. */
function ofBook(lines: readonly ParsedLine[], line: number): Meant | undefined {
  const { text } = lines[line]!;
  const [, name] = /^\s*[-*•]?\s*["“]?([^"“”#:]+?)["”]?\s*,?\s*$/u.exec(text) ?? [];
  let section = line - 1;
  while (section >= 0 && lines[section]!.tree?.$type !== 'Section') section--;
  const { tree, text: above } = lines[section] ?? {};
  if (name === undefined || tree?.$type !== 'Section' || above === undefined || above.includes('#')) return undefined;
  const added = `${tree.plays.length === 0 ? ': ' : ', '}"${name}"`;
  const to = above.trimEnd().length;
  return {
    message: message('The plays of a section stand behind its name, with commas between: {words}.', { words: `${above.trim()}${added}` }),
    fix: { title: message('Put "{name}" into the section above', { name }), preferred: true, edits: [{ line: section, at: to, to, text: added }, { line, at: 0, to: text.length, text: '' }] },
  };
}
