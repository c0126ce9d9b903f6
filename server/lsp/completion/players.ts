// Where a player is wanted: who it can be, likeliest first.
import { distance } from '../../../language/court/point.ts';
import type { Expected } from '../../../language/grammar/expected.ts';
import type { BodyId } from '../../../language/play/play.ts';
import type { Choice } from './choice.ts';
import { has, whereHeIs, type Line } from './line.ts';
import { unlikelihood } from './receivers.ts';

/** A place where several readings want a player: the strictest of them counts. */
type Wanted = 'defence' | 'receiver' | 'user' | 'screener' | 'guarded' | 'looker' | 'subject' | 'anyone';

export function playerChoices(line: Line, items: readonly Expected[]): readonly Choice[] {
  return items.flatMap((item) => {
    const body = item.text as BodyId;
    const wanted = wantedBy(item);
    const rank = wanted === undefined ? undefined : rankOf(line, body, wanted);
    if (rank === undefined) return [];
    return [{ text: body, kind: isDefender(body) ? ('defender' as const) : ('player' as const), rank: rank + slack(line, item), ...whereHeIs(line, body) }];
  });
}

/** Where a player may stand but something else is likelier: what he goes on to do, the name of an alignment, a header. */
function slack({ prefix, step, expected }: Line, item: Expected): number {
  const before = prefix.slice(0, expected.from);
  if (item.path[0] === 'Statement' && (/(?:^|[\s,])(?:and|then)\s+$/i.test(before) || (step === undefined && before.trim() === ''))) return 200;
  // Behind a comma of `from` another man is told of, not one who has his place.
  if (has(item, 'From')) return /,\s*$/.test(before) && !new RegExp(`[\\s,]${item.text}\\s`).test(before) ? 0 : 200;
  return has(item, 'TailItem') ? 200 : 0;
}

function wantedBy(item: Expected): Wanted | undefined {
  if (item.path.includes('count>Count') || has(item, 'Count') || has(item, 'Signed')) return undefined;
  if (has(item, 'Condition') && item.path.some((part) => part.startsWith('subject>'))) return 'defence';
  if (has(item, 'PassTo')) return 'receiver';
  if (has(item, 'ScreenPart')) return has(item, 'On') || item.path.includes('player>Player') ? 'guarded' : 'user';
  if (has(item, 'Off') || has(item, 'OffScreen') || has(item, 'PointOfPlayer') || has(item, 'Past')) return 'screener';
  if (has(item, 'DefendPart') || has(item, 'CloseVerb')) return 'anyone';
  if (item.path[0] === 'Look') return has(item, 'TailItem') || has(item, 'LookPin') ? 'subject' : 'looker';
  return item.path.some((part) => part.startsWith('subject>')) ? 'subject' : 'anyone';
}

/** So far the line only names who acts. */
const stillNaming = /^\s*(?:X?[1-5](?:\s*,\s*|\s*,?\s+and\s+))+$/i;

/** Undefined for one it cannot be. */
function rankOf(line: Line, body: BodyId, wanted: Wanted): number | undefined {
  const { standing, actors } = line;
  const number = Number(body.slice(-1)) / 10;
  const himself = actors.includes(body);
  switch (wanted) {
    case 'defence':
      return (isDefender(body) ? 10 : 80) + number;
    case 'receiver':
      return himself || isDefender(body) ? undefined : 10 + unlikelihood(line, body);
    case 'user': {
      if (himself || isDefender(body)) return undefined;
      const ball = /^ball-/.test(line.expected.acting?.verb ?? '') === (body === standing.holder);
      return (ball ? 10 : 30) + near(line, body);
    }
    case 'guarded':
      return isDefender(body) ? 10 + number : undefined;
    case 'screener':
      if (himself || isDefender(body)) return undefined;
      return (standing.screening.includes(body) ? 10 : 30) + near(line, body);
    case 'looker':
      return isDefender(body) ? undefined : (standing.looked.includes(body) ? 20 : 10) + (body === standing.holder ? 0 : number);
    case 'subject':
      // `3 and …`: nobody acts with himself.
      if (himself && stillNaming.test(line.prefix.slice(0, line.expected.from))) return undefined;
      if (himself && actors.length < 5 && line.prefix.trim() !== '') return 60 + number;
      if (isDefender(body)) return 80 + number;
      return body === standing.holder ? 10 : (standing.acted.includes(body) ? 20 : 11) + number;
    case 'anyone':
      return himself ? undefined : (isDefender(body) ? 40 : 10) + number;
  }
}

/** Metres from the one who acts, for ranking: less than one hundred. */
function near({ standing, actors }: Line, body: BodyId): number {
  const from = actors[0] === undefined ? undefined : standing.where[actors[0]];
  const to = standing.where[body];
  return from === undefined || to === undefined ? Number(body.slice(-1)) / 10 : Math.min(9, distance(from, to) / 4);
}

const isDefender = (body: string): boolean => body.startsWith('X');
