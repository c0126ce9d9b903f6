// `npm run test:desktop`: the tests of test/host in a desktop VS Code, which @vscode/test-electron downloads. Not part of
// `npm test`: the download comes from Microsoft's servers, not from the package registry. VERSION chooses another release
// than the oldest supported; on Linux without a screen run it under xvfb-run.
import { join } from 'node:path';
import { downloadAndUnzipVSCode, runTests } from '@vscode/test-electron';
import { build, root } from './build.ts';
import { buildHostSuite, hostSuite } from './host-suite.ts';
import { hostDir } from './host.ts';

const version = process.env.VERSION ?? '1.91.1';

async function download(): Promise<string> {
  try {
    return await downloadAndUnzipVSCode({ version, cachePath: join(hostDir, 'desktop'), timeout: 30_000 });
  } catch (problem) {
    const why = problem instanceof Error ? [problem.message, problem.cause].filter(Boolean).join(': ') : String(problem);
    console.error(`\n  The desktop tests did NOT run: VS Code ${version} could not be downloaded.\n  ${why}\n  They need update.code.visualstudio.com. The same tests run in the browser's VS Code with "npm test".\n`);
    process.exit(1);
  }
}

const vscodeExecutablePath = await download();
await build();
await buildHostSuite();
const code = await runTests({
  vscodeExecutablePath,
  extensionDevelopmentPath: root,
  extensionTestsPath: hostSuite.Node,
  launchArgs: [join(root, 'examples'), '--disable-extensions', '--disable-workspace-trust'],
});
console.log(`\n  The tests passed in VS Code ${version} on the desktop (code ${code}).\n`);
