// What a step that stands `instead of` another keeps of it (TIMING rule 17).
import { meaningOf } from '../book/meaning.ts';
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { LineTree, TreeNode } from '../grammar/tree.ts';
import { childrenOf } from '../grammar/tree.ts';
import type { Action, ActionId, BodyId, Step } from './play.ts';
import { isTaken } from './read-ball.ts';
import { ballAfter, type Ball } from './scope.ts';

/** All bodies that lines name. */
export function bodiesNamed(lines: readonly ParsedLine[]): ReadonlySet<BodyId> {
  const named = new Set<BodyId>();
  const walk = (node: TreeNode): void => {
    if (node.$type === 'Player') {
      const { number, defence } = node as TreeNode & { readonly number?: number; readonly defence: boolean };
      if (number !== undefined) named.add(`${defence ? 'X' : ''}${number}` as BodyId);
    }
    for (const child of childrenOf(node)) walk(child);
  };
  for (const line of lines) if (line.tree !== undefined && line.fault === undefined) walk(line.tree);
  return named;
}

/**
 * The actions of the replaced step that go on. A line stays whole if the counter names none of its actors, receivers or screeners; of a
 * shared subject only the men named drop out. A screen nobody kept uses falls away, with the roll that hangs on it; a cut off a screen
 * that is gone stays as a straight cut. Who has the ball first in the counter has it by what the replaced step tells of the ball, which then stays.
 */
export function keptActions(replaced: Pick<Step, 'actions' | 'kept'>, named: ReadonlySet<BodyId>, ball: Ball, begins: BodyId | undefined): readonly Action[] {
  const all = [...replaced.kept, ...replaced.actions];
  const stays = all.filter(action => staysFor(action, all, named));
  const used = stays.filter(action => action.kind !== 'screen' || isUsed(action, stays));
  const screeners = new Set(used.filter(action => action.kind === 'screen').map(({ who }) => who));
  const gone = new Set(all.filter(action => action.kind === 'screen' && !used.includes(action)).map(({ who }) => who));
  const kept = new Set(used.filter(action => !hangsOnGoneScreen(action, stays, used)));
  for (const action of ballTo(begins, all, [...kept], ball)) kept.add(action);
  return all.filter(action => kept.has(action)).map(action => withoutGone(action, gone, screeners));
}

/** What brings the ball to the man with whom the counter begins, where what is kept does not. */
function ballTo(begins: BodyId | undefined, all: readonly Action[], kept: readonly Action[], open: Ball): readonly Action[] {
  if (begins === undefined || kept.reduce(ballAfter, open).holder === begins) return [];
  const way = all.filter(({ kind }) => kind === 'pass' || kind === 'hand-off' || kind === 'dribble' || kind === 'shot');
  const arrives = way.findIndex((_, at) => way.slice(0, at + 1).reduce(ballAfter, open).holder === begins);
  const needed = way.slice(0, arrives + 1);
  return needed.some(({ kind }) => kind === 'shot') ? [] : needed;
}

const withTheBall: ReadonlySet<string> = new Set(['Pass', 'HandOff', 'Dribble', 'Shot', 'ThrowIn']);

/** The first who does something with the ball in these lines: `4 keeps it`, `2 takes it and stops`. */
export function beginsWithBall(trees: readonly (LineTree | undefined)[]): BodyId | undefined {
  for (const tree of trees) {
    if (tree?.$type === 'Look') return undefined;
    if (tree?.$type !== 'Statement') continue;
    for (const { action, subject } of [tree.first, ...tree.links.map(({ clause }) => clause)].filter((clause) => clause !== undefined)) {
      const keepsIt = action?.$type === 'Hold' && (/^keeps? |^picks? up/.test(action.verb) || action.parts.some((part) => part?.$type === 'PassBall'));
      if (!keepsIt && !withTheBall.has(action?.$type ?? '')) continue;
      const man = subject?.$type === 'Players' && subject.players.length === 1 ? subject.players[0] : undefined;
      return man?.number === undefined || man.defence || (action?.$type === 'HandOff' && isTaken(action.verb)) ? undefined : (`${man.number}` as BodyId);
    }
  }
  return undefined;
}

/** Chains hang together: a named man in one link of another man's line takes the line, unless the links only share its subject. */
function staysFor(action: Action, all: readonly Action[], named: ReadonlySet<BodyId>): boolean {
  if (takesPart(action).some(body => named.has(body))) return false;
  const line = all.filter(other => other.line === action.line);
  return line.every(other => other.link === action.link || !takesPart(other).some(body => named.has(body)) || isSharedWith(other, action, line));
}

/** A partner of a shared subject, in any link, does the same as this man: his absence does not stop the others. */
function isSharedWith(other: Action, action: Action, line: readonly Action[]): boolean {
  return other.who !== action.who && line.some(own => own.who === action.who && own.link === other.link && own.kind === other.kind);
}

function takesPart(action: Action): readonly BodyId[] {
  if (action.kind === 'pass' || action.kind === 'hand-off') return [action.who, action.to];
  return [action.who];
}

function isUsed(screen: Action, stays: readonly Action[]): boolean {
  if (screen.kind !== 'screen') return true;
  return stays.some(action => {
    if (action.kind !== 'move' && action.kind !== 'dribble') return false;
    return action.off.includes(screen.who) || (screen.users.includes(action.who) && action.off.length === 0);
  });
}

/** `then rolls` behind a screen that is gone. */
function hangsOnGoneScreen(action: Action, stays: readonly Action[], used: readonly Action[]): boolean {
  if (action.kind !== 'move' || !['roll', 'pop', 'slip'].includes(action.style)) return false;
  const screens = stays.filter(other => other.kind === 'screen' && other.who === action.who && other.line === action.line && other.link < action.link);
  return screens.length > 0 && !screens.some(screen => used.includes(screen));
}

function withoutGone(action: Action, gone: ReadonlySet<BodyId>, screeners: ReadonlySet<BodyId>): Action {
  if (action.kind === 'screen') return { ...action, together: action.together.filter(body => screeners.has(body)) };
  if (action.kind !== 'move' && action.kind !== 'dribble') return action;
  const off = action.off.filter(body => !gone.has(body) || screeners.has(body));
  return off.length === action.off.length ? action : { ...action, off };
}

/** The action of the replaced step each action of a line repeats, where the line is the same word for word; articles and comments do not count. */
export function repeatedActions(own: readonly Action[], tree: LineTree, replaced: readonly Action[], treeOfLine: (line: string) => LineTree | undefined): ReadonlyMap<ActionId, ActionId> {
  const pairs = new Map<ActionId, ActionId>();
  const words = meaningOf(tree);
  const lines = [...new Set(replaced.map(({ line }) => line))];
  const same = lines.find(line => {
    const theirs = treeOfLine(line);
    return theirs !== undefined && meaningOf(theirs) === words;
  });
  if (same === undefined) return pairs;
  const theirs = replaced.filter(({ line }) => line === same);
  for (const [index, action] of own.entries()) {
    const other = theirs[index];
    if (other !== undefined && other.who === action.who && other.kind === action.kind) pairs.set(action.id, other.id);
  }
  return pairs;
}
