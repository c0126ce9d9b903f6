/**
 * Zones: each stands in his part of the floor, all shift with the ball, whoever is nearest to it goes to it. A press lies across the
 * floor in front of the ball until it is over half court, then falls back. Formations and metres are common practice, no source.
 */
import { distance, type Point } from '../court/point.ts';
import type { Floor, Tactic } from './floor.ts';
import { closeTo, ring, towards } from './floor.ts';
import { toldGoal } from './told.ts';

/** Who stands where, left to right as the offence looks, the row nearest to half court first. */
const formations: Readonly<Record<string, readonly (readonly number[])[]>> = {
  '2-3': [[1, 2], [3, 5, 4]],
  '3-2': [[2, 1, 3], [4, 5]],
  '2-1-2': [[1, 2], [3], [4, 5]],
  '1-2-2': [[1], [2, 3], [4, 5]],
  '1-3-1': [[1], [2, 5, 3], [4]],
  '1-1-3': [[1], [2], [3, 5, 4]],
  '2-2-1': [[1, 2], [3, 4], [5]],
  '1-2-1-1': [[1], [2, 3], [4], [5]],
};

const front = 6.2;
const back = 1.7;
/** Half the breadth of a row of two, three, four. */
const breadths = [0, 0, 2.2, 3.4, 4];
const shiftAcross = 0.35;
const shiftDeep = 0.25;
/** The ball is met within this of the ring; farther out the zone waits. */
const meets = 8.5;
/** Between the rows of a press, and how far before the ball the first of them is. */
const pressRows = 6.5;
const pressBefore = 1.5;

interface Post {
  readonly row: number;
  readonly rows: number;
  /** -1 the left end of his row, 1 the right one. */
  readonly across: number;
  readonly breadth: number;
}

function postsOf(formation: string): readonly Post[] {
  const rows = formations[formation] ?? rowsWritten(formation);
  const posts: Post[] = [];
  rows.forEach((men, row) => {
    men.forEach((man, at) => {
      posts[man - 1] = { row, rows: rows.length, across: men.length === 1 ? 0 : (2 * at) / (men.length - 1) - 1, breadth: breadths[men.length] ?? 4 };
    });
  });
  return posts;
}

/** `4-1`: any five in rows, numbered as they come; what does not make five is a 2-3. */
function rowsWritten(formation: string): readonly (readonly number[])[] {
  const counts = formation.split('-').map(Number);
  if (counts.some((count) => !(count >= 1)) || counts.reduce((sum, count) => sum + count, 0) !== 5) return formations['2-3']!;
  let next = 1;
  return counts.map((count) => Array.from({ length: count }, () => next++));
}

export function zone(written: string, press: boolean): Tactic {
  const posts = postsOf(written.replace(/\s*press$/, ''));
  return (floor, index, told) => {
    const places = posts.map((post) => shifted(floor, post, press));
    const own = places[index]!;
    return toldGoal(floor, index, told, own) ?? (isNearest(floor, places, index) ? towards(floor.ball, ring, closeTo(floor.level)) : own);
  };
}

function shifted(floor: Floor, post: Post, press: boolean): Point {
  const { ball, court } = floor;
  if (press && ball.y > court.halfLineY) {
    const first = Math.min(ball.y, court.farBaselineY) - pressBefore;
    return { x: post.across * post.breadth * 1.4 + ball.x * shiftAcross, y: Math.max(2, first - post.row * Math.min(pressRows, (first - 4) / Math.max(1, post.rows - 1))) };
  }
  const deep = post.rows === 1 ? front : front - ((front - back) * post.row) / (post.rows - 1);
  const sinks = Math.max(-1.5, Math.min(0.8, (ball.y - front) * shiftDeep));
  return { x: post.across * post.breadth + Math.max(-7, Math.min(7, ball.x)) * shiftAcross, y: Math.max(0.8, deep + sinks) };
}

function isNearest({ ball, holder, out }: Floor, places: readonly Point[], index: number): boolean {
  if (holder === 0 || out || distance(ball, ring) > meets + 20) return false;
  const own = distance(places[index]!, ball);
  return own < meets && places.every((place, at) => at === index || distance(place, ball) > own || (distance(place, ball) === own && at > index));
}
