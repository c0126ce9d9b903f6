// A name changed everywhere it is meant, in all files; a file's name in the `use` lines that name it.
import { LSPErrorCodes, ResponseError, type PrepareRenameResult } from 'vscode-languageserver';
import type { Position, WorkspaceEdit } from 'vscode-languageserver-types';
import { blockAtLine, type Book } from '../../language/book/book.ts';
import { followMoves, type MovedFile } from '../../language/names/moved-files.ts';
import { playerAt } from '../../language/names/players-named.ts';
import { renameEverywhere } from '../../language/names/rename.ts';
import { nameAt } from '../../language/names/sites.ts';
import { asMessage } from './as-message.ts';
import type { Documents, OpenDocument } from './documents.ts';
import { givenAt } from './navigation.ts';
import { message, type Say } from '../../language/message/message.ts';
import { rangeOf } from './positions.ts';
import { workspaceEditOf } from './workspace-edits.ts';

/** The name that would change, without its quotes. @throws ResponseError with the reason where there is none. */
export function prepareRename(book: Book, document: OpenDocument, position: Position, say: Say): PrepareRenameResult {
  const { block, firstLine } = blockAtLine(document.file, position.line);
  const line = position.line - firstLine;
  const name = nameAt(block, line, position.character);
  if (name === undefined) {
    const player = playerAt(block, line, position.character);
    throw refusal(player === undefined ? say(message('Only names in quotation marks can be renamed.')) : say(message('{who} is a number, not a name. To change who does what, swap two players.', { who: player.body })));
  }
  if (name.kind === 'file') throw refusal(say(message('Rename the file itself: the lines that use it follow.')));
  if (givenAt(book, document, position) === undefined) throw refusal(say(message('“{name}” is given nowhere that this file can see. Mend that first.', { name: name.name })));
  return { range: rangeOf(firstLine, name.place), placeholder: name.name };
}

export function rename(documents: Documents, document: OpenDocument, position: Position, to: string, say: Say): WorkspaceEdit {
  prepareRename(documents.book(), document, position, say);
  const renamed = renameEverywhere(documents.book(), givenAt(documents.book(), document, position)!, to);
  if ('refused' in renamed) throw refusal(say(renamed.refused));
  return workspaceEditOf(documents, renamed.edits);
}

/** What has to change in the files before others are moved. */
export const moveFiles = (documents: Documents, moves: readonly MovedFile[]): WorkspaceEdit => workspaceEditOf(documents, followMoves(documents.book(), moves));

const refusal = (reason: string): ResponseError<void> => new ResponseError(LSPErrorCodes.RequestFailed, asMessage(reason));
