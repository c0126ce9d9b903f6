// What `setwright` starts: a few lines that load the command line from the file beside them, so that it is kept compiled. An editor that
// starts the language server does not wait for the command line either.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadKept } from '../kept-program.ts';

const beside = (file: string) => new URL(file, import.meta.url);
const [command, ...options] = process.argv.slice(2);
const server = beside('./server.cjs');
const startsServer = command === 'lsp' && options.every((option) => option === '--stdio') && existsSync(fileURLToPath(server));

if (startsServer) {
  if (options.length === 0) process.argv.push('--stdio');
  await import(server.href);
} else loadKept(fileURLToPath(beside('./command-line.cjs')), command ?? 'help');
