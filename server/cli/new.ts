// `setwright new`: a file, or a play at the end of one, that moves at once. Answers come as options; asked for only on a terminal.
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { pathToFileURL } from 'node:url';
import { Option, type Command } from 'commander';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { levelIds } from '../../language/court/youth.ts';
import { newPlayChoices, newPlayText } from '../lsp/new-play.ts';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { CallError } from './call-error.ts';
import { reasonOf, whyNotWritten } from './files.ts';
import { writeResult } from './write-result.ts';
import { withExamples } from './examples.ts';
import { remark } from './terminal.ts';

interface NewOptions {
  readonly name?: string;
  readonly alignment?: string;
  readonly level?: string;
  readonly against?: string;
}

export function addNew(program: Command): void {
  const command = program
    .command('new')
    .argument('<file>', 'the file to write; if it is there, the play is added at its end; - writes to standard output')
    .option('--name <name>', 'what the play is called')
    .option('--alignment <name>', 'where the five stand at the call, such as horns or box')
    .addOption(new Option('--level <level>', 'whose legs the play is written for').choices([...levelIds]))
    .addOption(new Option('--against <defence>', 'what it is against').choices(['man', '2-3', '3-2', '1-3-1']))
    .summary('begin a play that moves at once')
    .description('Writes a new file with a play that can be shown at once, or adds one to a file. What no option answers is asked on a terminal; elsewhere the usual is taken.')
    .action(async (file: string, options: NewOptions) => {
      const text = file !== '-' && existsSync(file) ? readExisting(file) : undefined;
      const uri = pathToFileURL(file === '-' ? 'new.play' : file).href;
      const choices = newPlayChoices(text === undefined ? emptyBook : openFile(emptyBook, uri, text), uri);
      const alignments = choices.alignments.map(({ name }) => name);
      const answers = await completed(options, alignments, text === undefined);
      if (!alignments.includes(answers.alignment)) throw unknownAlignment(answers.alignment, alignments);
      if (choices.taken.some((name) => name.toLowerCase() === answers.name.toLowerCase())) throw new CallError(`There is a play called "${answers.name}" in ${file} already. Give this one another name: --name`);
      const level = answers.level === undefined ? {} : { level: answers.level };
      const fresh = newPlayText({ version: 1, as: text === undefined ? 'file' : 'play', name: answers.name, alignment: answers.alignment, against: answers.against, ...level });
      if (text === undefined) writeResult(fresh, file);
      else add(file, text, fresh);
    });
  withExamples(command, 'setwright new plays/first-light.play', 'setwright new plays/all.play --name "Tide" --alignment horns --against 2-3', 'setwright new - --name "Tide" --level u12');
}

interface Answers {
  readonly name: string;
  readonly alignment: string;
  readonly against: string;
  readonly level?: string;
}

async function completed({ name, alignment, level, against }: NewOptions, alignments: readonly string[], isNewFile: boolean): Promise<Answers> {
  const usual = { name: name ?? 'First light', alignment: alignment ?? 'horns', against: against ?? 'man', ...(level !== undefined && { level }) };
  if (process.stdin.isTTY !== true || process.stderr.isTTY !== true) return usual;
  const asking = createInterface({ input: process.stdin, output: process.stderr });
  const ask = async (given: string | undefined, question: string, otherwise: string) => given ?? ((await asking.question(`${question} (${otherwise}): `)).trim() || otherwise);
  try {
    const asked = { name: await ask(name, 'What is the play called?', usual.name), alignment: await ask(alignment, `Where do they stand? ${alignments.slice(0, 8).join(', ')} …`, usual.alignment), against: await ask(against, 'Against what? man, 2-3, 3-2, 1-3-1', usual.against) };
    return isNewFile ? { ...asked, level: await ask(level, `Which level? ${levelIds.join(', ')}`, 'u14') } : { ...asked, ...(level !== undefined && { level }) };
  } finally {
    asking.close();
  }
}

function unknownAlignment(name: string, known: readonly string[]): CallError {
  const near = nearestWord(name, known);
  return new CallError(`There is no alignment called "${name}". ${near === undefined ? `There are: ${known.join(', ')}.` : `Did you mean ${near}?`}`);
}

function readExisting(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new CallError(`I cannot read ${file}: ${reasonOf(error)}.`);
  }
}

/** As the file ends its lines. */
function add(file: string, before: string, play: string): void {
  const eol = before.includes('\r\n') ? '\r\n' : '\n';
  const text = (before === '' || before.endsWith('\n') ? play : `\n${play}`).replaceAll('\n', eol);
  try {
    appendFileSync(file, text);
  } catch (error) {
    throw new CallError(`I cannot write ${file}: ${whyNotWritten(error)}.`);
  }
  remark(`Added a play to ${file}.`);
}
