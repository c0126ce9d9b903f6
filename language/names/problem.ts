// CONTRACT. What reading or scheduling notes as wrong. Lower layers only name it; `checks/` gives it words, severity and fixes.
import type { Params } from '../message/message.ts';
import type { PartId } from '../book/places.ts';
import type { Point } from '../court/point.ts';

/** One thing that cannot be right. `code` is a code of the catalogue in `checks/`; `params` carries its numbers and names. */
export interface Problem {
  readonly code: string;
  readonly part: PartId;
  readonly params: Params;
  readonly related?: readonly PartId[];
  /** Run-through, moment (ms from the call) and spot, where the problem has them. */
  readonly run?: string;
  readonly moment?: number;
  readonly spot?: Point;
  /** The steps gone through when it was seen, where no single run-through is named: a line kept in a counter stands on two ways. */
  readonly steps?: readonly string[];
}
