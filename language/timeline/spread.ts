/**
 * The spread (rule 25): the graph evaluated again and again with somebody's legs, a reaction, a read or a release a little off, without
 * geometry. A draw depends only on the seed, its number and its key (body, or action), so an edit elsewhere does not shake it.
 */
import type { Level } from '../motion/levels.ts';
import type { Graph, Varies } from './graph.ts';

const draws = 200;
const seed = 0x5e7a11;
/** Nobody is off by more than this many standard deviations; keeps a delay positive. */
const widest = 2.5;

export interface Spread {
  readonly draws: number;
  /** ms of an event in each draw. */
  readonly of: (event: number) => Int32Array;
}

/** Runs the graph `draws` times; `wanted` are the events whose times are kept. */
export function spreadOf(graph: Graph, level: Level, wanted: readonly number[]): Spread {
  const compiled = compile(graph, level, causesOf(graph, wanted));
  const events = [...new Set(wanted)];
  const rows = events.map(() => new Int32Array(draws));
  const times = new Float64Array(graph.events.length);
  const factors = new Float64Array(compiled.keys.length);
  const drawn = Array.from(compiled.keys, normals);
  for (let draw = 0; draw < draws; draw++) {
    for (let key = 0; key < factors.length; key++) factors[key] = 1 + compiled.deviation[key]! * drawn[key]![draw]!;
    evaluate(compiled, factors, times);
    // By index: two hundred turns of a map's iterator are more garbage than all the rest.
    for (let row = 0; row < rows.length; row++) rows[row]![draw] = Math.round(times[events[row]!]!);
  }
  return { draws, of: (event) => rows[events.indexOf(event)] ?? new Int32Array(draws) };
}

interface Compiled {
  /** Where each event's edges begin; one more than there are events. */
  readonly first: Int32Array;
  readonly from: Int32Array;
  readonly fixed: Float64Array;
  readonly varied: Float64Array;
  readonly factor: Int32Array;
  readonly keys: Uint32Array;
  readonly deviation: Float64Array;
}

/** 1 for each event that is asked for or that one of those hangs on; what else happens in the play need not be drawn. */
function causesOf({ events }: Graph, wanted: readonly number[]): Uint8Array {
  const needed = new Uint8Array(events.length);
  for (const event of wanted) needed[event] = 1;
  // Causes come before what they bring about.
  for (let event = events.length - 1; event >= 0; event--) if (needed[event] === 1) for (const { from } of events[event]!.edges) needed[from] = 1;
  return needed;
}

function compile(graph: Graph, level: Level, needed: Uint8Array): Compiled {
  let count = 0;
  graph.events.forEach(({ edges }, event) => (count += needed[event]! * edges.length));
  const first = new Int32Array(graph.events.length + 1);
  const from = new Int32Array(count);
  const fixed = new Float64Array(count);
  const varied = new Float64Array(count);
  const factor = new Int32Array(count);
  const slots = new Map<string, number>();
  const keys: number[] = [];
  const deviation: number[] = [];
  let at = 0;
  graph.events.forEach(({ edges }, event) => {
    first[event] = at;
    if (needed[event] === 0) return;
    for (const way of edges) {
      from[at] = way.from;
      fixed[at] = way.fixed;
      varied[at] = way.varied;
      factor[at] = slotOf(slots, keys, deviation, way.varies, way.key, level);
      at++;
    }
  });
  first[graph.events.length] = at;
  return { first, from, fixed, varied, factor, keys: Uint32Array.from(keys), deviation: Float64Array.from(deviation) };
}

function slotOf(slots: Map<string, number>, keys: number[], deviation: number[], kind: Varies, key: string, level: Level): number {
  const name = kind === 'nothing' ? '' : `${kind} ${key}`;
  const known = slots.get(name);
  if (known !== undefined) return known;
  slots.set(name, keys.length);
  keys.push(hash(name));
  deviation.push(deviationOf(kind, level));
  return keys.length - 1;
}

function deviationOf(kind: Varies, level: Level): number {
  const spreads: Readonly<Record<Varies, number>> = {
    nothing: 0, legs: level.legsSpread, reaction: level.reactionSpread, read: level.readSpread, release: level.releaseSpread, 'set-up': level.setUpSpread, pass: level.passSpread,
  };
  return spreads[kind];
}

function evaluate(compiled: Compiled, factors: Float64Array, times: Float64Array): void {
  const { first, from, fixed, varied, factor } = compiled;
  for (let event = 0; event < times.length; event++) {
    const end = first[event + 1]!;
    let at = first[event]! === end ? 0 : Number.NEGATIVE_INFINITY;
    for (let way = first[event]!; way < end; way++) {
      const time = times[from[way]!]! + fixed[way]! + varied[way]! * factors[factor[way]!]!;
      if (time > at) at = time;
    }
    times[event] = at;
  }
}

/** FNV-1a: the same on every machine. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) value = Math.imul(value ^ text.charCodeAt(index), 0x01000193);
  return value >>> 0;
}

const mostKept = 256;
const kept = new Map<number, Float64Array>();

/** A key's numbers in all draws. An edit leaves nearly all of a play's keys as they are, and each is four times the work of an edge. */
function normals(key: number): Float64Array {
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = new Float64Array(draws);
  for (let draw = 0; draw < draws; draw++) made[draw] = normal(key, draw);
  if (kept.size >= mostKept) kept.clear();
  kept.set(key, made);
  return made;
}

/** A bell-shaped number from a key and a draw: the sum of four even ones, cut at the widest. */
function normal(key: number, draw: number): number {
  let state = (key ^ Math.imul(draw + 1, 0x9e3779b1) ^ seed) >>> 0;
  let sum = 0;
  for (let round = 0; round < 4; round++) {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    sum += ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  }
  // Four even numbers have the mean 2 and the variance 1/3.
  return Math.max(-widest, Math.min(widest, (sum - 2) * Math.sqrt(3)));
}

/** The values below which each of the shares of the draws lies. */
export function percentiles(values: Int32Array, shares: readonly number[]): readonly number[] {
  const sorted = values.toSorted();
  return shares.map((share) => sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? 0);
}
