// The language server as a process: `--stdio` for any editor, `--node-ipc` for the extension on the desktop. This file is a few lines and
// loads the server itself from the one beside it, which can then be kept compiled.
import { createRequire } from 'node:module';
import { keepCompiled, staySmall } from '../quick-start.ts';

declare const __filename: string;

// In this order: what is kept is valid under the flags it was compiled under.
staySmall();
keepCompiled();
createRequire(__filename)('./language-server.cjs');
