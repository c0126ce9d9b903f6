import type { RuleSet, RuleSetId } from './rule-set.ts';
import { ruleSetIds } from './rule-set.ts';
import { fiba } from './rules/fiba.ts';
import { mini } from './rules/mini.ts';
import { nba } from './rules/nba.ts';
import { ncaaMen, ncaaWomen } from './rules/ncaa.ts';
import { nfhs } from './rules/nfhs.ts';

const records: Readonly<Record<RuleSetId, RuleSet>> = { fiba, nba, 'ncaa-men': ncaaMen, 'ncaa-women': ncaaWomen, nfhs, mini };

/** Every rule set, in the order the notation names them. */
export const ruleSets: readonly RuleSet[] = ruleSetIds.map((id) => records[id]);

/** The record of a rule set. */
export function ruleSet(id: RuleSetId): RuleSet {
  return records[id];
}
