// Whose legs a play is for, within a sentence and at its start.
import { message, type Message } from '../message/message.ts';
import type { LevelId } from '../court/youth.ts';

const within: Readonly<Record<LevelId, Message>> = {
  u10: message('under 10'), u12: message('under 12'), u14: message('under 14'), u16: message('under 16'), hs: message('high school'), college: message('college'), pro: message('professional'),
};
const atStart: Readonly<Record<LevelId, Message>> = {
  u10: message('Under 10'), u12: message('Under 12'), u14: message('Under 14'), u16: message('Under 16'), hs: message('High school'), college: message('College'), pro: message('Professional'),
};

export const levelWords = (level: LevelId): Message => within[level];
export const levelAtStart = (level: LevelId): Message => atStart[level];
