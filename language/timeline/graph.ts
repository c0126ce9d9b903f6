/**
 * The event graph: every time is the longest way into its event. An edge keeps apart the part of its delay that varies from draw to
 * draw (somebody's legs, a reaction, a read …), so that the spread runs through the same graph again without geometry.
 */
import type { BodyId, PartId } from '../play/play.ts';
import type { EventId, EventKind, Reason, TimedEvent } from './timeline.ts';

export const varies = ['nothing', 'legs', 'reaction', 'read', 'release', 'set-up', 'pass'] as const;
export type Varies = (typeof varies)[number];

/** `to` is not before `from` plus `fixed` plus `varied`, in whole ms; both may be negative (a user leaves before the screen is set). */
export interface Edge {
  readonly from: number;
  readonly reason: Reason;
  readonly fixed: number;
  readonly varied: number;
  readonly varies: Varies;
  /** Whose legs; or what the draw of a reaction, a read, a release or a pass is keyed by. */
  readonly key: string;
}

export interface GraphEvent {
  readonly timed: TimedEvent;
  readonly edges: readonly Edge[];
  /** The edge that decided. */
  readonly winner: number;
}

export interface Graph {
  readonly events: GraphEvent[];
}

export function createGraph(): Graph {
  return { events: [] };
}

export function timeOf(graph: Graph, event: number): number {
  return graph.events[event]!.timed.at;
}

export function edge(from: number, reason: Reason, fixed = 0): Edge {
  return { from, reason, fixed, varied: 0, varies: 'nothing', key: '' };
}

export function varyingEdge(from: number, reason: Reason, fixed: number, varied: number, kind: Varies, key: string): Edge {
  return { from, reason, fixed, varied, varies: kind, key };
}

/** The same edge, later by this many ms. */
export function delayed(source: Edge, ms: number): Edge {
  return ms === 0 ? source : { ...source, fixed: source.fixed + ms };
}

/** The longest way in, and which edge it came by; the first of two equally long. */
export function latestOf(graph: Graph, edges: readonly Edge[]): { readonly at: number; readonly winner: number } {
  let at = 0;
  let winner = -1;
  for (let index = 0; index < edges.length; index++) {
    const way = edges[index]!;
    const time = graph.events[way.from]!.timed.at + way.fixed + way.varied;
    if (winner === -1 || time > at) {
      at = time;
      winner = index;
    }
  }
  return { at, winner };
}

/** Adds an event and gives its number; its causes must be in the graph. */
export function addEvent(graph: Graph, id: EventId, kind: EventKind, part: PartId, who: BodyId | undefined, edges: readonly Edge[]): number {
  const { at, winner } = latestOf(graph, edges);
  const way = edges[winner];
  // Field by field: spreads would cost more than all the rest, and thousands of events are made.
  const timed: { -readonly [Key in keyof TimedEvent]: TimedEvent[Key] } = who === undefined ? { id, kind, part, at } : { id, kind, part, who, at };
  if (way !== undefined) timed.because = { from: graph.events[way.from]!.timed.id, delay: way.fixed + way.varied, reason: way.reason };
  return graph.events.push({ timed, edges, winner }) - 1;
}
