// docs/command-line.md: what the commands say of themselves.
import type { Command } from 'commander';
import { createProgram } from '../../server/cli/program.ts';
import type { Files } from './files.ts';
import { anchor, fenced, page } from './markdown.ts';
import { pullRequest } from './pull-request.ts';

export function commandLinePage(): Files {
  const program = createProgram('');
  const text = page(
    '# Command line',
    '[Reference](README.md) · [checks](checks.md)',
    'Once built (`npm run build`), in the folder of the project: `npx setwright`. A call ends with 0 when all is well, with 1 when `check` has found errors or warnings or a file could not be read, and with 2 when the call itself is wrong.',
    program.commands.map((command) => `- [${command.name()}](#${command.name()}): ${command.summary()}`).join('\n'),
    fenced(helpOf(program), 'text'),
    pullRequest,
    ...program.commands.map((command) => `${anchor(command.name())}\n\n## ${command.name()}\n\n${fenced(helpOf(command), 'text')}`),
  );
  return [['command-line.md', text]];
}

/** As printed on a window 100 letters wide, without colours. */
function helpOf(command: Command): string {
  let help = '';
  command.configureOutput({ writeOut: (text) => { help += text; }, getOutHelpWidth: () => 100, getOutHasColors: () => false });
  command.outputHelp();
  return help.trim();
}
