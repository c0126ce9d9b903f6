// The page in the panel: the player's script and style, and nothing else may run or load.
import { Uri, type Webview } from 'vscode';
import type { Translation } from '../../language/message/message.ts';
import { wordsInPage } from '../preview/words-in-page.ts';

/** Folder the webview may read. */
export const playerFolder = (extension: Uri): Uri => Uri.joinPath(extension, 'dist', 'preview');

export function panelHtml(webview: Webview, extension: Uri, language: string, words: Translation | undefined): string {
  const nonce = makeNonce();
  const file = (name: string) => webview.asWebviewUri(Uri.joinPath(playerFolder(extension), name)).toString();
  const policy = [
    `default-src 'none'`,
    `script-src 'nonce-${nonce}'`,
    `style-src ${webview.cspSource}`,
    `img-src ${webview.cspSource} data:`,
    `font-src ${webview.cspSource}`,
    `base-uri 'none'`,
    `form-action 'none'`,
  ].join('; ');
  return `<!doctype html>
<html lang="${words === undefined ? 'en' : language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Setwright</title>
<link rel="stylesheet" href="${file('player.css')}">
</head>
<body>
${wordsInPage(words)}<script nonce="${nonce}" src="${file('player.js')}"></script>
</body>
</html>`;
}

function makeNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return btoa(String.fromCharCode(...bytes));
}
