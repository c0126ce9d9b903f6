// The language server as a process: `--stdio` for any editor, `--node-ipc` for the extension on the desktop. This file is a few lines and
// loads the server itself from the one beside it, which can then be kept compiled.
import { join } from 'node:path';
import { loadKept } from '../kept-program.ts';
import { staySmall } from '../quick-start.ts';

declare const __dirname: string;

// In this order: what is kept is valid under the flags it was compiled under.
staySmall();
loadKept(join(__dirname, 'language-server.cjs'));
