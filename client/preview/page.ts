// The page as text: one file that needs no other, no network and no eval. Made in Node; it knows no DOM.
import type { Playback } from '../../language/playback/playback.ts';
import { escapeText } from '../../language/picture/nodes.ts';
import { DATA_ID, type PageData } from './page-data.ts';

export interface PageOptions {
  /** SHA-256 of the text's UTF-8 bytes in base64: names the page's own script and style in its security policy. */
  readonly sha256: (text: string) => string;
  /** Starts to move when it is opened (never where the reader asks for less motion). Default true. */
  readonly autoplay?: boolean;
  readonly language?: string;
}

/**
 * One self-contained HTML file that shows a play moving, from a file or any server.
 * @param script the built player (dist/preview/player.js), `style` its style sheet
 */
export function pageHtml(playback: Playback, script: string, style: string, options: PageOptions): string {
  const js = script.replaceAll(/<\/(script)/gi, '<\\/$1').replaceAll('<!--', '<\\!--');
  const css = style.replaceAll(/<\/(style)/gi, '<\\/$1');
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${options.sha256(js)}'`,
    `style-src 'sha256-${options.sha256(css)}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const data: PageData = { v: 1, playback, title: playback.play.name, autoplay: options.autoplay ?? true };
  return `<!doctype html>
<html lang="${escapeText(options.language ?? 'en')}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeText(playback.play.name)}</title>
<style>${css}</style>
</head>
<body>
<noscript>${toldHtml(playback)}</noscript>
<script type="application/json" id="${DATA_ID}">${jsonInMarkup(data)}</script>
<script>${js}</script>
</body>
</html>
`;
}

/** JSON that may stand inside a script element: no text of a play can end it. */
export function jsonInMarkup(value: unknown): string {
  return JSON.stringify(value).replaceAll(/[<>&\u2028\u2029]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

// Where scripts are off the play can still be read.
function toldHtml({ play, told }: Playback): string {
  return `<h1>${escapeText(play.name)}</h1><ol>${told.map(({ text }) => `<li>${escapeText(text)}</li>`).join('')}</ol>`;
}
