// What stands round a check's own message: the further rule set that minds, and on how many more ways it is true.
import type { Finding } from './finding.ts';
import { fillTemplate } from './template.ts';

export const around = {
  byTheRules: 'By the {rules} rules: {message}',
  onOneMoreWay: '{message} So too on 1 other way through the play.',
  onMoreWays: '{message} So too on {more} other ways through the play.',
} as const;

/** `translated` gives a template in another language. */
export function wholeMessage(message: string, { byRules, moreWays }: Pick<Finding, 'byRules' | 'moreWays'>, translated: (template: string) => string = (template) => template): string {
  const text = byRules === undefined ? message : fillTemplate(translated(around.byTheRules), { rules: byRules, message });
  if (moreWays === undefined) return text;
  return fillTemplate(translated(moreWays === 1 ? around.onOneMoreWay : around.onMoreWays), { message: text, more: moreWays });
}
