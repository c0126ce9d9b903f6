import type { Block } from '../book/book.ts';
import type { RuleSetId } from '../court/rule-set.ts';
import type { LevelId } from '../court/youth.ts';

/** What a file's header says for all its plays. */
export interface FileSettings {
  readonly level?: LevelId;
  readonly rules?: RuleSetId;
  readonly alsoRules: readonly RuleSetId[];
}

const noSettings: FileSettings = { alsoRules: [] };

/** Reads the level and the rules a header block states; the first line of each counts. */
export function fileSettingsOf(header: Block | undefined): FileSettings {
  if (header === undefined || header.kind !== 'file') return noSettings;
  let settings = noSettings;
  for (const { parsed } of header.lines) {
    if (parsed.tree === undefined || parsed.fault !== undefined) continue;
    if (parsed.tree.$type === 'Level') settings = { level: parsed.tree.level, ...settings };
    if (parsed.tree.$type === 'Rules' && settings.rules === undefined)
      settings = { ...settings, rules: parsed.tree.rules, alsoRules: parsed.tree.also };
  }
  return settings;
}
