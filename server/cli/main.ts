// The command line, `setwright`. One file a command; what goes wrong is said in a sentence, and ends with 2.
import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import { CallError } from './call-error.ts';
import { addCheck } from './check.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { addList } from './list.ts';
import { addPage } from './page.ts';
import { addTime } from './time.ts';

const program = new Command('setwright')
  .description('Reads basketball plays written in a coach’s words: says what can’t work, when to call them, and shows them moving.')
  .version(version)
  .showHelpAfterError('Try "setwright --help".')
  .exitOverride()
  .addHelpText('after', '\nExamples:\n  setwright check plays\n  setwright time plays --play "Lighthouse"\n  setwright page plays/lighthouse.play\n  setwright explain screen-with-ball');

for (const add of [addCheck, addTime, addPage, addDraw, addList, addExplain]) add(program);
// A command made before `exitOverride` would end the process itself.
for (const command of program.commands) command.exitOverride().showHelpAfterError(`Try "setwright ${command.name()} --help".`);

// A reader that stops early (`| head`) is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

try {
  if (process.argv.length <= 2) program.help({ error: true });
  program.parse();
} catch (error) {
  process.exitCode = exitCodeFor(error);
}

function exitCodeFor(error: unknown): number {
  // Commander has printed its own message, or the help that was asked for.
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  const message = error instanceof CallError ? error.message : `Something went wrong inside Setwright: ${error instanceof Error ? error.message : String(error)}. The plays are untouched; please report it.`;
  console.error(`setwright: ${message}`);
  return 2;
}
