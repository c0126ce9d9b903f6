import type { Hover, Position } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';

/** What stands under the pointer; null while nothing is known about it. Until lines are read, nothing is. */
export function hover(_document: TextDocument, _position: Position): Hover | null {
  return null;
}
