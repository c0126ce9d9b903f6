// npm as a child process. Plain JavaScript, because bootstrap.mjs runs it on whatever Node the shell has.
import { spawnSync } from 'node:child_process';

const noNetwork = /\b(ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|ENETDOWN|ENOTCACHED)\b/;

/** An npm started by `npm run` would take our package's prefix and name for its own; those variables are dropped. */
function ownEnvironment() {
  const foreign = /^npm_(package|lifecycle|command|execpath|node_execpath|config_(prefix|local_prefix|workspace))/;
  const kept = Object.entries(process.env).filter(([name]) => !foreign.test(name));
  return { ...Object.fromEntries(kept), PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' };
}

/**
 * Runs npm and waits for it.
 * @param {string[]} args
 * @param {string} cwd
 * @returns {{ status: 'done' | 'offline' | 'failed' }} `offline`: the registry could not be reached
 */
export function npm(args, cwd) {
  // npm's own waits between tries would keep someone without a network for over a minute.
  const patience = ['--fetch-retry-mintimeout=2000', '--fetch-retry-maxtimeout=8000'];
  const run = spawnSync('npm', [...args, '--no-audit', '--no-fund', '--loglevel=error', ...patience], {
    cwd,
    stdio: ['ignore', 'inherit', 'pipe'],
    encoding: 'utf8',
    env: ownEnvironment(),
    shell: process.platform === 'win32',
  });
  if (run.status === 0) return { status: 'done' };
  if (noNetwork.test(run.stderr ?? '')) return { status: 'offline' };
  process.stderr.write(run.stderr ?? String(run.error));
  return { status: 'failed' };
}

/**
 * What to tell someone whose download did not come.
 * @param {'offline' | 'failed'} status
 * @param {string} what
 */
export function whyNoDownload(status, what) {
  return status === 'offline'
    ? `\n  ${what} could not be fetched: the package registry did not answer.\n  Are you offline, or behind a proxy? Connect and run the same command again; what is there already is kept.\n`
    : `\n  ${what} could not be installed. What npm said stands above.\n`;
}
