// What stands round a check's own message: the further rule set that minds, and on how many more ways it is true.
import { message, type Message } from '../message/message.ts';
import type { Finding } from './finding.ts';

export function wholeMessage(own: Message, { byRules, moreWays }: Pick<Finding, 'byRules' | 'moreWays'>): Message {
  const told = byRules === undefined ? own : message('By the {rules} rules: {message}', { rules: byRules, message: own });
  if (moreWays === undefined) return told;
  if (moreWays === 1) return message('{message} So too on 1 other way through the play.', { message: told });
  return message('{message} So too on {more} other ways through the play.', { message: told, more: moreWays });
}
