// Choices as the items of the protocol. What all of them share is written once where the editor knows that: a hundred are written at a keystroke.
import type { ClientCapabilities } from 'vscode-languageserver';
import { CompletionItemKind, InsertTextFormat, InsertTextMode, type CompletionItem, type CompletionList, type Position, type Range } from 'vscode-languageserver-types';
import * as v from 'valibot';
import type { Say } from '../../../language/message/message.ts';
import type { Choice, ChoiceKind } from './choice.ts';

const kinds: Readonly<Record<ChoiceKind, CompletionItemKind>> = {
  player: CompletionItemKind.Variable, defender: CompletionItemKind.Variable, action: CompletionItemKind.Function, place: CompletionItemKind.Constant, name: CompletionItemKind.Reference,
  alignment: CompletionItemKind.Struct, shot: CompletionItemKind.Event, word: CompletionItemKind.Keyword, value: CompletionItemKind.Value, statement: CompletionItemKind.Snippet,
};
const choiceKinds = new Map(Object.entries(kinds).map(([choice, kind]) => [kind, choice as ChoiceKind]));

/** Which kind of choice an item was made from, as far as its own kind says it: attackers and defenders are one. */
export function choiceKindOf({ kind }: CompletionItem): ChoiceKind | undefined {
  return kind === undefined ? undefined : choiceKinds.get(kind);
}

const dataSchema = v.object({ uri: v.string(), line: v.number() });
/** Where the list was asked for, beside what every editor sends back: the label and the kind. */
type ItemData = v.InferOutput<typeof dataSchema>;

/** What an item carries, read from the unknown. */
export function readItemData(value: unknown): ItemData | undefined {
  const read = v.safeParse(dataSchema, value);
  return read.success ? read.output : undefined;
}

/** Whether an editor takes the range and the data of all items beside them. */
export function takesShared({ textDocument }: ClientCapabilities): boolean {
  const taken = textDocument?.completion?.completionList?.itemDefaults ?? [];
  return taken.includes('editRange') && taken.includes('data');
}

export interface Place {
  readonly uri: string;
  readonly position: Position;
  /** Where the word being typed begins. */
  readonly from: number;
  /** The whole line. */
  readonly text: string;
  readonly say: Say;
  readonly sharing: boolean;
}

/** `choices` in their order. */
export function listOf(choices: readonly Choice[], place: Place): CompletionList {
  if (choices.length === 0) return { isIncomplete: false, items: [] };
  const { uri, position, from, sharing } = place;
  const data: ItemData = { uri, line: position.line };
  const behind = place.text.slice(position.character);
  const editRange: Range = { start: { line: position.line, character: from }, end: { line: position.line, character: position.character + restOfWord(behind) } };
  const shared: Shared = { data, editRange, behind };
  return { isIncomplete: true, ...(sharing && { itemDefaults: { editRange, data } }), items: choices.map((choice, rank) => itemOf(choice, rank, place, shared)) };
}

interface Shared {
  readonly data: ItemData;
  readonly editRange: Range;
  /** The line behind the cursor. */
  readonly behind: string;
}

const restOfWord = (behind: string): number => /^[\p{L}\p{N}-]*/u.exec(behind)![0].length;

function itemOf(choice: Choice, rank: number, place: Place, { data, editRange, behind }: Shared): CompletionItem {
  const range = rangeOf(choice, place, editRange, behind);
  const more = choice.more === true && !/^\s/.test(place.text.slice(range.end.character));
  const words = withoutRepeat(choice.text, place.text.slice(range.end.character));
  const newText = more ? `${words} ` : words;
  const sharesRange = place.sharing && range === editRange;
  return {
    label: choice.text,
    kind: kinds[choice.kind],
    ...(choice.detail !== undefined && { labelDetails: { description: place.say(choice.detail) } }),
    sortText: String(rank).padStart(4, '0'),
    ...(!sharesRange ? { textEdit: { range, newText } } : newText !== choice.text && { textEditText: newText }),
    ...(choice.snippet !== undefined && withStopsAt(choice, choice.snippet, place, range)),
    ...(choice.about !== undefined && { documentation: place.say(choice.about) }),
    ...(more ? { data: { ...data, more } } : !place.sharing && { data }),
    ...(rank === 0 && { preselect: true }),
  };
}

/** `4 | for 1`: what `screens for` ends with stands there already. */
function withoutRepeat(words: string, behind: string): string {
  const last = / (?:for|to|of|with)$/.exec(words)?.[0];
  return last !== undefined && new RegExp(`^${last}\\b`, 'i').test(behind) ? words.slice(0, -last.length) : words;
}

/** The shared range itself where a choice stands there too. */
function rangeOf({ text, from }: Choice, { position, from: shared }: Place, editRange: Range, behind: string): Range {
  // A quote that the editor has closed already goes with the name.
  const closing = text.endsWith('"') ? (/^[^"\s]*"/.exec(behind)?.[0].length ?? 0) : 0;
  if (closing === 0 && (from === undefined || from === shared)) return editRange;
  const { start, end } = editRange;
  return { start: { line: start.line, character: from ?? start.character }, end: closing === 0 ? end : { line: end.line, character: position.character + closing } };
}

/** Further lines stand under the first; a line that is to stand less deep loses blanks at its start. */
function withStopsAt({ indent }: Choice, snippet: string, { text, position: { line } }: Place, range: Range): Partial<CompletionItem> {
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
