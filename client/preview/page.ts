// The page as text: one file that needs no other, no network and no eval. Made in Node; it knows no DOM.
import type { Playback } from '../../language/playback/playback.ts';
import { escapeText } from '../../language/picture/nodes.ts';
import type { Translation } from '../../language/message/message.ts';
import { DATA_ID, type PageData } from './page-data.ts';
import { wordsInPage } from './words-in-page.ts';

export interface PageOptions {
  /** SHA-256 of the text's UTF-8 bytes in base64: names the page's own script and style in its security policy. */
  readonly sha256: (text: string) => string;
  /** The text's UTF-8 bytes through zlib's deflate, in base64: the plays inside the page. */
  readonly deflate: (text: string) => string;
  /** Starts to move when it is opened (never where the reader asks for less motion). Default true. */
  readonly autoplay?: boolean;
  readonly language?: string;
  /** The player's words in that language; English without. */
  readonly words?: Translation;
  /** Of a page with several plays; else the play's name. */
  readonly title?: string;
  /** Of each play the section of its book. */
  readonly sections?: readonly (string | undefined)[];
}

/** A page before it is sealed: what its policy has to name and what it carries packed. */
export interface PageParts {
  readonly js: string;
  readonly css: string;
  readonly data: string;
  /** The page with the seals of these three. */
  readonly sealed: (js: string, css: string, data: string) => string;
}

/**
 * One self-contained HTML file that shows plays moving, from a file or any server; with several a list to choose from.
 * @param script the built player (dist/preview/player.js), `style` its style sheet
 */
export function pageHtml(plays: readonly Playback[], script: string, style: string, { sha256, deflate, ...options }: PageOptions): string {
  const { js, css, data, sealed } = pageParts(plays, script, style, options);
  return sealed(sha256(js), sha256(css), deflate(data));
}

/** The same in parts, for where hashes and packing are answered later. */
export function pageParts(plays: readonly Playback[], script: string, style: string, options: Omit<PageOptions, 'sha256' | 'deflate'>): PageParts {
  const js = script.replaceAll(/<\/(script)/gi, '<\\/$1').replaceAll('<!--', '<\\!--');
  const css = style.replaceAll(/<\/(style)/gi, '<\\/$1');
  const title = options.title ?? plays[0]?.play.name ?? '';
  const { sections } = options;
  const data: PageData = { v: 2, title, plays: [...plays], autoplay: options.autoplay ?? true, ...(sections?.some((section) => section !== undefined) && { sections: plays.map((_, i) => sections[i] ?? null) }) };
  const sealed = (jsHash: string, cssHash: string, packed: string) => `<!doctype html>
<html lang="${escapeText((options.words && options.language) ?? 'en')}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-${jsHash}'; style-src 'sha256-${cssHash}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeText(title)}</title>
<style>${css}</style>
</head>
<body>
<noscript>${plays.map(toldHtml).join('')}</noscript>
${wordsInPage(options.words && spoken(options.words, script))}<script type="text/plain" id="${DATA_ID}">${packed}</script>
<script>${js}</script>
</body>
</html>
`;
  return { js, css, data: JSON.stringify(data), sealed };
}

/** Of a whole translation what the player says: a template stands in its script as it is written, or with its signs spelled out. */
function spoken(words: Translation, script: string): Translation {
  const plain = script.replaceAll(/\\u([\da-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
  return Object.fromEntries(Object.entries(words).filter(([template]) => plain.includes(template)));
}

// Where scripts are off the play can still be read.
function toldHtml({ play, told }: Playback): string {
  return `<h1>${escapeText(play.name)}</h1><ol>${told.map(({ text }) => `<li>${escapeText(text)}</li>`).join('')}</ol>`;
}
