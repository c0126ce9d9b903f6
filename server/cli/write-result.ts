import { writeFileSync } from 'node:fs';
import { CallError } from './call-error.ts';
import { whyNotWritten } from './files.ts';
import { remark } from './terminal.ts';

/** Writes to the file, or to standard output where none is named. */
export function writeResult(text: string, file: string | undefined): void {
  if (file === undefined || file === '-') {
    process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
    return;
  }
  try {
    writeFileSync(file, text);
  } catch (error) {
    throw new CallError(`I cannot write ${file}: ${whyNotWritten(error)}.`);
  }
  remark(`Wrote ${file} (${Math.ceil(Buffer.byteLength(text) / 1000)} kB).`);
}
