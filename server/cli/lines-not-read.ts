// What a figure or a picture is without: said beside it, since it looks like any other.
import { standardInput } from './files.ts';
import type { PlayInFile } from './plays-named.ts';
import { remark } from './terminal.ts';

const mostNamed = 6;

/** One sentence for each play of which lines could not be read. What is older than the files that lie there can no longer be mended. */
export function remarkOnLinesNotRead(plays: readonly PlayInFile[], older = false): void {
  for (const { file, play } of plays) {
    const { name, lines } = file.notRead(play);
    if (lines.length === 0) continue;
    const named = lines.slice(0, mostNamed).join(', ') + (lines.length > mostNamed ? ' …' : '');
    const what = lines.length === 1 ? `Line ${named} of “${play.play.name}” cannot be read and is` : `${lines.length} lines of “${play.play.name}” cannot be read (${named}) and are`;
    remark(`${name}: ${what} left out, in whole or in part.${older ? '' : ` What is wrong, and how to mend it: setwright check ${name === standardInput ? '-' : name}`}`);
  }
}
