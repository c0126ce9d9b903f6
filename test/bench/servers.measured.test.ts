// Gross regressions only: a few rounds beside a server for another language, on whatever machine this is, with room to all sides. The
// real budgets are those of `npm run bench servers`.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { untilOneHolds } from '../support/rounds.ts';
import { drive, percentile, type Driven, type Measured, type Text } from './servers/drive.ts';
import { dockerfile, ours } from './servers/measured.ts';
import { dockerText, playText } from './servers/texts.ts';

interface Side {
  readonly server: Measured;
  readonly text: Text;
}

let folder: string;
let sides: readonly [Side, Side];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-ratios-'));
  sides = [{ server: await ours('test/out/ratios'), text: playText(300) }, { server: dockerfile(), text: dockerText(300) }];
  for (const { text } of sides) writeFileSync(join(folder, text.file), text.text);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The least of a few such ratios: measured again, up to four times, while it is not below the limit. */
const ratioBelow = async (limit: number, rounds: number, measure: (side: Side, at: number) => Promise<number>): Promise<number> =>
  Math.min(...(await untilOneHolds(() => ratio(rounds, measure), (one) => one < limit, { most: 4 })));

/** The half of each side's values, measured by turns; ours to the other's. */
async function ratio(rounds: number, measure: (side: Side, at: number) => Promise<number>): Promise<number> {
  const values: [number[], number[]] = [[], []];
  for (let round = 0; round <= rounds; round++) {
    for (const at of [0, 1] as const) {
      const value = await measure(sides[at], at);
      if (round > 0) values[at].push(value);
    }
  }
  return percentile(values[0], 50) / percentile(values[1], 50);
}

async function started<Answer>({ server }: Side, work: (driven: Driven) => Promise<Answer>): Promise<Answer> {
  const driven = drive(server, folder);
  try {
    return await work(driven);
  } finally {
    await driven.stop();
  }
}

describe('beside a server for container files, on 300 lines', { timeout: 240_000 }, () => {
  test('it answers the editor’s first question in at most three times the time', async () => {
    expect(await ratioBelow(3, 3, (side) => started(side, (driven) => driven.initialize()))).toBeLessThan(3);
  });

  test('it tells the first findings in at most five times the time', async () => {
    expect(await ratioBelow(5, 3, (side) => started(side, async (driven) => (await driven.initialize(), driven.open(side.text, driven.began))))).toBeLessThan(5);
  });

  test.runIf(process.platform === 'linux')('it takes at most 1.6 times the memory once a text is open', async () => {
    const memory = await ratio(2, (side) => started(side, async (driven) => {
      await driven.initialize();
      await driven.open(side.text);
      return driven.memory()!;
    }));
    expect(memory).toBeLessThan(1.6);
  });

  test('an edit and what can follow take at most four times the time', async () => {
    const warm = await Promise.all(sides.map(async ({ server, text }) => {
      const driven = drive(server, folder);
      await driven.initialize();
      await driven.open(text);
      return driven;
    }));
    for (let round = 0; round < 10; round++) for (const [at, { text }] of sides.entries()) await warm[at]!.edit(text);
    expect(await ratioBelow(4, 20, ({ text }, at) => warm[at]!.edit(text))).toBeLessThan(4);
    expect(await ratioBelow(4, 20, ({ text }, at) => warm[at]!.complete(text))).toBeLessThan(4);
    for (const driven of warm) await driven.stop();
  });
});
