// A play to give away: as a drawing with one frame a step, or as a page on which it moves, which needs nothing else.
import { commands, env, l10n, Uri, window, workspace, type Disposable, type ExtensionContext } from 'vscode';
import { readPlayback } from '../language/playback/validate.ts';
import { fileNameOf } from '../language/book/slug.ts';
import { asMessage } from '../server/lsp/as-message.ts';
import * as protocol from '../server/lsp/protocol.ts';
import { fileName, placeFromCommand, saysPlay, type PlaceOfPlay } from './open-play.ts';
import { pageOf } from './page-of-play.ts';
import { playerFolder } from './panel/panel-html.ts';
import type { PlayPanels } from './panel/panels.ts';
import type { PlaybookSource } from './playbook/playbook-source.ts';
import type { ServerLine } from './server-line.ts';

type Shown = Pick<PlayPanels, 'inHand'> & Pick<PlaybookSource, 'playsOf'>;

export function registerKeepPlay({ extensionUri }: ExtensionContext, { ask }: Pick<ServerLine, 'ask'>, { inHand, playsOf }: Shown): Disposable[] {
  /** The play that comes with the command, else the one the panel shows that has the keyboard, else that of the cursor. */
  async function placeMeant(from: unknown, line: unknown): Promise<PlaceOfPlay | undefined> {
    const shown = saysPlay(from, line) ? undefined : inHand();
    if (shown === undefined) return placeFromCommand(from, line);
    const play = (await playsOf(shown.uri)).find(({ key }) => key === shown.playKey);
    return play && placeFromCommand(shown.uri, play.line);
  }

  const askOf = <Answer>(method: string, { uri, line }: PlaceOfPlay, read: (value: unknown) => Answer | undefined) => ask(method, { uri: uri.toString(), line }, read);

  async function keepDrawing(from: unknown, line: unknown) {
    const place = await placeMeant(from, line);
    const drawn = place && (await askOf(protocol.drawnMethod, place, protocol.readDrawn));
    if (place === undefined || drawn == null) return void window.showInformationMessage(l10n.t('There is no play here to draw yet. Open one, and write its first line.'));
    await write(place.uri, drawn.title, 'svg', l10n.t('Drawings'), drawn.svg);
  }

  async function keepPage(from: unknown, line: unknown) {
    const place = await placeMeant(from, line);
    const play = place && (await askOf(protocol.playMethod, place, protocol.readPlay));
    if (place === undefined || play == null) return void window.showInformationMessage(l10n.t('There is no play here to make a page of yet. Open one, and write its first line.'));
    const read = readPlayback(play.playback);
    if (!read.ok) return void window.showErrorMessage(read.message);
    const [script, style] = await Promise.all(['player.js', 'player.css'].map((name) => textOf(Uri.joinPath(playerFolder(extensionUri), name))));
    await write(place.uri, play.title, 'html', l10n.t('Pages'), await pageOf(read.playback, { script: script!, style: style! }, { language: env.language, words: l10n.bundle }));
  }

  return [commands.registerCommand('setwright.saveDrawing', keepDrawing), commands.registerCommand('setwright.savePage', keepPage)];
}

async function write(beside: Uri, title: string, ending: string, kind: string, text: string): Promise<void> {
  const name = `${fileNameOf(title)}.${ending}`;
  const folder = beside.scheme === 'untitled' ? workspace.workspaceFolders?.[0]?.uri : Uri.joinPath(beside, '..');
  const uri = await window.showSaveDialog({ ...(folder && { defaultUri: Uri.joinPath(folder, name) }), filters: { [kind]: [ending] } });
  if (uri === undefined) return;
  try {
    await workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  } catch {
    return void window.showErrorMessage(l10n.t('It could not be written there. Choose another place.'));
  }
  const open = l10n.t('Open it');
  const chosen = await window.showInformationMessage(asMessage(l10n.t('“{0}” is written: {1}', title, fileName(uri))), open);
  if (chosen === open) await env.openExternal(uri);
}

async function textOf(uri: Uri): Promise<string> {
  return new TextDecoder().decode(await workspace.fs.readFile(uri));
}
