// What somebody does with his hand in a picture of a play, as text edits of the document; or why not, in a sentence.
import { message, type Say } from '../../language/message/message.ts';
import { blockOfKey, firstLineOf } from '../../language/book/book.ts';
import type { BlockEdit } from '../../language/checks/finding.ts';
import { intentOn, type Compiled } from '../../language/compile.ts';
import type { Intent } from '../../language/edit/intent.ts';
import { createLookup } from '../../language/names/lookup.ts';
import type { PartId } from '../../language/play/play.ts';
import { ownWordsOf } from '../../language/words/own-words.ts';
import { sayShared } from '../../language/words/say-shared.ts';
import type { Asking } from './asking.ts';
import type { OpenDocument } from './documents.ts';
import { textEditOf } from './positions.ts';
import type { ByHand, ByHandAnswer } from './protocol.ts';

const textHasChanged = () => message('The text has changed meanwhile. Try again on the new picture.');

export function changeByHand({ documents, compileKey, say }: Pick<Asking, 'documents' | 'compileKey' | 'say'>, document: OpenDocument, { documentVersion, playKey, what }: ByHand): ByHandAnswer {
  if (document.version !== documentVersion) return { refused: say(textHasChanged()) };
  const compiled = compileKey(document, playKey);
  if (compiled === undefined) return { refused: say(message('This play is no longer in the text.')) };
  if (what.kind === 'fix') return fixed(document, compiled, what, say);
  const [book, { uri }] = [documents.book(), document];
  const outcome = intentOn(compiled, createLookup(book, uri), what.intent, ownWordsOf(book, uri, compiled.block, compiled.court));
  if ('refused' in outcome) return { refused: say(outcome.refused) };
  const { edits, words, at } = outcome;
  const part = partOf(what.intent);
  const changes = part === undefined ? undefined : sayShared(compiled.play, compiled.timeline.runs, part);
  return { edits: inDocument(document, compiled, edits), words: say(words), ...(at !== undefined && { at }), ...(changes !== undefined && { changes: say(changes) }) };
}

function fixed(document: OpenDocument, compiled: Compiled, { code, finding, fix }: Extract<ByHand['what'], { kind: 'fix' }>, say: Say): ByHandAnswer {
  const found = compiled.findings[finding];
  const chosen = found?.code === code ? found.fixes[fix] : undefined;
  return chosen === undefined ? { refused: say(textHasChanged()) } : { edits: inDocument(document, compiled, chosen.edits), words: say(chosen.title) };
}

function inDocument({ file }: OpenDocument, { key }: Compiled, edits: readonly BlockEdit[]) {
  const block = blockOfKey(file, key);
  const firstLine = firstLineOf(file, key);
  return block === undefined || firstLine === undefined ? [] : edits.map((edit) => textEditOf(block, firstLine, edit));
}

/** What a change is about; none where it is a line of its own or the whole play. */
function partOf(intent: Intent): PartId | undefined {
  if ('action' in intent) return intent.action;
  return intent.kind === 'move-start' || intent.kind === 'swap' ? 'from' : undefined;
}
