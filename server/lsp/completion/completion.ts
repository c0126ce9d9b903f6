// What can be written at the cursor, by the grammar and by how the game stands there.
import { MarkupKind, type CompletionItem, type CompletionList, type Position } from 'vscode-languageserver-types';
import { blockAtLine, type Book } from '../../../language/book/book.ts';
import { expectedAfter } from '../../../language/grammar/expected.ts';
import { parseLine } from '../../../language/grammar/parse-line.ts';
import type { Say } from '../../../language/message/message.ts';
import type { Times } from '../../../language/timeline/timeline.ts';
import type { Asking } from '../asking.ts';
import type { OpenDocument } from '../documents.ts';
import { textOfLine } from '../positions.ts';
import { about } from './about.ts';
import { actionChoices } from './actions.ts';
import { chanceChoices } from './chances.ts';
import { inOrder, type Choice } from './choice.ts';
import { choiceKindOf, listOf, readItemData } from './items.ts';
import { belongsIn, bodiesOf, type Line } from './line.ts';
import { nameChoices } from './names.ts';
import { pictureOf } from './picture-of.ts';
import { placeChoices } from './places.ts';
import { playerChoices } from './players.ts';
import { standingAt, type StandingAt } from './standing.ts';
import { statementChoices } from './statements.ts';
import { unitChoices, valueChoices } from './values.ts';
import { wordChoices } from './words.ts';

export interface Wants {
  readonly say: Say;
  /** The editor knows whole lines with stops. */
  readonly withStops?: boolean;
  /** The editor takes what the items share once, beside them. */
  readonly sharing?: boolean;
  /** Where it is kept from letter to letter. */
  readonly standing?: StandingAt;
  /** When the looks of the play at the cursor come, as it is written now. */
  readonly times?: () => Times | undefined;
}

export function completion(book: Book, document: OpenDocument, position: Position, { say, withStops = false, sharing = false, standing: stand = standingAt, times }: Wants): CompletionList {
  const { block, firstLine } = blockAtLine(document.file, position.line);
  const at = position.line - firstLine;
  const text = textOfLine(block, at);
  const prefix = text.slice(0, position.character);
  const expected = expectedAfter(prefix);
  const place = { uri: document.uri, position, from: expected.from, text, say, sharing };
  if (expected.items.length === 0) return listOf(unitChoices(prefix), place);
  const standing = stand(book, document, position.line, prefix.slice(0, expected.from));
  const line: Line = { prefix, expected, block, at, standing, actors: bodiesOf(expected.acting?.subject), ...(standing.step !== undefined && { step: standing.step }) };
  const items = expected.items.filter((item) => belongsIn(block, item));
  const choices = inOrder([
    ...playerChoices(line, items.filter(({ kind }) => kind === 'player' || kind === 'xplayer')),
    ...actionChoices(line, items),
    ...placeChoices(line, items),
    ...nameChoices(line, items, book, document.file),
    ...wordChoices(line, items),
    ...valueChoices(line, items, () => times?.()),
    ...chanceChoices(line),
    ...(withStops ? statementChoices(line) : []),
  ]);
  const typed = (choice: Choice) => prefix.slice(choice.from ?? expected.from);
  const fitting = choices.filter((choice) => begins(choice, typed(choice)));
  // The list closes over a word that is typed to its end: it would cover the lines below, with nothing to choose. What is longer stays where the word cannot stand alone.
  const said = fitting.find((choice) => squeezed(choice.text) === squeezed(typed(choice)));
  const longer = () => (parseLine(prefix).fault === undefined ? [] : fitting.filter((choice) => choice !== said && squeezed(choice.text).startsWith(squeezed(typed(choice)))));
  const open = said === undefined ? fitting : longer();
  return listOf(open, place);
}

/** Where several words are typed already the editor would match their letters loosely: `left w` is not `low post`. */
function begins({ text }: Choice, typed: string): boolean {
  return !/\s/.test(typed.trim() + (/\s$/.test(typed) ? ' ' : '')) || squeezed(text).startsWith(squeezed(typed));
}

const squeezed = (text: string): string => text.toLowerCase().replace(/[\s-]+/g, ' ');

/** The item with its documentation, asked for only when the list shows it: a sentence, and a drawing where the editor shows images. */
export function documented({ documents, options, say }: Pick<Asking, 'documents' | 'options' | 'say'>, item: CompletionItem): CompletionItem {
  const data = readItemData(item.data);
  const kind = choiceKindOf(item);
  if (data === undefined || kind === undefined) return item;
  const text = item.label;
  const said = about(kind, text);
  const document = documents.get(data.uri);
  const picture = document === undefined ? [] : pictureOf(documents.book(), document, { line: data.line, kind, text }, { theme: options().pictures, say });
  const words = [...(said === undefined ? [] : [say(said)]), ...picture];
  return words.length === 0 ? item : { ...item, documentation: { kind: MarkupKind.Markdown, value: words.join('\n\n') } };
}
