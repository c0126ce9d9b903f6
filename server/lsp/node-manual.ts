// Where the checks are explained, for an editor that has no manual of its own: the reference beside this program.
import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The address of `docs/checks.md`, with `{code}` for the finding's; undefined where the program came without it. `program`: the file that runs, two folders below. */
export function manualBeside(program: string | undefined): string | undefined {
  try {
    const page = join(dirname(realpathSync(program ?? '')), '../../docs/checks.md');
    return existsSync(page) ? `${pathToFileURL(page).href}#{code}` : undefined;
  } catch {
    return undefined;
  }
}
