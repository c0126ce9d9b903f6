// The manual entry of a finding's code, as Markdown.
import { entryOf } from '../../language/checks/catalogue.ts';
import type { Source } from '../../language/court/point.ts';

export function manualText(code: string): string {
  const entry = entryOf(code);
  if (entry === undefined) return `# ${code}\n\nA line that cannot be read as it stands: its message says what is missing.\n`;
  const { manual, source, severity } = entry;
  return [
    `# ${manual.title}`,
    `\`${code}\` (${severity})`,
    manual.why,
    ...(manual.wrong === undefined ? [] : ['So it cannot work:', fenced(manual.wrong)]),
    ...(manual.right === undefined ? [] : ['So it can:', fenced(manual.right)]),
    ...(source === undefined ? [] : [`Rests on: ${sayKnown(source)}`]),
  ].join('\n\n') + '\n';
}

const fenced = (lines: string): string => `\`\`\`setwright\n${lines}\n\`\`\``;

/** A source and how we know it, for people. */
export function sayKnown({ text, how }: Source): string {
  return how === 'read' ? text : text === 'common practice' && how.startsWith('common practice') ? how : `${text} (${how})`;
}
