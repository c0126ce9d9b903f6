// A page on which a play moves, made where there is no Node: in the extension, in the browser too.
import type { Translation } from '../language/message/message.ts';
import type { Playback } from '../language/playback/playback.ts';
import { pageParts } from './preview/page.ts';

export interface PlayerText {
  readonly script: string;
  readonly style: string;
}

/** What the page speaks. */
export interface Tongue {
  readonly language: string;
  readonly words?: Translation | undefined;
}

/** The page names its own script by a hash and holds the play packed; both are worked out by the platform, which answers later. */
export async function pageOf(playback: Playback, { script, style }: PlayerText, { language, words }: Tongue): Promise<string> {
  const { js, css, data, sealed } = pageParts([playback], script, style, { language, ...(words && { words }) });
  return sealed(...(await Promise.all([hashed(js), hashed(css), deflated(data).then(base64)])));
}

const hashed = async (text: string) => base64(new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))));

async function deflated(text: string): Promise<Uint8Array> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

const base64 = (bytes: Uint8Array): string => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
