// Runs Langium's generator over the grammar of a line and keeps what the core needs: the types of the tree and the grammar as data.
// `node scripts/generate.mjs --out DIR` writes elsewhere, which is how a test finds out that the committed files are stale.
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runGenerator } from '../node_modules/langium-cli/lib/generate.js';
import { RelativePath } from '../node_modules/langium-cli/lib/package-types.js';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const outFlag = process.argv.indexOf('--out');
const target = outFlag > 0 ? resolve(process.argv[outFlag + 1]) : join(root, 'language/grammar/generated');

const raw = await mkdtemp(join(tmpdir(), 'setwright-grammar-'));
const config = {
  projectName: 'SetLine',
  languages: [{ id: 'setwright', grammar: join(root, 'language/grammar/line.langium'), fileExtensions: ['.play'] }],
  mode: 'production',
  importExtension: '.ts',
  out: raw,
  [RelativePath]: root,
};
const said = [];
const { log, warn, error } = console;
console.log = console.warn = console.error = (...words) => said.push(words.join(' '));
let result;
try {
  result = await runGenerator(config, { watch: false, mode: 'production' });
} finally {
  Object.assign(console, { log, warn, error });
}
// Keywords with blanks are meant (see the head of the grammar); the places that set a flag twice are alternatives, or set it to the same.
for (const line of said) {
  if (/should not contain whitespace|Writing generated files|multiple assignments to '(then|either)'/.test(line)) continue;
  console.log(line.replaceAll(root, '.').replaceAll(raw, target));
}
if (!result.success) process.exit(1);

await mkdir(target, { recursive: true });
const clean = (text) => text.replace(/\r\n/g, '\n').replace(/[ \t]+$/gm, '');
const types = await readFile(join(raw, 'ast.ts'), 'utf8');
await writeFile(join(target, 'ast.ts'), clean(types));
// Langium writes a call of its own JSON loader, which would pull its document services and the protocol libraries into every bundle.
const generated = await readFile(join(raw, 'grammar.ts'), 'utf8');
const json = /loadGrammarFromJson\('(.*)'\)/s.exec(generated)?.[1];
if (json === undefined) throw new Error('the generated grammar does not look as expected');
// What is empty or not so is left out, a tenth of the whole: `load-grammar.ts` knows it.
const kept = json.replaceAll(/,"(?:arguments|parameters)":\[\]|,"(?:entry|fragment)":false/g, '');
await writeFile(join(target, 'grammar.ts'), `${clean(generated.slice(0, generated.indexOf('import ')))}export const grammarJson = '${kept}';\n`);
await rm(raw, { recursive: true });
