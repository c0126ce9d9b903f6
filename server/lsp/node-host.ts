// A Node process as the place the language server runs in.
import { version } from '../../package.json';
import { later, type Host } from './host.ts';
import { filesOnDisk } from './node-files.ts';
import { manualBeside } from './node-manual.ts';

export const nodeHost: Host = { place: 'Node', version, turn: (work) => void setImmediate(work), later, files: filesOnDisk, ...manual() };

function manual(): Pick<Host, 'manual'> {
  const page = manualBeside(process.argv[1]);
  return page === undefined ? {} : { manual: page };
}
