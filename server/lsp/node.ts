// The language server as a process: `--stdio` for any editor, `--node-ipc` for the extension on the desktop.
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { version } from '../../package.json';
import { createServer } from './server.ts';

createServer(createConnection(ProposedFeatures.all), { place: 'Node', version }).listen();
