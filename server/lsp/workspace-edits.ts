// Changes of several files, as an editor makes them: on the version that was read, of a file that is open.
import type { TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import type { FileEdit } from '../../language/names/rename.ts';
import type { Documents } from './documents.ts';

export function workspaceEditOf(documents: Documents, edits: readonly FileEdit[]): WorkspaceEdit {
  const documentChanges = [...new Set(edits.map(({ uri }) => uri))].map((uri): TextDocumentEdit => ({
    textDocument: { uri, version: documents.get(uri)?.version ?? null },
    edits: edits.filter((edit) => edit.uri === uri).map(({ range, text }) => ({ range, newText: text })),
  }));
  return { documentChanges };
}
