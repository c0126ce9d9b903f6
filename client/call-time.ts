// In the status bar: with how much on the clock to call the play the cursor stands in.
import { l10n, StatusBarAlignment, window, workspace, type Disposable, type TextEditor } from 'vscode';
import type { PlayEntry } from '../server/lsp/playbook-protocol.ts';
import { tellPlay } from './playbook/play-words.ts';
import type { PlaybookSource } from './playbook/playbook-source.ts';

const pause = 250;

export function registerCallTime(source: PlaybookSource, language: string): Disposable[] {
  const item = window.createStatusBarItem('setwright.call', StatusBarAlignment.Right, 90);
  item.name = l10n.t('Setwright: when to call the play');
  let plays: readonly PlayEntry[] = [];
  let of: string | undefined;
  let asked = 0;
  let told: string | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const isPlay = (editor: TextEditor | undefined): editor is TextEditor => editor?.document.languageId === language;

  function hide() {
    told = undefined;
    item.hide();
  }

  function show() {
    const editor = window.activeTextEditor;
    // In the panel, or a view, the last play goes on being spoken of.
    if (editor === undefined) return;
    if (!isPlay(editor)) return hide();
    if (of !== editor.document.uri.toString()) return hide();
    const { line } = editor.selection.active;
    const play = plays.findLast((one) => one.line <= line) ?? plays[0];
    if (play === undefined) return hide();
    // The cursor moves all the time: an item drawn anew with the same words would lose a click that is on its way.
    const words = JSON.stringify(play);
    if (words === told) return;
    told = words;
    const { first } = play;
    item.text = first === null ? l10n.t('$(watch) no look') : l10n.t('$(watch) Call with {0} s', first.fromCall);
    item.tooltip = `${tellPlay(play)}\n${l10n.t('Click: show the play')}`;
    item.accessibilityInformation = { label: first === null ? l10n.t('The play has no look') : l10n.t('Call the play with {0} seconds or more', first.fromCall), role: 'button' };
    item.command = { title: l10n.t('Show the play'), command: 'setwright.showPlay', arguments: [play.uri, play.line] };
    item.show();
  }

  async function ask() {
    const editor = window.activeTextEditor;
    if (!isPlay(editor)) return show();
    const number = ++asked;
    const { uri } = editor.document;
    const answer = await source.playsOf(uri);
    if (number !== asked) return;
    [plays, of] = [answer, uri.toString()];
    show();
  }
  function askSoon() {
    clearTimeout(timer);
    timer = setTimeout(() => void ask(), pause);
  }

  void ask();
  return [
    item,
    { dispose: () => clearTimeout(timer) },
    window.onDidChangeActiveTextEditor((editor) => (editor?.document.uri.toString() === of ? show() : void ask())),
    window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === window.activeTextEditor) show();
    }),
    workspace.onDidChangeTextDocument(({ document }) => {
      if (document.languageId === language) askSoon();
    }),
    source.onDidChange(askSoon),
  ];
}
