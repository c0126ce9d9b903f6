// The language server as a process: `--stdio` for any editor, `--node-ipc` for the extension on the desktop.
import { startServer } from './start.ts';

startServer();
