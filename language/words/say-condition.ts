import { message, type Message } from '../message/message.ts';

/** When a counter is run, from the words that are written for it. */
export function sayCondition(written: string): Message {
  return written === 'otherwise' ? message('otherwise') : message('when {happens}', { happens: written });
}
