// What a name stands for that is given elsewhere, or that no play is compiled for: a play that a section lists, a file in use, an alignment
// of the coach's own, a man of the roster.
import type { Position, Range } from 'vscode-languageserver-types';
import { blockAtLine, editFile, lineCount, type Block, type Book } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import type { NodeOf } from '../../language/grammar/tree.ts';
import { message, type Message, type Say } from '../../language/message/message.ts';
import { paceShare } from '../../language/motion/own-pace.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import type { NameInText } from '../../language/names/definitions.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { definitionOf, fileMeant, nameAt } from '../../language/names/sites.ts';
import { defaultLevel } from '../../language/play/read-headers.ts';
import { isPlayer, paceOf } from '../../language/play/read-paces.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { stateAtCall } from '../../language/play/state.ts';
import { levelWords } from '../../language/words/say-level.ts';
import { sayList } from '../../language/words/say-list.ts';
import { tellStanding } from '../../language/words/tell-play.ts';
import type { OpenDocument } from './documents.ts';
import { plain } from './plain.ts';
import { floorDrawing, type Theme } from './small-drawing.ts';

/** What is told of names beside a hover's own play. */
export interface Elsewhere {
  readonly book: Book;
  readonly compile: (uri: string, play: Block) => Compiled;
}

export interface NamesTold extends Elsewhere {
  /** When to call a play, as its own head tells it. */
  readonly tellCall: (compiled: Compiled) => readonly string[];
  readonly say: Say;
  readonly theme?: Theme;
}

export interface Told {
  readonly parts: readonly string[];
  readonly range: Range;
}

export function tellName(document: OpenDocument, { line, character }: Position, names: NamesTold): Told | undefined {
  const { block, firstLine } = blockAtLine(document.file, line);
  const name = nameAt(block, line - firstLine, character);
  const entry = block.lines[line - firstLine]?.parsed.tree;
  const isEntry = entry?.$type === 'Entry' && entry.at <= character && character <= entry.to;
  const parts = isEntry ? tellEntry(document.uri, entry as NodeOf<'Entry'>, names) : name === undefined ? [] : tellMeant(document.uri, block, name, names);
  if (parts.length === 0) return undefined;
  const { at, to } = isEntry ? entry : name!.place;
  return { parts, range: { start: { line, character: at }, end: { line, character: to } } };
}

function tellMeant(uri: string, block: Block, name: NameInText, names: NamesTold): readonly string[] {
  if (name.kind === 'file') return tellFile(fileMeant(uri, name), name.name, names);
  const given = definitionOf(names.book, uri, block, name);
  if (given === undefined) return [];
  if (name.kind === 'alignment') return tellAlignment(given.uri, given.name.name, names);
  // In a play's own head the play itself is told.
  return name.kind === 'play' && given.name !== name ? names.tellCall(names.compile(given.uri, given.block)) : [];
}

function tellFile(uri: string, called: string, { book, say }: NamesTold): readonly string[] {
  const file = book.files.get(uri);
  if (file === undefined) return [];
  const of = (kind: Block['kind']): string => sayList(file.blocks.flatMap((block) => (block.kind === kind && block.name !== undefined ? [plain(block.name)] : [])));
  const [plays, alignments, rosters] = [of('play'), of('alignment'), of('roster')];
  const rows = [
    ...(plays === '' ? [] : [message('Plays: {names}.', { names: plays })]),
    ...(alignments === '' ? [] : [message('Alignments: {names}.', { names: alignments })]),
    ...(rosters === '' ? [] : [message('Roster: {names}.', { names: rosters })]),
  ];
  return [`**${plain(called)}**`, ...(rows.length === 0 ? [] : [rows.map(say).join('  \n')])];
}

/** Read as the start of a play that begins so. */
function tellAlignment(uri: string, name: string, { book, say, theme }: NamesTold): readonly string[] {
  const file = book.files.get(uri);
  if (file === undefined) return [];
  const end = { line: lineCount(file), character: 0 };
  const then = editFile(book, uri, [{ range: { start: end, end }, text: `\nplay "${name}"\n  from "${name}"\n` }]).files.get(uri)!;
  const { play } = readPlay(then.blocks.findLast(({ kind }) => kind === 'play')!, createLookup(book, uri));
  const drawing = floorDrawing(courtOf(ruleSet(play.rules.value)), { where: stateAtCall(play).places }, name, theme);
  return [`**${plain(name)}**`, ...drawing, plain(tellStanding(play, say))];
}

function tellEntry(uri: string, { number, name, pace }: NodeOf<'Entry'>, { book, say }: NamesTold): readonly string[] {
  const title = `**${number} ${plain(name)}**`;
  if (!isPlayer(number)) return [title, say(message('Plays speak of 1 to 5; this name stands in no play.'))];
  return [title, [...tellPace(uri, pace, book), message('His name stands beside {number} on sheets and in his jobs.', { number })].map(say).join('  \n')];
}

function tellPace(uri: string, pace: NodeOf<'Entry'>['pace'], book: Book): readonly Message[] {
  if (pace === undefined) return [];
  const level = createLookup(book, uri).settings.level ?? defaultLevel;
  const legs = LEVELS[level];
  const top = (paceShare(legs, paceOf(pace)) * legs.vmax).toFixed(1);
  return [
    message('He sprints at {top} m/s at most (usual {level}: {usual}).', { top, level: levelWords(level), usual: legs.vmax.toFixed(1) }),
    message('That counts in the plays of this file and of files that use it; a play that a book only lists keeps its times.'),
  ];
}
