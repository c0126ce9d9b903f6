// A play of eight steps and ten looks: how long the schedule takes, and its spread.
import { emptyBook, openFile } from '../../language/book/book.ts';
import { checkPlay } from '../../language/checks/check-play.ts';
import { createLookup } from '../../language/names/lookup.ts';
import type { Play } from '../../language/play/play.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { guard } from '../../language/defence/guard.ts';
import { schedule, settlePlay } from '../../language/timeline/schedule.ts';
import { timesOf } from '../../language/timeline/needed.ts';
import type { Measure } from '../../scripts/bench.ts';

export const longPlay = `notation 1
level u14
rules fiba
play "Regatta"
  from stack, ball with 1
  against man
  rebound 4, 5 crash, 1, 2 get back
  step "One"
    1 dribbles to left wing
    5 screens down for 3
    3 cuts off 5 to top
    2 clears to right corner
  step "Two"
    1 passes to 3
    4 ball-screens for 3, then rolls
    3 drives off 4 to right elbow
    look 3: jumper
    look 4 on the roll: layup
  step "Three"
    3 dribbles to right wing
    4 clears to left corner
    2 cuts to left block
    look 2: layup
  step "Four"
    3 passes to 1
    1 dribbles to top
    5 screens across for 2
    2 cuts off 5 to right corner
    look 2: three
    look 5: layup
  step "Five"
    1 dribbles to right wing
    4 cuts to top
    5 clears to left block
    look 4: three
  step "Six"
    1 passes to 4
    3 cuts to left wing
    2 cuts to rim
    look 2: layup
  step "Seven"
    4 hands off to 3
    4 cuts to right corner
    2 clears to right wing
    look 4: three
  step "Eight"
    5 ball-screens for 3, then rolls
    3 drives off 5 to left elbow
    look 3: jumper
    look 5 on the roll: layup
`;

export async function bench(): Promise<readonly Measure[]> {
  const play = read(longPlay);
  for (let round = 0; round < 300; round++) schedule(play);
  const settled = times(300, () => settlePlay(play));
  const { reading, lines } = readBlock(longPlay);
  const { times: looks } = schedule(play);
  const checked = times(600, () => {
    const { runs, scene } = settlePlay(play);
    checkPlay({ lines, reading, timeline: { runs, times: looks, problems: scene.problems } });
  }).slice(300);
  const kept = settlePlay(play);
  const spread = times(300, () => timesOf(kept.scene, kept.runs, kept.tails));
  const run = kept.runs.at(-1)!;
  const guarded = times(300, () => guard(play, run));
  return [
    { name: 'a play of 8 steps and 10 looks scheduled (p50)', value: quantile(settled, 0.5), unit: 'ms', budget: 1 },
    { name: 'the same, scheduled and checked (p50)', value: quantile(checked, 0.5), unit: 'ms', budget: 1 },
    { name: 'scheduled alone, the collector’s pauses included (p95)', value: quantile(settled, 0.95), unit: 'ms', budget: 12 },
    { name: 'its spread (p50)', value: quantile(spread, 0.5), unit: 'ms', budget: 3 },
    { name: 'five defenders in its longest run-through (p50)', value: quantile(guarded, 0.5), unit: 'ms', budget: 2 },
  ];
}

export function read(text: string): Play {
  return readBlock(text).reading.play;
}

function readBlock(text: string) {
  const uri = 'file:///bench.play';
  const book = openFile(emptyBook, uri, text);
  const block = book.files.get(uri)!.blocks.find(({ kind }) => kind === 'play')!;
  return { reading: readPlay(block, createLookup(book, uri)), lines: block.lines.map(({ parsed }) => parsed) };
}

function times(rounds: number, work: () => unknown): readonly number[] {
  return Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return Math.round(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]! * 1000) / 1000;
}
