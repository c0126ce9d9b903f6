// A file to give away: where it goes is asked, and it can be opened at once. What a page is made from.
import { env, l10n, Uri, window, workspace } from 'vscode';
import { fileNameOf } from '../language/book/slug.ts';
import { asMessage } from '../server/lsp/as-message.ts';
import { fileName } from './open-play.ts';
import type { PlayerText, Tongue } from './page-of-play.ts';
import { playerFolder } from './panel/panel-html.ts';

/** @param beside a file in whose folder it is offered to lie; `kind`: what the window calls files with this ending */
export async function keepFile(beside: Uri, title: string, ending: string, kind: string, text: string): Promise<void> {
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

/** The player that goes into a page. */
export async function playerText(extensionUri: Uri): Promise<PlayerText> {
  const [script, style] = await Promise.all(['player.js', 'player.css'].map((name) => textOf(Uri.joinPath(playerFolder(extensionUri), name))));
  return { script: script!, style: style! };
}

/** The editor's language. */
export const tongue = (): Tongue => ({ language: env.language, words: l10n.bundle });

async function textOf(uri: Uri): Promise<string> {
  return new TextDecoder().decode(await workspace.fs.readFile(uri));
}
