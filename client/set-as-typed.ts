// What is set while a coach types (a step below a look comes out to the steps, a line is set at Enter) is set for a quick hand too: VS Code
// drops an answer that comes once the next letter stands there. What it may have dropped is asked for again as soon as he pauses.
import { CancellationTokenSource, Disposable, Position, TextDocumentChangeReason, window, workspace, type FormattingOptions, type TextDocument, type TextDocumentChangeEvent, type TextEdit, type TextEditor } from 'vscode';
import type { Middleware, ProvideOnTypeFormattingEditsSignature } from 'vscode-languageclient';

/** Longer than between two letters of a slow hand, shorter than a look up from the keys, ms. */
const pause = 500;

/** A key after which lines are set. */
interface Typed {
  readonly document: TextDocument;
  /** Where the cursor stood; moved along with the text. */
  line: number;
  readonly key: string;
  readonly options: FormattingOptions;
  readonly ask: ProvideOnTypeFormattingEditsSignature;
}

export function setAsTyped(): { readonly middleware: Pick<Middleware, 'provideOnTypeFormattingEdits'>; readonly disposable: Disposable } {
  let typed: Typed[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;

  function later(): void {
    clearTimeout(timer);
    timer = typed.length === 0 ? undefined : setTimeout(() => void atPause(), pause);
  }

  function changed({ document, contentChanges, reason }: TextDocumentChangeEvent): void {
    if (contentChanges.length === 0) return;
    // What he takes back is not done again behind his back.
    const undone = reason === TextDocumentChangeReason.Undo || reason === TextDocumentChangeReason.Redo;
    typed = typed.filter((one) => one.document !== document || !undone);
    for (const { range: { start, end }, text } of contentChanges) {
      const more = text.split('\n').length - 1 - (end.line - start.line);
      if (more === 0) continue;
      typed = typed.filter((one) => one.document !== document || end.line < one.line || start.line >= one.line);
      for (const one of typed) if (one.document === document && end.line < one.line) one.line += more;
    }
    later();
  }

  async function atPause(): Promise<void> {
    for (let next = typed[0]; next !== undefined; next = typed[0]) {
      const done = await setNow(next);
      // He has gone on meanwhile: at the next pause.
      if (!done) return later();
      typed = typed.filter((one) => one !== next);
    }
  }

  /** False where the text has become another before it could be set. */
  async function setNow(one: Typed): Promise<boolean> {
    const { document } = one;
    const { version } = document;
    const editor = window.visibleTextEditors.find((shown) => shown.document === document);
    const edits = editor === undefined ? [] : await editsFor(one, editor);
    if (document.version !== version) return false;
    return editor === undefined || edits.length === 0 || editor.edit((change) => edits.forEach(({ range, newText }) => change.replace(range, newText)), { undoStopBefore: false, undoStopAfter: false });
  }

  async function editsFor({ document, line, key, options, ask }: Typed, { selection }: TextEditor): Promise<readonly TextEdit[]> {
    if (document.isClosed || line >= document.lineCount) return [];
    const calledOff = new CancellationTokenSource();
    const edits = await Promise.resolve(ask(document, new Position(line, document.lineAt(line).text.length), key, options, calledOff.token)).finally(() => calledOff.dispose());
    // Where the new line begins is his by now, and so is the line that he has gone to.
    return (edits ?? []).filter(({ range: { start } }) => key !== '\n' || (start.line < line && start.line !== selection.active.line));
  }

  return {
    middleware: {
      async provideOnTypeFormattingEdits(document, position, key, options, token, next) {
        typed = typed.filter((one) => one.document !== document || one.line !== position.line || one.key !== key);
        const one = { document, line: position.line, key, options, ask: next };
        typed.push(one);
        later();
        const edits = await next(document, position, key, options, token);
        // Where nothing is to be set there is nothing to drop; an answer that was called off says nothing.
        if ((edits ?? []).length === 0 && !token.isCancellationRequested) typed = typed.filter((other) => other !== one);
        return edits;
      },
    },
    disposable: Disposable.from(workspace.onDidChangeTextDocument(changed), { dispose: () => clearTimeout(timer) }),
  };
}
