// How several plays are listed: under the sections of their book, and on the call sheet, on paper and on the screen, with what each needs.
import { message } from '../../language/message/message.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { element } from './elements.ts';
import { tell } from './tell.ts';

export const aboutSeconds = (): string => tell(message('Seconds that must be on the clock at the call, on a throw-in at the hand-over. A model’s figures, not a promise: time your own team.'));

/** Whole seconds that must be on the clock for the first look and for every look; none of a play without a look. */
export function neededBy({ times: { firstLook, allLooks = firstLook } }: Playback, moment: 'fromCall' | 'alreadySet'): { readonly first: number; readonly every: number } | undefined {
  return firstLook && allLooks && { first: firstLook[moment], every: allLooks[moment] };
}

/** In the order they are read. A line breaks between two looks; one that is longer than the line, between its words. */
export function looksOf({ runs }: Playback): HTMLElement {
  const looks = runs.filter(({ look }) => look !== undefined);
  return element('span', { class: 'looks' }, ...looks.flatMap(({ label }, at) => [element('span', {}, at < looks.length - 1 ? `${label};` : label), ' ']).slice(0, -1));
}

export interface SectionOfPlays<One> {
  /** Absent where no play is in a section. */
  readonly head: string | undefined;
  readonly plays: readonly One[];
}

/** Plays of one section that follow each other; those in none have a name of their own once another has a section. */
export function inSections<One extends { readonly section: string | undefined }>(plays: readonly One[]): readonly SectionOfPlays<One>[] {
  const none = plays.some(({ section }) => section !== undefined) ? tell(message('Other plays')) : undefined;
  const sections: { section: string | undefined; head: string | undefined; plays: One[] }[] = [];
  for (const one of plays) {
    const last = sections.at(-1);
    if (last !== undefined && last.section === one.section) last.plays.push(one);
    else sections.push({ section: one.section, head: one.section ?? none, plays: [one] });
  }
  return sections;
}
