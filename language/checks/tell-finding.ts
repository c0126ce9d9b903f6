// A finding in the words of a language, for whoever prints it.
import { inEnglish, type Message, type Param, type Say } from '../message/message.ts';
import type { BlockEdit, Finding } from './finding.ts';

/** Plain text where a finding has messages. */
export interface ToldFinding extends Omit<Finding, 'said' | 'params' | 'related' | 'fixes'> {
  readonly params: Readonly<Record<string, string | number>>;
  readonly related: readonly { readonly place: Finding['place']; readonly message: string }[];
  readonly fixes: readonly { readonly title: string; readonly preferred?: boolean; readonly edits: readonly BlockEdit[] }[];
}

export function tellFinding({ said, ...finding }: Finding, say: Say = inEnglish): ToldFinding {
  return {
    ...finding,
    message: say(said),
    params: Object.fromEntries(Object.entries(finding.params).map(([name, param]) => [name, sayParam(param, say)])),
    related: finding.related.map(({ place, message }) => ({ place, message: say(message) })),
    fixes: finding.fixes.map((fix) => ({ ...fix, title: say(fix.title) })),
  };
}

/** What a finding says, as it carries it. */
export const inWords = (said: Message): Pick<Finding, 'said' | 'message'> => ({ said, message: inEnglish(said) });

function sayParam(param: Param, say: Say): string | number {
  if (typeof param === 'number') return param;
  if (typeof param === 'string' || 'template' in param) return say(param);
  return param.map((one) => sayParam(one, say)).join(', ');
}
