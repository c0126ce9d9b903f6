// The language server beside servers for other languages, each a whole process over real stdio, in the same run and by turns: what counts
// are the ratios, which a busy machine moves less than the milliseconds. Budgets are in ratios for that reason.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drive, pause, percentile, type Driven, type Measured, type Text } from './servers/drive.ts';
import { dockerfile, ours, typeScript } from './servers/measured.ts';
import { dockerText, playText, typeScriptText, type PlayText } from './servers/texts.ts';

interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly budget?: number;
  /** What it would take, where the budget is passed. */
  readonly missed?: string;
}

const sizes = [300, 2000] as const;
const colds = 9;
const edits = 60;
/** Milliseconds after the first findings, when what a server does beside them is done too. */
const quiet = 2500;
/** Milliseconds a server and what it has started are given to end: the next one would start on what is left of the machine. */
const ending = 700;
const soak = 10_000;
const many = 1000;

/** What a server took, in the order measured. */
type Times = Record<'initialize' | 'first' | 'memory' | 'edit' | 'digit' | 'complete', number[]>;
const none = (): Times => ({ initialize: [], first: [], memory: [], edit: [], digit: [], complete: [] });

export async function bench(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-bench-'));
  try {
    const servers = { play: await ours('test/out/bench'), docker: dockerfile(), script: typeScript() };
    const rows: Row[] = [];
    for (const lines of sizes) rows.push(...(await besideOthers(servers, folder, lines)));
    rows.push(...(await byLength(servers.play, folder)), ...(await overAnEvening(servers.play, folder)), ...(await manyFiles(servers, folder)));
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Servers {
  readonly play: Measured;
  readonly docker: Measured;
  readonly script: Measured;
}

async function besideOthers(servers: Servers, folder: string, lines: number): Promise<readonly Row[]> {
  const all = [
    { server: servers.play, text: playText(lines), times: none() },
    { server: servers.docker, text: dockerText(lines), times: none() },
    { server: servers.script, text: typeScriptText(lines), times: none() },
  ] as const;
  for (const { text } of all) writeFileSync(join(folder, text.file), text.text);

  // The first start of each is not counted: it fills the caches of the disk, and ours of what V8 has compiled.
  for (let round = 0; round <= colds; round++) {
    for (const { server, text, times } of all) {
      const driven = drive(server, folder);
      const initialize = await driven.initialize();
      const first = await driven.open(text, driven.began);
      await pause(quiet);
      const memory = driven.memory();
      await driven.stop();
      await pause(ending);
      if (round === 0) continue;
      times.initialize.push(initialize);
      times.first.push(first);
      if (memory !== undefined) times.memory.push(memory);
    }
  }

  const warm = await Promise.all(all.map(async (one) => {
    const driven = drive(one.server, folder);
    await driven.initialize();
    await driven.open(one.text);
    return { ...one, driven };
  }));
  for (let round = -10; round < edits; round++) {
    for (const { server, driven, text, times } of warm) {
      // TypeScript's waits a while of its own before it checks; a few edits show it.
      if (server === servers.script && (round < -2 || round >= 5)) continue;
      const took = { edit: [await driven.edit(text), await driven.edit(text)], complete: await driven.complete(text), digit: 'digit' in text ? await digits(driven, text, round) : [] };
      if (round < 0) continue;
      times.edit.push(...took.edit);
      times.digit.push(...took.digit);
      times.complete.push(took.complete);
    }
  }
  for (const { driven } of warm) await driven.stop();
  return compared(lines, all[0].times, all[1].times, all[2].times);
}

/** One digit over the other, each another than the last few: a play that was there a moment ago is still known, and would cost less. */
async function digits(driven: Driven, text: PlayText, round: number): Promise<number[]> {
  const digit = (turn: number) => ({ ...text.digit, letters: String(1 + ((2 * (round + 10) + turn) % 9)) });
  const took = [await driven.typeOver(text, digit(0)), await driven.typeOver(text, digit(1))];
  await driven.typeOver(text, undefined);
  return took;
}

function compared(lines: number, play: Times, docker: Times, script: Times): readonly Row[] {
  const where = `${lines.toLocaleString('en')} lines`;
  const half = (values: readonly number[]) => percentile(values, 50);
  const rows: Row[] = [];
  const row = (name: string, value: number, unit: string, budget?: number, missed?: string) => rows.push({ name: `${name}, ${where}`, value, unit, ...(budget !== undefined && { budget }), ...(missed !== undefined && { missed }) });
  const side = (what: string, key: keyof Times, unit = 'ms') => {
    for (const [who, times] of [['Setwright', play], ['dockerfile', docker], ['TypeScript', script]] as const) {
      if (times[key].length === 0) continue;
      row(`${what}: ${who} (p50)`, half(times[key]), unit);
      row(`${what}: ${who} (p95)`, percentile(times[key], 95), unit);
    }
  };
  const ratio = (what: string, key: keyof Times, budget: number, missed: string) => row(`${what}, to dockerfile’s`, half(play[key]) / half(docker[key]), 'x', budget, missed);

  side('start to initialize', 'initialize');
  ratio('start to initialize', 'initialize', 1.2, 'Less of the protocol’s library and of Node’s own modules loaded before the answer: there is little else in language-server.cjs.');
  side('start to first findings', 'first');
  ratio('start to first findings', 'first', 1.5, firstFindings);
  if (play.memory.length > 0) {
    side('memory once open', 'memory', 'MB');
    ratio('memory once open', 'memory', 1.3, 'Less of Langium’s grammar built while nothing is typed: the parsed lines of 2,000 are 1.4 MB.');
  }
  side('edit to findings (a line broken, mended)', 'edit');
  ratio('edit to findings (a line broken, mended)', 'edit', lines === 300 ? 1 : 0.5, 'A step read and checked again alone, instead of its whole play: its times are kept already, since a line that cannot be read changes none.');
  row('edit to findings (a player moved): Setwright (p50)', half(play.digit), 'ms');
  row('edit to findings (a player moved): Setwright (p95)', percentile(play.digit, 95), 'ms');
  row('edit to findings (a player moved), more than dockerfile’s', half(play.digit) - half(docker.edit), 'ms', 8, 'A step timed again alone, instead of its whole play.');
  side('completion after an edit', 'complete');
  ratio('completion after an edit', 'complete', 0.5, 'Where the play stands and what the grammar lets follow are kept while a line is typed: what is left is some 150 words weighed and written out, and the way through the protocol’s library.');
  return rows;
}

const firstFindings =
  'Plays compiled for the first time, in V8’s interpreter, and at 2,000 lines a quarter spent on collecting garbage: a settling that makes fewer objects (a rule set beside the play’s own settles it twice), or findings of the first plays told before the last is compiled, which is two publishes of one version.';

/** A play edited in a long file costs what it costs in a short one. */
async function byLength(play: Measured, folder: string): Promise<readonly Row[]> {
  const lengths = [300, 20_000];
  const all = await Promise.all(lengths.map(async (lines) => {
    const text = playText(lines, `long-${lines}.play`);
    const driven = drive(play, folder);
    await driven.initialize();
    await driven.open(text);
    return { lines, text, driven, times: [] as number[] };
  }));
  for (let round = -10; round < edits; round++) {
    for (const { driven, text, times } of all) {
      const took = [await driven.edit(text), await driven.edit(text)];
      if (round >= 0) times.push(...took);
    }
  }
  for (const { driven } of all) await driven.stop();
  const [short, long] = all.map(({ times }) => percentile(times, 50)) as [number, number];
  return [
    { name: 'edit to findings, 20,000 lines (p50)', value: long, unit: 'ms' },
    { name: 'edit to findings, 20,000 lines (p95)', value: percentile(all[1]!.times, 95), unit: 'ms' },
    { name: 'edit to findings, 20,000 lines to 300', value: long / short, unit: 'x', budget: 1.3, missed: 'What is left beside the edited play is one look at whether each block is still the same.' },
  ];
}

async function overAnEvening(play: Measured, folder: string): Promise<readonly Row[]> {
  const text = playText(300);
  const driven = drive(play, folder);
  await driven.initialize();
  await driven.open(text);
  for (let round = 0; round < 20; round++) await driven.type(text, 25);
  await pause(500);
  const before = driven.memory();
  const began = performance.now();
  for (let done = 0; done < soak; done += 25) await driven.type(text, 25);
  const took = performance.now() - began;
  await pause(500);
  const after = driven.memory();
  await driven.stop();
  if (before === undefined || after === undefined) return [];
  return [
    { name: 'edits a second, typed without waiting', value: soak / (took / 1000), unit: '/s' },
    { name: 'memory after 500 edits', value: before, unit: 'MB' },
    { name: 'memory that 10,000 more edits add', value: after - before, unit: 'MB', budget: 20, missed: 'The heap itself stays (a test holds it to that); V8 lets garbage of the old space lie until it collects.' },
  ];
}

/** One text opened in a folder of a thousand. */
async function manyFiles({ play, script }: Servers, folder: string): Promise<readonly Row[]> {
  const all = [
    { server: play, folder: join(folder, 'plays'), textOf: (at: number): Text => playText(30, `play-${at}.play`), times: [] as number[] },
    { server: script, folder: join(folder, 'scripts'), textOf: (at: number): Text => typeScriptText(30, `script-${at}.ts`), times: [] as number[] },
  ];
  for (const { folder: place, textOf } of all) {
    mkdirSync(place);
    for (let at = 0; at < many; at++) writeFileSync(join(place, textOf(at).file), textOf(at).text);
  }
  writeFileSync(join(all[1]!.folder, 'tsconfig.json'), '{ "compilerOptions": { "strict": true, "noEmit": true, "types": [] }, "include": ["*.ts"] }');
  for (let round = 0; round < 4; round++) {
    for (const { server, folder: place, textOf, times } of all) {
      const driven = drive(server, place);
      await driven.initialize();
      const first = await driven.open(textOf(500), driven.began);
      await driven.stop();
      if (round > 0) times.push(first);
    }
  }
  const [own, others] = all.map(({ times }) => percentile(times, 50)) as [number, number];
  return [
    { name: 'start to first findings in a folder of 1,000: Setwright', value: own, unit: 'ms' },
    { name: 'start to first findings in a folder of 1,000: TypeScript', value: others, unit: 'ms' },
    { name: 'start to first findings in a folder of 1,000, to TypeScript’s', value: own / others, unit: 'x', budget: 0.15, missed: firstFindings },
  ];
}
