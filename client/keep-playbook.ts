// A playbook to give away: all its plays, or those of one book or section, on one page; printed, a sheet for each and the call sheet on top.
import { commands, l10n, ProgressLocation, Uri, window, workspace, type Disposable, type ExtensionContext } from 'vscode';
import { readPlayback } from '../language/playback/validate.ts';
import type { Playback } from '../language/playback/playback.ts';
import * as protocol from '../server/lsp/protocol.ts';
import { keepFile, playerText, tongue } from './keep-file.ts';
import { fileName } from './open-play.ts';
import { pageOf } from './page-of-play.ts';
import { everything } from './playbook/filter.ts';
import type { PlaybookSource } from './playbook/playbook-source.ts';
import { playsOn, shelvesOf, type Listed, type Shelf } from './playbook/shelf.ts';
import type { ServerLine } from './server-line.ts';

type ShelfWithPlays = Extract<Shelf, { readonly inside: readonly Shelf[] }>;

export function registerKeepPlaybook({ extensionUri }: ExtensionContext, { ask }: Pick<ServerLine, 'ask'>, source: Pick<PlaybookSource, 'newest' | 'refresh'>): Disposable[] {
  async function keep(chosen?: ShelfWithPlays) {
    if (chosen === undefined) await readWhole(source);
    const shelves = chosen === undefined ? shelvesOf(source.newest() ?? { plays: [], books: [] }, everything) : [chosen];
    const listed = playsOn(shelves);
    const shown = listed.length === 0 ? [] : await window.withProgress({ location: ProgressLocation.Notification, title: l10n.t('Setwright: making the page'), cancellable: true }, (progress, token) =>
      playbacksOf(listed, (name) => progress.report({ increment: 100 / listed.length, message: name }), () => token.isCancellationRequested),
    );
    if (shown === undefined) return;
    if (shown.length === 0) return void window.showInformationMessage(l10n.t('There is no play here to make a page of yet. Open one, and write its first line.'));
    const title = titleOf(shelves);
    const page = await pageOf(shown.map(({ playback }) => playback), await playerText(extensionUri), tongue(), { title, sections: shown.map(({ section }) => section) });
    await keepFile(Uri.parse(listed[0]!.play.uri), title, 'html', l10n.t('Pages'), page);
  }

  /** One after the other, so that a keystroke waits for one play at most; undefined where it was called off. A play with nothing to show yet is left out. */
  async function playbacksOf(listed: readonly Listed[], next: (name: string) => void, calledOff: () => boolean): Promise<readonly (Listed & { readonly playback: Playback })[] | undefined> {
    const shown: (Listed & { readonly playback: Playback })[] = [];
    for (const one of listed) {
      if (calledOff()) return undefined;
      next(one.play.name);
      const { uri, line } = one.play;
      // The server tells of texts that the editor has open. A file that has gone since has no play to show.
      await workspace.openTextDocument(Uri.parse(uri)).then(undefined, () => undefined);
      const answer = await ask(protocol.playMethod, { uri, line }, protocol.readPlay);
      const read = answer && readPlayback(answer.playback);
      if (read?.ok === true && read.playback.runs.length > 0) shown.push({ ...one, playback: read.playback });
    }
    return shown;
  }

  return [commands.registerCommand('setwright.savePlaybook', () => keep()), commands.registerCommand('setwright.saveThesePlays', (shelf: ShelfWithPlays) => keep(shelf))];
}

/** The plays of a slow disk belong on the page too; each question waits for them some seconds. */
async function readWhole(source: Pick<PlaybookSource, 'newest' | 'refresh'>): Promise<void> {
  await source.refresh();
  for (let times = 0; times < 10 && source.newest()?.unread === true; times++) await source.refresh();
}

/** The only book's or section's name, the file's; of more than one the folder's. */
function titleOf([first, ...others]: readonly Shelf[]): string {
  if (first !== undefined && others.length === 0) {
    if (first.kind === 'file') return fileName(Uri.parse(first.uri)).replace(/\.play$/, '');
    if ('name' in first && first.name !== '') return first.name;
  }
  return workspace.name ?? l10n.t('Playbook');
}
