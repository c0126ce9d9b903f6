/** Circles of waits (rule 19): one finding that names each line, and the least of the waits dropped. */
import type { PartId } from '../play/play.ts';
import type { Branch, Item, Need } from './branch.ts';
import { tell, withOne } from './branch.ts';
import { problem } from './problem-codes.ts';

interface Wanted {
  readonly item: Item;
  readonly need: Need;
}

/** Takes one wait out of a circle among lines that are stuck. Always takes something out, so that settling goes on. */
export function breakCircle(branch: Branch, stuck: readonly Item[]): void {
  const circle = findCircle(stuck);
  const written = circle.filter(({ need }) => need.tie === 'wait' && need.wait !== undefined).sort((a, b) => a.item.order - b.item.order).at(-1);
  // Without a written one the pass goes to the man at rest, and the later screen takes its user's present place.
  const meeting = circle.filter(({ need }) => need.tie === 'meet').at(0);
  const screen = circle.filter(({ need }) => need.tie === 'user-place').sort((a, b) => a.item.order - b.item.order).at(-1);
  const least = written ?? meeting ?? screen ?? circle.reduce((last, wanted) => (wanted.item.order > last.item.order ? wanted : last));
  drop(branch, least);
  const lines = [...new Set(circle.map(({ item }) => partOf(item)))];
  const part = written?.need.wait?.part ?? partOf(least.item);
  tell(branch, problem('waits-in-circle', part, { lines: lines.length }, { related: lines }));
}

function drop(branch: Branch, { item, need }: Wanted): void {
  if (need.wait !== undefined) item.dropped = withOne(item.dropped, need.wait);
  item.ignored = withOne(item.ignored, `${need.tie} ${need.on}`);
  item.needs = item.needs.filter((other) => !(other.on === need.on && other.tie === need.tie));
  item.ready = undefined;
  const other = need.tie === 'meet' ? branch.index.get(need.on) : undefined;
  if (other !== undefined) other.heeds = withOne(other.heeds, item.key);
}

export function partOf(item: Item): PartId {
  if (item.kind === 'free') return item.screen.action.id;
  return item.kind === 'look' ? item.look.id : item.action.id;
}

/** Follows what the stuck lines wait for among themselves until a line comes up twice. */
function findCircle(stuck: readonly Item[]): readonly Wanted[] {
  const byKey = new Map(stuck.map((item) => [item.key, item]));
  const way: Wanted[] = [];
  let item = stuck[0]!;
  while (way.length <= stuck.length) {
    const again = way.findIndex((wanted) => wanted.item === item);
    if (again !== -1) return way.slice(again);
    const need = item.needs.find(({ on }) => byKey.has(on)) ?? item.needs[0]!;
    way.push({ item, need });
    const next = byKey.get(need.on);
    if (next === undefined) return way.slice(-1);
    item = next;
  }
  return way;
}
