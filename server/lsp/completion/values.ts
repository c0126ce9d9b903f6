// What a coach chooses himself: times, formations, a shirt's number, as examples that fit; and the unit behind a number that needs one.
import { expectedAfter, type ExpectedKind, type Expected } from '../../../language/grammar/expected.ts';
import { message } from '../../../language/message/message.ts';
import type { Times } from '../../../language/timeline/timeline.ts';
import type { Choice } from './choice.ts';
import { has, type Line } from './line.ts';

const formations = ['2-3', '3-2', '1-3-1', '2-2-1 press'];

export function valueChoices(line: Line, items: readonly Expected[], times: () => Times | undefined): readonly Choice[] {
  if (items.some(({ kind, path }) => kind === 'form' && path.includes('Against'))) {
    // A formation is one word: `2` begins 2-3, not 3-2.
    return formations.filter((text) => text.startsWith(line.expected.typed)).map((text, at): Choice => ({ text, kind: 'value', rank: 20 + at }));
  }
  if (items.some((item) => has(item, 'Entry'))) return rosterChoices(line, items);
  const said = line.prefix.slice(0, line.expected.from);
  if (items.some((item) => has(item, 'Call') && has(item, 'ClockTime'))) return callChoices(said, times());
  if (items.some((item) => has(item, 'Demand') && item.path.at(-1) === 'count>Count')) return examples('2 passes', '3 passes');
  if (/\bup to\s$/i.test(said)) return examples('2 times', '3 times');
  if (!items.some(({ kind }) => kind === 'seconds')) return [];
  if (items.some((item) => has(item, 'ShotWindow'))) return /\bwithin\s$/i.test(said) ? windowChoices(times()) : [];
  if (items.some((item) => has(item, 'InboundWithin'))) return examples('5 seconds');
  if (/(?:^|\s)leave\s$/i.test(said)) return examples('4 seconds after a miss', '2 seconds after a miss');
  return /(?:^|\s)(?:within|for|about)\s$/i.test(said) ? examples('2 seconds', '4 seconds') : [];
}

const examples = (...texts: readonly string[]): readonly Choice[] => texts.map((text, at) => ({ text, kind: 'value', rank: 60 + at }));

/** `call with …`: what the looks need, as the play stands now. */
function callChoices(said: string, times: Times | undefined): readonly Choice[] {
  if (!/\b(?:with|at)\s$/i.test(said)) return [];
  const { firstLook, allLooks } = times ?? {};
  if (firstLook === undefined || allLooks === undefined) return examples('20 on the clock', '14 to 18 on the clock');
  const [first, all] = [firstLook.fromCall, allLooks.fromCall];
  const enough: Choice = { text: `${all} on the clock`, kind: 'value', rank: 20, detail: message('enough for every look') };
  if (first === all) return [enough];
  return [enough, { text: `${first} on the clock`, kind: 'value', rank: 21, detail: message('enough for the first look') }];
}

/** `shot within …`: by when the last look comes late. */
function windowChoices(times: Times | undefined): readonly Choice[] {
  const last = Math.max(...(times?.looks.map(({ late }) => Math.ceil(late / 1000)) ?? []));
  return Number.isFinite(last) ? [{ text: `${last} seconds of the start`, kind: 'value', rank: 20, detail: message('enough for every look') }] : examples('16 seconds of the start');
}

/** `10 "Fern", 20 m in 3.7 s`: the next shirt, the name, what has been timed. */
function rosterChoices({ block, at, prefix }: Line, items: readonly Expected[]): readonly Choice[] {
  if (items.some(({ kind }) => kind === 'string')) return [{ text: '"Name"', kind: 'value', rank: 10, snippet: '"${1:Name}"' }];
  if (items.some((item) => has(item, 'Pace'))) return [{ text: '20 m in … s', kind: 'value', rank: 60, snippet: '20 m in ${1:3.8} s', about: message('A sprint of his own, as you have timed it from standing.') }];
  if (prefix.trim() !== '') return [];
  const shirts = block.lines.flatMap(({ parsed: { tree } }, line) => (line !== at && tree?.$type === 'Entry' ? [tree.number] : []));
  const next = Math.max(0, ...shirts) + 1;
  return [{ text: `${next} "Name"`, kind: 'value', rank: 10, snippet: `\${1:${next}} "\${2:Name}"` }];
}

const units: Partial<Readonly<Record<ExpectedKind, readonly string[]>>> = { seconds: ['seconds'], length: ['m', 'ft'], speed: ['m/s', 'ft/s'] };
const numberAndUnit = /(\d+(?:\.\d+)?)\s+([a-z/]*)$/i;
/** No number and unit are longer; a line of any length is asked about. */
const longest = 40;

/** `within 5 |`: the number stands, and says nothing without its unit. */
export function unitChoices(prefix: string): readonly Choice[] {
  const [written, number, begun] = numberAndUnit.exec(prefix.slice(-longest)) ?? [];
  if (written === undefined || begun === undefined) return [];
  const kinds = new Set(expectedAfter(prefix.slice(0, prefix.length - written.length)).items.map(({ kind }) => kind));
  const fitting = [...kinds].flatMap((kind) => units[kind] ?? []).map((unit) => (unit === 'seconds' && Number(number) === 1 ? 'second' : unit));
  return fitting.filter((unit) => unit.startsWith(begun.toLowerCase()) && unit !== begun).map((text, at) => ({ text, kind: 'value', rank: 60 + at, from: prefix.length - begun.length }));
}
