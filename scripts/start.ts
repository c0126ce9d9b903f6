// `npm start`: a real VS Code with the extension and the example plays, in the browser. `npm start -- --desktop`: in the
// VS Code installed on this computer.
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { build, root } from './build.ts';
import { editorAddress, editorVersion, ensureHost, hostArguments, hostDir, hostIsInstalled, serveArguments, startSettings, writeQuietSettings } from './host.ts';
import { pack, vsix } from './package.ts';

const examples = join(root, 'examples');
const firstPlay = join(examples, 'lighthouse.play');
const usualPort = 8080;

class Stop extends Error {}

function portWanted(written = process.env.PORT): number {
  if (!written) return usualPort;
  const port = Number(written);
  if (Number.isInteger(port) && port > 0 && port < 65536) return port;
  throw new Stop(`PORT must be a whole number from 1 to 65535, not "${written}".`);
}

async function needFreePort(port: number) {
  const failure = await new Promise<NodeJS.ErrnoException | undefined>((resolve) => {
    const probe = createServer().once('error', resolve);
    probe.listen(port, '127.0.0.1', () => probe.close(() => resolve(undefined)));
  });
  if (!failure) return;
  const why = failure.code === 'EACCES' ? 'may not be used without special rights' : 'is taken by another program (perhaps Setwright is running already?)';
  const another = process.platform === 'win32' ? `set PORT=${port + 1} && npm start` : `PORT=${port + 1} npm start`;
  throw new Stop(`Port ${port} ${why}.\nChoose another one:  ${another}`);
}

function stages(total: number) {
  let done = 0;
  return async <Result>(title: string, work: () => Result | Promise<Result>): Promise<Result> => {
    const began = performance.now();
    console.log(`  ${++done}/${total}  ${title} …`);
    const result = await work();
    console.log(`       done in ${((performance.now() - began) / 1000).toFixed(1)} s`);
    return result;
  };
}

async function startInBrowser() {
  const port = portWanted();
  await needFreePort(port);
  const stage = stages(4);
  await stage('Building Setwright from its source', () => build());
  await stage('Packing it as a VS Code extension', pack);
  const known = hostIsInstalled();
  const entry = await stage(known ? `VS Code ${editorVersion} is here already` : `Fetching VS Code ${editorVersion} for the browser; only the first start does this (about 200 MB)`, ensureHost);
  const server = await stage('Opening VS Code with the example plays', () => serve(entry, port));
  const address = editorAddress(port, examples, firstPlay);
  console.log(`
  Setwright is ready. ${openBrowser(address) ? 'Your browser should open it now; if not, open this address:' : 'Open this address in your browser:'}

      ${address}

  The example plays are in the list on the left; what you change there is saved in the folder "examples".
  A play of your own: click the small court at the left edge of the window, then "New play".
  Only this computer can reach the address. Ctrl+C stops it.
`);
  server.once('exit', (code) => process.exit(code ?? 0));
}

async function serve(entry: string, port: number): Promise<ChildProcess> {
  const place = { data: join(hostDir, 'data'), extensions: join(hostDir, 'extensions') };
  writeQuietSettings(place.data, startSettings);
  const editor = hostArguments(entry, place);
  const installed = spawnSync(process.execPath, [...editor, '--force', '--install-extension', vsix], { encoding: 'utf8' });
  if (installed.status !== 0) throw new Stop(`VS Code did not take the extension:\n${installed.stdout}${installed.stderr}`);

  const server = spawn(process.execPath, [...editor, ...serveArguments(port), examples], { stdio: 'ignore', detached: process.platform !== 'win32' });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => end(server));
  process.on('exit', () => end(server));
  endWithParent(server);
  while (!(await answers(`http://127.0.0.1:${port}/healthz`))) {
    if (server.exitCode !== null) throw new Stop(`VS Code stopped by itself (code ${server.exitCode}). Delete the folder .vscode-host and start again.`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return server;
}

const answers = (address: string) => fetch(address).then(({ ok }) => ok, () => false);

/** The editor forks; its whole process group ends with it. */
function end({ pid, exitCode }: ChildProcess) {
  if (pid === undefined || exitCode !== null) return;
  try {
    process.kill(process.platform === 'win32' ? pid : -pid, 'SIGTERM');
  } catch {
    // gone in the meantime
  }
}

/** npm passes a signal on to its shell only, which may die without telling us. */
function endWithParent(server: ChildProcess) {
  const parent = process.ppid;
  setInterval(() => process.ppid === parent || end(server), 500).unref();
}

/** Shows the address to someone who sits at this computer; true when there was something to show it with. */
function openBrowser(address: string): boolean {
  if (!process.stdout.isTTY) return false;
  const [command, ...args] =
    process.platform === 'darwin' ? ['open'] : process.platform === 'win32' ? ['rundll32', 'url.dll,FileProtocolHandler'] : process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? ['xdg-open'] : [];
  if (!command) return false;
  spawn(command, [...args, address], { stdio: 'ignore', detached: true }).on('error', () => undefined).unref();
  return true;
}

async function startOnDesktop() {
  const windows = process.platform === 'win32';
  const found = spawnSync('code', ['--version'], { encoding: 'utf8', shell: windows });
  if (found.status !== 0)
    throw new Stop(
      'There is no "code" command on this computer\'s PATH.\nIf VS Code is installed: open it, press F1, choose "Shell Command: Install \'code\' command in PATH", and try again.\nWithout it, "npm start" opens VS Code in the browser.',
    );
  const stage = stages(2);
  await stage('Building Setwright from its source', () => build());
  await stage(`Opening VS Code ${found.stdout.split('\n')[0]} with the example plays`, () => {
    const quoted = (path: string) => (windows ? `"${path}"` : path);
    // Development mode: the extension runs from this folder and nothing is installed into the coach's own VS Code.
    const opened = spawnSync('code', ['--new-window', `--extensionDevelopmentPath=${quoted(root)}`, quoted(examples), quoted(firstPlay)], { stdio: 'inherit', shell: windows });
    if (opened.status !== 0) throw new Stop(`VS Code did not open (code ${opened.status}).`);
  });
  console.log('\n  Setwright runs in the window that opened, and only there. Closing the window ends it.\n');
}

try {
  console.log('\n  Setwright\n');
  await (process.argv.includes('--desktop') ? startOnDesktop() : startInBrowser());
} catch (problem) {
  console.error(problem instanceof Stop ? `\n  ${problem.message.replaceAll('\n', '\n  ')}\n` : problem instanceof Error ? problem.message : problem);
  process.exit(1);
}
