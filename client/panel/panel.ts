// One panel, which shows the play of a text: frames of the server in, places in the text out. It computes neither text nor times.
import { commands, env, l10n, Range, Uri, window, workspace, type TextEditor, type WebviewPanel } from 'vscode';
import * as protocol from '../../server/lsp/protocol.ts';
import { textColumn } from '../open-play.ts';
import { MESSAGES_VERSION, readFromPlayer, type FromPlayer, type ToPlayer } from '../preview/messages.ts';
import type { ServerLine } from '../server-line.ts';
import { changeByHand, textHasChanged } from './change-by-hand.ts';
import type { EditorMarks } from './editor-marks.ts';
import { panelHtml, playerFolder } from './panel-html.ts';
import { keepPicture } from './panel-picture.ts';
import type { ShownDocument } from './shown-documents.ts';
import { createTextKeys } from './text-keys.ts';

/** A play of a text. */
export interface PlayInText {
  readonly uri: Uri;
  readonly playKey: string;
}

export interface PlayPanel {
  readonly view: WebviewPanel;
  readonly isPinned: () => boolean;
  /** The play it shows now. */
  readonly play: () => PlayInText | undefined;
  readonly shows: (uri: Uri) => boolean;
  /** Goes with the text to the play that the line is in, unless it is pinned. */
  readonly follow: (uri: Uri, line: number) => void;
  /** Keeps to the play it shows now. */
  readonly pin: () => void;
  readonly unpin: () => void;
  /** The cursor of a text has moved; `by` the coach, or a window that is opened again; `tell` the player where it stands. */
  readonly cursorMoved: (editor: TextEditor, by: { readonly coach: boolean; readonly tell: boolean }) => void;
  readonly receive: (frame: protocol.UnreadFrame) => void;
  /** The floor alone, for the team. */
  readonly showTeam: () => void;
  /** For a window that is opened again. */
  readonly remembered: () => ShownDocument;
}

/** What a panel opens with: the play of a line, or the one it is pinned to. */
export interface Opening {
  readonly uri: Uri;
  readonly line: number;
  readonly pin?: string | undefined;
}

export interface PanelHost {
  /** Names the panel to the server. */
  readonly id: string;
  readonly extensionUri: Uri;
  readonly server: ServerLine;
  readonly marks: EditorMarks;
  /** It shows something else now. */
  readonly changed: () => void;
  /** What has the keyboard, or the play it shows, may be another. */
  readonly stateTold: () => void;
  readonly closed: () => void;
}

/** Its title, while it keeps to its play. */
export const asPinned = (title: string): string => l10n.t('{0} (pinned)', title);

export function openPlayPanel(view: WebviewPanel, { id, extensionUri, server, marks, changed, stateTold, closed }: PanelHost, opening: Opening): PlayPanel {
  const picture = keepPicture();
  const keys = createTextKeys(view);
  let { uri, pin } = opening;
  /** Line of the cursor the server was told last. */
  let line: number | undefined = opening.line;
  let playKey: string | undefined;
  /** Of the text that the newest frame was made from. */
  let documentVersion: number | undefined;
  let ready = false;
  /** It shows again what it showed before a reload, and nobody has moved the cursor since: the time it came back with stays. */
  let cameBack = false;
  /** The server is being asked what stands at the cursor. */
  let pointing = false;
  /** The cursor has moved meanwhile. */
  let pointAgain = false;
  const post = (message: ToPlayer) => void view.webview.postMessage(message);

  function postWhole() {
    const whole = picture.whole();
    if (whole !== undefined) post(whole);
  }

  function show() {
    const what: protocol.Show['what'] = pin === undefined ? { kind: 'follow', line: line ?? 0 } : { kind: 'pin', playKey: pin };
    server.say(protocol.showMethod, { panel: id, uri: uri.toString(), what, changes: true } satisfies Omit<protocol.Show, 'version'>);
    changed();
  }

  const hide = () => server.say(protocol.hideMethod, { panel: id });

  function follow(toUri: Uri, toLine: number) {
    if (pin !== undefined || (line === toLine && uri.toString() === toUri.toString())) return;
    [uri, line] = [toUri, toLine];
    show();
  }

  /** Title of the panel, and what its buttons may do. */
  function tellState() {
    const title = picture.title();
    view.title = title === '' ? 'Setwright' : pin === undefined ? title : asPinned(title);
    if (view.active) void commands.executeCommand('setContext', 'setwright.pinned', pin !== undefined);
    stateTold();
  }

  async function hear(message: FromPlayer) {
    if (message.kind === 'ready') {
      if (!ready || message.again !== true) cameBack = message.kept === true;
      ready = true;
      postWhole();
      return pointAtCursor(editorHere());
    }
    if (message.kind === 'missed') return postWhole();
    if (message.kind === 'select') return select(message);
    if (message.kind === 'now') return markNow(message);
    if (message.kind === 'text') return keys.press(uri, message.does);
    if (message.kind === 'intent' || message.kind === 'fix') {
      const outcome = message.seq === picture.seq() ? await changeByHand(server.ask, { uri, documentVersion }, message) : { refused: textHasChanged() };
      return post({ v: MESSAGES_VERSION, kind: 'outcome', id: message.id, ...outcome });
    }
  }

  /** The words of what is going on at the moment shown are marked in the text. */
  async function markNow({ play, part }: Extract<FromPlayer, { kind: 'now' }>) {
    marks.showNow(uri, part === null ? undefined : await rangeOf(play, { part }));
  }

  async function rangeOf(play: string, what: Pick<Extract<FromPlayer, { kind: 'select' }>, 'part' | 'place'>): Promise<Range | undefined> {
    const answer = await server.ask(protocol.rangeOfMethod, { uri: uri.toString(), playKey: play, ...what }, protocol.readRange);
    return answer ? new Range(answer.start.line, answer.start.character, answer.end.line, answer.end.character) : undefined;
  }

  /** Selects the words of what was picked. The panel keeps the keyboard: a coach who steps through moments goes on stepping. */
  async function select({ play, part, place }: Extract<FromPlayer, { kind: 'select' }>) {
    const range = await rangeOf(play, { ...(part !== undefined && { part }), ...(place !== undefined && { place }) });
    if (range !== undefined) marks.select(editorHere() ?? (await openBeside()), range);
  }

  const openBeside = async () => window.showTextDocument(await workspace.openTextDocument(uri), { viewColumn: textColumn(), preserveFocus: true });

  const editorHere = (): TextEditor | undefined =>
    [window.activeTextEditor, ...window.visibleTextEditors].find((editor) => editor?.document.uri.toString() === uri.toString());

  /** Where the cursor stands, for the picture. While an answer is under way only the newest place counts. */
  async function pointAtCursor(editor: TextEditor | undefined) {
    pointAgain = true;
    if (pointing) return;
    pointing = true;
    let at = editor;
    while (pointAgain) {
      pointAgain = false;
      await point(at);
      at = editorHere();
    }
    pointing = false;
  }

  async function point(editor: TextEditor | undefined) {
    if (editor === undefined || !ready || !workspace.getConfiguration('setwright', editor.document).get<boolean>('preview.followCursor', true)) return;
    const { line: atLine, character } = editor.selection.active;
    const answer = await server.ask(protocol.partAtMethod, { uri: editor.document.uri.toString(), position: { line: atLine, character } }, protocol.readPart);
    if (answer === undefined || answer === null) return;
    if (pin !== undefined && answer.playKey !== playKey) return;
    post({ v: MESSAGES_VERSION, kind: 'cursor', part: answer.part, ...(answer.t !== undefined && { t: answer.t }), ...(cameBack && { mark: true }) });
  }

  view.iconPath = { light: Uri.joinPath(extensionUri, 'media/play-light.svg'), dark: Uri.joinPath(extensionUri, 'media/play-dark.svg') };
  view.onDidChangeViewState(tellState);
  view.webview.onDidReceiveMessage((value: unknown) => {
    const message = readFromPlayer(value);
    if (message !== undefined) void hear(message);
  });
  view.onDidDispose(() => {
    marks.clear();
    hide();
    closed();
  });
  view.webview.options = { enableScripts: true, localResourceRoots: [playerFolder(extensionUri)] };
  view.webview.html = panelHtml(view.webview, extensionUri, env.language, l10n.bundle);
  show();
  tellState();

  return {
    view,
    isPinned: () => pin !== undefined,
    play: () => playKey === undefined ? undefined : { uri, playKey },
    shows: (other) => uri.toString() === other.toString(),
    follow,
    pin() {
      if (playKey === undefined) return;
      pin = playKey;
      show();
      tellState();
    },
    unpin() {
      const atLine = editorHere()?.selection.active.line ?? line ?? 0;
      [pin, line] = [undefined, undefined];
      follow(uri, atLine);
      tellState();
    },
    cursorMoved(editor, by) {
      if (by.coach) cameBack = false;
      follow(editor.document.uri, editor.selection.active.line);
      if (by.tell && !keys.areUnderWay()) void pointAtCursor(editor);
    },
    receive(frame) {
      if (frame.uri !== uri.toString()) return;
      const message = picture.take(frame);
      if (message === undefined) {
        // The server speaks of a picture that has not come: it is asked for the whole.
        hide();
        return show();
      }
      playKey = frame.playKey ?? undefined;
      documentVersion = frame.documentVersion ?? undefined;
      // The picture first: whatever else is told to the window would be read before it.
      if (ready) post(message);
      tellState();
    },
    showTeam: () => post({ v: MESSAGES_VERSION, kind: 'team' }),
    remembered: () => ({ uri: uri.toString(), line: line ?? 0, ...(pin !== undefined && { pin }) }),
  };
}
