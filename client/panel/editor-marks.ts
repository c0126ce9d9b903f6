// What the panels do in the editors of their texts: the words of now are marked, what was picked is selected.
import { DecorationRangeBehavior, Selection, TextEditorRevealType, ThemeColor, window, type Disposable, type Range, type TextEditor, type Uri } from 'vscode';

export interface EditorMarks extends Disposable {
  /** Of what is going on at the moment shown; nothing without a range. */
  readonly showNow: (uri: Uri, range: Range | undefined) => void;
  readonly clear: () => void;
  readonly select: (editor: TextEditor, range: Range) => void;
  /** Whether the selection that an editor has just told of came from a panel: it must not come back to it as the cursor's. Asked once. */
  readonly cameFromPanel: (editor: TextEditor) => boolean;
}

export function createEditorMarks(): EditorMarks {
  const now = window.createTextEditorDecorationType({ backgroundColor: new ThemeColor('editor.rangeHighlightBackground'), rangeBehavior: DecorationRangeBehavior.ClosedClosed });
  const selected = new WeakSet<TextEditor>();
  const mark = (editor: TextEditor, range: Range | undefined) => editor.setDecorations(now, range === undefined ? [] : [range]);

  return {
    showNow(uri, range) {
      for (const editor of window.visibleTextEditors) if (editor.document.uri.toString() === uri.toString()) mark(editor, range);
    },
    clear: () => window.visibleTextEditors.forEach((editor) => mark(editor, undefined)),
    select(editor, range) {
      selected.add(editor);
      editor.selection = new Selection(range.start, range.end);
      editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
    },
    cameFromPanel: (editor) => selected.delete(editor),
    dispose: () => now.dispose(),
  };
}
