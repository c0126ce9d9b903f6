/** `play:lighthouse`; a second block of the same kind and name gets `#2`. */
export type BlockKey = string;
/**
 * Anything that has a place in the text: an action, a look, a step, a line, or a header field (`play`, `call`, `from`,
 * `window`, `leave`, `against`, `level`, `rules`, `rebound` …), and behind `#` one value of it (`zip/3.1#to`, `call#from`).
 */
export type PartId = string;

/** A place in the text of a block: `line` counts from the block's first line, columns are UTF-16 in the line, `[at, to)`. */
export interface TextPlace {
  readonly line: number;
  readonly at: number;
  readonly to: number;
}
/** The side table: where each part stands, or (for a value that is not written) the empty place where its words would go. */
export type Places = ReadonlyMap<PartId, TextPlace>;
