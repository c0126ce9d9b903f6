// Loads the large files of a program so that it need not be compiled anew at every start. Node's compile cache keeps what V8 compiles while a file
// is loaded; most functions are compiled when they are first called, and are not in it. Here V8 is asked once the program has run for a while,
// or ends: what it had to compile until then is what the next start needs (a fifth of the processor's time to the first findings).
import module, { createRequire } from 'node:module';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';

/** Milliseconds after which all files have been loaded and the editor's first questions answered. */
const wellUnderWay = 5000;

/** The exports of a CommonJS file. The files it requires by where they lie are loaded in the same way. */
export function loadKept(file: string): unknown {
  const kept = keptFolder();
  const loaded = new Map<string, { readonly exports: unknown }>();
  const load = (path: string): unknown => {
    const known = loaded.get(path);
    if (known !== undefined) return known.exports;
    const made = { exports: {} };
    loaded.set(path, made);
    const fromNode = createRequire(path);
    const require = (name: string): unknown => (name.startsWith('.') ? load(join(dirname(path), name)) : fromNode(name));
    run(path, kept)(made.exports, require, made, path, dirname(path));
    return made.exports;
  };
  return load(file);
}

type Program = (exports: object, require: (name: string) => unknown, module: { readonly exports: unknown }, file: string, folder: string) => void;

function run(path: string, kept: string | undefined): Program {
  const bytes = readFileSync(path);
  const text = `(function (exports, require, module, __filename, __dirname) {${bytes.toString()}\n})`;
  if (kept === undefined) return new Script(text, { filename: path }).runInThisContext() as Program;
  const place = join(kept, `${basename(path)}-${crc32(bytes).toString(16)}`);
  const cachedData = existsSync(place) ? readFileSync(place) : undefined;
  const script = new Script(text, { filename: path, ...(cachedData && { cachedData }) });
  // V8 takes only what the same V8 wrote, of a text as long, under the same flags.
  if (cachedData === undefined || script.cachedDataRejected === true) keepLater(script, place);
  return script.runInThisContext() as Program;
}

/** The folder of Node's own compile cache: under NODE_DISABLE_COMPILE_CACHE=1, and in a Node before 22.8, there is none and nothing is kept. */
function keptFolder(): string | undefined {
  module.enableCompileCache?.();
  return module.getCompileCacheDir?.();
}

/** A process may end by itself before it is well under way; a server is killed by some editors. */
function keepLater(script: Script, place: string): void {
  let done = false;
  const keep = () => {
    if (done) return;
    done = true;
    try {
      // Another process may be reading it, or writing the same.
      const unfinished = `${place}.${process.pid}`;
      writeFileSync(unfinished, script.createCachedData());
      renameSync(unfinished, place);
    } catch {
      // A full or write-protected disk: the next start compiles again.
    }
  };
  setTimeout(keep, wellUnderWay).unref();
  process.once('exit', keep);
}
