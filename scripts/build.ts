// Everything that is shipped, bundled by esbuild into dist/. `node scripts/build.ts [--dev]`; --dev keeps names readable
// and writes source maps.
import { chmodSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { build as bundle, type BuildOptions, type Plugin } from 'esbuild';
import { inAscii } from './in-ascii.ts';
import { playerForEsbuild, type PlayerText } from './player-text.ts';

export const root = dirname(import.meta.dirname);
export const dist = join(root, 'dist');

export interface Built {
  /** path below the repository, with slashes */
  readonly file: string;
  readonly bytes: number;
}

// VS Code 1.91 (the oldest we run in) brings Node 20 and Chromium 122; a page may be opened in any browser of the last years.
const node: BuildOptions = { platform: 'node', target: 'node20' };
const worker: BuildOptions = { platform: 'browser', target: 'chrome122' };
const page: BuildOptions = { platform: 'browser', target: ['chrome111', 'firefox113', 'safari16.4'] };

// The manifest says `./dist/web/extension.cjs`, and VS Code's web host adds `.js` to any entry. The `.cjs` must be in the
// manifest all the same: under "type": "module" newer hosts take any other name for an ES module, which they refuse in a
// worker ("ESM modules are not supported in the web worker extension host"). Read in the host code of 1.91 and 1.139.
const webExtension = 'dist/web/extension.cjs.js';

function settings(dev: boolean): BuildOptions {
  return {
    bundle: true,
    minify: !dev,
    sourcemap: dev ? 'linked' : false,
    absWorkingDir: root,
    legalComments: 'none',
    logLevel: 'warning',
  };
}

/** What answers an editor's first question holds the protocol's library; the rest of the server takes it from there. */
const protocolFromBeside: Plugin = {
  name: 'protocol-from-beside',
  setup(build) {
    build.onResolve({ filter: /^vscode-languageserver(-protocol)?(\/node)?$/ }, () => ({ path: './language-server.cjs', external: true }));
  },
};

/** A process starts with a small file that loads the large ones beside it: what it loads is kept compiled (server/kept-program.ts). */
function nodeServer(folder: string): readonly BuildOptions[] {
  const common = { ...node, format: 'cjs' } as const;
  return [
    { ...common, entryPoints: ['server/lsp/node.ts'], outfile: `${folder}/server.cjs` },
    { ...common, entryPoints: ['server/lsp/node-first-answer.ts'], outfile: `${folder}/language-server.cjs`, external: ['./all-answers.cjs'] },
    { ...common, entryPoints: ['server/lsp/all-answers.ts'], outfile: `${folder}/all-answers.cjs`, plugins: [protocolFromBeside] },
    { ...node, format: 'esm', entryPoints: ['server/cli/setwright.ts'], outfile: `${folder}/setwright.mjs`, banner: { js: '#!/usr/bin/env node' } },
  ];
}

/** Only a build needs the whole grammar. */
const tables = async (): Promise<Plugin> => {
  const { lineTables, tablesForEsbuild } = await import('./line-tables.ts');
  return tablesForEsbuild(lineTables());
};

function bundles(dev: boolean, player: PlayerText): readonly BuildOptions[] {
  const editor: BuildOptions = { format: 'cjs', external: ['vscode'] };
  return [
    { ...node, ...editor, entryPoints: ['client/extension.ts'], outfile: 'dist/node/extension.cjs' },
    { ...worker, ...editor, entryPoints: ['client/extension.web.ts'], outfile: webExtension },
    ...nodeServer('dist/node'),
    { ...worker, format: 'iife', entryPoints: ['server/lsp/worker.ts'], outfile: 'dist/web/server.js' },
    {
      ...node,
      format: 'cjs',
      entryPoints: ['server/cli/main.ts'],
      outfile: 'dist/node/command-line.cjs',
      // What a module asks of where it stands; a package asks so as to load another that is not there.
      define: { 'import.meta.url': '__filename', 'import.meta.filename': '__filename' },
      plugins: [playerForEsbuild(player)],
    },
  ].map((options) => ({ ...settings(dev), ...options }) as BuildOptions);
}

/** The player's script and style as text, safe to stand inside `<script>` and `<style>`: esbuild escapes their end tags. */
export async function buildPlayer(dev = false): Promise<PlayerText> {
  const { outputFiles } = await bundle({
    ...settings(dev),
    ...page,
    format: 'iife',
    entryPoints: ['client/preview/main.ts'],
    outfile: 'dist/preview/player.js',
    sourcemap: dev ? 'inline' : false,
    write: false,
  });
  const text = (end: string) => outputFiles.find(({ path }) => path.endsWith(end))?.text ?? '';
  return { script: text('.js'), style: text('.css') };
}

async function writeBundle(options: BuildOptions, known: Plugin): Promise<void> {
  await bundle({ ...options, plugins: [...(options.plugins ?? []), known] });
  const file = join(root, options.outfile!);
  writeFileSync(file, inAscii(readFileSync(file, 'utf8')));
}

/** The language server for Node and `setwright lsp`, apart from dist/, into a folder below the repository, for tests that talk to them as processes; returns the server's path. */
export async function buildServer(folder: string): Promise<string> {
  const known = await tables();
  await Promise.all(nodeServer(folder).map((options) => writeBundle({ ...settings(false), ...options }, known)));
  chmodSync(join(root, folder, 'setwright.mjs'), 0o755);
  return join(root, folder, 'server.cjs');
}

export async function build({ dev = false } = {}): Promise<readonly Built[]> {
  rmSync(dist, { recursive: true, force: true });
  const player = await buildPlayer(dev);
  const preview = join(dist, 'preview');
  mkdirSync(preview, { recursive: true });
  writeFileSync(join(preview, 'player.js'), player.script);
  writeFileSync(join(preview, 'player.css'), player.style);

  const made = bundles(dev, player);
  const known = await tables();
  await Promise.all(made.map((options) => writeBundle(options, known)));
  chmodSync(join(dist, 'node/setwright.mjs'), 0o755);
  return [...made.map(({ outfile }) => join(root, outfile!)), join(preview, 'player.js'), join(preview, 'player.css')].map((path) => ({
    file: relative(root, path).replaceAll('\\', '/'),
    bytes: statSync(path).size,
  }));
}

if (import.meta.main) {
  for (const { file, bytes } of await build({ dev: process.argv.includes('--dev') })) console.log(`${(bytes / 1000).toFixed(1).padStart(9)} kB  ${file}`);
}
