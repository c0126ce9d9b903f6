import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper, type Compiled, type FileFinding } from '../../language/compile.ts';

export interface CompiledFile {
  readonly plays: readonly Compiled[];
  readonly findings: readonly FileFinding[];
}

/** A file's text through all layers. */
export function compileText(text: string): CompiledFile {
  const book = openFile(emptyBook, 'file:///test.play', text);
  const keeper = createKeeper();
  return { plays: keeper.playsOf(book, 'file:///test.play'), findings: keeper.findingsOf(book, 'file:///test.play') };
}

/** Lines of a play, with a first line if they bring none. */
export function asPlay(lines: string): string {
  return /^\s*(play|notation|level) /m.test(lines) ? lines : `play "Example"\n${lines}`;
}
