// A real VS Code (code-server) for `npm start` and the end-to-end tests: installed on demand into .vscode-host, which git
// ignores. Its own install step would compile native modules; without it everything the extension needs is there, prebuilt.
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './build.ts';
import { npm, whyNoDownload } from './npm.mjs';

const version = '4.139.1';
/** the VS Code in that code-server */
export const editorVersion = '1.139.1';

export const hostDir = join(root, '.vscode-host');
const installDir = join(hostDir, 'install');
const codeServer = join(installDir, 'node_modules/code-server');
const stamp = join(installDir, 'ready');

export const hostIsInstalled = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === version;

/** Installs the editor unless it is there and returns the script that starts it; throws with a message for a reader. */
export function ensureHost(): string {
  const entry = join(codeServer, 'out/node/entry.js');
  if (hostIsInstalled()) return entry;
  rmSync(installDir, { recursive: true, force: true });
  mkdirSync(installDir, { recursive: true });
  writeFileSync(join(installDir, 'package.json'), '{ "private": true }\n');
  install(installDir, `code-server@${version}`);
  install(join(codeServer, 'lib/vscode'), '--omit=dev');
  install(join(codeServer, 'lib/vscode/extensions'), '--omit=dev');
  writeFileSync(stamp, version);
  return entry;
}

function install(where: string, what: string) {
  const { status } = npm(['install', '--ignore-scripts', what], where);
  if (status !== 'done') throw new Error(whyNoDownload(status, 'VS Code for the browser (code-server)'));
}

/** A quiet window: no welcome page, no chat bar, nothing that asks the internet. */
export const quietSettings = {
  'workbench.startupEditor': 'none',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'git.enabled': false,
  // Its server lists every open file of the machine over and over to find ports.
  'remote.autoForwardPorts': false,
} as const;

/** More of them for `npm start`, whose address names a file: without the second a window loaded anew shows that file alone, and forgets the others and every panel. */
export const startSettings = { 'setwright.preview.openWithPlay': true, 'window.restoreWindows': 'preserve' } as const;

export interface HostPlace {
  /** profile, logs and state of the editor */
  readonly data: string;
  readonly extensions: string;
}

/** Arguments for Node that name the editor and the folders it may write to: its defaults are in the user's home. */
export function hostArguments(entry: string, { data, extensions }: HostPlace): string[] {
  return [entry, '--config', join(data, 'config.yaml'), '--user-data-dir', data, '--extensions-dir', extensions];
}

/** Arguments that make it serve one user on this machine, with nothing to click away. `trusting`: every folder is the user's own. */
export function serveArguments(port: number, trusting = true): string[] {
  return [
    ...['--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, '--disable-proxy'],
    ...['--disable-telemetry', '--disable-update-check', '--disable-getting-started-override'],
    ...(trusting ? ['--disable-workspace-trust'] : []),
    '--ignore-last-opened',
  ];
}

export function writeQuietSettings(data: string, more: Readonly<Record<string, unknown>> = {}) {
  const file = join(data, 'User/settings.json');
  if (existsSync(file)) return;
  mkdirSync(join(data, 'User'), { recursive: true });
  writeFileSync(file, JSON.stringify({ ...quietSettings, ...more }, null, 2));
}

/** The address of a folder (or of a file that names several), with a file of it opened. */
export function editorAddress(port: number, folder: string, file?: string): string {
  const payload = file && JSON.stringify([['openFile', `vscode-remote://127.0.0.1:${port}${slashed(file)}`]]);
  const kind = folder.endsWith('.code-workspace') ? 'workspace' : 'folder';
  return `http://127.0.0.1:${port}/?${kind}=${encodeURIComponent(slashed(folder))}${payload ? `&payload=${encodeURIComponent(payload)}` : ''}`;
}

function slashed(path: string) {
  const forward = path.replaceAll('\\', '/');
  return forward.startsWith('/') ? forward : `/${forward}`;
}
