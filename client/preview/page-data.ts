// What a page carries inside itself: its plays as data, and whether they start to move by themselves. Deflated: a play is a tenth as
// long then, so that a whole playbook is still one file for the post.
import * as v from 'valibot';

export const DATA_ID = 'setwright-plays';

const pageData = v.object({ v: v.literal(2), title: v.string(), plays: v.pipe(v.array(v.unknown()), v.minLength(1)), autoplay: v.boolean(), /** Of each play the section of its book. */ sections: v.optional(v.array(v.nullable(v.string()))) });
export type PageData = v.InferOutput<typeof pageData>;

/**
 * Reads a page's data, zlib's deflate in base64; `undefined` when it is of another version, damaged, or the browser is too old to open it (2023 and
 * later can). The plays themselves are still unread.
 */
export async function readPageData(text: string): Promise<PageData | undefined> {
  try {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const opened = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'));
    const read = v.safeParse(pageData, JSON.parse(await new Response(opened).text()));
    return read.success ? read.output : undefined;
  } catch {
    return undefined;
  }
}
