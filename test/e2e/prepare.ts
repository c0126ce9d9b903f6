// Before the first end-to-end test of a run: says what is missing, fetches the editor once, bundles what runs inside it.
import { existsSync } from 'node:fs';
import { build } from '../../scripts/build.ts';
import { buildHostSuite } from '../../scripts/host-suite.ts';
import { ensureHost, hostIsInstalled } from '../../scripts/host.ts';
import { pack, vsix } from '../../scripts/package.ts';
import { executable, howToInstall } from './chromium.ts';

export default async function prepare() {
  if (!executable) {
    console.warn(`\n  ${process.env.CI ? 'FAILING' : 'SKIPPED'}. ${howToInstall}\n`);
    return;
  }
  if (!hostIsInstalled()) console.log('Fetching VS Code for the browser (code-server); only the first run does this …');
  ensureHost();
  if (!existsSync(vsix)) {
    await build();
    pack();
  }
  await buildHostSuite();
}
