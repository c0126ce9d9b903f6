// A page opens what it carries: its plays as far as they can be read, or why none can.
import type { Playback } from '../../language/playback/playback.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import { DATA_ID, readPageData } from './page-data.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface OpenedPage {
  /** None: then `refusal` says why, in a coach's words. */
  readonly plays: readonly Playback[];
  /** Of each play the section of its book. */
  readonly sections: readonly (string | undefined)[];
  /** What the page is called: the book's name, or the file's. */
  readonly title: string;
  readonly refusal: string;
  readonly autoplay: boolean;
}

/** The data of this page; `undefined` in a panel, which carries none. */
export function dataOfPage(): string | undefined {
  return document.getElementById(DATA_ID)?.textContent ?? undefined;
}

export async function openPage(text: string): Promise<OpenedPage> {
  const read = await readPageData(text);
  if (read === undefined) return { plays: [], sections: [], title: '', refusal: tell(message('This browser is too old to open the page, or the file is damaged. A browser of 2023 or later opens it.')), autoplay: false };
  const all = read.plays.map(readPlayback);
  const refusal = all.find((one) => !one.ok)?.message ?? '';
  const opened = all.flatMap((one, i) => (one.ok ? [{ playback: one.playback, section: read.sections?.[i] ?? undefined }] : []));
  return { plays: opened.map(({ playback }) => playback), sections: opened.map(({ section }) => section), title: read.title, refusal, autoplay: read.autoplay };
}
