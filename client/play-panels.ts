// The panel that shows the play of a text: frames of the server in, places in the text out. It computes neither text nor times.
import {
  commands, DecorationRangeBehavior, Range, Selection, TextEditorRevealType, ThemeColor, Uri, ViewColumn, window, workspace,
  type Disposable, type ExtensionContext, type TextDocument, type TextEditor, type WebviewPanel,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import * as protocol from '../server/lsp/protocol.ts';
import { panelHtml, playerFolder } from './play-panel-html.ts';
import { MESSAGES_VERSION, readFromPlayer, readKept, type FromPlayer, type ToPlayer } from './preview/messages.ts';
import { forgetShown, recallShown, rememberShown } from './shown-documents.ts';

export const viewType = 'setwright.play';
const language = 'setwright';

interface Shown {
  readonly id: string;
  readonly panel: WebviewPanel;
  uri: Uri;
  /** Line of the cursor the server was told last. */
  line: number | undefined;
  /** Frames get a number of the panel's own: a language server that starts anew counts from one again. */
  seq: number;
  /** What the player has to be given when it starts anew. */
  picture?: Extract<ToPlayer, { kind: 'show' }>;
  ready: boolean;
  /** The server is being asked what stands at the cursor. */
  pointing: boolean;
  /** The cursor has moved meanwhile. */
  pointAgain: boolean;
}

export function registerPlayPanels(context: ExtensionContext, client: BaseLanguageClient, running: Promise<void>): Disposable[] {
  const panels = new Map<string, Shown>();
  const now = window.createTextEditorDecorationType({ backgroundColor: new ThemeColor('editor.rangeHighlightBackground'), rangeBehavior: DecorationRangeBehavior.ClosedClosed });
  let made = 0;

  const say = (method: string, params: object) => void running.then(() => client.sendNotification(method, params));
  const ask = <Answer>(method: string, params: object, read: (value: unknown) => Answer | undefined): Promise<Answer | undefined> =>
    running.then(() => client.sendRequest(method, params)).then(read, () => undefined);

  const post = (shown: Shown, message: ToPlayer) => void shown.panel.webview.postMessage(message);

  function follow(shown: Shown, uri: Uri, line: number) {
    if (shown.line === line && shown.uri.toString() === uri.toString()) return;
    Object.assign(shown, { uri, line });
    say(protocol.showMethod, { version: protocol.PROTOCOL_VERSION, panel: shown.id, uri: uri.toString(), what: { kind: 'follow', line } } satisfies protocol.Show);
    void rememberShown(context.workspaceState, { uri: uri.toString(), line });
  }

  function adopt(panel: WebviewPanel, uri: Uri, line: number): Shown {
    const id = `${Date.now().toString(36)}-${++made}`;
    const shown: Shown = { id, panel, uri, line: undefined, seq: 0, ready: false, pointing: false, pointAgain: false };
    panels.set(id, shown);
    panel.iconPath = { light: Uri.joinPath(context.extensionUri, 'media/play-light.svg'), dark: Uri.joinPath(context.extensionUri, 'media/play-dark.svg') };
    panel.webview.onDidReceiveMessage((value: unknown) => {
      const message = readFromPlayer(value);
      if (message !== undefined) void hear(shown, message);
    });
    panel.onDidDispose(() => {
      panels.delete(id);
      window.visibleTextEditors.forEach((editor) => editor.setDecorations(now, []));
      say(protocol.hideMethod, { version: protocol.PROTOCOL_VERSION, panel: id });
      if (panels.size === 0) void forgetShown(context.workspaceState);
    });
    panel.webview.options = { enableScripts: true, localResourceRoots: [playerFolder(context.extensionUri)] };
    panel.webview.html = panelHtml(panel.webview, context.extensionUri);
    follow(shown, uri, line);
    return shown;
  }

  async function hear(shown: Shown, message: FromPlayer) {
    if (message.kind === 'ready') {
      shown.ready = true;
      if (shown.picture !== undefined) post(shown, shown.picture);
      return pointAtCursor(shown, editorOf(shown));
    }
    if (message.kind === 'select') return select(shown, message);
    if (message.kind === 'now') return markNow(shown, message);
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
    window.showTextDocument(await workspace.openTextDocument(uri), { viewColumn: ViewColumn.One, preserveFocus: true });

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
    post(shown, { v: MESSAGES_VERSION, kind: 'cursor', part: answer.part, ...(answer.t !== undefined && { t: answer.t }) });
  }

  function showPlay(uri: Uri, line: number | undefined) {
    const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    const wanted = line ?? editor?.selection.active.line ?? 0;
    const open = [...panels.values()][0];
    if (open !== undefined) {
      follow(open, uri, wanted);
      return open.panel.reveal(undefined, true);
    }
    const panel = window.createWebviewPanel(viewType, 'Setwright', { viewColumn: ViewColumn.Beside, preserveFocus: true }, { enableFindWidget: false, retainContextWhenHidden: false });
    adopt(panel, uri, wanted);
  }

  /** From the palette or a key: what is in front. From a button or the list of files: a uri. From a lens: its text and a line. */
  async function showFromCommand(place: unknown, line: unknown) {
    const uri = place instanceof Uri ? place : typeof place === 'string' ? Uri.parse(place) : window.activeTextEditor?.document.uri;
    if (uri === undefined) return;
    // From the list of files nothing may be open yet.
    if (!workspace.textDocuments.some((document) => document.uri.toString() === uri.toString())) await window.showTextDocument(uri);
    showPlay(uri, typeof line === 'number' && Number.isSafeInteger(line) && line >= 0 ? line : undefined);
  }

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

  return [
    now,
    commands.registerCommand('setwright.showPlay', showFromCommand),
    window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel: WebviewPanel, state: unknown) {
        const known = recallShown(context.workspaceState) ?? (readKept(state) && firstOpenPlay());
        if (known === undefined) return panel.dispose();
        // The server only knows documents that are open.
        await workspace.openTextDocument(Uri.parse(known.uri)).then(undefined, () => undefined);
        adopt(panel, Uri.parse(known.uri), known.line);
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
    window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (!isPlay(textEditor.document)) return;
      const fromPanel = selectedHere.delete(textEditor);
      for (const shown of panels.values()) {
        if (textEditor !== window.activeTextEditor && textEditor.document.uri.toString() !== shown.uri.toString()) continue;
        follow(shown, textEditor.document.uri, textEditor.selection.active.line);
        if (!fromPanel) void pointAtCursor(shown, textEditor);
      }
    }),
  ];

  function receive(shown: Shown, frame: protocol.UnreadFrame) {
    const before = shown.picture;
    const message = {
      v: MESSAGES_VERSION, kind: 'show', seq: ++shown.seq, title: frame.title, playback: frame.playback ?? null, stale: frame.stale,
      ...(frame.staleLine !== undefined && { line: frame.staleLine + 1 }),
    } as const satisfies ToPlayer;
    // A player that starts anew needs the last good picture together with its mark.
    shown.picture = message.playback === null && message.stale && before !== undefined ? { ...message, playback: before.playback } : message;
    shown.panel.title = frame.title === '' ? 'Setwright' : frame.title;
    if (shown.ready) post(shown, message);
  }
}

function firstOpenPlay() {
  const document = workspace.textDocuments.find(({ languageId }) => languageId === language);
  return document && { uri: document.uri.toString(), line: 0 };
}
