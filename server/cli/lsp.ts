// `setwright lsp`: the language server on standard input and output, for any editor that speaks the protocol.
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { CallError } from './call-error.ts';
import { withExamples } from './examples.ts';

export function addLsp(program: Command): void {
  const command = program
    .command('lsp')
    .summary('run the language server')
    .description('Runs the language server over standard input and output, for editors other than VS Code. It ends when the editor says so.')
    .option('--stdio', 'standard input and output; there is no other way')
    .action(() => {
      // Beside this file in dist/, so that the other commands do not load it.
      const server = join(dirname(import.meta.filename), 'server.cjs');
      if (!existsSync(server)) throw new CallError('The language server is not beside the command line. Build the whole: npm run build');
      if (!process.argv.includes('--stdio')) process.argv.push('--stdio');
      createRequire(server)(server);
    });
  withExamples(command, 'setwright lsp --stdio');
}
