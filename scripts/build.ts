// Everything that is shipped, bundled by esbuild into dist/. `node scripts/build.ts [--dev]`; --dev keeps names readable
// and writes source maps.
import { chmodSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
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

/** Of the names the protocol's library gives, those that are used: each import would copy all 300 of them otherwise. */
const namesOfProtocol = (): string => {
  const names = Object.keys(createRequire(import.meta.url)('vscode-languageserver') as object);
  const taken = names.map((name) => `export const ${name} = /* @__PURE__ */ (() => library.${name})();`);
  return ['const library = require("./node/language-server.cjs");', ...taken].join('\n');
};

/** The server's large file, which Node and a worker share, is without the protocol's library: that differs, and is needed before it. */
const protocolFromStart: Plugin = {
  name: 'protocol-from-start',
  setup(build) {
    build.onResolve({ filter: /^vscode-languageserver(-protocol|-types)?$/ }, () => ({ path: 'protocol', namespace: 'protocol' }));
    build.onResolve({ filter: /language-server\.cjs$/ }, ({ path }) => ({ path, external: true }));
    build.onLoad({ filter: /.*/, namespace: 'protocol' }, () => ({ contents: namesOfProtocol() }));
  },
};

/** The language server: what it starts with in Node and in a worker, and the large file that both load. */
function server(folder: string): readonly BuildOptions[] {
  const onNode = { ...node, format: 'cjs' } as const;
  return [
    // A process starts with a small file that loads the large ones: what it loads is kept compiled (server/kept-program.ts).
    { ...onNode, entryPoints: ['server/lsp/node.ts'], outfile: `${folder}/node/server.cjs` },
    { ...onNode, entryPoints: ['server/lsp/node-first-answer.ts'], outfile: `${folder}/node/language-server.cjs`, external: ['../all-answers.js'] },
    { ...node, format: 'esm', entryPoints: ['server/cli/setwright.ts'], outfile: `${folder}/node/setwright.mjs`, banner: { js: '#!/usr/bin/env node' } },
    { ...worker, format: 'iife', entryPoints: ['server/lsp/worker.ts'], outfile: `${folder}/web/server.js` },
    {
      platform: 'browser',
      target: ['node20', 'chrome122'],
      format: 'iife',
      entryPoints: ['server/lsp/all-answers.ts'],
      outfile: `${folder}/all-answers.js`,
      // A worker finds it by its name, Node as what the file exports.
      globalName: 'allAnswers',
      footer: { js: 'if (typeof module === "object") module.exports = allAnswers;' },
      plugins: [protocolFromStart],
    },
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
    ...server('dist'),
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

/** The language server and `setwright lsp`, apart from dist/, into a folder below the repository, for tests that talk to what is shipped; returns the path of Node's. */
export async function buildServer(folder: string): Promise<string> {
  const known = await tables();
  await Promise.all(server(folder).map((options) => writeBundle({ ...settings(false), ...options }, known)));
  chmodSync(join(root, folder, 'node/setwright.mjs'), 0o755);
  return join(root, folder, 'node/server.cjs');
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
