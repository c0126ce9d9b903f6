// The manual entry of a finding's code, as Markdown; or the page of a spot or an alignment.
import { inEnglish } from '../../language/message/message.ts';
import { entryOf } from '../../language/checks/catalogue.ts';
import { groundPage } from './ground-page.ts';
import { restsOn } from '../../language/checks/rests-on.ts';

export function manualText(code: string): string {
  const entry = entryOf(code);
  const ground = entry === undefined ? groundPage(code) : undefined;
  if (ground !== undefined) return ground;
  if (entry === undefined) return `# ${code}\n\nA line that cannot be read as it stands: its message says what is missing.\n`;
  const { manual, source, severity } = entry;
  return [
    `# ${manual.title}`,
    `\`${code}\` (${severity})`,
    manual.why,
    ...(manual.beside === undefined ? [] : [`With a file \`${manual.beside.name}\` beside it:`, fenced(manual.beside.text.trimEnd())]),
    ...(manual.wrong === undefined ? [] : ['So it cannot work:', fenced(manual.wrong)]),
    ...(manual.right === undefined ? [] : ['So it can:', fenced(manual.right)]),
    `Rests on: ${inEnglish(restsOn(source))}`,
  ].join('\n\n') + '\n';
}

const fenced = (lines: string): string => `\`\`\`setwright\n${lines}\n\`\`\``;
