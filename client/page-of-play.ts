// A page on which plays move, made where there is no Node: in the extension, in the browser too.
import type { Translation } from '../language/message/message.ts';
import type { Playback } from '../language/playback/playback.ts';
import { pageParts, type PageOptions } from './preview/page.ts';

export interface PlayerText {
  readonly script: string;
  readonly style: string;
}

/** What the page speaks. */
export interface Tongue {
  readonly language: string;
  readonly words?: Translation | undefined;
}

/** Of several plays: what the page is called, and of each play the section of its book. */
export type Bound = Pick<PageOptions, 'title' | 'sections'>;

/** The page names its own script by a hash and holds the plays packed; both are worked out by the platform, which answers later. */
export async function pageOf(plays: readonly Playback[], { script, style }: PlayerText, { language, words }: Tongue, bound: Bound = {}): Promise<string> {
  const { js, css, data, sealed } = pageParts(plays, script, style, { language, ...(words && { words }), ...bound });
  return sealed(...(await Promise.all([hashed(js), hashed(css), deflated(data).then(base64)])));
}

const hashed = async (text: string) => base64(new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))));

async function deflated(text: string): Promise<Uint8Array> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

const base64 = (bytes: Uint8Array): string => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
