import { mkdirSync, writeFileSync } from 'node:fs';
import { CallError } from './call-error.ts';
import { whyNotWritten } from './files.ts';
import { remark } from './terminal.ts';

/** Writes to the file, or to standard output where none is named. */
export function writeResult(text: string, file: string | undefined): void {
  if (file === undefined || file === '-') {
    process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
    return;
  }
  writeFile(file, text);
  remark(`Wrote ${file} (${Math.ceil(Buffer.byteLength(text) / 1000)} kB).`);
}

export function writeFile(file: string, text: string): void {
  tried(file, () => writeFileSync(file, text));
}

export function makeFolder(folder: string): void {
  tried(folder, () => mkdirSync(folder, { recursive: true }));
}

function tried(name: string, write: () => unknown): void {
  try {
    write();
  } catch (error) {
    throw new CallError(`I cannot write ${name}: ${whyNotWritten(error)}.`);
  }
}
