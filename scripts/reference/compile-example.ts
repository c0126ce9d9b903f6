// An example of the reference through all layers, as a file of its own.
import { emptyBook, openFile } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper, type FileFinding } from '../../language/keeper.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Playback } from '../../language/playback/playback.ts';

export interface CompiledExample {
  readonly plays: readonly Compiled[];
  readonly findings: readonly FileFinding[];
}

/** What an example may take from another file with `use "alignments.play"`. */
const other = 'alignment "Wide box"\n  1 top\n  2 and 3 corners\n  4 at right elbow\n  5 at left elbow\n';

export function compileExample(text: string, beside = { name: 'alignments.play', text: other }): CompiledExample {
  const uri = 'file:///example.play';
  const book = openFile(openFile(emptyBook, `file:///${beside.name}`, beside.text), uri, text);
  const keeper = createKeeper();
  return { plays: keeper.playsOf(book, uri), findings: keeper.findingsOf(book, uri) };
}

/** The picture data of an example's first play. */
export function playbackOfExample(text: string): Playback {
  const play = compileExample(text).plays[0];
  if (play === undefined) throw new Error(`No play in this example:\n${text}`);
  return playbackOf(play);
}

/** What an example must not have: errors and warnings, in words. */
export function mistakesIn(text: string): readonly string[] {
  return compileExample(text).findings.filter(({ severity }) => severity !== 'hint').map(({ code, message, firstLine, place }) => `line ${firstLine + place.line + 1}, ${code}: ${message}`);
}

/** What a play is taken to be that says nothing of it. */
export function unsaid(): Compiled['play'] {
  return compileExample('play "Example"\n1 dribbles to left slot\nlook 1: jumper').plays[0]!.play;
}
