// `setwright explain screen-with-ball`: the manual entry of a check.
import { inEnglish } from '../../language/message/message.ts';
import type { Command } from 'commander';
import { catalogue } from '../../language/checks/catalogue.ts';
import type { Entry } from '../../language/checks/check.ts';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import { CallError } from './call-error.ts';
import { withExamples } from './examples.ts';
import { indented } from './table.ts';
import { print } from './terminal.ts';

export function addExplain(program: Command): void {
  const command = program
    .command('explain')
    .argument('[code...]', 'the code that stands beside a finding, or a word of it; without it all codes are listed')
    .summary('say why a check speaks, with a wrong and a right example')
    .description('Prints the manual entry of a check: why it speaks, an example that is wrong, the same one right, and what it rests on.')
    .action((words: readonly string[]) => print(words.length === 0 ? listed(Object.values(catalogue)) : answered(words.join(' '))));
  withExamples(command, 'setwright explain', 'setwright explain screen-with-ball', 'setwright explain screen');
}

/** The entry of a code, however it is written; of a word, the codes that speak of it. */
function answered(words: string): string {
  const code = words.trim().toLowerCase().replaceAll(/[\s_]+/g, '-');
  const entry = Object.hasOwn(catalogue, code) ? catalogue[code] : undefined;
  if (entry !== undefined) return explained(entry);
  const about = Object.values(catalogue).filter((one) => `-${one.code}-`.includes(`-${code}-`) || one.manual.title.toLowerCase().split(/\W+/).includes(code));
  if (about.length > 0) return listed(about);
  const near = nearestWord(code, [...Object.keys(catalogue), ...new Set(Object.keys(catalogue).flatMap((one) => one.split('-')))]);
  throw new CallError(`There is no check called ${words}.${near === undefined ? '' : ` Did you mean ${near}?`} "setwright explain" lists them all.`);
}

function listed(entries: readonly Entry[]): string {
  const codes = entries.toSorted((a, b) => (a.code < b.code ? -1 : 1));
  const width = Math.max(...codes.map(({ code }) => code.length));
  return codes.map(({ code, severity, manual }) => `${code.padEnd(width)}  ${severity.padEnd(7)}  ${manual.title}`).join('\n');
}

/** The whole entry as text. */
export function explained({ code, severity, manual, source }: Entry): string {
  const parts = [`${code} (${severity}): ${manual.title}`, manual.why];
  if (manual.beside !== undefined) parts.push(`With a file ${manual.beside.name} beside it:\n${indented(manual.beside.text.trimEnd())}`);
  if (manual.wrong !== undefined) parts.push(`Wrong:\n${indented(manual.wrong)}`);
  if (manual.right !== undefined) parts.push(`Right:\n${indented(manual.right)}`);
  parts.push(`Rests on: ${inEnglish(restsOn(source))}`);
  parts.push(`To silence it where you mean it: allow ${code} "why"`);
  return parts.join('\n\n');
}
