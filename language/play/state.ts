import type { Court } from '../court/court.ts';
import { courtOf } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { ruleSet } from '../court/rule-sets.ts';
import { endOf, screenPlace } from './default-ends.ts';
import type { Action, ActionId, BodyId, LookId, Play, Step, StepKey } from './play.ts';
import { homesOf } from './homes.ts';
import { evenSideOf, resolvePlace } from './places.ts';
import type { Situation } from './places.ts';
import { pathTo } from './run-throughs.ts';
import type { Reading } from './reading.ts';

/** What a coach knows at a line by the text above it: no times, every line above done. */
export interface GameState {
  /** The step the line stands in; absent above the first. */
  readonly step?: StepKey;
  readonly holder?: BodyId;
  /** The holder's dribble: not begun, going on, or picked up. */
  readonly dribble: 'none' | 'live' | 'used';
  /** The ball is out of bounds with its thrower. */
  readonly ballOut: boolean;
  readonly places: Readonly<Partial<Record<BodyId, Point>>>;
  /** The side of the even numbers at the call: where a man in the middle goes if nothing else says. */
  readonly evenSide: 'left' | 'right';
  /** Screens set so far on this path, by screener and his users, latest last. */
  readonly screensSet: readonly { readonly action: ActionId; readonly by: BodyId; readonly users: readonly BodyId[]; readonly at: Point }[];
  readonly looksSoFar: readonly LookId[];
  /** Actions so far on this path, in text order. */
  readonly actionsSoFar: readonly ActionId[];
}

/** The state before a line of the block (0 is its opener): the path to its step, then the step's own lines above it. Broken lines count as not there. */
export function stateBefore(reading: Reading, line: number): GameState {
  const { play } = reading;
  const key = stepAt(reading, line);
  const step = key === undefined ? undefined : (play.steps.find(each => each.key === key) ?? reading.leftOut.find(each => each.key === key));
  const path = step === undefined ? [] : pathWith(play, step);
  let state = stateAtCall(play);
  for (const each of path) {
    const own = each === step;
    for (const action of each.kept) state = stateAfter(play, state, action);
    for (const action of each.actions) if (!own || isAbove(reading, action.id, line)) state = stateAfter(play, state, action);
    const looks = each.looks.filter(look => !own || isAbove(reading, look.id, line));
    state = { ...state, step: each.key, looksSoFar: [...state.looksSoFar, ...looks.map(look => look.id)] };
  }
  return state;
}

/** The state at the end of a step, no look taken. */
export function stateAfterStep(reading: Reading, key: StepKey): GameState {
  const last = reading.lines.findLastIndex(line => line.step === key);
  return stateBefore({ ...reading, lines: [...reading.lines, { kind: 'blank', step: key, actions: [] }] }, last < 0 ? 0 : reading.lines.length);
}

/** The step a line stands in; a step's own opening line stands at the end of the step before it on its path. */
function stepAt(reading: Reading, line: number): StepKey | undefined {
  const meaning = reading.lines[Math.min(Math.max(0, line), reading.lines.length - 1)];
  if (meaning?.step === undefined) return undefined;
  return meaning.step;
}

function pathWith(play: Play, step: Step): readonly Step[] {
  const path = pathTo(play, step.key);
  return path.length > 0 ? path : [step];
}

function isAbove(reading: Reading, part: string, line: number): boolean {
  const place = reading.places.get(part);
  return place !== undefined && place.line < line;
}

/** The state at the call, everyone where the play starts from. */
export function stateAtCall(play: Play): GameState {
  const court = courtOf(ruleSet(play.rules.value));
  const holder = `${play.start.ball.value}` as BodyId;
  const places = homesOf(play, court);
  return { holder, evenSide: evenSideOf(places), dribble: 'none', ballOut: play.start.throwIn !== undefined, places, screensSet: [], looksSoFar: [], actionsSoFar: [] };
}

/** The state once an action is done, wherever it stands. */
function stateAfter(play: Play, before: GameState, action: Action): GameState {
  const state = { ...before, actionsSoFar: [...before.actionsSoFar, action.id] };
  const situation = situationOf(play, state, action.who);
  switch (action.kind) {
    case 'move':
      return movedTo(state, action.who, endOf(action, situation));
    case 'dribble': {
      const moved = movedTo(state, action.who, endOf(action, situation));
      return state.holder === action.who ? { ...moved, dribble: 'live' } : moved;
    }
    case 'pass': {
      const caught: GameState = { ...state, holder: action.to, dribble: 'none', ballOut: false };
      return action.at === undefined ? caught : movedTo(caught, action.to, resolvePlace(action.at.value, situationOf(play, state, action.to)));
    }
    case 'hand-off': {
      const taken: GameState = { ...state, holder: action.to, dribble: 'none', ballOut: false };
      const place = state.places[action.who];
      return place === undefined ? taken : movedTo(taken, action.to, place);
    }
    case 'screen': {
      const at = screenAt(play, state, action);
      const set = [...state.screensSet, { action: action.id, by: action.who, users: action.users, at }];
      return { ...movedTo(state, action.who, at), screensSet: set };
    }
    case 'shot': {
      const { holder: _, ...rest } = state;
      return { ...rest, dribble: 'none', ballOut: false };
    }
    case 'hold':
      return action.verb === 'pick-up' && state.holder === action.who ? { ...state, dribble: 'used' } : state;
    case 'defend':
      return action.to === undefined ? state : movedTo(state, action.who, resolvePlace(action.to.value, situation));
  }
}

function screenAt(play: Play, state: GameState, action: Extract<Action, { readonly kind: 'screen' }>): Point {
  const situation = situationOf(play, state, action.who);
  if (action.at !== undefined) return resolvePlace(action.at.value, situation);
  const user = action.users[0] ?? (action.on === undefined ? undefined : (action.on.slice(1) as BodyId));
  const place = user === undefined ? undefined : state.places[user];
  return place === undefined ? (state.places[action.who] ?? { x: 0, y: 0 }) : screenPlace(place, situation);
}

function movedTo(state: GameState, who: BodyId, to: Point): GameState {
  return { ...state, places: { ...state.places, [who]: to } };
}

const courts = new Map<string, Court>();

/** What `resolvePlace` needs, for one man in this state. */
export function situationOf(play: Play, state: GameState, who: BodyId): Situation {
  const rules = play.rules.value;
  let court = courts.get(rules);
  if (court === undefined) courts.set(rules, (court = courtOf(ruleSet(rules))));
  return { court, positions: state.places, ...(state.holder === undefined ? {} : { ball: state.holder }), who, spots: play.spots, evenSide: state.evenSide };
}
