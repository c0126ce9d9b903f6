// Steps cut in two, given a name, made out of a look.
import { message } from '../message/message.ts';
import { definitionOf, sitesOf } from '../names/sites.ts';
import { definitionsOf } from '../names/definitions.ts';
import { rangeOfSite } from '../names/rename.ts';
import { childrenOf, type TreeNode } from '../grammar/tree.ts';
import type { Step, StepKey } from '../play/play.ts';
import { capital } from '../words/sentences.ts';
import { freshName, lastSaid, linesAbove, linesBehind, proved, refuse, replace, textAt, treeAt, withoutLine, type Here, type Offer, type Rewritten } from './here.ts';
import { saidBesides, toldAlong, toldInAll } from './same-play.ts';

/** The lines that stand in a step, its opening line not. */
export const linesOf = ({ reading }: Here, key: StepKey): readonly number[] => reading.lines.flatMap((meaning, line) => (meaning.step === key && meaning.kind !== 'step' && meaning.kind !== 'blank' ? [line] : []));
export const headOf = ({ reading }: Here, key: StepKey): number | undefined => {
  const line = reading.lines.findIndex((meaning) => meaning.step === key && meaning.kind === 'step');
  return line < 0 ? undefined : line;
};
export const stepHere = ({ reading, line }: Here): Step | undefined => reading.play.steps.find(({ key }) => key === reading.lines[line]?.step);
const hasWords = ({ reading, line }: Here): boolean => ['action', 'look', 'end'].includes(reading.lines[line]?.kind ?? '');

/** From this line on the step is a step of its own. */
export function splitStep(here: Here): Offer | undefined {
  const step = stepHere(here);
  if (step === undefined || !hasWords(here) || linesOf(here, step.key)[0] === here.line) return undefined;
  return { id: 'split-step', title: message('Split “{name}” here', { name: step.name }), kind: 'rewrite', write: () => writeSplit(here, step) };
}

function writeSplit(here: Here, step: Step): Rewritten {
  const { play } = here.reading;
  for (const list of [play.rebounds, play.demands, play.allowances]) {
    if (list.some(({ within }) => within === step.key)) return refuse(message('“{name}” has a line that counts for the whole step. Take it out or move it to the play first.', { name: step.name }));
  }
  const name = freshName(here, 'step', `${step.name} 2`);
  const head = step.how === 'plain' ? `  step "${name}"` : `  step "${name}" after "${step.name}"`;
  const above = textAt(here, here.line - 1).trim() === '' ? [head] : ['', head];
  const uses = headOf(here, step.key) === undefined ? [] : usesOfStep(here, step);
  const other = uses.find(({ how }) => how !== 'After' && how !== 'PlayHead');
  if (other !== undefined) return refuse(message('Another step stands in the place of “{name}” or repeats it, whole. Split it by hand: only you know which half is meant.', { name: step.name }));
  // What came after the whole comes after its second half.
  const followers = uses.map(({ site }) => ({ uri: site.uri, range: rangeOfSite(site), text: name }));
  const same = toldAlong(play);
  return proved(here, [linesAbove(here, here.line, above), ...followers], (after) => toldAlong(after.play) === same, message('Some words below this line count for the whole step, as “everyone else” does. Write the numbers out first.'));
}

function usesOfStep(here: Here, step: Step) {
  const { book, uri, block } = here;
  const name = definitionsOf(block).find((one) => one.kind === 'step' && one.place.line === headOf(here, step.key));
  const given = name && definitionOf(book, uri, block, name);
  return given === undefined ? [] : sitesOf(book, given).slice(1).map((site) => ({ site, how: ruleOf(site.block.lines[site.name.place.line]?.parsed.tree, site.name.place.at) }));
}

/** What kind of node names something at a column. */
function ruleOf(tree: TreeNode | undefined, column: number): string | undefined {
  if (tree === undefined) return undefined;
  const child = childrenOf(tree).find(({ at, to }) => at <= column && column < to);
  return child === undefined ? tree.$type : ruleOf(child, column);
}

/** The lines above the first step become a step with a name. */
export function nameStep(here: Here): Offer | undefined {
  const step = stepHere(here);
  if (step === undefined || !hasWords(here) || headOf(here, step.key) !== undefined || step.how !== 'plain') return undefined;
  return { id: 'name-step', title: message('Give this step a name'), kind: 'rewrite', write: () => writeName(here, step) };
}

function writeName(here: Here, step: Step): Rewritten {
  const own = here.reading.lines.flatMap((meaning, line) => (meaning.step === step.key ? [{ line, kind: meaning.kind }] : []));
  const begin = own.findIndex(({ kind }) => kind === 'action' || kind === 'look' || kind === 'end');
  const [first, ...rest] = begin < 0 ? [] : own.slice(begin).filter(({ kind }) => kind !== 'blank').map(({ line }) => line);
  if (first === undefined) return refuse(message('This step has no line yet.'));
  const above = first === 1 || textAt(here, first - 1).trim() === '' ? [] : [''];
  const indent = (line: number) => replace(here, line, 0, /^\s*/.exec(textAt(here, line))![0].length, '    ');
  const { play } = here.reading;
  const [along, besides] = [toldAlong(play), JSON.stringify([play.rebounds, play.notes, play.demands, play.allowances])];
  const start = indent(first);
  const edits = [{ ...start, text: `${above.map(() => '\n').join('')}  step "${freshName(here, 'step', 'Start')}"\n${start.text}` }, ...rest.map(indent)];
  const isMeant = ({ play: then }: Here['reading']) => toldAlong(then) === along && JSON.stringify([then.rebounds, then.notes, then.demands, then.allowances]) === besides;
  return proved(here, edits, isMeant, message('A note, a demand or a rebound line below the first action would then count for this step only. Put it above the first action.'));
}

/** A look with what stands behind its colon becomes a step that follows this one. */
export function lookToStep(here: Here): Offer | undefined {
  const step = stepHere(here);
  const look = step?.looks.find(({ id }) => id === here.reading.lines[here.line]?.look);
  if (step === undefined || look === undefined) return undefined;
  const called = look.label ?? `Look for ${look.who[0]}`;
  return { id: 'look-to-step', title: look.label === undefined ? message('Make the look for {who} a step of its own', { who: look.who.join(' or ') }) : message('Make the look “{called}” a step of its own', { called }), kind: 'extract', write: () => writeLook(here, step, called, look.who.join(' or ')) };
}

function writeLook(here: Here, step: Step, called: string, who: string): Rewritten {
  const head = headOf(here, step.key);
  if (head === undefined) return refuse(message('Give this step a name first: the new one comes after it.'));
  const name = freshName(here, 'step', capital(called));
  const last = lastSaid(here, head, linesOf(here, step.key).at(-1));
  const lines = ['', `  step "${name}" after "${step.name}" when "${who} is open"`, `    ${textAt(here, here.line).trim()}`];
  const edits = last === here.line ? [replace(here, here.line, 0, textAt(here, here.line).length, lines.slice(1).join('\n'))] : [withoutLine(here, here.line), linesBehind(here, last, lines)];
  const spaced = last === here.line ? [{ ...edits[0]!, text: `\n${edits[0]!.text}` }] : edits;
  const { play } = here.reading;
  const [all, besides] = [toldInAll(play), saidBesides(play)];
  return proved(here, spaced, (after) => toldInAll(after.play) === all && saidBesides(after.play) === besides, message('This look hangs on other lines of its step, and would mean something else in a step of its own.'));
}

/** Whether a line is the opening line of the play. */
export const isHead = (here: Here): boolean => here.line === 0 && treeAt(here, 0)?.$type === 'PlayHead';
