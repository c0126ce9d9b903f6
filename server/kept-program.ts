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

/** Bytes in front of what V8 gave: the works it was kept from, with blanks between. Whole words, so that V8 need not copy what stands behind. */
const headLength = 512;
const isWork = /^[a-z-]{1,20}$/;
const mostWorks = 20;
/** The work of a program that goes on until it is ended: known once it is well under way. */
const untilEnded = 'until-ended';

/**
 * The exports of a CommonJS file. The files it requires by where they lie are loaded in the same way. `work`: what the program is asked for, where
 * that is several things: what was kept from one lacks what another needs, so that it is kept again after the first time of each.
 */
export function loadKept(file: string, work = untilEnded): unknown {
  const kept = keptFolder();
  const asked = isWork.test(work) ? work : 'other';
  const loaded = new Map<string, { readonly exports: unknown }>();
  const load = (path: string): unknown => {
    const known = loaded.get(path);
    if (known !== undefined) return known.exports;
    const made = { exports: {} };
    loaded.set(path, made);
    const fromNode = createRequire(path);
    const require = (name: string): unknown => (name.startsWith('.') ? load(join(dirname(path), name)) : fromNode(name));
    run(path, kept, asked)(made.exports, require, made, path, dirname(path));
    return made.exports;
  };
  return load(file);
}

type Program = (exports: object, require: (name: string) => unknown, module: { readonly exports: unknown }, file: string, folder: string) => void;

function run(path: string, folder: string | undefined, work: string): Program {
  const bytes = readFileSync(path);
  const text = `(function (exports, require, module, __filename, __dirname) {${bytes.toString()}\n})`;
  if (folder === undefined) return new Script(text, { filename: path }).runInThisContext() as Program;
  const place = join(folder, `${basename(path)}-${crc32(bytes).toString(16)}`);
  const kept = readKept(place);
  const script = new Script(text, { filename: path, ...(kept && { cachedData: kept.data }) });
  // V8 takes only what the same V8 wrote, of a text as long, under the same flags.
  const works = kept === undefined || script.cachedDataRejected === true ? [] : kept.works;
  if (!works.includes(work) && works.length < mostWorks) keepLater(script, place, works, work);
  return script.runInThisContext() as Program;
}

function readKept(place: string): { readonly works: readonly string[]; readonly data: Buffer } | undefined {
  const bytes = existsSync(place) ? readFileSync(place) : undefined;
  return bytes === undefined || bytes.length <= headLength ? undefined : { works: bytes.toString('latin1', 0, headLength).trimEnd().split(' '), data: bytes.subarray(headLength) };
}

/** The folder of Node's own compile cache: under NODE_DISABLE_COMPILE_CACHE=1, and in a Node before 22.8, there is none and nothing is kept. */
function keptFolder(): string | undefined {
  module.enableCompileCache?.();
  return module.getCompileCacheDir?.();
}

/** A process may end by itself before it is well under way; a server is killed by some editors. */
function keepLater(script: Script, place: string, before: readonly string[], work: string): void {
  let done = false;
  const keep = (works: readonly string[]) => {
    if (done) return;
    done = true;
    try {
      // Another process may be reading it, or writing the same.
      const unfinished = `${place}.${process.pid}`;
      writeFileSync(unfinished, Buffer.concat([Buffer.from(works.join(' ').padEnd(headLength), 'latin1'), script.createCachedData()]));
      renameSync(unfinished, place);
    } catch {
      // A full or write-protected disk: the next start compiles again.
    }
  };
  const all = [...before, work];
  setTimeout(() => keep(all), wellUnderWay).unref();
  process.once('exit', () => {
    if (work !== untilEnded) keep(all);
    // Ended before it was well under way: that is better than nothing, and kept again.
    else if (before.length === 0) keep(['begun']);
  });
}
