// Which files a call means: names, folders, patterns, `-` for standard input.
import { readFileSync, statSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { globSync } from 'tinyglobby';
import { CallError } from './call-error.ts';

export interface SourceFile {
  /** As it is printed: relative to the working folder, with slashes; `<standard input>` for `-`. */
  readonly name: string;
  readonly text: string;
}

export const standardInput = '<standard input>';

/** Reads the files of a call in the order given, each once; a folder or a pattern gives its `.play` files in name order. */
export function readFiles(wanted: readonly string[]): readonly SourceFile[] {
  const names = new Set<string>();
  for (const one of wanted) for (const name of namesOf(one)) names.add(name);
  return [...names].map((name) => ({ name, text: name === standardInput ? readStandardInput() : readText(name) }));
}

function namesOf(wanted: string): readonly string[] {
  if (wanted === '-') return [standardInput];
  const stat = statSync(wanted, { throwIfNoEntry: false });
  if (stat?.isDirectory()) {
    const inside = find(['**/*.play'], wanted).map((name) => printable(resolve(wanted, name)));
    if (inside.length === 0) throw new CallError(`There is no .play file in the folder ${wanted}.`);
    return inside;
  }
  if (stat !== undefined) return [printable(resolve(wanted))];
  // A shell that finds no match, or that knows no patterns, hands the pattern over as it is.
  const matched = /[*?[\]{}]/.test(wanted) ? find([wanted.replaceAll('\\', '/')], '.').map((name) => printable(resolve(name))) : [];
  if (matched.length === 0) throw new CallError(`There is no file or folder called ${wanted}.`);
  return matched;
}

function find(patterns: string[], cwd: string): string[] {
  return globSync(patterns, { cwd, ignore: ['**/node_modules/**'], expandDirectories: false }).sort();
}

function printable(path: string): string {
  return relative('.', path).replaceAll('\\', '/');
}

function readText(name: string): string {
  try {
    return decode(readFileSync(name));
  } catch (error) {
    throw new CallError(`I cannot read ${name}: ${reasonOf(error)}.`);
  }
}

function readStandardInput(): string {
  try {
    return decode(readFileSync(0));
  } catch (error) {
    throw new CallError(`I cannot read standard input: ${reasonOf(error)}.`);
  }
}

/** UTF-8, or what an older editor writes as “Unicode”: UTF-16 with its mark at the front. */
export function decode(bytes: Uint8Array): string {
  const little = bytes[0] === 0xff && bytes[1] === 0xfe;
  const big = bytes[0] === 0xfe && bytes[1] === 0xff;
  return new TextDecoder(little ? 'utf-16le' : big ? 'utf-16be' : 'utf-8').decode(bytes);
}

const reasons: Readonly<Record<string, string>> = { EACCES: 'it may not be read', EISDIR: 'it is a folder', ENOENT: 'it is not there', ENOSPC: 'the disk is full', EROFS: 'the disk may not be written to', EPERM: 'that is not permitted' };

/** Why a file could not be read or written, in words. */
export function reasonOf(error: unknown): string {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? (code === '' ? 'something went wrong' : code);
}

/** As `reasonOf`, of a file that was to be made: what is not there is its folder. */
export function whyNotWritten(error: unknown): string {
  return reasonOf(error) === reasons.ENOENT ? 'its folder is not there' : reasonOf(error);
}
