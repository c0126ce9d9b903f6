// The panels of a window: which open, which go with the text, and which come back after a reload.
import { commands, EventEmitter, TabInputWebview, Uri, ViewColumn, window, workspace, type Disposable, type Event, type ExtensionContext, type TextDocument, type TextEditor, type WebviewPanel } from 'vscode';
import * as protocol from '../../server/lsp/protocol.ts';
import { firstOpenPlay, openPlay, placeFromCommand, textColumn } from '../open-play.ts';
import type { PlaybookSource } from '../playbook/playbook-source.ts';
import { readKept } from '../preview/messages.ts';
import type { ServerLine } from '../server-line.ts';
import { createEditorMarks } from './editor-marks.ts';
import { asPinned, openPlayPanel, type Opening, type PlayInText, type PlayPanel } from './panel.ts';
import { recallShown, rememberShown, type ShownDocument } from './shown-documents.ts';

const viewType = 'setwright.play';

/** ms. What an opened window restores of a text's cursor comes with the text, on a laden machine a little later; nobody goes to a line so soon. */
const RESTORING = 3000;
/** ms. A panel of the last time that is not there by then will not come. */
const COMING_BACK = 10_000;

const ownTabs = () => window.tabGroups.all.flatMap(({ tabs }) => tabs.filter(({ input }) => input instanceof TabInputWebview && input.viewType.endsWith(viewType)));

export interface PlayPanels {
  readonly disposables: readonly Disposable[];
  /** The play of the panel that has the keyboard. */
  readonly inHand: () => PlayInText | undefined;
  /** That is another one now. */
  readonly onDidChangeInHand: Event<void>;
}

export function registerPlayPanels({ extensionUri, workspaceState }: ExtensionContext, server: ServerLine, playbook: Pick<PlaybookSource, 'playsOf'>, language: string): PlayPanels {
  const panels = new Map<string, PlayPanel>();
  const marks = createEditorMarks();
  const handChanged = new EventEmitter<void>();
  const shownBefore = [...recallShown(workspaceState)];
  /** Who waits for a panel of the last time that goes with the text. */
  const awaiting: ((panel: PlayPanel) => void)[] = [];
  /** How many of those are being put together. */
  let returning = 0;
  let made = 0;

  const goesWithText = (panel: PlayPanel) => !panel.isPinned();

  // A panel behind another comes back only when it is looked at.
  const remember = () => void rememberShown(workspaceState, [...[...panels.values()].map((panel) => panel.remembered()), ...shownBefore]);

  function adopt(view: WebviewPanel, opening: Opening) {
    const id = `${Date.now().toString(36)}-${++made}`;
    const closed = () => {
      panels.delete(id);
      remember();
      tellInHand();
    };
    const panel = openPlayPanel(view, { id, extensionUri, server, marks, changed: remember, stateTold: tellInHand, closed }, opening);
    panels.set(id, panel);
    remember();
    return panel;
  }

  const openView = () =>
    window.createWebviewPanel(viewType, 'Setwright', { viewColumn: [...panels.values()].at(-1)?.view.viewColumn ?? ViewColumn.Beside, preserveFocus: true }, { enableFindWidget: false, retainContextWhenHidden: false });

  async function showPlay(uri: Uri, line: number) {
    const open = [...panels.values()].find(goesWithText) ?? (await ofLastTime());
    if (open === undefined) return void adopt(openView(), { uri, line });
    open.follow(uri, line);
    open.view.reveal(undefined, true);
  }

  /**
   * The panel of the last time that goes with the text, where it is not there again yet. In sight it is in a moment; behind another tab it would
   * only be once it is looked at: it makes room for a new one.
   */
  async function ofLastTime(): Promise<PlayPanel | undefined> {
    const expected = shownBefore.findIndex(({ pin }) => pin === undefined);
    const titles = [...panels.values()].map(({ view }) => view.title);
    const tab = ownTabs().find(({ label }) => !titles.includes(label) && !label.endsWith(asPinned('')));
    if (returning === 0 && (expected < 0 || tab === undefined)) return undefined;
    if (returning > 0 || tab?.isActive !== false)
      return new Promise((resolve) => {
        setTimeout(() => resolve(undefined), COMING_BACK);
        awaiting.push(resolve);
      });
    shownBefore.splice(expected, 1);
    await window.tabGroups.close(tab, true);
    return undefined;
  }

  /** One more panel, which keeps to the play. */
  async function showAlone(place: unknown, line: unknown) {
    const at = await placeFromCommand(place, line);
    if (at === undefined) return;
    const plays = await playbook.playsOf(at.uri);
    const play = plays.findLast((one) => one.line <= at.line) ?? plays[0];
    if (play !== undefined) adopt(openView(), { uri: at.uri, line: play.line, pin: play.key });
  }

  const withKeyboard = (): PlayPanel | undefined => [...panels.values()].find(({ view }) => view.active);
  const inHand = () => withKeyboard()?.play();
  /** Which panel a coach means who asks for it from the palette: what he sees, where his keyboard is not in one. */
  const meant = (fits: (panel: PlayPanel) => boolean): PlayPanel | undefined => {
    const held = withKeyboard();
    return held === undefined ? [...panels.values()].find((panel) => panel.view.visible && panel.play() !== undefined && fits(panel)) : fits(held) ? held : undefined;
  };
  const isKept = (panel: PlayPanel) => panel.isPinned();

  let lastOffered = '';
  /** For the palette; told only when it is another, for the window reads it before a picture that is on its way. */
  function offer() {
    const [canPin, canUnpin] = [goesWithText, isKept].map((fits) => meant(fits) !== undefined);
    const now = `${canPin} ${canUnpin}`;
    if (now === lastOffered) return;
    lastOffered = now;
    void commands.executeCommand('setContext', 'setwright.canPin', canPin);
    void commands.executeCommand('setContext', 'setwright.canUnpin', canUnpin);
  }

  let lastInHand = '';
  function tellInHand() {
    offer();
    const now = JSON.stringify(inHand() ?? '');
    if (now === lastInHand) return;
    lastInHand = now;
    handChanged.fire();
  }
  const inFront = (): PlayPanel | undefined => withKeyboard() ?? [...panels.values()].find(({ view }) => view.visible);

  /** For the team to see: the panel in front of everything else of the window, or in a window of its own for the other screen. */
  async function showLarge(command: string): Promise<PlayPanel | undefined> {
    if (inFront() === undefined) await showFromCommand(undefined, undefined);
    const panel = inFront() ?? [...panels.values()].at(-1);
    if (panel === undefined) return undefined;
    panel.view.reveal(undefined, false);
    await commands.executeCommand(command);
    return panel;
  }

  /** From the palette or a key: what is in front. From a button or the list of files: a uri. From a lens: its text and a line. */
  async function showFromCommand(place: unknown, line: unknown) {
    const at = await placeFromCommand(place, line);
    if (at !== undefined) await showPlay(at.uri, at.line);
  }

  async function openFromList(uri: unknown, line: unknown) {
    // Not over the picture, which goes along although no text has the keyboard.
    await openPlay(uri, line, withKeyboard() === undefined ? undefined : textColumn());
    if (uri instanceof Uri && typeof line === 'number') for (const panel of panels.values()) panel.follow(uri, line);
  }

  /** What a panel of the last time showed, which tells its play: each is given out once. */
  function lastShown(play: string | undefined): ShownDocument | undefined {
    const at = [shownBefore.findIndex(({ pin }) => pin !== undefined && pin === play), shownBefore.findIndex(({ pin }) => pin === undefined), shownBefore.length - 1].find((found) => found >= 0);
    const taken = at === undefined ? undefined : shownBefore.splice(at, 1)[0];
    const open = firstOpenPlay();
    return taken ?? (play === undefined || open === undefined ? undefined : { uri: open.uri.toString(), line: open.line });
  }

  async function comeBack(view: WebviewPanel, state: unknown) {
    const known = lastShown(readKept(state)?.play);
    if (known === undefined) return view.dispose();
    const uri = Uri.parse(known.uri);
    if (known.pin === undefined) returning++;
    // The server only knows documents that are open.
    await workspace.openTextDocument(uri).then(undefined, () => undefined);
    const panel = adopt(view, { ...known, uri });
    if (known.pin !== undefined) return;
    // An address that names a file has another text in front than there was.
    const inFront = window.activeTextEditor;
    if (inFront !== undefined && isPlay(inFront.document) && !panel.shows(inFront.document.uri)) panel.follow(inFront.document.uri, inFront.selection.active.line);
    returning--;
    awaiting.splice(0).forEach((take) => take(panel));
  }

  // A selection that a window restores has no kind; in VS Code 1.91 one that "Go to Line" or the outline brings has none either.
  const shownSince = new WeakMap<TextEditor, number>();
  const noteShown = (editors: readonly TextEditor[]) => editors.forEach((editor) => shownSince.has(editor) || shownSince.set(editor, Date.now()));
  const justShown = (editor: TextEditor): boolean => Date.now() - (shownSince.get(editor) ?? Date.now()) < RESTORING;
  noteShown(window.visibleTextEditors);

  const isPlay = (document: TextDocument) => document.languageId === language;

  /** A panel of the last time has its tab from the beginning; it comes back itself when it is looked at, and on a laden machine later than the server answers. */
  const someComesBack = () => ownTabs().length > 0;

  /** For one who has asked for it in the settings: the first play of a window brings its picture along. */
  function openWithPlay(editor: TextEditor | undefined) {
    if (openedWithPlay || editor === undefined || !isPlay(editor.document) || panels.size > 0 || someComesBack()) return;
    openedWithPlay = true;
    if (workspace.getConfiguration('setwright', editor.document).get<boolean>('preview.openWithPlay', false)) void showPlay(editor.document.uri, editor.selection.active.line);
  }
  let openedWithPlay = false;
  void server.running.then(() => openWithPlay(window.activeTextEditor));

  const disposables = [
    marks,
    handChanged,
    commands.registerCommand('setwright.showPlay', showFromCommand),
    commands.registerCommand('setwright.showPlayAlone', showAlone),
    commands.registerCommand('setwright.openPlay', openFromList),
    commands.registerCommand('setwright.pin', () => meant(goesWithText)?.pin()),
    commands.registerCommand('setwright.unpin', () => meant(isKept)?.unpin()),
    commands.registerCommand('setwright.showTeam', async () => {
      await commands.executeCommand('workbench.action.closePanel');
      (await showLarge('workbench.action.maximizeEditorHideSidebar'))?.showTeam();
    }),
    commands.registerCommand('setwright.showInWindow', () => showLarge('workbench.action.moveEditorToNewWindow')),
    window.registerWebviewPanelSerializer(viewType, { deserializeWebviewPanel: comeBack }),
    server.hear(protocol.frameMethod, (value) => {
      const frame = protocol.readFrame(value);
      if (frame !== undefined) panels.get(frame.panel)?.receive(frame);
    }),
    window.onDidChangeVisibleTextEditors(noteShown),
    window.onDidChangeActiveTextEditor((editor) => {
      if (editor === undefined || !isPlay(editor.document)) return;
      openWithPlay(editor);
      for (const panel of panels.values()) panel.follow(editor.document.uri, editor.selection.active.line);
    }),
    window.onDidChangeTextEditorSelection(({ textEditor, kind }) => {
      if (!isPlay(textEditor.document)) return;
      const by = { coach: kind !== undefined || !justShown(textEditor), tell: !marks.cameFromPanel(textEditor) };
      for (const panel of panels.values()) if (textEditor === window.activeTextEditor || panel.shows(textEditor.document.uri)) panel.cursorMoved(textEditor, by);
    }),
  ];
  return { disposables, inHand, onDidChangeInHand: handChanged.event };
}
