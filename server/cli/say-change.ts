// The words of what has changed, for the terminal and for a review alike.
import type { BlockChange } from '../../language/compare/compare-blocks.ts';
import type { Between, LookChange, PartChange } from '../../language/compare/compare-plays.ts';
import type { SectionChange } from '../../language/compare/compare-sections.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';
import { capital } from '../../language/words/sentences.ts';
import type { Change, Comparison } from './comparison.ts';

const quoted = (name: string): string => `“${name}”`;
const list = (names: readonly string[]): string => names.map(quoted).join(', ');

/** `new`, `gone`, `changed`, `was called “Tide”`. */
export function sayKind(change: Change): string {
  if (change.kind === 'came') return 'new';
  if (change.kind === 'went') return 'gone';
  return change.renamed ? `was called ${quoted(change.before.play.name)}` : 'changed';
}

/** The play as it is now; of one that went, as it was. */
export function lastVersion(change: Change): Extract<Change, { readonly kind: 'came' }>['after'] {
  return change.kind === 'went' ? change.before : change.after;
}

export function sayPart({ step, only }: PartChange): string {
  const what = only === undefined ? '' : only === 'came' ? ', new' : ', gone';
  return `${step === undefined ? 'above the steps' : `step ${step}`}${what}`;
}

/** A look with its two times. */
export function lookCells({ name, before, after }: LookChange): readonly [string, string, string] {
  return [name, sayBetween({ ...(before && { before: sayMoment(before.typical) }), ...(after && { after: sayMoment(after.typical) }) }), sayBetween({ ...(before && { before: sayMoment(before.late) }), ...(after && { after: sayMoment(after.late) }) })];
}

/** `6.4 s → 6.9 s`; where there was or is none, which of the two. */
export function sayBetween({ before, after }: Between<string>): string {
  if (before === undefined) return after === undefined ? '' : `${after} (new)`;
  return after === undefined ? `${before} (gone)` : before === after ? before : `${before} → ${after}`;
}

/** `Book “Season”`, `Alignment “Dock”`. */
/** `on the clock for every look: 6 s → 5 s` */
export function sayCall(what: string, between: Between<number> | undefined): readonly string[] {
  if (between === undefined) return [];
  const { before, after } = between;
  return [`on the clock for ${what}: ${sayBetween({ ...(before !== undefined && { before: `${before} s` }), ...(after !== undefined && { after: `${after} s` }) })}`];
}

export function sayBlock({ what, name }: BlockChange): string {
  return `${capital(what)}${name === undefined ? '' : ` ${quoted(name)}`}`;
}

export function sayBlockKind({ kind, was }: BlockChange): string {
  if (was !== undefined) return was === '' ? 'had no name' : `was called ${quoted(was)}`;
  return kind === 'came' ? 'new' : kind === 'went' ? 'gone' : 'changed';
}

/** Who stands in an alignment or names a spot; nothing of a book. */
export function sayUse({ what, kind, usedBy }: BlockChange): string | undefined {
  if (what !== 'alignment' && what !== 'spot') return undefined;
  const tense = kind === 'went' ? 'was used' : 'used';
  return usedBy.length === 0 ? `${tense} by no play here` : `${tense} by ${list(usedBy)}`;
}

export function saySection(change: SectionChange): string {
  switch (change.kind) {
    case 'came':
    case 'went': {
      const plays = change.plays.length === 0 ? 'without plays' : list(change.plays);
      return `section ${quoted(change.section)}, ${change.kind === 'came' ? 'new' : 'gone'}: ${plays}`;
    }
    case 'renamed':
      return `section ${quoted(change.section)} was called ${quoted(change.was)}`;
    case 'moved':
      return `${quoted(change.play)} moved from section ${quoted(change.from)} to ${quoted(change.to)}`;
    case 'put-in':
      return `${quoted(change.play)} put into section ${quoted(change.to)}`;
    case 'taken-out':
      return `${quoted(change.play)} taken out of section ${quoted(change.from)}; ${change.still.length === 0 ? 'it stands in no section now' : `it still stands in ${list(change.still)}`}`;
    case 'order':
      return change.section === undefined ? `sections in another order: ${list(change.names)}` : `section ${quoted(change.section)} in another order: ${list(change.names)}`;
  }
}

/** `Plays: 1 changed, 2 as before. Beside them: book, roster.` */
export function summary({ changes, blocks, plays }: Comparison): string {
  const count = (kind: Change['kind']) => changes.filter((one) => one.kind === kind).length;
  const [came, went, changed] = [count('came'), count('went'), count('changed')];
  const beside = blocks.length === 0 ? '' : ` Beside them: ${[...new Set(blocks.map(({ what }) => what))].map((what) => several(blocks.filter((one) => one.what === what).length, what)).join(', ')}.`;
  if (changes.length === 0) return `${plays === 0 ? 'There are no plays' : plays === 1 ? 'The play is' : `All ${plays} plays are`}${plays === 0 ? '' : ' as before'}.${beside}`;
  const said = [[changed, 'changed'], [came, 'new'], [went, 'gone'], [plays - came - changed, 'as before']] as const;
  return `Plays: ${said.filter(([number]) => number > 0).map(([number, what]) => `${number} ${what}`).join(', ')}.${beside}`;
}

function several(count: number, noun: string): string {
  return count === 1 ? `1 ${noun}` : `${count} ${noun}s`;
}
