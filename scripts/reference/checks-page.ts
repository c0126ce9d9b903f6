// docs/checks.md: every code a finding can carry. The editor's and the command line's manual read the same entries.
import { inEnglish } from '../../language/message/message.ts';
import { entries } from '../../language/checks/catalogue.ts';
import type { Entry } from '../../language/checks/check.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import { compileExample } from './compile-example.ts';
import type { Files } from './files.ts';
import { anchor, code, fenced, page, plain, table } from './markdown.ts';

const severities = { error: 'cannot work', warning: 'look again', hint: 'by the way' } as const;

export function checksPage(): Files {
  const text = page(
    '# Checks',
    '[Reference](README.md) · [every kind of line](notation.md) · [courts](courts.md) · `setwright explain CODE`',
    'What the tool can say of a play. An **error** cannot work as written; a **warning** is worth another look; a **hint** is only a thought. Each stands with its reason, the same lines wrong and right, and what it rests on.',
    'One that is meant is silenced where it speaks: `allow crowding "an overload on purpose"`.',
    table(['code', 'severity', ''], entries.map(({ code: name, severity, manual }) => [`[${name}](#${name})`, severity, plain(manual.title)])),
    ...entries.map(entryText),
  );
  return [['checks.md', text]];
}

function entryText({ code: name, severity, manual, message, source }: Entry): string {
  const said = manual.wrong === undefined ? undefined : compileExample(asPlay(manual.wrong), manual.beside).findings.find((finding) => finding.code === name)?.message;
  return [
    `${anchor(name)}\n\n### ${manual.title}`,
    `${code(name)} · ${severity}: ${severities[severity]}`,
    manual.why,
    ...(manual.beside === undefined ? [] : [`With a file ${code(manual.beside.name)} beside it:`, fenced(manual.beside.text.trimEnd())]),
    ...(manual.wrong === undefined ? [] : ['Wrong:', fenced(manual.wrong)]),
    ...(said === undefined ? (message === '{message}' ? [] : [`It says: ${plain(message.replace(/\{(\w+)(:\w+)?\}/g, '…'))}`]) : [`It says: ${plain(said)}`]),
    ...(manual.right === undefined ? [] : ['Right:', fenced(manual.right)]),
    `Rests on: ${plain(inEnglish(restsOn(source)))}`,
  ].join('\n\n');
}

/** Lines of a play, with a first line if they bring none. */
export function asPlay(lines: string): string {
  return /^\s*(play|notation|level) /m.test(lines) ? lines : `play "Example"\n${lines}`;
}
