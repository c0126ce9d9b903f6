// Tells the server which line of a play the cursor has gone to: what was still being written is told of in full once it is left.
import { window, type Disposable, type TextEditor } from 'vscode';
import * as protocol from '../server/lsp/protocol.ts';
import type { ServerLine } from './server-line.ts';

export function tellOfCursor({ say }: Pick<ServerLine, 'say'>, language: string): Disposable[] {
  let last: { readonly uri: string; readonly line: number } | undefined;

  function stands(editor: TextEditor | undefined) {
    // In a panel, or a view, he has not left the text.
    if (editor === undefined) return;
    const uri = editor.document.uri.toString();
    const { line } = editor.selection.active;
    if (last?.uri === uri && last.line === line) return;
    if (last !== undefined && last.uri !== uri) say(protocol.cursorMethod, { uri: last.uri });
    last = editor.document.languageId === language ? { uri, line } : undefined;
    if (last !== undefined) say(protocol.cursorMethod, last);
  }

  return [
    window.onDidChangeActiveTextEditor(stands),
    window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === window.activeTextEditor) stands(textEditor);
    }),
  ];
}
