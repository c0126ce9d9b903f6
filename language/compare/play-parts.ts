// A play in parts that two versions can be held against each other by: what stands above its steps, then step by step what happens.
import { lineText } from '../book/book.ts';
import { inEnglish } from '../message/message.ts';
import type { Play } from '../play/play.ts';
import type { Reading } from '../play/read-play.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { Block } from '../book/book.ts';
import { hasBareHeading } from '../words/say-step.ts';
import { tellPlay, tellStanding } from '../words/tell-play.ts';

export interface Part {
  /** Absent above the steps. */
  readonly key?: string;
  readonly name?: string;
  /** A step's: how it begins is told in it, where there is more to tell than its name. */
  readonly heading?: { readonly text: string; readonly bare: boolean };
  readonly lines: readonly string[];
  /** Above the steps: where everybody stands, as it is told. */
  readonly standing?: string;
}

/** What is asked of a version of a play. */
export interface PlayRead {
  readonly block: Block;
  readonly reading: Pick<Reading, 'lines'>;
  readonly play: Play;
  readonly timeline: Timeline;
}

const kept = new WeakMap<PlayRead, readonly Part[]>();

/** The lines above the steps as the coach wrote them, without remarks; each step as it is told, its times left out. */
export function partsOf(version: PlayRead): readonly Part[] {
  const known = kept.get(version);
  if (known !== undefined) return known;
  const parts = [aboveTheSteps(version), ...stepsOf(version)];
  kept.set(version, parts);
  return parts;
}

/** With its heading. */
export function linesOf({ heading, lines }: Part): readonly string[] {
  return heading === undefined ? lines : [heading.text, ...lines];
}

function aboveTheSteps({ block, reading, play }: PlayRead): Part {
  const head = block.lines.flatMap((line, at) => {
    const { kind, step } = reading.lines[at]!;
    return kind === 'header' || (kind === 'annotation' && step === undefined) ? [withoutRemark(lineText(line), line.parsed.comment?.at)] : [];
  });
  const own = [`level ${play.level.value}`, `rules ${[play.rules.value, ...play.alsoRules].join(', also ')}`];
  return { lines: [...own, ...head.filter((text) => !/^(level|rules)\b/i.test(text))], standing: tellStanding(play, inEnglish) };
}

function stepsOf({ play, timeline }: PlayRead): readonly Part[] {
  const steps = new Map(play.steps.map((step) => [step.key, { step, heading: '', lines: [] as string[] }]));
  let open: string[] | undefined;
  for (const { text, untimed = text, part } of tellPlay(play, timeline)) {
    const begun = part === undefined ? undefined : steps.get(part);
    if (begun === undefined) open?.push(untimed);
    else {
      begun.heading = untimed;
      open = begun.lines;
    }
  }
  return [...steps.values()].map(({ step, heading, lines }) => ({ key: step.key, name: step.name, heading: { text: heading, bare: hasBareHeading(play, step) }, lines }));
}

/** A line as it is written, set the same way whoever wrote it. */
export function withoutRemark(text: string, at: number | undefined): string {
  return text.slice(0, at).trim().replaceAll(/\s+/g, ' ');
}
