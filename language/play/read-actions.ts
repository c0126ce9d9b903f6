// A clause of a line → its actions, one for each subject.
import type { ActionTree, Columns, NodeOf, SpotTree } from '../grammar/tree.ts';
import type { Action, BodyId, Defend, Dribble, Hold, Move, MoveStyle, Pace, Pass, PassKind, Place, Screen, Shot, ShotKind, Value, Wait } from './play.ts';
import { readPlace } from './read-places.ts';
import { baseForm } from './read-waits.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodiesOf, bodyOf, isOffence, putGap, putPart, report } from './reader.ts';
import type { Line, Scope } from './scope.ts';
import { ballAfter } from './scope.ts';

/** Everything a clause's actions share. */
export interface Clause {
  readonly subjects: readonly BodyId[];
  readonly him: readonly BodyId[];
  /** Columns of the whole clause, and where its action ends (triggers stand behind). */
  readonly columns: Columns;
  readonly line: Line;
  readonly link: number;
  readonly waitsOf: (owner: string) => readonly Wait[];
}

type Base = Pick<Action, 'id' | 'step' | 'line' | 'link' | 'who' | 'verb' | 'waits' | 'origin'>;

/** Reads one action for each subject, in the subjects' order, and moves the scope's ball on. */
export function readAction(reader: Reader, scope: Scope, tree: ActionTree, clause: Clause): Action[] {
  const actions = clause.subjects.flatMap((who, index) => actionsOfOne(reader, scope, tree, clause, who, index));
  const screens = actions.filter(action => action.kind === 'screen');
  const grouped = screens.length > 1 ? actions.map(action => (action.kind === 'screen' ? together(action, screens) : action)) : actions;
  for (const action of grouped) {
    if (action.kind === 'move') scope.lastMove = action;
    if (action.kind === 'screen') scope.screens.set(action.who, action);
  }
  if (clause.subjects.length === 2) scope.pair = clause.subjects;
  return grouped;
}

function actionsOfOne(reader: Reader, scope: Scope, tree: ActionTree, clause: Clause, who: BodyId, index: number): Action[] {
  const one: One = { reader, scope, clause, who, index, end: tree.to };
  const made = isOffence(who) ? offenceAction(one, tree) : defenceAction(one, tree);
  for (const action of made) scope.ball = ballAfter(scope.ball, action);
  return made;
}

interface One {
  readonly reader: Reader;
  readonly scope: Scope;
  readonly clause: Clause;
  readonly who: BodyId;
  /** Which of the subjects this is. */
  readonly index: number;
  /** Column behind the action's words. */
  readonly end: number;
}

function offenceAction(one: One, tree: ActionTree): Action[] {
  switch (tree.$type) {
    case 'Move':
      return [readMove(one, tree)];
    case 'Seal':
      return [moveOf(one, tree.verb, 'seal', { parts: tree.parts })];
    case 'Crash':
      return [readCrash(one, tree)];
    case 'Dribble':
      return [readDribble(one, tree)];
    case 'Pass':
      return readPass(one, tree.verb, tree.parts);
    case 'ThrowIn':
      return readPass(one, tree.verb, tree.parts);
    case 'HandOff':
      return readHandOff(one, tree);
    case 'Screen':
      return [readScreen(one, tree)];
    case 'Close':
      return [readClose(one, tree)];
    case 'Shot':
      return [readShot(one, tree.verb, tree.kinds, tree)];
    case 'Hold':
      return readHold(one, tree);
    case 'Role':
      return readRole(one, tree);
    case 'Defend':
      report(one.reader, 'offence-defends', partOf(one), { who: one.who, verb: baseForm(tree.verb) });
      return [];
    default:
      return [];
  }
}

function partOf(one: One): string {
  return one.clause.line.key;
}

function meaningOf(one: One, part: string): Meaning {
  return { part, him: one.clause.him };
}

function baseOf(one: One, verb: string): Base {
  const { clause, scope, reader, who } = one;
  const id = scope.nextId(who);
  putPart(reader, id, clause.line.index, clause.columns);
  return { id, step: scope.step, line: clause.line.key, link: clause.link, who, verb: baseForm(verb), waits: clause.waitsOf(id), origin: 'written' };
}

// ---- places of a clause -------------------------------------------------------------------------------------------

type Part = NodeOf<'Move'>['parts'][number] | NodeOf<'Dribble'>['parts'][number] | NodeOf<'Seal'>['parts'][number];

interface Going {
  readonly to?: Value<Place>;
  readonly via: readonly Place[];
  readonly off: readonly BodyId[];
}

/** Where a clause sends its man: `to`, `via`, `off` and the directions without a spot. */
function goingOf(one: One, id: string, parts: readonly Part[]): Going {
  const { reader } = one;
  const meaning = meaningOf(one, id);
  const via: Place[] = [];
  const off: BodyId[] = [];
  let to: { place: Place; columns: Columns; origin: 'written' | 'derived' } | undefined;
  for (const part of parts) {
    if (part === undefined) continue;
    const go = (place: Place | undefined, columns: Columns, origin: 'written' | 'derived' = 'written') => {
      if (place !== undefined && to === undefined) to = { place, columns, origin };
    };
    switch (part.$type) {
      case 'To':
        if (part.ball) go(ballPlace(one), part, 'derived');
        else go(...placeOfSubject(one, part.spots, meaning, part.either));
        break;
      case 'At':
        go(...placeOfSubject(one, part.spots, meaning, false));
        break;
      case 'Via':
        for (const spot of part.spots) via.push(...asList(readPlace(reader, spot, meaning)));
        break;
      case 'Off':
        off.push(...bodiesOf(reader, part.players, meaning));
        break;
      case 'Past':
        for (const who of bodiesOf(reader, part.players, meaning)) {
          if (part.how === 'over' || part.how === 'around') off.push(who);
          else via.push(part.how === 'behind' ? { kind: 'behind', who } : { kind: 'beside', who });
        }
        break;
      case 'Through': {
        const a = bodyOf(reader, part.a, meaning);
        const b = bodyOf(reader, part.b, meaning);
        if (a !== undefined && b !== undefined) via.push({ kind: 'between', a, b });
        break;
      }
      case 'For': {
        const who = bodiesOf(reader, part.players, meaning)[0];
        if (who !== undefined) go({ kind: 'player', who }, part);
        break;
      }
      case 'Heading': {
        const heading = headings[part.way];
        if (heading === undefined) break;
        via.push(...heading.via);
        go(heading.to, part);
        break;
      }
      default:
        break;
    }
  }
  putValue(one, `${id}#to`, to?.columns);
  return { via, off, ...(to === undefined ? {} : { to: { value: to.place, origin: to.origin } }) };
}

const rim: Place = { kind: 'spot', name: 'rim' };

/** A direction without a spot ends at the rim, by way of the floor it names. Common practice, no source. */
const headings: Readonly<Record<string, { readonly via: readonly Place[]; readonly to?: Place }>> = {
  baseline: { via: [{ kind: 'spot', name: 'short corner' }], to: rim },
  middle: { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  left: { via: [{ kind: 'spot', name: 'elbow', side: 'left' }], to: rim },
  right: { via: [{ kind: 'spot', name: 'elbow', side: 'right' }], to: rim },
  'up the lane': { via: [], to: { kind: 'spot', name: 'nail' } },
  'down the lane': { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  'along the baseline': { via: [{ kind: 'spot', name: 'short corner' }] },
  'across the lane': { via: [], to: { kind: 'spot', name: 'block', side: 'far' } },
  'through the lane': { via: [{ kind: 'spot', name: 'lane' }] },
};

function ballPlace(one: One): Place | undefined {
  const { holder } = one.scope.ball;
  return holder === undefined || holder === one.who ? undefined : { kind: 'beside', who: holder };
}

/** Of several places joined by `and` each subject takes one; of those joined by `or` he has the choice. */
function placeOfSubject(one: One, spots: readonly (SpotTree | undefined)[], meaning: Meaning, either: boolean): [Place | undefined, Columns] {
  const { reader, clause, index } = one;
  const written = spots.filter(spot => spot !== undefined);
  if (either && written.length > 1) {
    const options = written.flatMap(spot => asList(readPlace(reader, spot, meaning)));
    const columns = { at: written[0]!.at, to: written[written.length - 1]!.to };
    return [options.length > 1 ? { kind: 'either', options } : options[0], columns];
  }
  const spot = written[clause.subjects.length > 1 ? Math.min(index, written.length - 1) : 0];
  if (spot === undefined) return [undefined, { at: one.end, to: one.end }];
  return [readPlace(reader, spot, meaning), spot];
}

function asList<T>(value: T | undefined): T[] {
  return value === undefined ? [] : [value];
}

function putValue(one: One, part: string, columns: Columns | undefined): void {
  if (columns === undefined) putGap(one.reader, part, one.clause.line.index, one.end);
  else putPart(one.reader, part, one.clause.line.index, columns);
}

// ---- without the ball ---------------------------------------------------------------------------------------------

const moveStyles: Readonly<Record<string, MoveStyle>> = {
  cut: 'cut', 'basket-cut': 'cut', 'back-cut': 'back-cut', 'v-cut': 'v-cut', 'l-cut': 'l-cut', 'shallow-cut': 'cut', 'straight-cut': 'straight', curl: 'curl', fade: 'fade',
  flash: 'flash', roll: 'roll', pop: 'pop', slip: 'slip', dive: 'dive', 'post-up': 'post-up', lift: 'lift', drift: 'drift', fill: 'fill', 'step-out': 'step-out', 'step-in': 'step-in',
  clear: 'clear', space: 'space', 'spot-up': 'space', seal: 'seal',
};
const paces: Readonly<Record<string, Pace>> = { sprint: 'sprint', run: 'set', jog: 'jog', walk: 'walk', crash: 'sprint', 'get-back': 'sprint' };

function readMove(one: One, tree: NodeOf<'Move'>): Move {
  if (baseForm(tree.verb) === 'same-cut') return sameCut(one, tree);
  const verb = baseForm(tree.verb);
  const beforeScreen = tree.parts.some(part => part?.$type === 'BeforeScreen');
  const move = moveOf(one, tree.verb, moveStyles[verb] ?? 'straight', { parts: tree.parts });
  return beforeScreen ? { ...move, beforeScreen: true } : move;
}

function moveOf(one: One, verb: string, style: MoveStyle, going: { readonly parts: readonly Part[] }): Move {
  const base = baseOf(one, verb);
  return { ...base, kind: 'move', ...goingOf(one, base.id, going.parts), style, pace: paces[base.verb] ?? 'set' };
}

/** `2 makes the same cut off 3`: the cut read last, by another man and off whom this line says. */
function sameCut(one: One, tree: NodeOf<'Move'>): Move {
  const last = one.scope.lastMove;
  const base = baseOf(one, tree.verb);
  const going = goingOf(one, base.id, tree.parts);
  if (last === undefined) {
    report(one.reader, 'who-is-meant', base.id, { word: 'the same cut' });
    return { ...base, kind: 'move', ...going, style: 'cut', pace: 'set' };
  }
  const to = going.to ?? (last.to === undefined ? undefined : { value: last.to.value, origin: 'copied' as const });
  return { ...base, kind: 'move', via: going.via.length > 0 ? going.via : last.via, off: going.off, ...(to === undefined ? {} : { to }), style: last.style, pace: last.pace };
}

function readCrash(one: One, tree: NodeOf<'Crash'>): Action {
  const base = baseOf(one, tree.verb);
  putValue(one, `${base.id}#to`, undefined);
  if (base.verb === 'box-out') return { ...base, kind: 'hold' };
  const place: Place = base.verb === 'get-back' ? { kind: 'spot', name: 'half court' } : rim;
  return { ...base, kind: 'move', to: { value: place, origin: 'default' }, via: [], off: [], style: 'straight', pace: 'sprint' };
}

function readHold(one: One, tree: NodeOf<'Hold'>): Action[] {
  const base = baseOf(one, tree.verb);
  if (base.verb === 'keep-dribble') return [{ ...base, kind: 'dribble', via: [], off: [], style: 'keep' }];
  const lasting = tree.parts.find(part => part?.$type === 'HoldFor');
  const hold: Hold = { ...base, kind: 'hold' };
  return [lasting?.$type === 'HoldFor' ? { ...hold, seconds: lasting.time.seconds } : hold];
}

/** The thrower's part is read with the start; the outlet is not carried out yet. */
function readRole(one: One, tree: NodeOf<'Role'>): Action[] {
  if (baseForm(tree.verb) === 'safety') report(one.reader, 'not-yet', partOf(one), { what: 'the safety' });
  return [];
}

// ---- with the ball ------------------------------------------------------------------------------------------------

function readDribble(one: One, tree: NodeOf<'Dribble'>): Dribble {
  const base = baseOf(one, tree.verb);
  const at = tree.parts.find(part => part?.$type === 'DribbleAt');
  const going = goingOf(one, base.id, tree.parts);
  const meaning = meaningOf(one, base.id);
  const target = at?.$type === 'DribbleAt' ? bodyOf(one.reader, at.player, meaning) : undefined;
  const style = target !== undefined ? 'dribble-at' : base.verb === 'drive' || base.verb === 'turn-the-corner' ? 'drive' : 'dribble';
  const dribble: Dribble = { ...base, kind: 'dribble', ...going, style, ...(target === undefined ? {} : { at: target }) };
  if (dribble.to !== undefined || target !== undefined) return dribble;
  const to = dribbleEnds[base.verb];
  return to === undefined ? dribble : { ...dribble, to: { value: to, origin: 'default' } };
}

/** Where a dribble without a place goes. Common practice, no source. */
const dribbleEnds: Readonly<Record<string, Place>> = {
  drive: rim, 'turn-the-corner': rim, 'bring-the-ball-up': { kind: 'spot', name: 'top' }, 'back-out': { kind: 'spot', name: 'slot' },
};

const passKinds: Readonly<Record<string, PassKind>> = { 'bounce-pass': 'bounce', lob: 'lob', skip: 'skip', throw: 'overhead', tip: 'tip' };
const passStyles: Readonly<Record<string, PassKind>> = { overhead: 'overhead', 'overhead-pass': 'overhead', baseball: 'baseball', 'baseball-pass': 'baseball' };

type PassParts = NodeOf<'Pass'>['parts'] | NodeOf<'ThrowIn'>['parts'];

/** `1 passes to 2 to 3` is two passes, the second by 2. */
function readPass(one: One, verb: string, parts: PassParts): Action[] {
  const receivers = parts.filter(part => part?.$type === 'PassTo');
  const at = parts.find(part => part?.$type === 'At');
  const styled = parts.find(part => part?.$type === 'PassStyle');
  const early = parts.some(part => part?.$type === 'Early');
  const isThrowIn = baseForm(verb) === 'inbound';
  if (receivers.length === 0) {
    if (!isThrowIn) report(one.reader, 'pass-to-nobody', partOf(one), { who: one.who });
    return [];
  }
  const passes: Pass[] = [];
  let passer = one.who;
  for (const [count, receiver] of receivers.entries()) {
    if (receiver.$type !== 'PassTo') continue;
    const to = bodyOf(one.reader, receiver.player, meaningOf(one, partOf(one)));
    if (to === undefined) break;
    const base = baseOf({ ...one, who: passer }, verb);
    putPart(one.reader, `${base.id}#to`, one.clause.line.index, receiver.player);
    const kind = (styled?.$type === 'PassStyle' ? passStyles[styled.style] : undefined) ?? passKinds[base.verb] ?? 'pass';
    const last = count === receivers.length - 1;
    const place = last && at?.$type === 'At' ? placeOfSubject(one, at.spots, meaningOf(one, base.id), false) : undefined;
    if (place?.[0] !== undefined) putPart(one.reader, `${base.id}#at`, one.clause.line.index, place[1]);
    passes.push({
      ...base,
      waits: count === 0 ? base.waits : [],
      link: one.clause.link + count,
      kind: 'pass',
      pass: { value: kind, origin: base.verb === 'pass' || base.verb === 'inbound' ? 'default' : 'written' },
      to,
      ...(place?.[0] === undefined ? {} : { at: { value: place[0], origin: 'written' as const } }),
      early: early && last,
      throwIn: count === 0 && (isThrowIn || (one.scope.ball.out && one.scope.ball.holder === passer)),
    });
    passer = to;
  }
  return passes;
}

function readHandOff(one: One, tree: NodeOf<'HandOff'>): Action[] {
  const receiver = tree.parts.find(part => part?.$type === 'PassTo');
  const to = receiver?.$type === 'PassTo' ? bodyOf(one.reader, receiver.player, meaningOf(one, partOf(one))) : undefined;
  if (to === undefined) {
    report(one.reader, 'pass-to-nobody', partOf(one), { who: one.who });
    return [];
  }
  const base = baseOf(one, tree.verb);
  if (receiver?.$type === 'PassTo') putPart(one.reader, `${base.id}#to`, one.clause.line.index, receiver.player);
  return [{ ...base, kind: 'hand-off', to }];
}

const shotKinds: Readonly<Record<string, ShotKind>> = { dunk: 'dunk', 'lay-up': 'layup', 'pull-up': 'jumper', 'tip-in': 'tip-in', hook: 'hook' };

export function readShot(one: Pick<One, 'reader' | 'scope' | 'clause' | 'who' | 'end'>, verb: string, kinds: readonly ShotKind[], columns: Columns | undefined): Shot {
  const full: One = { ...one, index: 0 };
  const base = baseOf(full, verb);
  const [written, ...or] = kinds;
  const byVerb = shotKinds[base.verb];
  putValue(full, `${base.id}#shot`, written === undefined && byVerb === undefined ? undefined : columns);
  const kind = written ?? byVerb;
  return { ...base, kind: 'shot', shot: kind === undefined ? { value: 'shot', origin: 'default' } : { value: kind, origin: 'written' }, or };
}

// ---- screens ------------------------------------------------------------------------------------------------------

const screenStyles: Readonly<Record<string, Screen['style']>> = {
  'ball-screen': 'ball', 'back-screen': 'back', 'flare-screen': 'flare', 'cross-screen': 'cross', 'down-screen': 'down', 'up-screen': 'up', 'pin-screen': 'pin-down',
};

function readScreen(one: One, tree: NodeOf<'Screen'>): Screen {
  const base = baseOf(one, tree.verb);
  const meaning = meaningOf(one, base.id);
  const users: BodyId[] = [];
  let on: BodyId | undefined;
  let at: [Place | undefined, Columns] | undefined;
  let way: Screen['style'] | undefined;
  for (const part of tree.parts) {
    if (part?.$type === 'For') users.push(...bodiesOf(one.reader, part.players, meaning));
    if (part?.$type === 'On') on ??= bodyOf(one.reader, part.player, meaning);
    if (part?.$type === 'ScreenWay') way ??= part.way;
    if (part?.$type === 'At') at ??= placeOfSubject(one, part.spots, meaning, false);
  }
  // `screens on 3` says who uses it; only a defender is screened.
  if (on !== undefined && isOffence(on)) {
    users.push(on);
    on = undefined;
  }
  putValue(one, `${base.id}#at`, at?.[0] === undefined ? undefined : at[1]);
  const before = base.verb === 're-screen' ? one.scope.screens.get(one.who) : undefined;
  const own = users.length > 1 && users.length === one.clause.subjects.length ? [users[one.index]!] : users;
  return {
    ...base,
    kind: 'screen',
    style: screenStyles[base.verb] ?? way ?? before?.style ?? 'screen',
    users: own.length === 0 && before !== undefined ? before.users : own,
    ...(on === undefined ? {} : { on }),
    ...(at?.[0] === undefined ? {} : { at: { value: at[0], origin: 'written' as const } }),
    together: [one.who],
    formation: base.verb === 'double-screen' ? 'double' : base.verb === 'stagger-screen' ? 'stagger' : 'single',
  };
}

/** Several who screen for the same man set it together: staggered, unless the words say `double`. Common practice, no source. */
function together(screen: Screen, screens: readonly Action[]): Screen {
  const partners = screens.filter(other => other.kind === 'screen' && other.users.join() === screen.users.join());
  if (partners.length < 2) return screen;
  return { ...screen, together: partners.map(({ who }) => who), formation: screen.formation === 'double' ? 'double' : 'stagger' };
}

/** `4 and 5 close behind him`: a double screen that shuts once he is through. */
function readClose(one: One, tree: NodeOf<'Close'>): Screen {
  const base = baseOf(one, tree.verb);
  const user = bodyOf(one.reader, tree.player, meaningOf(one, base.id));
  putValue(one, `${base.id}#at`, undefined);
  const at = user === undefined ? {} : { at: { value: { kind: 'behind', who: user } as const, origin: 'derived' as const } };
  return { ...base, kind: 'screen', style: 'screen', users: asList(user), ...at, together: [one.who], formation: 'double' };
}

// ---- the defence --------------------------------------------------------------------------------------------------

function defenceAction(one: One, tree: ActionTree): Action[] {
  switch (tree.$type) {
    case 'Defend':
      return [readDefend(one, tree)];
    case 'Pass': case 'ThrowIn': case 'HandOff': case 'Shot': case 'Dribble': case 'Screen': case 'Close': case 'Role':
      report(one.reader, 'defender-attacks', partOf(one), { who: one.who, verb: baseForm(tree.verb) });
      return [];
    case 'SameAgain':
      return [];
    default: {
      const base = baseOf(one, tree.verb);
      const parts = tree.$type === 'Move' || tree.$type === 'Seal' ? tree.parts : [];
      const { to } = goingOf(one, base.id, parts);
      return [{ ...base, kind: 'defend', ...(to === undefined ? {} : { to }) }];
    }
  }
}

function readDefend(one: One, tree: NodeOf<'Defend'>): Defend {
  const base = baseOf(one, tree.verb);
  const meaning = meaningOf(one, base.id);
  let on: BodyId | undefined;
  let to: [Place | undefined, Columns] | undefined;
  for (const part of tree.parts) {
    if (part?.$type === 'With' || part?.$type === 'Guarded' || (part?.$type === 'DefendTo' && part.player !== undefined)) on ??= bodyOf(one.reader, part.player!, meaning);
    else if (part?.$type === 'At' || part?.$type === 'DefendTo') to ??= placeOfSubject(one, part.spots, meaning, false);
    else if (part?.$type === 'Off') on ??= bodiesOf(one.reader, part.players, meaning)[0];
  }
  putValue(one, `${base.id}#to`, to?.[0] === undefined ? undefined : to[1]);
  return { ...base, kind: 'defend', ...(on === undefined ? {} : { on }), ...(to?.[0] === undefined ? {} : { to: { value: to[0], origin: 'written' as const } }) };
}

