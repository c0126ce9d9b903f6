// The command line, `setwright`. One file a command; what goes wrong is said in a sentence, and ends with 2.
import { CommanderError } from 'commander';
import { version } from '../../package.json';
import { CallError } from './call-error.ts';
import { createProgram } from './program.ts';

const program = createProgram(version);

// A reader that stops early (`| head`) is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

try {
  if (process.argv.length <= 2) program.help({ error: true });
  await program.parseAsync();
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
