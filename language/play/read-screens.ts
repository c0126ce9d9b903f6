// Screens.
import type { Columns, NodeOf } from '../grammar/tree.ts';
import type { Action, BodyId, Move, Place, Screen, Wait } from './play.ts';
import type { Base, One } from './read-clause.ts';
import { asList, baseOf, meaningOf, putValue, take } from './read-clause.ts';
import { onThatHalf } from './read-places.ts';
import { placeOfSubject } from './read-way.ts';
import { anotherBefore } from './pronouns.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodiesOf, bodyOf, isOffence } from './reader.ts';

const screenStyles: Readonly<Record<string, Screen['style']>> = {
  'ball-screen': 'ball', 'back-screen': 'back', 'flare-screen': 'flare', 'cross-screen': 'cross', 'down-screen': 'down', 'up-screen': 'up', 'pin-screen': 'pin-down',
};

/** Words that a kind of screen may carry besides: its own way, or that it goes to where his man is. Common usage, no source. */
const goesWith: { readonly [style in Screen['style']]?: readonly Screen['style'][] } = {
  ball: ['up', 'down', 'across'], back: ['up'], flare: ['up', 'across'], cross: ['across'], down: ['down'], up: ['up'], 'pin-down': ['down'],
};

export function readScreen(one: One, tree: NodeOf<'Screen'>): Screen {
  const base = baseOf(one, tree.verb);
  const meaning = meaningOf(one, base.id);
  const users: BodyId[] = [];
  let on: BodyId | undefined;
  let at: [Place | undefined, Columns] | undefined;
  let way: Screen['style'] | undefined;
  const byVerb = screenStyles[base.verb];
  for (const part of tree.parts) {
    switch (part?.$type) {
      case 'For':
        users.push(...usersNamed(one, take(one, part), meaning, byVerb));
        break;
      case 'On':
        if (on === undefined) on = bodyOf(one.reader, take(one, part).player, meaning);
        break;
      case 'ScreenWay': {
        const said = part.way === 'in' ? 'screen' : part.way;
        way ??= said;
        // Of a kind of screen the way may say once more what it is, as in `back-screens up for 2`.
        if (way === said && (byVerb === undefined || said === 'screen' || said === 'away' || goesWith[byVerb]?.includes(said))) take(one, part);
        break;
      }
      case 'At':
        if (at === undefined) at = placeOfSubject(one, take(one, part).spots, meaning, false, part.apart);
        break;
      case undefined:
        break;
    }
  }
  // `screens on 3` says who uses it; only a defender is screened.
  if (on !== undefined && isOffence(on)) {
    users.push(on);
    on = undefined;
  }
  // `1 screens X4` frees 4; in a zone X4 guards nobody, and whoever comes by uses it.
  if (on !== undefined && users.length === 0 && on.slice(1) !== one.who && !isAgainstZone(one.reader)) users.push(on.slice(1) as BodyId);
  putValue(one, `${base.id}#at`, at?.[0] === undefined ? undefined : at[1]);
  const before = base.verb === 're-screen' ? one.scope.screens.get(one.who) : undefined;
  const own = users.length > 1 && users.length === one.clause.subjects.length ? [users[one.index]!] : users;
  return {
    ...base,
    kind: 'screen',
    style: byVerb ?? way ?? before?.style ?? 'screen',
    users: own.length === 0 && before !== undefined ? before.users : own,
    ...(on === undefined ? {} : { on }),
    ...(at?.[0] === undefined ? {} : { at: { value: onThatHalf(at[0]), origin: 'written' as const } }),
    together: [one.who],
    formation: base.verb === 'double-screen' ? 'double' : base.verb === 'stagger-screen' ? 'stagger' : 'single',
  };
}

/** `5 sprints up and ball-screens for him`: nobody screens for himself; a ball screen is for who has the ball, where the line names no other man. */
function usersNamed(one: One, part: NodeOf<'For'>, meaning: Meaning, style: Screen['style'] | undefined): readonly BodyId[] {
  const { holder } = one.scope.ball;
  const users = bodiesOf(one.reader, part.players, meaning);
  const [player] = part.players;
  if (holder === undefined || holder === one.who || part.players.length !== 1 || player?.number !== undefined || users.includes(holder)) return users;
  const isNamed = meaning.said !== undefined && player !== undefined && anotherBefore(meaning.said, one.who, player.at, []) !== undefined;
  return users.includes(one.who) || (style === 'ball' && !isNamed && meaning.him.includes(one.who)) ? [holder] : users;
}

function isAgainstZone({ lines }: Reader): boolean {
  return lines.some(({ tree }) => tree?.$type === 'Against' && tree.formation !== undefined);
}

/** Several who screen for the same man set it together: staggered, unless the words say `double`. Common practice, no source. */
export function together(screen: Screen, screens: readonly Action[]): Screen {
  const partners = screens.filter(other => other.kind === 'screen' && other.users.join() === screen.users.join());
  if (partners.length < 2) return screen;
  return { ...screen, together: partners.map(({ who }) => who), formation: screen.formation === 'double' ? 'double' : 'stagger' };
}

/** `4 and 5 close behind him`: a double screen that shuts once he is through. */
export function readClose(one: One, tree: NodeOf<'Close'>): Screen | Move {
  const base = baseOf(one, tree.verb);
  // The subjects close; `him` is who went through.
  const { lastMove } = one.scope;
  const through = tree.player.number === undefined && lastMove !== undefined && !one.clause.subjects.includes(lastMove.who) ? lastMove.who : undefined;
  const user = through ?? bodyOf(one.reader, tree.player, meaningOf(one, base.id));
  const gate = user === undefined || lastMove?.who !== user ? undefined : lastMove.via.find(via => via.kind === 'between' && (via.a === one.who || via.b === one.who));
  if (user !== undefined && gate !== undefined) return shutGate(one, base, user, gate);
  putValue(one, `${base.id}#at`, undefined);
  const at = user === undefined ? {} : { at: { value: { kind: 'behind', who: user } as const, origin: 'derived' as const } };
  return { ...base, kind: 'screen', style: 'screen', users: asList(user), ...at, together: [one.who], formation: 'double' };
}

/** Each steps half-way in to where he went through, once he has. */
function shutGate(one: One, base: Base, user: BodyId, gate: Place): Move {
  putValue(one, `${base.id}#to`, undefined);
  const part = `${base.id}#wait${base.waits.length === 0 ? '' : base.waits.length + 1}`;
  putValue(one, part, undefined);
  const through: Wait = { kind: 'once', event: { who: user, does: 'reach', place: gate }, part };
  const to: Place = { kind: 'between', a: gate, b: one.who };
  return { ...base, waits: [...base.waits, through], kind: 'move', to: { value: to, origin: 'derived' }, via: [], off: [], style: 'straight', pace: 'set' };
}
