// `npm run reference`: writes docs/ from the source. Pictures that nothing shows any more are taken away.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { registerHooks } from 'node:module';
import { dirname, join } from 'node:path';
import { drawn } from './files.ts';

// The command line carries the player, which only a build makes; its help needs none.
registerHooks({
  resolve: (specifier, context, next) => (specifier === 'virtual:player' ? { url: 'data:text/javascript,export const script = "", style = "";', shortCircuit: true } : next(specifier, context)),
});
const { reference } = await import('./reference.ts');

const folder = join(import.meta.dirname, '../../docs');
const files = reference();
mkdirSync(join(folder, drawn), { recursive: true });
for (const name of readdirSync(join(folder, drawn), { recursive: true, encoding: 'utf8' })) {
  const path = `${drawn}/${name.replaceAll('\\', '/')}`;
  if (path.endsWith('.svg') && !files.has(path)) rmSync(join(folder, path));
}
for (const [path, text] of files) {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}
const bytes = [...files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
console.log(`docs/: ${files.size} files, ${(bytes / 1e6).toFixed(2)} MB`);
