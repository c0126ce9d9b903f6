// In the status bar: with how much on the clock to call the play that the panel in hand shows, else the one the cursor stands in.
import { l10n, StatusBarAlignment, window, workspace, type Disposable, type TextEditor, type Uri } from 'vscode';
import type { PlayEntry } from '../server/lsp/playbook-protocol.ts';
import type { PlayPanels } from './panel/panels.ts';
import { tellPlay } from './playbook/play-words.ts';
import type { PlaybookSource } from './playbook/playbook-source.ts';

const pause = 250;

/** A play by its key, or by a line of its text. */
interface Subject {
  readonly uri: Uri;
  readonly play: (plays: readonly PlayEntry[]) => PlayEntry | undefined;
}

export function registerCallTime(source: PlaybookSource, { inHand, onDidChangeInHand }: Pick<PlayPanels, 'inHand' | 'onDidChangeInHand'>, language: string): Disposable[] {
  const item = window.createStatusBarItem('setwright.call', StatusBarAlignment.Right, 90);
  item.name = l10n.t('Setwright: when to call the play');
  let plays: readonly PlayEntry[] = [];
  let of: string | undefined;
  let asked = 0;
  let told: string | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const isPlay = (editor: TextEditor | undefined): editor is TextEditor => editor?.document.languageId === language;

  function subject(): Subject | undefined {
    const held = inHand();
    if (held !== undefined) return { uri: held.uri, play: (all) => all.find(({ key }) => key === held.playKey) };
    const editor = window.activeTextEditor;
    if (!isPlay(editor)) return undefined;
    const { line } = editor.selection.active;
    return { uri: editor.document.uri, play: (all) => all.findLast((one) => one.line <= line) ?? all[0] };
  }

  function hide() {
    told = undefined;
    item.hide();
  }

  function show() {
    const now = subject();
    // In a view, or a panel that has no play yet, the last one goes on being spoken of while its text can be seen.
    if (now === undefined) return window.activeTextEditor === undefined && window.visibleTextEditors.some(isPlay) ? undefined : hide();
    if (of !== now.uri.toString()) return hide();
    const play = now.play(plays);
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
    const now = subject();
    if (now === undefined) return show();
    const number = ++asked;
    const answer = await source.playsOf(now.uri);
    if (number !== asked) return;
    [plays, of] = [answer, now.uri.toString()];
    show();
  }
  function askSoon() {
    clearTimeout(timer);
    timer = setTimeout(() => void ask(), pause);
  }
  const another = () => void (subject()?.uri.toString() === of ? show() : ask());

  void ask();
  return [
    item,
    { dispose: () => clearTimeout(timer) },
    window.onDidChangeActiveTextEditor(another),
    window.onDidChangeVisibleTextEditors(show),
    onDidChangeInHand(another),
    window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === window.activeTextEditor) show();
    }),
    workspace.onDidChangeTextDocument(({ document }) => {
      if (document.languageId === language) askSoon();
    }),
    source.onDidChange(askSoon),
  ];
}
