// One play through all layers. Nothing else knows them all.
import type { Block } from './book/book.ts';
import { keptByBlock } from './book/kept-by-block.ts';
import { checkPlay } from './checks/check-play.ts';
import type { Finding } from './checks/finding.ts';
import { leavesGap } from './checks/unreadable.ts';
import { courtOf, type Court } from './court/court.ts';
import { ruleSet } from './court/rule-sets.ts';
import { applyIntent } from './edit/apply-intent.ts';
import type { Intent, Outcome } from './edit/intent.ts';
import { parseLine } from './grammar/parse-line.ts';
import type { Lookup } from './names/lookup.ts';
import type { BlockKey, Places, Play } from './play/play.ts';
import { readPlay, type Reading } from './play/read-play.ts';
import type { OwnWords } from './words/say-place.ts';
import { stepOpenings } from './timeline/openings.ts';
import { timelinesOf } from './timeline/timelines.ts';
import type { Timeline } from './timeline/timeline.ts';

/** Everything known of one play. */
export interface Compiled {
  readonly key: BlockKey;
  readonly block: Block;
  readonly reading: Reading;
  readonly play: Play;
  readonly places: Places;
  readonly court: Court;
  readonly timeline: Timeline;
  /** In text order; places count from the block's first line. */
  readonly findings: readonly Finding[];
}

/** Compiles one play. Pure, and never throws: what cannot be read or scheduled is among the findings. `headGap`: a line of the file's header cannot be read. */
export function compilePlay(block: Block, lookup: Lookup, headGap = false, timelines = timelinesOf): Compiled {
  const reading = readPlay(block, lookup, stepOpenings);
  const { play, places } = reading;
  const { own: timeline, also } = timelines(play);
  const gapAbove = headGap || lookup.asked.some(({ kind, answer }) => kind !== 'roster' && isBlock(answer) && hasGap(answer));
  const findings = checkPlay({ lines: block.lines.map(({ parsed }) => parsed), reading, timeline, headGap: gapAbove, also });
  return { key: block.key, block, reading, play, places, court: courtOf(ruleSet(play.rules.value)), timeline, findings };
}

/** What a play copies from another is as unsure as that other is readable. */
export const hasGap = keptByBlock(({ lines }) => lines.some(({ parsed }) => leavesGap(parsed)));

export function isBlock(answer: unknown): answer is Block {
  return typeof answer === 'object' && answer !== null && 'lines' in answer;
}

/** Edits of a play's text that do what somebody did with his hand, or why not. */
export function intentOn(compiled: Compiled, lookup: Lookup, intent: Intent, own?: OwnWords): Outcome {
  const { block, reading, court } = compiled;
  return applyIntent({ block, reading, court, own, readAgain: (lines) => readPlay(withLines(block, lines), lookup, stepOpenings) }, intent);
}

function withLines(block: Block, lines: readonly string[]): Block {
  return { ...block, lines: lines.map((text, at) => ({ parsed: block.lines[at]?.parsed.text === text ? block.lines[at].parsed : parseLine(text), eol: '\n' })) };
}
