import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { root } from '../../scripts/build.ts';

/** Every play of the example playbook, in the order of its files. */
export function examplePlaybacks(): readonly Playback[] {
  const names = readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.play'));
  const address = (name: string) => `file:///club/${name}`;
  const book = names.reduce((known, name) => openFile(known, address(name), readFileSync(join(root, 'examples', name), 'utf8')), emptyBook);
  const keeper = createKeeper();
  return names.flatMap((name) => keeper.playsOf(book, address(name)).map(playbackOf));
}
