// The light bulb: each finding's fixes, all usual mends at once, and what a coach can ask for at a place of a play.
import { CodeActionKind, type CodeAction, type Diagnostic, type Range } from 'vscode-languageserver-types';
import * as v from 'valibot';
import { blockAtLine, blockOfKey } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { intentOn } from '../../language/compile.ts';
import type { FileFinding } from '../../language/keeper.ts';
import type { BlockEdit, Fix } from '../../language/checks/finding.ts';
import type { Intent } from '../../language/edit/intent.ts';
import { playersNamed } from '../../language/names/players-named.ts';
import type { FileEdit } from '../../language/names/rename.ts';
import type { PlayerNumber } from '../../language/play/play.ts';
import { allow } from '../../language/rewrite/allow.ts';
import { fixAll } from '../../language/rewrite/fix-all.ts';
import type { Here, Offer, Rewritten } from '../../language/rewrite/here.ts';
import { offersAt } from '../../language/rewrite/offers.ts';
import { fixAllKind } from './abilities.ts';
import type { Asking } from './asking.ts';
import type { OpenDocument } from './documents.ts';
import { message, type Message } from '../../language/message/message.ts';
import { meet, textEditOf, visibleRange } from './positions.ts';
import { workspaceEditOf } from './workspace-edits.ts';

const dataSchema = v.object({ uri: v.string(), version: v.number(), id: v.string(), range: v.object({ start: v.object({ line: v.number(), character: v.number() }), end: v.object({ line: v.number(), character: v.number() }) }) });

/** Plays that may be compiled while somebody waits for the light bulb. */
const compiledAtOnce = 10;

export interface Asked {
  readonly range: Range;
  readonly diagnostics: readonly Diagnostic[];
  /** Kinds the editor asks for; none: all. */
  readonly only?: readonly string[];
}

/** What can be done at a range. Where the editor can wait, the edits of all but the fixes are worked out when one is chosen. */
export function codeActions(asking: Asking, document: OpenDocument, { range, diagnostics, only }: Asked): CodeAction[] {
  const wants = (kind: string): boolean => only === undefined || only.some((wanted) => kind === wanted || kind.startsWith(`${wanted}.`));
  // Of the plays that the range touches: the editor asks wherever the cursor goes, and a long file may not be compiled yet.
  const findings = asking.findingsOf(document.uri, range.start.line, range.end.line);
  const fixes = wants(CodeActionKind.QuickFix) ? quickFixes(asking, document, findings, range, diagnostics) : [];
  const offers = offersIn(asking, document, findings, range).filter(({ kind }) => wants(kind));
  // Without a word from the editor only where there is something to mend.
  const told = (): readonly FileFinding[] => (only === undefined ? (quicklyKnown(asking, document) ?? findings) : asking.findingsOf(document.uri));
  const all = wants(fixAllKind) && told().some((finding) => finding.fixes.some(({ preferred }) => preferred === true)) ? [fixAllOffer(asking, document)] : [];
  const waits = asking.client().textDocument?.codeAction?.resolveSupport?.properties.includes('edit') === true;
  const made = [...offers, ...all].flatMap((offer): CodeAction[] => {
    const action: CodeAction = { title: asking.say(offer.title), kind: offer.kind, ...(offer.solves && { diagnostics: diagnosticsOf(offer.solves, document, diagnostics) }) };
    if (waits) return [{ ...action, data: { uri: document.uri, version: document.version, id: offer.id, range } }];
    const written = offer.write();
    return 'edits' in written && written.edits.length > 0 ? [{ ...action, edit: editOf(asking, written.edits) }] : [];
  });
  return [...fixes, ...made];
}

export type Resolved = { readonly action: CodeAction } | { readonly refused: Message };

/** The action with its edit, or why it cannot be done after all. */
export function resolveAction(asking: Asking, action: CodeAction): Resolved {
  const read = v.safeParse(dataSchema, action.data);
  if (!read.success) return { action };
  const { uri, version, id, range } = read.output;
  const document = asking.documents.get(uri);
  if (document === undefined || document.version !== version) return { refused: message('The text has changed since this was offered. Ask again.') };
  const offers = [...offersIn(asking, document, asking.findingsOf(uri, range.start.line, range.end.line), range), fixAllOffer(asking, document)];
  const written = offers.find((offer) => offer.id === id && asking.say(offer.title) === action.title)?.write() ?? { refused: message('This can no longer be done here.') };
  return 'refused' in written ? written : { action: { ...action, edit: editOf(asking, written.edits) } };
}

/** Those of the whole file, unless many of its plays are still to be compiled. */
function quicklyKnown({ documents, keeper, findingsOf }: Asking, { uri }: OpenDocument): readonly FileFinding[] | undefined {
  return keeper.unknownIn(documents.book(), uri).length > compiledAtOnce ? undefined : findingsOf(uri);
}

/** What mends the findings that touch the range; the fix a finding prefers stands first. */
function quickFixes({ say }: Asking, document: OpenDocument, findings: readonly FileFinding[], range: Range, diagnostics: readonly Diagnostic[]): CodeAction[] {
  return touched(document, findings, range).flatMap(({ finding, block }) => {
    const solves = diagnosticsOf(finding, document, diagnostics);
    return preferredFirst(finding.fixes).map((fix): CodeAction => ({
      title: say(fix.title),
      kind: CodeActionKind.QuickFix,
      ...(fix.preferred === true && { isPreferred: true }),
      ...(solves.length > 0 && { diagnostics: solves }),
      edit: { documentChanges: [{ textDocument: { uri: document.uri, version: document.version }, edits: fix.edits.map((edit) => textEditOf(block, finding.firstLine, edit)) }] },
    }));
  });
}

function touched(document: OpenDocument, findings: readonly FileFinding[], range: Range) {
  return findings.flatMap((finding) => {
    const block = blockOfKey(document.file, finding.block);
    return block !== undefined && meet(visibleRange(block, finding.firstLine, finding.place), range) ? [{ finding, block }] : [];
  });
}

function diagnosticsOf({ code, block: key, firstLine, place }: FileFinding, { file }: OpenDocument, diagnostics: readonly Diagnostic[]): Diagnostic[] {
  const block = blockOfKey(file, key);
  return block === undefined ? [] : diagnostics.filter((one) => one.code === code && one.range.start.line === visibleRange(block, firstLine, place).start.line);
}

const preferredFirst = (fixes: readonly Fix[]): readonly Fix[] => fixes.toSorted((a, b) => Number(b.preferred === true) - Number(a.preferred === true));

// ---- what a coach can ask for -------------------------------------------------------------------------------------

interface OfferedAction extends Omit<Offer, 'kind'> {
  readonly kind: string;
  readonly solves?: FileFinding;
}

function offersIn(asking: Asking, document: OpenDocument, findings: readonly FileFinding[], range: Range): readonly OfferedAction[] {
  const { block, firstLine } = blockAtLine(document.file, range.start.line);
  const compiled = asking.compileAt(document, range.start.line);
  if (compiled === undefined || block.kind !== 'play') return [];
  const isOneLine = range.end.line === range.start.line;
  const here: Here = { ...compiled, book: asking.documents.book(), uri: document.uri, firstLine, line: range.start.line - firstLine, at: range.start.character, to: isOneLine ? range.end.character : Infinity };
  const allowed = touched(document, findings, range).flatMap(({ finding }): OfferedAction[] => {
    const offer = allow(here, finding);
    return offer === undefined ? [] : [{ ...offer, kind: CodeActionKind.QuickFix, solves: finding }];
  });
  const kinds = { rewrite: CodeActionKind.RefactorRewrite, extract: CodeActionKind.RefactorExtract, mend: CodeActionKind.QuickFix };
  const byHand = intentsAt(here).map(({ id, title, intent }): OfferedAction => ({ id, title, kind: CodeActionKind.RefactorRewrite, write: () => writeIntent(asking, document, here, intent) }));
  return [...allowed, ...offersAt(here).map((offer) => ({ ...offer, kind: kinds[offer.kind] })), ...byHand];
}

/** On the first line of a play it is mirrored; where two players are selected, or one in the `from` line, they are swapped. */
function intentsAt({ block, line, at, to }: Here): readonly { readonly id: string; readonly title: Message; readonly intent: Intent }[] {
  if (line === 0) return [{ id: 'mirror', title: message('Mirror this play: left and right swapped'), intent: { kind: 'mirror' } }];
  const players = playersNamed(block).filter(({ body, place }) => place.line === line && place.to >= at && place.at <= to && !body.startsWith('X'));
  const named = [...new Set(players.map(({ body }) => Number(body) as PlayerNumber))];
  const isFrom = block.lines[line]?.parsed.tree?.$type === 'From';
  const pairs = named.length === 2 ? [named] : named.length === 1 && isFrom ? ([1, 2, 3, 4, 5] as const).filter((other) => other !== named[0]).map((other) => [named[0]!, other]) : [];
  return pairs.map(([a, b]) => ({ id: `swap-${a}-${b}`, title: message('Swap {a} and {b}: each starts where the other does', { a: a!, b: b! }), intent: { kind: 'swap', a: a!, b: b! } }));
}

function writeIntent({ documents }: Asking, document: OpenDocument, here: Here, intent: Intent): Rewritten {
  const compiled = { ...here, key: here.block.key, play: here.reading.play, places: here.reading.places, findings: [] };
  const outcome = intentOn(compiled, createLookup(documents.book(), document.uri), intent);
  return 'refused' in outcome ? outcome : { edits: outcome.edits.map((edit) => fileEditOf(here, edit)) };
}

function fileEditOf({ block, firstLine, uri }: Here, edit: BlockEdit): FileEdit {
  const { range, newText } = textEditOf(block, firstLine, edit);
  return { uri, range, text: newText };
}

function fixAllOffer({ documents, keeper }: Asking, { uri }: OpenDocument): OfferedAction {
  return { id: 'fix-all', title: message('Mend everything that has one usual mend'), kind: fixAllKind, write: () => ({ edits: fixAll(documents.book(), uri, (book) => keeper.findingsOf(book, uri)) }) };
}

/** Lines put in end as the lines of their file do. */
function editOf({ documents }: Asking, edits: readonly FileEdit[]) {
  const ends = (uri: string): string => documents.book().files.get(uri)?.blocks.flatMap(({ lines }) => lines).find(({ eol }) => eol !== '')?.eol ?? '\n';
  return workspaceEditOf(documents, edits.map((edit) => ({ ...edit, text: edit.text.replace(/\r\n|\n|\r/g, ends(edit.uri)) })));
}
