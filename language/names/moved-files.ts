// `use` lines that follow a file to its new place.
import type { Book } from '../book/book.ts';
import { usesOf } from './definitions.ts';
import type { FileEdit } from './rename.ts';
import { rangeOfSite } from './rename.ts';
import { readablePart, resolveUse } from './uris.ts';

export interface MovedFile {
  /** A file, or a folder with all that is in it. */
  readonly from: string;
  readonly to: string;
}

/** The edits, in the files as they are named before the move, after which every `use` names what it named. */
export function followMoves(book: Book, moves: readonly MovedFile[]): readonly FileEdit[] {
  const moved = (uri: string): string => {
    const move = moves.find(({ from }) => uri === from || uri.startsWith(`${withoutSlash(from)}/`));
    return move === undefined ? uri : uri === move.from ? move.to : withoutSlash(move.to) + uri.slice(withoutSlash(move.from).length);
  };
  return [...book.files.values()].flatMap(({ uri, blocks }) => {
    const header = blocks[0];
    if (header?.kind !== 'file') return [];
    return usesOf(header).flatMap((name): FileEdit[] => {
      if (name.kind !== 'file') return [];
      const before = resolveUse(uri, name.name);
      const [from, to] = [moved(uri), moved(before)];
      if (resolveUse(from, name.name) === to) return [];
      const words = useName(from, to, /\.play$/i.test(name.name.trim()));
      return words === undefined ? [] : [{ uri, range: rangeOfSite({ uri, block: header, firstLine: 0, name }), text: words }];
    });
  });
}

const withoutSlash = (uri: string): string => uri.replace(/\/$/, '');

/** How one file names another: the shortest way there. Undefined where no words would be read back as that file. */
export function useName(from: string, to: string, withEnding: boolean): string | undefined {
  const [here, there] = [from.split('/').slice(0, -1), to.split('/')];
  let shared = 0;
  while (shared < here.length && shared < there.length - 1 && here[shared] === there[shared]) shared++;
  const way = [...here.slice(shared).map(() => '..'), ...there.slice(shared).map(readablePart)].join('/');
  const short = way.replace(/\.play$/i, '');
  return [...(withEnding ? [] : [short]), way, to].find((words) => !/["“”]/.test(words) && resolveUse(from, words) === to);
}
