/**
 * The spread (rule 25): the graph evaluated again and again with somebody's legs, a reaction, a read or a release a little off, without
 * geometry. A draw depends only on the seed, its number and its key (body, or action), so an edit elsewhere does not shake it.
 */
import type { Level } from '../motion/levels.ts';
import type { Edge, Graph, Varies } from './graph.ts';

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
  const { needed, place } = causesOf(graph, wanted);
  const rows = roomFor(needed.length);
  const factors = createFactors(level);
  for (let row = 0; row < needed.length; row++) layRow(rows, row, graph.events[needed[row]!]!.edges, place, factors);
  const kept = new Map(wanted.map((event) => [event, wholeMs(rows, place[event]! * draws)]));
  return { draws, of: (event) => kept.get(event) ?? new Int32Array(draws) };
}

/** Used again and again: hundreds of kilobytes at every key would be most of what is thrown away. */
let room = new Float64Array(0);

function roomFor(events: number): Float64Array {
  if (room.length < events * draws) room = new Float64Array(events * draws);
  return room;
}

function wholeMs(rows: Float64Array, from: number): Int32Array {
  const times = new Int32Array(draws);
  for (let draw = 0; draw < draws; draw++) times[draw] = Math.round(rows[from + draw]!);
  return times;
}

/** An event in all draws at once: edge by edge, so that what an edge is like is looked up once and not in each draw. */
function layRow(rows: Float64Array, row: number, edges: readonly Edge[], place: Int32Array, factors: Factors): void {
  const to = row * draws;
  if (edges.length === 0) rows.fill(0, to, to + draws);
  for (let index = 0; index < edges.length; index++) {
    const { from, fixed, varied, varies, key } = edges[index]!;
    later(rows, to, place[from]! * draws, { fixed, varied }, factors(varies, key), index === 0);
  }
}

/** None comes before the edge lets it; `first`: nothing holds it back yet. */
function later(rows: Float64Array, to: number, from: number, { fixed, varied }: Pick<Edge, 'fixed' | 'varied'>, factor: Float64Array, first: boolean): void {
  for (let draw = 0; draw < draws; draw++) {
    const time = rows[from + draw]! + fixed + varied * factor[draw]!;
    if (first || time > rows[to + draw]!) rows[to + draw] = time;
  }
}

/** The events that are asked for and all that they hang on, causes first, and where each of them stands there; what else happens in the play need not be drawn. */
function causesOf({ events }: Graph, wanted: readonly number[]): { readonly needed: readonly number[]; readonly place: Int32Array } {
  const hangs = new Uint8Array(events.length);
  for (const event of wanted) hangs[event] = 1;
  // Causes come before what they bring about.
  for (let event = events.length - 1; event >= 0; event--) if (hangs[event] === 1) for (const { from } of events[event]!.edges) hangs[from] = 1;
  const needed: number[] = [];
  const place = new Int32Array(events.length);
  for (let event = 0; event < events.length; event++) if (hangs[event] === 1) place[event] = needed.push(event) - 1;
  return { needed, place };
}

/** What a varied delay is multiplied by, in each draw. */
type Factors = (kind: Varies, key: string) => Float64Array;

function createFactors(level: Level): Factors {
  const known = new Map<string, Float64Array>();
  return (kind, key) => {
    const name = kind === 'nothing' ? '' : `${kind} ${key}`;
    let factors = known.get(name);
    if (factors === undefined) {
      known.set(name, (factors = factorsOf(normals(hash(name)), deviationOf(kind, level))));
    }
    return factors;
  };
}

function factorsOf(drawn: Float64Array, deviation: number): Float64Array {
  const factors = new Float64Array(draws);
  for (let draw = 0; draw < draws; draw++) factors[draw] = 1 + deviation * drawn[draw]!;
  return factors;
}

function deviationOf(kind: Varies, level: Level): number {
  const spreads: Readonly<Record<Varies, number>> = {
    nothing: 0, legs: level.legsSpread, reaction: level.reactionSpread, read: level.readSpread, release: level.releaseSpread, 'set-up': level.setUpSpread, pass: level.passSpread,
  };
  return spreads[kind];
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
  const drawn = values.slice();
  return shares.map((share) => standsAt(drawn, Math.min(drawn.length - 1, Math.max(0, Math.ceil(share * drawn.length) - 1))) ?? 0);
}

/** The value that stands at `rank` once all are in order; puts them in another order. Only as much is put in order as that takes (Hoare's selection): a whole sort costs several times that. */
function standsAt(values: Int32Array, rank: number): number | undefined {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = values[rank]!;
    let up = low;
    let down = high;
    while (up <= down) {
      while (values[up]! < middle) up++;
      while (values[down]! > middle) down--;
      if (up > down) break;
      [values[up], values[down]] = [values[down]!, values[up]!];
      up++;
      down--;
    }
    if (down < rank) low = up;
    if (rank < up) high = down;
  }
  return values[rank];
}
