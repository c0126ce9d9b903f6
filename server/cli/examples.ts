// The examples of each command, written once: below its help, and in the sentence about a call that is wrong.
import type { Command } from 'commander';

const examplesOf = new WeakMap<Command, readonly string[]>();

export function withExamples(command: Command, ...examples: readonly [string, ...string[]]): Command {
  examplesOf.set(command, examples);
  return command.addHelpText('after', `\nExamples:\n${examples.map((example) => `  ${example}`).join('\n')}`);
}

/** The plainest call of a command. */
export function exampleOf(command: Command): string {
  return examplesOf.get(command)?.[0] ?? `${command.name()} --help`;
}
