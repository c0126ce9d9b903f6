// The part of the package that the reference uses; it brings no types of its own.
declare module 'railroad-diagrams' {
  export class Item {
    width: number;
    up: number;
    down: number;
    readonly needsSpace?: boolean;
    readonly attrs: Record<string, string | number>;
    format(x: number, y: number, width: number): this;
    addTo(parent: Item): this;
    toString(): string;
  }
  export class Diagram extends Item {
    static VERTICAL_SEPARATION: number;
    static ARC_RADIUS: number;
    static INTERNAL_ALIGNMENT: 'left' | 'center' | 'right';
    constructor(items: readonly Item[]);
    format(top?: number, right?: number, bottom?: number, left?: number): this;
  }
  export class Sequence extends Item {
    readonly items: readonly Item[];
    constructor(items: readonly Item[]);
  }
  export class Choice extends Item {
    constructor(normal: number, items: readonly Item[]);
  }
  export function Optional(item: Item): Item;
  export class OneOrMore extends Item {
    constructor(item: Item, separator?: Item);
  }
  export function ZeroOrMore(item: Item, separator?: Item): Item;
  export class Terminal extends Item {
    constructor(text: string);
  }
  export class NonTerminal extends Item {
    constructor(text: string);
  }
  export class Skip extends Item {
    constructor();
  }
}
