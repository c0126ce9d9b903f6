// Bundles test/host/suite.ts for VS Code to run beside the extension.
import { join } from 'node:path';
import { build as bundle, type BuildOptions } from 'esbuild';
import { dist, root } from './build.ts';

/** What to give VS Code as `extensionTestsPath`. Its web host adds `.js` to the name (see scripts/build.ts). */
export const hostSuite = { Node: join(dist, 'test/suite.cjs'), 'web worker': join(dist, 'test/suite.web.cjs') } as const;

export async function buildHostSuite(): Promise<void> {
  const shared = { absWorkingDir: root, entryPoints: ['test/host/suite.ts'], bundle: true, format: 'cjs', external: ['vscode'] } satisfies BuildOptions;
  await bundle({ ...shared, platform: 'node', outfile: hostSuite.Node });
  await bundle({ ...shared, platform: 'browser', outfile: `${hostSuite['web worker']}.js` });
}
