// Whose rules a play is for.
import { message, type Message } from '../message/message.ts';
import type { RuleSetId } from '../court/rule-set.ts';

const names: Readonly<Record<RuleSetId, Message | string>> = { fiba: 'FIBA', nba: 'NBA', 'ncaa-men': message('NCAA men'), 'ncaa-women': message('NCAA women'), nfhs: 'NFHS', mini: message('Mini-basketball') };

export const rulesWords = (rules: RuleSetId): Message | string => names[rules];
