import { message, type Message } from '../../message/message.ts';
import type { LineFault, LineFix } from '../line-fault.ts';
import { spanOf, type ClauseTree, type Columns, type LineTree, type NodeOf, type SubjectsTree } from '../tree.ts';
import { otherNumber, verbOf } from '../verbs.ts';

/** A line that can be read, with a word that a careful reader would mend, or with words that nothing comes of. */
export interface LineWarning extends Columns {
  readonly code: 'verb-number' | 'not-drawn' | 'words-not-read' | 'read-as' | 'read-as-a-remark';
  readonly message: Message;
  readonly fixes: readonly LineFix[];
}

function isSingular(subject: SubjectsTree): boolean {
  if (subject.$type === 'Players') return subject.players.length === 1;
  if (subject.$type === 'Pronoun') return subject.word === 'he';
  return subject.all === 'everyone' || subject.all === 'everybody';
}

/** Where a verb does not agree with its subject: `2 cut to wing`, `2 and 3 cuts`. Both are read; the formatter mends them. */
export function agreementOf(tree: LineTree): readonly LineWarning[] {
  const found: LineWarning[] = [];
  const check = (subject: SubjectsTree | undefined, node: { readonly $type: string; readonly verb?: string } & Columns & { readonly spans: ClauseTree['spans'] }): void => {
    const verb = node.verb === undefined ? undefined : verbOf(node.verb);
    const other = node.verb === undefined ? undefined : otherNumber.get(node.verb);
    if (!subject || !verb || !other || (verb.number === 'singular') === isSingular(subject)) return;
    const { at, to } = spanOf(node, 'verb');
    const params = { verb: node.verb!, other };
    const told = verb.number === 'singular' ? message('"{verb}" goes with one player. Write "{other}".', params) : message('"{verb}" goes with several players. Write "{other}".', params);
    found.push({ code: 'verb-number', at, to, message: told, fixes: [{ title: message('Write "{words}"', { words: other }), edits: [{ at, to, text: other }] }] });
  };
  if (tree.$type === 'Rebound') for (const group of tree.groups) check(group.subject, group);
  if (tree.$type !== 'Statement') return found;
  let subject: SubjectsTree | undefined;
  for (const clause of [tree.first, ...tree.links.map((link) => link.clause)]) {
    subject = clause.subject ?? subject;
    check(subject, clause.action as Parameters<typeof check>[1]);
  }
  return found;
}

/** A player and a place without a verb, where an action is meant: `3 left wing` in a step. Placings belong to alignments. */
export function verbMissing(tree: NodeOf<'Placing'>): LineFault {
  const players = tree.subject;
  const one = isSingular(players);
  const [spot] = tree.spots;
  const at = players.to;
  const verb = (singular: string, plural: string): string => (one ? singular : plural);
  // `3 at left wing` has its word for the place already; the verb takes that place.
  const gap = spot ? { at, to: spot.at } : { at, to: at };
  const ways = [verb('cuts to', 'cut to'), ...(one ? ['dribbles to'] : []), verb('stays at', 'stay at')];
  const fixes: LineFix[] = ways.map((words) => ({ title: message('Write "{words}"', { words }), edits: [{ ...gap, text: ` ${words} ` }] }));
  const example = { words: ways[0]! };
  const told = one ? message('A verb is missing: what does he do there? For example "{words}".', example) : message('A verb is missing: what do they do there? For example "{words}".', example);
  return { code: 'verb-missing', at: tree.at, to: tree.to, message: told, params: {}, fixes, unfinished: false };
}
