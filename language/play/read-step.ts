// The lines of one step → its actions, looks and end.
import type { LineTree, NodeOf } from '../grammar/tree.ts';
import { endShort } from './goes-on.ts';
import { repeatedActions } from './kept.ts';
import type { Action, ActionId, BodyId, Condition, LineKey, Look, PartId, StatedEnd, Step } from './play.ts';
import { readEnd } from './read-annotations.ts';
import type { Model } from './mirrored-step.ts';
import { toTheBall } from './read-defence.ts';
import { looksOf, readLook } from './read-look.ts';
import { meanwhile } from './meanwhile.ts';
import type { LineMeaning } from './line-meaning.ts';
import { countsAsLine } from './line-meaning.ts';
import { readStatement } from './read-statement.ts';
import { baseForm } from './read-waits.ts';
import type { Reader } from './reader.ts';
import { bodiesOf, bodyOf, isOffence, putGap, putPart, report } from './reader.ts';
import type { Ball, Line } from './scope.ts';
import { ballAfter, openScope } from './scope.ts';
import type { Link, StepHead } from './steps.ts';

export interface StepLines {
  readonly head: StepHead;
  readonly link: Link;
  /** Where the ball is when the step opens. */
  readonly ball: Ball;
  readonly trees: readonly (LineTree | undefined)[];
  /** The step this one stands instead of. */
  readonly replaced?: Step;
  /** What it takes over from the step it mirrors. */
  readonly model?: Model;
  /** What goes on of that step. */
  readonly kept: readonly Action[];
  /** What the steps on the way here have told. */
  readonly before: () => readonly Action[];
}

export interface ReadStep {
  readonly step: Step;
  /** Where the ball is at its end, no look taken. */
  readonly ball: Ball;
  readonly lines: ReadonlyMap<number, LineMeaning>;
}

export function readStep(reader: Reader, from: StepLines, treeOfLine: (line: LineKey) => LineTree | undefined): ReadStep {
  const { head, link, trees, replaced, model } = from;
  const kept = [...from.kept, ...(model?.kept ?? [])];
  const copied = model?.actions ?? [];
  const ball = [...kept, ...copied].reduce(ballAfter, from.ball);
  const scope = openScope(head.key, head.key, ball, subjectsNamed(reader, trees, head.lines));
  scope.acts.push(...kept, ...copied);
  scope.before = from.before;
  const own = head.lines.map(index => trees[index]);
  const nextLook = lookIds(head.key);
  // Their numbers are taken.
  for (const { who } of copied) scope.nextId(who);
  for (const { who } of model?.looks ?? []) nextLook(`${who[0]!}` as BodyId);
  const actions: Action[] = [...copied];
  const looks: Look[] = [...(model?.looks ?? [])];
  let end: StatedEnd | undefined = model?.end;
  const lines = new Map<number, LineMeaning>();
  putHead(reader, head, trees);
  let count = model?.lines ?? 0;
  const readEnding = (tree: NodeOf<'Ends'>, index: number): PartId => {
    const part = end === undefined ? `${head.key}#end` : `${head.key}#end.${count}`;
    putPart(reader, part, index, tree);
    if (end !== undefined) report(reader, 'header-twice', part, { word: 'ends' }, [end.part]);
    end ??= readEnd(reader, scope, tree, part, reader.lines[index]!.text.slice(tree.at, tree.to));
    return part;
  };
  for (const index of head.lines) {
    const parsed = reader.lines[index]!;
    const tree = trees[index];
    if (!countsAsLine(parsed)) continue;
    count++;
    const line: Line = { key: `${head.key}:${count}`, index };
    putPart(reader, line.key, index, tree ?? { at: 0, to: parsed.text.length });
    const meaning = (kind: LineMeaning['kind'], more: Partial<LineMeaning> = {}): void => {
      lines.set(index, { kind, step: head.key, key: line.key, actions: [], ...more });
    };
    switch (tree?.$type) {
      case 'Statement': {
        const read = withRepeats(readStatement(reader, scope, tree, line, own), tree, replaced, treeOfLine);
        actions.push(...read);
        if (tree.ends !== undefined) readEnding(tree.ends, index);
        meaning('action', { actions: read.map(({ id }): ActionId => id) });
        break;
      }
      case 'Look': {
        const read = looksOf(tree).flatMap(each => readLook(reader, scope, each, line, nextLook) ?? []);
        looks.push(...read);
        meaning('look', read[0] === undefined ? {} : { look: read[0].id, actions: read.flatMap(({ tail }) => tail.map(({ id }) => id)) });
        break;
      }
      case 'Ends':
        meaning('end', { part: readEnding(tree, index) });
        break;
      case 'Placing': {
        const who = tree.subject?.$type === 'Players' ? bodiesOf(reader, tree.subject.players, { part: line.key, him: [] }) : [];
        report(reader, 'verb-missing', line.key, { who: who.join(' and ') || 'he' });
        meaning('stray');
        break;
      }
      case undefined:
        meaning('broken');
        break;
      default:
        break;
    }
  }
  const condition = readCondition(reader, head, ball);
  const step: Step = {
    key: head.key,
    name: head.name,
    parent: link.parent,
    how: link.how,
    ...(link.insteadOf === undefined ? {} : { insteadOf: link.insteadOf }),
    ...(condition === undefined ? {} : { condition }),
    actions: endShort(actions, looks, scope.openEnds),
    kept,
    looks,
    ...(end === undefined ? {} : { end }),
  };
  return { step, ball: scope.ball, lines };
}

function putHead(reader: Reader, head: StepHead, trees: readonly (LineTree | undefined)[]): void {
  const parsed = reader.lines[head.line];
  if (head.tree !== undefined) putPart(reader, head.key, head.line, head.tree);
  else if (head.lines.includes(head.line)) putGap(reader, head.key, head.line, trees[head.line]?.at ?? 0);
  else putPart(reader, head.key, head.line, { at: 0, to: parsed?.text.length ?? 0 });
}

/** The offence the step's lines have as subjects: for them `everyone else` does not speak. */
function subjectsNamed(reader: Reader, trees: readonly (LineTree | undefined)[], lines: readonly number[]): ReadonlySet<BodyId> {
  const named = new Set<BodyId>();
  const quiet: Reader = { ...reader, problems: [] };
  for (const line of lines) {
    const tree = trees[line];
    if (tree?.$type !== 'Statement') continue;
    const name = (subject: NodeOf<'Players'>): void => {
      for (const body of bodiesOf(quiet, subject.players, { part: '', him: [] })) if (isOffence(body)) named.add(body);
    };
    for (const clause of [tree.first, ...tree.links.map(each => each.clause)]) {
      if (clause?.subject?.$type === 'Players') name(clause.subject);
      for (const trigger of [clause === tree.first ? tree.lead : clause?.lead, ...(clause?.triggers ?? [])]) {
        const subject = meanwhile(trigger);
        if (subject !== undefined) name(subject);
      }
    }
  }
  return named;
}

function lookIds(step: string): (who: BodyId) => string {
  const counts = new Map<BodyId, number>();
  return who => {
    const count = (counts.get(who) ?? 0) + 1;
    counts.set(who, count);
    return `${step}?${who}.${count}`;
  };
}

function withRepeats(actions: readonly Action[], tree: LineTree, replaced: Step | undefined, treeOfLine: (line: LineKey) => LineTree | undefined): readonly Action[] {
  if (replaced === undefined) return actions;
  const pairs = repeatedActions(actions, tree, [...replaced.kept, ...replaced.actions], treeOfLine);
  return actions.map(action => {
    const repeats = pairs.get(action.id);
    return repeats === undefined ? action : { ...action, repeats };
  });
}

/** A sentence about a defender is acted out; everything else is shown as a remark. */
function readCondition(reader: Reader, head: StepHead, ball: Ball): Condition | undefined {
  const { tree } = head;
  if (tree?.when === undefined) return tree?.otherwise === true ? { kind: 'remark', text: 'otherwise' } : undefined;
  const { when } = tree;
  putPart(reader, `${head.key}#when`, head.line, when);
  const text = reader.lines[head.line]?.text.slice(when.at, when.to) ?? '';
  if (when.$type === 'Remark') return { kind: 'remark', text: when.text };
  if (when.$type === 'TimeLeft') {
    const seconds = [when.time.seconds, when.low ?? when.time.seconds];
    return { kind: 'clock', clock: when.clock === undefined ? 'period' : 'shot', from: Math.min(...seconds), to: Math.max(...seconds), text };
  }
  const quiet = { part: `${head.key}#when`, him: [] };
  const [who, ...also] = when.subject?.$type === 'Players' ? bodiesOf(reader, when.subject.players, quiet) : [];
  if (who === undefined || isOffence(who) || when.action === undefined) return { kind: 'remark', text };
  const action = when.action;
  // `when X1 doubles her`: who has the ball as the step opens; `when X2 denies her`: his own man.
  const him = toTheBall.has(baseForm(action.verb)) ? (ball.holder ?? (who.slice(1) as BodyId)) : (who.slice(1) as BodyId);
  const meaning = { ...quiet, him: [him] };
  const parts: readonly unknown[] = 'parts' in action ? action.parts : [];
  const players = parts.flatMap(part => playerOf(part));
  const on = players.map(player => bodyOf(reader, player, meaning)).find(body => body !== undefined);
  const partners = also.filter(body => !isOffence(body));
  return { kind: 'defence', who, ...(partners.length === 0 ? {} : { also: partners }), verb: baseForm(action.verb), ...(on === undefined ? {} : { on }), text };
}

function playerOf(part: unknown): Parameters<typeof bodyOf>[1][] {
  const { player, players } = part as { readonly player?: Parameters<typeof bodyOf>[1]; readonly players?: readonly Parameters<typeof bodyOf>[1][] };
  return player === undefined ? [...(players ?? [])] : [player];
}

