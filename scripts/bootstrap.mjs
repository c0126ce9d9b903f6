// Runs before `npm start`, `npm test` and the like, on whatever Node the shell has, so that one command is enough on a
// fresh clone. Afterwards `node` inside npm scripts is the Node 24 of node_modules/.bin. Plain JavaScript for old Nodes.
import { existsSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { npm, whyNoDownload } from './npm.mjs';

const oldestNode = 18;
const runsOn = 24;
/** Folders with packages of their own beside the project's, named on the command line. */
const folders = ['.', ...process.argv.slice(2)];
const packages = (file) => JSON.parse(readFileSync(file, 'utf8')).packages;

function upToDate(folder) {
  const installed = `${folder}/node_modules/.package-lock.json`;
  if (!existsSync(installed)) return false;
  const have = packages(installed);
  return Object.entries(packages(`${folder}/package-lock.json`)).every(
    ([path, { version, optional }]) => path === '' || optional || (have[path] && have[path].version === version),
  );
}

function stop(message) {
  console.error(message);
  process.exit(1);
}

const major = (version) => Number(/(\d+)\./.exec(version)?.[1]);

if (major(process.versions.node) < oldestNode)
  stop(`\n  This is Node ${process.versions.node}; Setwright needs Node ${oldestNode} or newer to start (it then brings its own Node ${runsOn}).\n  Get one from https://nodejs.org and run the same command again.\n`);

for (const folder of folders) {
  if (upToDate(folder)) continue;
  const what = folder === '.' ? 'packages: only the first run, or one after an update, does this (about 170 MB)' : `packages in ${folder}`;
  console.log(`Installing ${what} …`);
  const { status } = npm(['ci'], resolve(folder));
  if (status !== 'done') stop(whyNoDownload(status, 'The packages'));
}

const scriptsNode = spawnSync('node', ['--version'], { encoding: 'utf8', shell: process.platform === 'win32' }).stdout ?? '';
if (!(major(scriptsNode) >= runsOn))
  stop(`\n  Setwright's scripts run on Node ${runsOn}, which comes as a package, but here they would get ${scriptsNode.trim() || 'none'}.\n  Run this through npm (npm start, npm test). If you did: npm skipped the package's install step (ignore-scripts?);\n  "npm rebuild node" runs it.\n`);
