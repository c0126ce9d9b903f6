// What can be written at the cursor, by the grammar and by how the game stands there.
import { CompletionItemKind, InsertTextFormat, InsertTextMode, MarkupKind, type CompletionItem, type CompletionList, type Position, type Range } from 'vscode-languageserver-types';
import * as v from 'valibot';
import { blockAtLine, type Book } from '../../../language/book/book.ts';
import { expectedAfter } from '../../../language/grammar/expected.ts';
import { parseLine } from '../../../language/grammar/parse-line.ts';
import type { Say } from '../../../language/message/message.ts';
import type { Asking } from '../asking.ts';
import type { OpenDocument } from '../documents.ts';
import { textOfLine } from '../positions.ts';
import { about } from './about.ts';
import { actionChoices } from './actions.ts';
import { chanceChoices } from './chances.ts';
import { inOrder, type Choice, type ChoiceKind } from './choice.ts';
import { bodiesOf, type Line } from './line.ts';
import { nameChoices } from './names.ts';
import { pictureOf } from './picture-of.ts';
import { placeChoices } from './places.ts';
import { playerChoices } from './players.ts';
import { standingAt } from './standing.ts';
import { statementChoices } from './statements.ts';
import { valueChoices, wordChoices } from './words.ts';

const kinds: Readonly<Record<ChoiceKind, CompletionItemKind>> = {
  player: CompletionItemKind.Variable, defender: CompletionItemKind.Variable, action: CompletionItemKind.Function, place: CompletionItemKind.Constant, name: CompletionItemKind.Reference,
  alignment: CompletionItemKind.Struct, shot: CompletionItemKind.Event, word: CompletionItemKind.Keyword, value: CompletionItemKind.Value, statement: CompletionItemKind.Snippet,
};

const dataSchema = v.object({ uri: v.string(), line: v.number(), kind: v.string() });
/** Beside the label, which every editor sends back: a hundred items are written at a keystroke. */
export type ItemData = v.InferOutput<typeof dataSchema>;

/** What an item carries for `documented`, read from the unknown. */
export function readItemData(value: unknown): ItemData | undefined {
  const read = v.safeParse(dataSchema, value);
  return read.success ? read.output : undefined;
}

export interface Wants {
  readonly say: Say;
  /** The editor knows whole lines with stops. */
  readonly withStops?: boolean;
}

export function completion(book: Book, document: OpenDocument, position: Position, { say, withStops = false }: Wants): CompletionList {
  const { block, firstLine } = blockAtLine(document.file, position.line);
  const at = position.line - firstLine;
  const text = textOfLine(block, at);
  const prefix = text.slice(0, position.character);
  const expected = expectedAfter(prefix);
  if (expected.items.length === 0) return { isIncomplete: false, items: [] };
  const standing = standingAt(book, document, position.line, prefix.slice(0, expected.from));
  const line: Line = { prefix, expected, block, at, standing, actors: bodiesOf(expected.acting?.subject), ...(standing.step !== undefined && { step: standing.step }) };
  const { items } = expected;
  const choices = inOrder([
    ...playerChoices(line, items.filter(({ kind }) => kind === 'player' || kind === 'xplayer')),
    ...actionChoices(line, items),
    ...placeChoices(line, items),
    ...nameChoices(line, items, book, document.file),
    ...wordChoices(line, items),
    ...valueChoices(line, items),
    ...chanceChoices(line),
    ...(withStops ? statementChoices(line) : []),
  ]);
  const typed = (choice: Choice) => prefix.slice(choice.from ?? expected.from);
  const fitting = choices.filter((choice) => begins(choice, typed(choice)));
  // The list closes over a word that is typed to its end: it would cover the lines below, with nothing to choose. What is longer stays where the word cannot stand alone.
  const said = fitting.find((choice) => squeezed(choice.text) === squeezed(typed(choice)));
  const longer = () => (parseLine(prefix).fault === undefined ? [] : fitting.filter((choice) => choice !== said && squeezed(choice.text).startsWith(squeezed(typed(choice)))));
  const open = said === undefined ? fitting : longer();
  return { isIncomplete: open.length > 0, items: open.map((choice, rank) => itemOf(choice, rank, { uri: document.uri, position, line, text, say })) };
}

/** Where several words are typed already the editor would match their letters loosely: `left w` is not `low post`. */
function begins({ text }: Choice, typed: string): boolean {
  return !/\s/.test(typed.trim() + (/\s$/.test(typed) ? ' ' : '')) || squeezed(text).startsWith(squeezed(typed));
}

const squeezed = (text: string): string => text.toLowerCase().replace(/[\s-]+/g, ' ');

interface Place {
  readonly uri: string;
  readonly position: Position;
  readonly line: Line;
  /** The whole line. */
  readonly text: string;
  readonly say: Say;
}

function itemOf(choice: Choice, rank: number, { uri, position, line, text, say }: Place): CompletionItem {
  const start = { line: position.line, character: choice.from ?? line.expected.from };
  const behind = text.slice(position.character);
  // A quote that the editor has closed already goes with the name.
  const closing = choice.text.endsWith('"') && /^[^"\s]*"/.exec(behind)?.[0].length;
  const restOfWord = /^[\p{L}\p{N}-]*/u.exec(behind)![0].length;
  const end = { line: position.line, character: position.character + (closing || restOfWord) };
  const more = choice.more === true && !/^\s/.test(text.slice(end.character));
  const newText = withoutRepeat(choice.text, text.slice(end.character));
  const data: ItemData = { uri, line: position.line, kind: choice.kind };
  return {
    label: choice.text,
    kind: kinds[choice.kind],
    ...(choice.detail !== undefined && { labelDetails: { description: say(choice.detail) } }),
    sortText: String(rank).padStart(4, '0'),
    textEdit: { range: { start, end }, newText: more ? `${newText} ` : newText },
    ...(choice.snippet !== undefined && withStopsAt(choice, choice.snippet, position.line, text, { start, end })),
    ...(choice.about !== undefined && { documentation: say(choice.about) }),
    data: { ...data, ...(more && { more }) },
    ...(rank === 0 && { preselect: true }),
  };
}

/** `4 | for 1`: what `screens for` ends with stands there already. */
function withoutRepeat(words: string, behind: string): string {
  const last = / (?:for|to|of|with)$/.exec(words)?.[0];
  return last !== undefined && new RegExp(`^${last}\\b`, 'i').test(behind) ? words.slice(0, -last.length) : words;
}

/** Further lines stand under the first; a line that is to stand less deep loses blanks at its start. */
function withStopsAt({ indent }: Choice, snippet: string, line: number, text: string, range: Range): Partial<CompletionItem> {
  const blanks = /^\s*/.exec(text.slice(0, range.start.character))![0].length;
  const depth = indent ?? blanks;
  const lines = snippet.replaceAll('\n', `\n${' '.repeat(depth)}`);
  return {
    insertTextFormat: InsertTextFormat.Snippet,
    insertTextMode: InsertTextMode.asIs,
    textEdit: { range, newText: lines },
    ...(depth < blanks && { additionalTextEdits: [{ range: { start: { line, character: depth }, end: { line, character: blanks } }, newText: '' }] }),
  };
}

/** The item with its documentation, asked for only when the list shows it: a sentence, and a drawing where the editor shows images. */
export function documented({ documents, options, say }: Pick<Asking, 'documents' | 'options' | 'say'>, item: CompletionItem, { uri, line, kind }: ItemData): CompletionItem {
  const text = item.label;
  const said = about(kind as ChoiceKind, text);
  const document = documents.get(uri);
  const picture = document === undefined ? [] : pictureOf(documents.book(), document, { line, kind: kind as ChoiceKind, text }, { theme: options().pictures, say });
  const words = [...(said === undefined ? [] : [say(said)]), ...picture];
  return words.length === 0 ? item : { ...item, documentation: { kind: MarkupKind.Markdown, value: words.join('\n\n') } };
}
