// Undo, redo and save, pressed where a panel has the keyboard: the editor does them only in a text that has it.
import { commands, window, workspace, type Uri, type WebviewPanel } from 'vscode';
import { textColumn } from '../open-play.ts';
import type { TextKey } from '../preview/messages.ts';

export interface TextKeys {
  readonly press: (uri: Uri, key: TextKey) => Promise<void>;
  /** The text has the keyboard for a moment: that its cursor moves is not the coach's doing. */
  readonly areUnderWay: () => boolean;
}

/** ms. A window that is busy for longer gives the panel the keyboard without anybody waiting for it. */
const PATIENCE = 1000;

export function createTextKeys(view: WebviewPanel): TextKeys {
  let pressed: TextKey[] = [];
  let underWay = false;

  const hasKeyboard = () =>
    new Promise<void>((resolve) => {
      if (view.active) return resolve();
      const heard = view.onDidChangeViewState(() => view.active && done());
      const timer = setTimeout(done, PATIENCE);
      function done() {
        heard.dispose();
        clearTimeout(timer);
        resolve();
      }
    });

  async function press(uri: Uri, key: TextKey): Promise<void> {
    const document = workspace.textDocuments.find((open) => open.uri.toString() === uri.toString());
    if (key === 'save' || document === undefined) return void document?.save();
    // A quick hand presses again before the first is done.
    pressed.push(key);
    if (underWay) return;
    underWay = true;
    try {
      while (pressed.length > 0) {
        const shown = window.visibleTextEditors.find((editor) => editor.document === document);
        await window.showTextDocument(document, { viewColumn: shown?.viewColumn ?? textColumn() });
        for (let next = pressed.shift(); next !== undefined; next = pressed.shift()) await commands.executeCommand(next);
        view.reveal(undefined, false);
        await hasKeyboard();
      }
    } finally {
      pressed = [];
      underWay = false;
    }
  }

  return { press, areUnderWay: () => underWay };
}
