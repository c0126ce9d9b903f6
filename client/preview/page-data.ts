// What a page carries inside itself: one play as data, and whether it starts to move by itself.
import * as v from 'valibot';

export const DATA_ID = 'setwright-play';

const pageData = v.object({ v: v.literal(1), playback: v.unknown(), title: v.string(), autoplay: v.boolean() });
export type PageData = v.InferOutput<typeof pageData>;

/** Reads a page's data; `undefined` when it is of another version. The playback itself is still unread. */
export function readPageData(text: string): PageData | undefined {
  try {
    const read = v.safeParse(pageData, JSON.parse(text));
    return read.success ? read.output : undefined;
  } catch {
    return undefined;
  }
}
