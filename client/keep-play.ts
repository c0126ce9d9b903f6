// A play to give away: as a drawing with one frame a step, or as a page on which it moves, which needs nothing else.
import { commands, l10n, window, type Disposable, type ExtensionContext } from 'vscode';
import { readPlayback } from '../language/playback/validate.ts';
import * as protocol from '../server/lsp/protocol.ts';
import { keepFile, playerText, tongue } from './keep-file.ts';
import { placeFromCommand, saysPlay, type PlaceOfPlay } from './open-play.ts';
import { pageOf } from './page-of-play.ts';
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
    await keepFile(place.uri, drawn.title, 'svg', l10n.t('Drawings'), drawn.svg);
  }

  async function keepPage(from: unknown, line: unknown) {
    const place = await placeMeant(from, line);
    const play = place && (await askOf(protocol.playMethod, place, protocol.readPlay));
    if (place === undefined || play == null) return void window.showInformationMessage(l10n.t('There is no play here to make a page of yet. Open one, and write its first line.'));
    const read = readPlayback(play.playback);
    if (!read.ok) return void window.showErrorMessage(read.message);
    await keepFile(place.uri, play.title, 'html', l10n.t('Pages'), await pageOf([read.playback], await playerText(extensionUri), tongue()));
  }

  return [commands.registerCommand('setwright.saveDrawing', keepDrawing), commands.registerCommand('setwright.savePage', keepPage)];
}
