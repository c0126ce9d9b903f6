import type { Source } from '../court/point.ts';
import { message, type Words } from '../message/message.ts';
import type { Ground } from './check.ts';

/** What a finding or a code rests on, and how we know it, for people. Titles and numbers of rules stay as they are printed. */
export function restsOn(source: Source | Ground): Words {
  if (typeof source === 'string') return grounds[source];
  const { text, how } = source;
  if (how === 'read' || text.includes(how)) return text;
  if (how === 'common practice, no source') return text === 'common practice' ? message('common practice, no source') : message('{source} (common practice, no source)', { source: text });
  if (how === 'from memory') return message('{source} (from memory)', { source: text });
  return how === 'computed' ? message('{source} (computed)', { source: text }) : message('{source} (second-hand)', { source: text });
}

const grounds: Readonly<Record<Ground, Words>> = {
  'the words of the notation': message('the words of the notation'),
  'what the play itself asks for': message('what the play itself asks for'),
  'what can happen on a floor': message('what can happen on a floor'),
  'what this tool can show': message('what this tool can show'),
};
