// Runs before `npm start`, `npm test` and the like, on whatever Node the shell has, so that one command is enough on a
// fresh clone. Afterwards `node` inside npm scripts is the Node 24 of node_modules/.bin. Plain JavaScript for old Nodes.
import { existsSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';

const installed = 'node_modules/.package-lock.json';
const wanted = () => JSON.parse(readFileSync('package-lock.json', 'utf8')).packages;
const present = () => JSON.parse(readFileSync(installed, 'utf8')).packages;

function upToDate() {
  if (!existsSync(installed)) return false;
  const have = present();
  return Object.entries(wanted()).every(([path, { version, optional }]) => path === '' || optional || have[path]?.version === version);
}

if (!upToDate()) {
  console.log('Installing packages; only the first run (or a changed lock file) does this …');
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    stdio: 'inherit',
    env: { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' },
  });
  process.exit(status ?? 1);
}
