// A row of rails too long for a page goes on in the next line: what the package draws in later versions only.
import rr, { type Item } from 'railroad-diagrams';

rr.Diagram.INTERNAL_ALIGNMENT = 'left';

/** So wide a row may be, in pixels: with the rails round it a phone still shows the letters large enough to read. */
const widest = 350;
/** What the rails round a row take. */
const rails = 45;
/** A row has room for a word and a box at least. */
const narrowest = 170;

/** The items in one row, or in several where one would be too wide. `depth`: how many rails lie round it. */
export function stacked(items: readonly Item[], depth: number): Item {
  const limit = Math.max(narrowest, widest - depth * rails);
  const rows: Item[][] = [[]];
  let width = 0;
  for (const item of items) {
    const room = item.width + (item.needsSpace ? 20 : 0);
    if (width > 0 && width + room > limit) {
      rows.push([]);
      width = 0;
    }
    rows.at(-1)!.push(item);
    width += room;
  }
  return rows.length === 1 ? new rr.Sequence(items) : new Stack(rows.map((row) => new rr.Sequence(row)));
}

const air = 10;

class Stack extends rr.Sequence {
  constructor(rows: readonly Item[]) {
    super(rows);
    const radius = rr.Diagram.ARC_RADIUS;
    // On the left the way in, on the right the turns and the way back up to the level of the first row.
    this.width = Math.max(...rows.map((row) => row.width)) + 4 * radius;
    this.up = rows[0]!.up;
    this.down = rows.at(-1)!.down + rows.slice(1).reduce((sum, row, at) => sum + dropBetween(rows[at]!, row).whole, 0);
  }

  override format(x: number, y: number, width: number): this {
    const radius = rr.Diagram.ARC_RADIUS;
    const left = x + radius;
    const turn = (dx: number, dy: number, clockwise: 0 | 1) => `a${radius} ${radius} 0 0 ${clockwise} ${dx} ${dy}`;
    let top = y;
    path(`M${x} ${y}H${left}`).addTo(this);
    this.items.forEach((row, at) => {
      row.format(left, top, row.width).addTo(this);
      const next = this.items[at + 1];
      if (next === undefined) {
        const up = x + this.width - 2 * radius;
        path(`M${left + row.width} ${top}H${up}${turn(radius, -radius, 0)}V${y + radius}${turn(radius, -radius, 1)}`).addTo(this);
        return;
      }
      const { first, second, whole } = dropBetween(row, next);
      path(`M${left + row.width} ${top}${turn(radius, radius, 1)}v${first}${turn(-radius, radius, 1)}H${left}${turn(-radius, radius, 0)}v${second}${turn(radius, radius, 0)}`).addTo(this);
      top += whole;
    });
    if (width > this.width) path(`M${x + this.width} ${y}H${x + width}`).addTo(this);
    return this;
  }
}

/** How far down the second of two rows lies, and the straight pieces on either side of the way back. */
function dropBetween(row: Item, next: Item): { readonly first: number; readonly second: number; readonly whole: number } {
  const radius = rr.Diagram.ARC_RADIUS;
  const first = Math.max(0, row.down + air - 2 * radius);
  const second = Math.max(0, next.up + air - 2 * radius);
  return { first, second, whole: first + second + 4 * radius };
}

const Plain = Object.getPrototypeOf(rr.Sequence.prototype).constructor as new (tag: string, attrs: Readonly<Record<string, string>>) => Item;
const path = (d: string): Item => new Plain('path', { d });
