// The command line, `setwright`. One file a command; what goes wrong is said in a sentence, and ends with 2.
import { CommanderError } from 'commander';
import { version } from '../../package.json';
import { CallError } from './call-error.ts';
import { createProgram } from './program.ts';
import { wrongCall } from './wrong-call.ts';
import { remark } from './terminal.ts';

const program = createProgram(version);

// A reader that stops early (`| head`) is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

void run().catch((error: unknown) => {
  process.exitCode = exitCodeFor(error);
});

async function run(): Promise<void> {
  if (process.argv.length <= 2) program.help({ error: true });
  await program.parseAsync();
}

function exitCodeFor(error: unknown): number {
  if (error instanceof CommanderError) {
    // The help that was asked for, or that a call without a command gets, is printed already.
    if (error.code === 'commander.help' || error.exitCode === 0) return error.exitCode === 0 ? 0 : 2;
    remark(`setwright: ${wrongCall(program, error)}`);
    return 2;
  }
  const message = error instanceof CallError ? error.message : `Something went wrong inside Setwright: ${error instanceof Error ? error.message : String(error)}. The plays are untouched; please report it.`;
  remark(`setwright: ${message}`);
  return 2;
}
