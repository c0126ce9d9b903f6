import { emptyBook, openFile } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper, type FileFinding } from '../../language/keeper.ts';

export interface CompiledFile {
  readonly plays: readonly Compiled[];
  readonly findings: readonly FileFinding[];
}

/** A file's text through all layers, with another file beside it if it speaks of one. */
export function compileText(text: string, beside?: { readonly name: string; readonly text: string }): CompiledFile {
  const uri = 'file:///example.play';
  const book = openFile(beside === undefined ? emptyBook : openFile(emptyBook, `file:///${beside.name}`, beside.text), uri, text);
  const keeper = createKeeper();
  return { plays: keeper.playsOf(book, uri), findings: keeper.findingsOf(book, uri) };
}

/** Lines of a play, with a first line if they bring none. */
export function asPlay(lines: string): string {
  return /^\s*(play|notation|level) /m.test(lines) ? lines : `play "Example"\n${lines}`;
}
