// The panel that shows the play of a text: frames of the server in, places in the text out. It computes neither text nor times.
import {
  commands, DecorationRangeBehavior, env, l10n, Range, Selection, TextEditorRevealType, ThemeColor, Uri, ViewColumn, window, workspace,
  type Disposable, type ExtensionContext, type TextDocument, type TextEditor, type WebviewPanel,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import * as protocol from '../server/lsp/protocol.ts';
import { changeByHand, textHasChanged } from './change-by-hand.ts';
import { firstOpenPlay, openPlay, placeFromCommand, textColumn } from './open-play.ts';
import { keepPicture, type PanelPicture } from './panel-picture.ts';
import { panelHtml, playerFolder } from './play-panel-html.ts';
import { MESSAGES_VERSION, readFromPlayer, readKept, type FromPlayer, type ToPlayer } from './preview/messages.ts';
import type { PlaybookSource } from './playbook/playbook-source.ts';
import { recallShown, rememberShown, type ShownDocument } from './shown-documents.ts';

export const viewType = 'setwright.play';
const language = 'setwright';

interface Shown {
  readonly id: string;
  readonly panel: WebviewPanel;
  uri: Uri;
  /** Line of the cursor the server was told last. */
  line: number | undefined;
  /** The play it keeps to; without one it goes with the text. */
  pin: string | undefined;
  /** The play it shows now. */
  playKey: string | undefined;
  /** Of the text that the newest frame was made from. */
  documentVersion: number | undefined;
  readonly picture: PanelPicture;
  ready: boolean;
  /** It shows again what it showed before a reload, and nobody has moved the cursor since: the time it came back with stays. */
  cameBack: boolean;
  /** The server is being asked what stands at the cursor. */
  pointing: boolean;
  /** The cursor has moved meanwhile. */
  pointAgain: boolean;
}

export interface PlayPanels {
  readonly disposables: readonly Disposable[];
  /** The play of the panel that has the keyboard. */
  readonly inHand: () => { readonly uri: Uri; readonly playKey: string } | undefined;
}

export function registerPlayPanels(context: ExtensionContext, client: BaseLanguageClient, running: Promise<void>, playbook: Pick<PlaybookSource, 'playsOf'>): PlayPanels {
  const panels = new Map<string, Shown>();
  const now = window.createTextEditorDecorationType({ backgroundColor: new ThemeColor('editor.rangeHighlightBackground'), rangeBehavior: DecorationRangeBehavior.ClosedClosed });
  let made = 0;

  const say = (method: string, params: object) => void running.then(() => client.sendNotification(method, params));
  const ask = <Answer>(method: string, params: object, read: (value: unknown) => Answer | undefined): Promise<Answer | undefined> =>
    running.then(() => client.sendRequest(method, params)).then(read, () => undefined);

  const post = (shown: Shown, message: ToPlayer) => void shown.panel.webview.postMessage(message);

  function postWhole(shown: Shown) {
    const whole = shown.picture.whole();
    if (whole !== undefined) post(shown, whole);
  }

  const show = ({ id, uri }: Shown, what: protocol.Show['what']) => {
    say(protocol.showMethod, { version: protocol.PROTOCOL_VERSION, panel: id, uri: uri.toString(), what, changes: true } satisfies protocol.Show);
    remember();
  };
  const remember = () =>
    // A panel behind another comes back only when it is looked at.
    void rememberShown(context.workspaceState, [...[...panels.values()].map(({ uri, line, pin }) => ({ uri: uri.toString(), line: line ?? 0, ...(pin !== undefined && { pin }) })), ...shownBefore]);

  function follow(shown: Shown, uri: Uri, line: number) {
    if (shown.pin !== undefined || (shown.line === line && shown.uri.toString() === uri.toString())) return;
    Object.assign(shown, { uri, line });
    show(shown, { kind: 'follow', line });
  }

  function pinTo(shown: Shown, playKey: string) {
    shown.pin = playKey;
    show(shown, { kind: 'pin', playKey });
    tellState(shown);
  }

  function unpin(shown: Shown) {
    const line = editorOf(shown)?.selection.active.line ?? shown.line ?? 0;
    Object.assign(shown, { pin: undefined, line: undefined });
    follow(shown, shown.uri, line);
    tellState(shown);
  }

  /** Title of the panel, and what its buttons may do. */
  function tellState(shown: Shown) {
    const title = shown.picture.title();
    shown.panel.title = title === '' ? 'Setwright' : shown.pin === undefined ? title : l10n.t('{0} (pinned)', title);
    if (shown.panel.active) void commands.executeCommand('setContext', 'setwright.pinned', shown.pin !== undefined);
  }

  function adopt(panel: WebviewPanel, uri: Uri, line: number, pin?: string): Shown {
    const id = `${Date.now().toString(36)}-${++made}`;
    const shown: Shown = { id, panel, uri, line: undefined, pin: undefined, playKey: undefined, picture: keepPicture(), documentVersion: undefined, ready: false, cameBack: false, pointing: false, pointAgain: false };
    panels.set(id, shown);
    panel.onDidChangeViewState(() => tellState(shown));
    panel.iconPath = { light: Uri.joinPath(context.extensionUri, 'media/play-light.svg'), dark: Uri.joinPath(context.extensionUri, 'media/play-dark.svg') };
    panel.webview.onDidReceiveMessage((value: unknown) => {
      const message = readFromPlayer(value);
      if (message !== undefined) void hear(shown, message);
    });
    panel.onDidDispose(() => {
      panels.delete(id);
      window.visibleTextEditors.forEach((editor) => editor.setDecorations(now, []));
      say(protocol.hideMethod, { version: protocol.PROTOCOL_VERSION, panel: id });
      remember();
    });
    panel.webview.options = { enableScripts: true, localResourceRoots: [playerFolder(context.extensionUri)] };
    panel.webview.html = panelHtml(panel.webview, context.extensionUri, env.language, l10n.bundle);
    shown.line = pin === undefined ? undefined : line;
    if (pin === undefined) follow(shown, uri, line);
    else pinTo(shown, pin);
    return shown;
  }

  async function hear(shown: Shown, message: FromPlayer) {
    if (message.kind === 'ready') {
      shown.ready = true;
      shown.cameBack = message.kept === true;
      postWhole(shown);
      return pointAtCursor(shown, editorOf(shown));
    }
    if (message.kind === 'missed') return postWhole(shown);
    if (message.kind === 'select') return select(shown, message);
    if (message.kind === 'now') return markNow(shown, message);
    if (message.kind === 'intent' || message.kind === 'fix') {
      const outcome = message.seq === shown.picture.seq() ? await changeByHand(ask, shown, message) : { refused: textHasChanged() };
      return post(shown, { v: MESSAGES_VERSION, kind: 'outcome', id: message.id, ...outcome });
    }
  }

  /** The words of what is going on at the moment shown are marked in the text. */
  async function markNow(shown: Shown, { play, part }: Extract<FromPlayer, { kind: 'now' }>) {
    const range = part === null ? undefined : await rangeOf(shown, play, { part });
    for (const editor of window.visibleTextEditors) if (editor.document.uri.toString() === shown.uri.toString()) editor.setDecorations(now, range === undefined ? [] : [range]);
  }

  const rangeOf = async (shown: Shown, playKey: string, what: Pick<Extract<FromPlayer, { kind: 'select' }>, 'part' | 'place'>): Promise<Range | undefined> => {
    const answer = await ask(protocol.rangeOfMethod, { version: protocol.PROTOCOL_VERSION, uri: shown.uri.toString(), playKey, ...what }, protocol.readRange);
    return answer ? new Range(answer.start.line, answer.start.character, answer.end.line, answer.end.character) : undefined;
  };

  /** Selects the words of what was picked. The panel keeps the keyboard: a coach who steps through moments goes on stepping. */
  async function select(shown: Shown, { play, part, place }: Extract<FromPlayer, { kind: 'select' }>) {
    const range = await rangeOf(shown, play, { ...(part !== undefined && { part }), ...(place !== undefined && { place }) });
    if (range === undefined) return;
    const editor = editorOf(shown) ?? (await openBeside(shown));
    selectedHere.add(editor);
    editor.selection = new Selection(range.start, range.end);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }
  /** Editors whose next selection comes from the panel: it must not come back to it as the cursor's. */
  const selectedHere = new WeakSet<TextEditor>();

  const openBeside = async ({ uri }: Shown) =>
    window.showTextDocument(await workspace.openTextDocument(uri), { viewColumn: textColumn(), preserveFocus: true });

  const editorOf = ({ uri }: Shown): TextEditor | undefined =>
    [window.activeTextEditor, ...window.visibleTextEditors].find((editor) => editor?.document.uri.toString() === uri.toString());

  /** Where the cursor stands, for the picture. While an answer is under way only the newest place counts. */
  async function pointAtCursor(shown: Shown, editor: TextEditor | undefined) {
    shown.pointAgain = true;
    if (shown.pointing) return;
    shown.pointing = true;
    let at = editor;
    while (shown.pointAgain) {
      shown.pointAgain = false;
      await point(shown, at);
      at = editorOf(shown);
    }
    shown.pointing = false;
  }

  async function point(shown: Shown, editor: TextEditor | undefined) {
    if (editor === undefined || !shown.ready || !workspace.getConfiguration('setwright', editor.document).get<boolean>('preview.followCursor', true)) return;
    const { line, character } = editor.selection.active;
    const answer = await ask(
      protocol.partAtMethod,
      { version: protocol.PROTOCOL_VERSION, uri: editor.document.uri.toString(), position: { line, character } },
      protocol.readPart,
    );
    if (answer === undefined || answer === null) return;
    if (shown.pin !== undefined && answer.playKey !== shown.playKey) return;
    post(shown, { v: MESSAGES_VERSION, kind: 'cursor', part: answer.part, ...(answer.t !== undefined && { t: answer.t }), ...(shown.cameBack && { mark: true }) });
  }

  function showPlay(uri: Uri, wanted: number) {
    const open = [...panels.values()].find(({ pin }) => pin === undefined);
    if (open === undefined) return void adopt(openPanel(), uri, wanted);
    follow(open, uri, wanted);
    open.panel.reveal(undefined, true);
  }

  const openPanel = () =>
    window.createWebviewPanel(viewType, 'Setwright', { viewColumn: panels.size === 0 ? ViewColumn.Beside : ([...panels.values()].at(-1)?.panel.viewColumn ?? ViewColumn.Beside), preserveFocus: true }, { enableFindWidget: false, retainContextWhenHidden: false });

  /** One more panel, which keeps to the play. */
  async function showAlone(place: unknown, line: unknown) {
    const at = await placeFromCommand(place, line);
    if (at === undefined) return;
    const plays = await playbook.playsOf(at.uri);
    const play = plays.findLast((one) => one.line <= at.line) ?? plays[0];
    if (play !== undefined) adopt(openPanel(), at.uri, play.line, play.key);
  }

  const inFront = (): Shown | undefined => [...panels.values()].find(({ panel }) => panel.active) ?? [...panels.values()].find(({ panel }) => panel.visible);

  /** For the team to see: the panel in front of everything else of the window, or in a window of its own for the other screen. */
  async function showLarge(command: string): Promise<Shown | undefined> {
    if (inFront() === undefined) await showFromCommand(undefined, undefined);
    const shown = inFront() ?? [...panels.values()].at(-1);
    if (shown === undefined) return undefined;
    shown.panel.reveal(undefined, false);
    await commands.executeCommand(command);
    return shown;
  }

  /** From the palette or a key: what is in front. From a button or the list of files: a uri. From a lens: its text and a line. */
  async function showFromCommand(place: unknown, line: unknown) {
    const at = await placeFromCommand(place, line);
    if (at !== undefined) showPlay(at.uri, at.line);
  }

  async function openFromList(uri: unknown, line: unknown) {
    // Not over the picture, which goes along although no text has the keyboard.
    await openPlay(uri, line, inFront()?.panel.active === true ? textColumn() : undefined);
    if (uri instanceof Uri && typeof line === 'number') for (const shown of panels.values()) follow(shown, uri, line);
  }

  /** What a panel of the last time showed, which tells its play: each is given out once. */
  function lastShown(play: string | undefined): ShownDocument | undefined {
    const at = [shownBefore.findIndex(({ pin }) => pin !== undefined && pin === play), shownBefore.findIndex(({ pin }) => pin === undefined), shownBefore.length - 1].find((found) => found >= 0);
    const taken = at === undefined ? undefined : shownBefore.splice(at, 1)[0];
    const open = firstOpenPlay();
    return taken ?? (play === undefined || open === undefined ? undefined : { uri: open.uri.toString(), line: open.line });
  }
  const shownBefore = [...recallShown(context.workspaceState)];

  const isPlay = (document: TextDocument) => document.languageId === language;

  /** For one who has asked for it in the settings: the first play of a window brings its picture along. */
  function openWithPlay(editor: TextEditor | undefined) {
    if (openedWithPlay || editor === undefined || !isPlay(editor.document) || panels.size > 0) return;
    openedWithPlay = true;
    if (workspace.getConfiguration('setwright', editor.document).get<boolean>('preview.openWithPlay', false)) showPlay(editor.document.uri, editor.selection.active.line);
  }
  let openedWithPlay = false;
  // Not before a panel of the last time has come back.
  void running.then(() => openWithPlay(window.activeTextEditor));

  const disposables = [
    now,
    commands.registerCommand('setwright.showPlay', showFromCommand),
    commands.registerCommand('setwright.showPlayAlone', showAlone),
    commands.registerCommand('setwright.openPlay', openFromList),
    commands.registerCommand('setwright.pin', () => {
      const shown = inFront();
      if (shown?.playKey !== undefined) pinTo(shown, shown.playKey);
    }),
    commands.registerCommand('setwright.unpin', () => {
      const shown = inFront();
      if (shown !== undefined) unpin(shown);
    }),
    commands.registerCommand('setwright.showTeam', async () => {
      await commands.executeCommand('workbench.action.closePanel');
      const shown = await showLarge('workbench.action.maximizeEditorHideSidebar');
      if (shown !== undefined) post(shown, { v: MESSAGES_VERSION, kind: 'team' });
    }),
    commands.registerCommand('setwright.showInWindow', () => showLarge('workbench.action.moveEditorToNewWindow')),
    window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel: WebviewPanel, state: unknown) {
        const known = lastShown(readKept(state)?.play);
        if (known === undefined) return panel.dispose();
        // The server only knows documents that are open.
        await workspace.openTextDocument(Uri.parse(known.uri)).then(undefined, () => undefined);
        adopt(panel, Uri.parse(known.uri), known.line, known.pin);
      },
    }),
    client.onNotification(protocol.frameMethod, (value: unknown) => {
      const frame = protocol.readFrame(value);
      const shown = frame && panels.get(frame.panel);
      if (frame === undefined || shown === undefined || frame.uri !== shown.uri.toString()) return;
      receive(shown, frame);
    }),
    window.onDidChangeActiveTextEditor((editor) => {
      if (editor === undefined || !isPlay(editor.document)) return;
      openWithPlay(editor);
      for (const shown of panels.values()) follow(shown, editor.document.uri, editor.selection.active.line);
    }),
    window.onDidChangeTextEditorSelection(({ textEditor, kind }) => {
      if (!isPlay(textEditor.document)) return;
      const fromPanel = selectedHere.delete(textEditor);
      for (const shown of panels.values()) {
        if (textEditor !== window.activeTextEditor && textEditor.document.uri.toString() !== shown.uri.toString()) continue;
        // A selection that an opened window restores has no kind.
        if (kind !== undefined) shown.cameBack = false;
        follow(shown, textEditor.document.uri, textEditor.selection.active.line);
        if (!fromPanel) void pointAtCursor(shown, textEditor);
      }
    }),
  ];
  return {
    disposables,
    inHand() {
      const shown = [...panels.values()].find(({ panel }) => panel.active);
      return shown?.playKey === undefined ? undefined : { uri: shown.uri, playKey: shown.playKey };
    },
  };

  function receive(shown: Shown, frame: protocol.UnreadFrame) {
    const message = shown.picture.take(frame);
    if (message === undefined) return showAnew(shown);
    shown.playKey = frame.playKey ?? undefined;
    shown.documentVersion = frame.documentVersion ?? undefined;
    // The picture first: whatever else is told to the window would be read before it.
    if (shown.ready) post(shown, message);
    tellState(shown);
  }

  /** The server speaks of a picture that has not come: it is asked for the whole. */
  function showAnew(shown: Shown) {
    say(protocol.hideMethod, { version: protocol.PROTOCOL_VERSION, panel: shown.id });
    show(shown, shown.pin === undefined ? { kind: 'follow', line: shown.line ?? 0 } : { kind: 'pin', playKey: shown.pin });
  }
}
