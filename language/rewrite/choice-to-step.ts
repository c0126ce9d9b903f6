// `if they switch, 4 slips`: a line always happens, and what the defence decides is a step of its own. The line becomes one.
import { message } from '../message/message.ts';
import { LONGEST_LINE, parseLine } from '../grammar/parse-line.ts';
import { headOf, linesOf, stepHere } from './steps.ts';
import { freshName, lastSaid, linesBehind, proved, refuse, replace, textAt, withoutLine, type Here, type Offer, type Rewritten } from './here.ts';
import type { Step } from '../play/play.ts';

interface Choice {
  /** As the coach says it: `they switch`. */
  readonly when: string;
  /** What is done then, a line that can be read. */
  readonly done: string;
  /** `# …` behind it. */
  readonly remark: string;
}

/** Whether somebody is open is a look, and what is left when nothing is stands below the looks: neither is a step instead of another. */
const OF_A_LOOK = /\b(open|free|nothing|nobody|no one|covered|there)\b/i;
const LONGEST_NAME = 40;

export function choiceToStep(here: Here): Offer | undefined {
  const { reading, block, line } = here;
  if (reading.lines[line]?.kind !== 'broken' || block.lines[line]?.parsed.fault === undefined) return undefined;
  const step = stepHere(here);
  const choice = step && choiceIn(textAt(here, line), block.lines[line].parsed.comment?.at);
  return step && choice && { id: 'choice-to-step', title: message('Make it a step of its own, for when {when}', { when: choice.when }), kind: 'mend', write: () => writeChoice(here, step, choice) };
}

/** `remark`: the column of `# …`. */
function choiceIn(text: string, remark = text.length): Choice | undefined {
  // No longer line is read, nor looked through.
  if (text.length > LONGEST_LINE) return undefined;
  const said = text.slice(0, remark).trim().replace(/[.!]+$/, '');
  const [, behindIf] = /^(?:(?:and|but|or|so|now)\s+)?if\s+(.+)$/i.exec(said) ?? [];
  const ways: readonly (readonly [when: string, done: string])[] = behindIf !== undefined
    ? [...behindIf.matchAll(/\s*,\s*(?:then\s+)?|\s+then\s+/gi)].map((joint) => [behindIf.slice(0, joint.index), behindIf.slice(joint.index + joint[0].length)])
    : [...said.matchAll(/\s*,?\s+if\s+/gi)].map((joint) => [said.slice(joint.index + joint[0].length), said.slice(0, joint.index)]);
  const found = ways.find(([when, done]) => when !== '' && !OF_A_LOOK.test(when) && isDone(done));
  return found && { when: found[0], done: found[1], remark: text.slice(remark).trim() };
}

function isDone(words: string): boolean {
  const { tree, fault } = parseLine(words);
  return fault === undefined && (tree?.$type === 'Statement' || tree?.$type === 'Look');
}

function writeChoice(here: Here, step: Step, { when, done, remark }: Choice): Rewritten {
  const head = headOf(here, step.key);
  if (head === undefined) return refuse(message('Give this step a name first: the new one stands in its place.'));
  const plain = when.replace(/["“”]/g, '').trim();
  const isTold = /^x[1-5]\b/i.test(plain) && parseLine(`step "A" when ${plain}`).fault === undefined;
  const name = freshName(here, 'step', `If ${plain}`.slice(0, LONGEST_NAME).trim());
  const own = linesOf(here, step.key);
  const before = own.filter((line) => line < here.line && here.reading.lines[line]!.kind === 'action').map((line) => `    ${textAt(here, line).trim()}`);
  const added = ['', `  step "${name}" instead of "${step.name}" when ${isTold ? plain : `"${plain}"`}`, ...before, `    ${done}${remark === '' ? '' : `  ${remark}`}`];
  const last = lastSaid(here, head, own.at(-1));
  const text = textAt(here, here.line);
  const edits = last === here.line ? [replace(here, here.line, 0, text.length, added.join('\n'))] : [withoutLine(here, here.line), linesBehind(here, last, added)];
  const { length } = here.reading.play.steps;
  return proved(here, edits, ({ play }) => play.steps.length === length + 1, message('What is done then cannot stand in a step of its own as it is written. Write the step by hand: step "…" instead of "{name}" when …', { name: step.name }));
}
