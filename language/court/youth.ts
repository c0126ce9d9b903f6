import { message, type Message } from '../message/message.ts';
import type { Source } from './point.ts';
import { commonPractice, computed, fromMemory, read } from './sources.ts';

export const levelIds = ['u10', 'u12', 'u14', 'u16', 'hs', 'college', 'pro'] as const;
/** Whose legs a play is written for. */
export type LevelId = (typeof levelIds)[number];

export type YouthTopic = 'screens' | 'zone' | 'press' | 'three-point value' | 'ring height' | 'ball size' | 'shot clock' | 'rest';

/** What the rules or the guidelines of an age forbid or advise. A caution, never a promise: the own league's sheet decides. */
export interface YouthNote {
  readonly levels: readonly LevelId[];
  readonly topic: YouthTopic;
  /** `forbidden` somewhere by rule, `advised` against by a guideline, `differs` where only the measure is another. */
  readonly weight: 'forbidden' | 'advised' | 'differs';
  readonly text: Message;
  readonly source: Source;
}

const guidelines = 'NBA and USA Basketball age-appropriate rules and standards';

export const youthNotes: readonly YouthNote[] = [
  { levels: ['u10', 'u12'], topic: 'zone', weight: 'advised', text: message('ages 7 to 11 play no zone'), source: read(guidelines) },
  { levels: ['u10', 'u12'], topic: 'three-point value', weight: 'advised', text: message('ages 7 to 11 score no threes'), source: read(guidelines) },
  { levels: ['u14'], topic: 'shot clock', weight: 'advised', text: message('ages 12 to 14 play with a 30 second shot clock'), source: read(guidelines) },
  { levels: ['u10', 'u12'], topic: 'press', weight: 'advised', text: message('no press for ages 7 and 8, only late in the game for ages 9 to 11'), source: fromMemory(guidelines) },
  { levels: ['u10', 'u12'], topic: 'screens', weight: 'advised', text: message('some leagues play without screens up to under 11'), source: computed('summary of several national youth rules') },
  { levels: ['u10', 'u12'], topic: 'ring height', weight: 'differs', text: message('the ring hangs at 2.60 m under 11 and at 3.05 m for ages 11 and 12'), source: read('FIBA Mini 2005, Art. 4') },
  { levels: ['u10', 'u12'], topic: 'ball size', weight: 'differs', text: message('ages 9 to 12 play with a size 5 ball'), source: read('FIBA Mini 2005, Art. 4') },
  { levels: ['u10', 'u12', 'u14', 'u16'], topic: 'zone', weight: 'forbidden', text: message('New Zealand: man-to-man is compulsory up to under 16'), source: read('association rules 2015 quoting the national body') },
  { levels: ['u10', 'u12', 'u14'], topic: 'zone', weight: 'forbidden', text: message('one Nordic club tournament allows a zone only from under 15'), source: read('tournament rules page') },
  { levels: ['u10', 'u12'], topic: 'rest', weight: 'advised', text: message('two days a week without organised basketball'), source: read('NBA and USA Basketball guidelines 2016') },
  { levels: ['u14', 'u16', 'hs'], topic: 'rest', weight: 'advised', text: message('at least one day a week without organised basketball'), source: read('NBA and USA Basketball guidelines 2016') },
  { levels: ['u10', 'u12', 'u14'], topic: 'rest', weight: 'advised', text: message('no specialising in one sport before 14'), source: read('DiFiori 2018') },
];

/** What to mind at a level, in the order of the table. */
export function youthNotesFor(level: LevelId): readonly YouthNote[] {
  return youthNotes.filter((note) => note.levels.includes(level));
}

/** The caution every page of youth advice carries. */
export const youthCaution = { text: 'Your own league’s sheet decides, and a child in pain or tired out stops.', source: commonPractice() } as const;
