// Behind `look`: the chances there are, each as a whole line, by who stands where and what he has just done.
import { distance, type Point } from '../../../language/court/point.ts';
import type { Court } from '../../../language/court/court.ts';
import { OFFENCE, type BodyId } from '../../../language/play/play.ts';
import type { Choice } from './choice.ts';
import { whereHeIs, type Line } from './line.ts';

/** So near he lays it in, metres from the ring's centre. Common practice, no source. */
const layup = 2.2;
/** Moves that a look can be pinned to, and that end in a shot. */
const pinned: ReadonlySet<string> = new Set(['roll', 'pop', 'slip', 'cut', 'curl', 'fade', 'flash', 'seal', 'dive', 'back-cut', 'drift', 'lift']);

export function chanceChoices(line: Line): readonly Choice[] {
  if (!/^\s*look\s+$/i.test(line.prefix.slice(0, line.expected.from)) || line.block.kind !== 'play') return [];
  const { standing } = line;
  const chances = OFFENCE.flatMap((body) => {
    const at = standing.where[body];
    return at === undefined || standing.looked.includes(body) ? [] : [{ body, at, did: standing.lastDid[body] }];
  });
  // Who has moved in this step first, the latest before all; then the man with the ball, then the others.
  const order = chances.toSorted((a, b) => (b.did?.inStep ? b.did.order : -1) - (a.did?.inStep ? a.did.order : -1) || Number(b.body === standing.holder) - Number(a.body === standing.holder));
  return order.map(({ body, at, did }, nth): Choice => {
    const pin = did?.inStep && did.kind === 'move' && pinned.has(did.verb) && body !== standing.holder ? ` on the ${did.verb}` : '';
    return { text: `${body}${pin}: ${shotFrom(standing.court, at)}`, kind: 'shot', rank: 8 + nth / 10, ...whereHeIs(line, body) };
  });
}

/** Behind the colon of a look: whether its man stands near enough to lay it in. */
export function laysItIn({ prefix, standing }: Line): boolean {
  const who = /^\s*look\s+([1-5])\b[^:]*:\s*$/i.exec(prefix)?.[1] as BodyId | undefined;
  const at = who === undefined ? undefined : standing.where[who];
  return at !== undefined && distance(at, standing.court.ring) < layup;
}

function shotFrom(court: Court, at: Point): string {
  const away = distance(at, court.ring);
  if (away < layup) return 'layup';
  return court.three !== undefined && (away > court.three.radius || Math.abs(at.x) > court.three.corner) ? 'three' : 'jumper';
}
