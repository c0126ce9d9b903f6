import { message } from '../message/message.ts';
import { agreementOf, type LineWarning } from './mending/agreement.ts';
import { applyEdits, breakDown, type Broken } from './mending/broken-line.ts';
import { carriedOut } from './mending/carried-out.ts';
import { lineParser } from './reading/line-parser.ts';
import type { LexedLine } from './reading/lexer.ts';
import type { LineFault } from './line-fault.ts';
import { faultOf } from './mending/messages.ts';
import { withPlainVerbs } from './mending/plain-verb.ts';
import { unheard } from './mending/unheard.ts';
import { unquotedRemark } from './mending/unquoted-remark.ts';
import type { Columns, LineTree, LookTree, StatementTree } from './tree.ts';

export type { LineEdit, LineFault, LineFix } from './line-fault.ts';
export type { LineWarning } from './mending/agreement.ts';
export { verbMissing } from './mending/agreement.ts';

export type BlockKind = 'play' | 'step' | 'alignment' | 'roster' | 'book';

/** CONTRACT. A line read by itself. Blank lines and lines that hold only a comment have neither tree nor fault. */
export interface ParsedLine {
  readonly text: string;
  /** What could be read. With a fault: what stands before it, if anything. */
  readonly tree?: LineTree;
  /** The block that the first word opens, even if the rest is broken. */
  readonly opens?: BlockKind;
  /** The quoted name behind that word, if one can be read. */
  readonly openName?: string;
  readonly fault?: LineFault;
  /** With a fault: the part of the line that the play goes on with. */
  readonly carriedOut?: StatementTree | LookTree;
  readonly warnings: readonly LineWarning[];
  /** Columns of `# …`. */
  readonly comment?: Columns;
}

/** Longer lines are not read: no line of a play needs a tenth of it. */
export const LONGEST_LINE = 2000;

const OPENERS = new Set<string>(['play', 'step', 'alignment', 'roster', 'book'] satisfies BlockKind[]);

function opening(lexed: LexedLine): { opens?: BlockKind; openName?: string } {
  const word = lexed.tokens[0]?.tokenType.name;
  if (word === undefined || !OPENERS.has(word)) return {};
  const second = lexed.tokens[1];
  return { opens: word as BlockKind, ...(second?.tokenType.name === 'STRING' ? { openName: second.image.slice(1, -1) } : {}) };
}

/** Reads one line. Pure; never throws; bounded time for any text. Cut the text at newlines first. */
export function parseLine(text: string): ParsedLine {
  const parser = lineParser();
  const tooLong = text.length > LONGEST_LINE;
  const lexed = parser.lexer.lex(tooLong ? text.slice(0, 200) : text);
  const opened = opening(lexed);
  if (tooLong) {
    const told = message('This line has {length} characters. Lines longer than {limit} are not read: put each action on its own line.', { length: text.length, limit: LONGEST_LINE });
    return { text, ...opened, warnings: [], fault: { code: 'line-too-long', at: 0, to: text.length, message: told, params: { length: text.length, limit: LONGEST_LINE }, fixes: [], unfinished: false } };
  }
  const comment = lexed.comment ? { comment: lexed.comment } : {};
  if (lexed.tokens.length === 0) return { text, warnings: numberBehindAMark(text), ...comment };
  const { tree, whole } = parser.parse(lexed);
  const read = { text, ...(tree ? { tree } : {}), ...opened, warnings: whole && tree ? agreementOf(tree) : [], ...comment };
  if (whole) return read;
  const broken = breakDown(text, lexed);
  return { ...read, ...(unheard(broken) ?? withPlainVerbs(broken) ?? unquotedRemark(broken) ?? refused(broken)) };
}

/** `#4 pops to the top`: by its mark a remark in the text, and nobody pops. */
function numberBehindAMark(text: string): readonly LineWarning[] {
  if (!/^\s*#[1-5] /.test(text)) return [];
  const at = text.indexOf('#');
  const { lexer, parse } = lineParser();
  const { tree, whole } = parse(lexer.lex(`${text.slice(0, at)} ${text.slice(at + 1)}`));
  if (!whole || tree?.$type !== 'Statement') return [];
  return [{ code: 'words-not-read', at, to: text.trimEnd().length, message: message('What stands behind # is a remark in the text: nobody does it. Leave out "#" if {who} is to do it.', { who: text[at + 1]! }), fixes: [{ title: message('Leave out "{words}"', { words: '#' }), edits: [{ at, to: at + 1, text: '' }] }] }];
}

/** What is wrong, and what of the line is carried out all the same. */
function refused(broken: Broken): Pick<ParsedLine, 'fault' | 'carriedOut'> {
  const fault = faultOf(broken);
  // What begins a block or a head line is no deed: `phase 1 when X4 switches`.
  const [fix] = fault.fixes;
  const part = fix !== undefined && /^\s*(?:step|play|situation|call|from|rebound)\b/.test(applyEdits(broken.text, fix.edits)) ? undefined : carriedOut(broken);
  if (part === undefined) return { fault };
  return { fault: { ...fault, message: message('{told} Until that is mended, only this is carried out: “{words}”.', { told: fault.message, words: part.words }) }, carriedOut: part.tree };
}
