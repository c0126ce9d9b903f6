// Which files a call means: names, folders, patterns, `-` for standard input.
import { lstatSync, readFileSync, statSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { globSync } from 'tinyglobby';
import { CallError } from './call-error.ts';
import { withProgress } from './progress.ts';
import { remark } from './terminal.ts';

export interface SourceFile {
  /** As it is printed: relative to the working folder, with slashes; `<standard input>` for `-`. */
  readonly name: string;
  readonly text: string;
  /** Where it lies, for the files it uses, when its name does not say so. */
  readonly path?: string;
}

/** A file that is there and cannot be read: it stops nothing but itself. */
export interface UnreadableFile {
  readonly name: string;
  /** In a sentence's words: `it may not be read`. */
  readonly why: string;
}

export type FoundFile = SourceFile | UnreadableFile;

export function isUnreadable(file: FoundFile): file is UnreadableFile {
  return 'why' in file;
}

export const standardInput = '<standard input>';

/**
 * Reads the files of a call in the order given, each once; a folder or a pattern gives its `.play` files in name order. What cannot be
 * read is told at its place; a name that is none, or a call that means no file at all, is wrong.
 */
export function findFiles(wanted: readonly string[]): readonly FoundFile[] {
  const found = new Map<string, UnreadableFile | undefined>();
  for (const one of wanted) for (const { name, why } of namesOf(one)) found.set(name, why === undefined ? undefined : { name, why });
  const alone = [...found.values()];
  // A folder without plays is a wrong call where it is all there is.
  if (alone.length === 1 && alone[0]?.why === emptyFolder) throw new CallError(`There is no .play file in the folder ${alone[0].name}.`);
  return withProgress([...found], 'files read', ([name, unreadable]) => unreadable ?? (name === standardInput ? { name, text: readStandardInput() } : readText(name)));
}

/** The files that can be read; of the others it is said on the side why not, and the call ends with 1. */
export function readFiles(wanted: readonly string[]): readonly SourceFile[] {
  const found = findFiles(wanted);
  const unreadable = found.filter(isUnreadable);
  const readable = found.filter((file): file is SourceFile => !isUnreadable(file));
  if (readable.length === 0 && unreadable[0] !== undefined) throw new CallError(unreadable.map(sayUnreadable).join('\n'));
  for (const file of unreadable) remark(`setwright: ${sayUnreadable(file)}`);
  if (unreadable.length > 0) process.exitCode = 1;
  return readable;
}

/** As `readFiles`, of one name, where it is no mistake that nothing is there: it may have been before. */
export function readFilesIfThere(wanted: string): readonly SourceFile[] {
  const stat = statSync(wanted, { throwIfNoEntry: false });
  return stat === undefined || (stat.isDirectory() && playsInside(wanted).length === 0) ? [] : readFiles([wanted]);
}

function sayUnreadable({ name, why }: UnreadableFile): string {
  return `I cannot read ${name}: ${why}.`;
}

const emptyFolder = 'it is a folder, and there is no .play file in it';

function namesOf(wanted: string): readonly { readonly name: string; readonly why?: string }[] {
  if (wanted === '-') return [{ name: standardInput }];
  const stat = statSync(wanted, { throwIfNoEntry: false });
  if (stat?.isDirectory()) {
    const inside = playsInside(wanted).map((name) => ({ name: nameOf(resolve(wanted, name)) }));
    return inside.length === 0 ? [{ name: nameOf(resolve(wanted)) || '.', why: emptyFolder }] : inside;
  }
  // A link to what is not there is a file that cannot be read, not a wrong name.
  if (stat !== undefined || lstatSync(wanted, { throwIfNoEntry: false }) !== undefined) return [{ name: nameOf(resolve(wanted)) }];
  // A shell that finds no match, or that knows no patterns, hands the pattern over as it is.
  const matched = /[*?[\]{}]/.test(wanted) ? find([wanted.replaceAll('\\', '/')], '.').map((name) => ({ name: nameOf(resolve(name)) })) : [];
  if (matched.length === 0) throw new CallError(`There is no file or folder called ${wanted}.`);
  return matched;
}

function playsInside(folder: string): string[] {
  return find(['**/*.play'], folder);
}

function find(patterns: string[], cwd: string): string[] {
  return globSync(patterns, { cwd, ignore: ['**/node_modules/**'], expandDirectories: false }).sort();
}

export function nameOf(path: string): string {
  return relative('.', path).replaceAll('\\', '/');
}

function readText(name: string): FoundFile {
  try {
    const bytes = readFileSync(name);
    return isNoText(bytes) ? { name, why: 'it is no text, but a picture or a program' } : { name, text: decode(bytes) };
  } catch (error) {
    return { name, why: reasonOf(error) };
  }
}

/** Nobody types a zero byte; UTF-16 has many, and says so with its mark. */
function isNoText(bytes: Uint8Array): boolean {
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  return !isWide && bytes.subarray(0, 8000).includes(0);
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
