// The language server, started: what node.ts loads.
import { startServer } from './start.ts';

startServer();
