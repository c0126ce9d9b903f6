// The plays a call means.
import type { Compiled } from '../../language/compile.ts';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { CallError } from './call-error.ts';
import { standardInput } from './files.ts';
import type { OpenedFile } from './open-book.ts';
import { remark } from './terminal.ts';

export interface PlayInFile {
  readonly file: OpenedFile;
  readonly play: Compiled;
}

/** As the books among the files have them, section by section, each once; behind them what stands in no book. A book alone brings the plays it names. */
export function playsInOrder(files: readonly OpenedFile[], name: string | undefined): readonly (PlayInFile & { readonly section?: string })[] {
  if (name !== undefined) return playsNamed(files, name);
  const listed = new Map<string, PlayInFile & { readonly section?: string }>();
  const compiled = new Map(files.map((file) => [file.uri, file.plays()]));
  for (const file of files)
    for (const { name: section, plays } of file.sections())
      for (const { uri, key } of plays) {
        const play = (compiled.get(uri) ?? file.playsAt(uri)).find((one) => one.key === key);
        if (play !== undefined && !listed.has(`${uri} ${key}`)) listed.set(`${uri} ${key}`, { file, play, section });
      }
  for (const file of files) for (const play of compiled.get(file.uri)!) if (!listed.has(`${file.uri} ${play.key}`)) listed.set(`${file.uri} ${play.key}`, { file, play });
  return listed.size > 0 ? [...listed.values()] : playsNamed(files, name);
}

/** The files, and behind a file with a book those that it uses: their plays are what the book puts in order. Each once. */
export function withBooksFiles(files: readonly OpenedFile[]): readonly OpenedFile[] {
  const all = [...files, ...files.filter(({ blocks }) => blocks.some(({ kind }) => kind === 'book')).flatMap((file) => file.used())];
  return all.filter(({ uri }, at) => all.findIndex((one) => one.uri === uri) === at);
}

/** All plays of the files, those of one name (upper and lower case alike), or the one that stands at a place, `plays/all.play:12`. None is an error with the names there are. */
export function playsNamed(files: readonly OpenedFile[], name: string | undefined): readonly PlayInFile[] {
  const all = withBooksFiles(files).flatMap((file) => file.plays().map((play): PlayInFile => ({ file, play })));
  if (all.length === 0) throw new CallError(`There is no play in ${files.map((file) => file.name).join(', ')}. A play starts with a line such as: play "Lighthouse"`);
  if (name === undefined) return all;
  const found = all.filter(({ play }) => play.play.name.toLowerCase() === name.trim().toLowerCase());
  if (found.length > 0) return found;
  const there = playAt(all, name);
  if (there !== undefined) return [there];
  const names = all.map(({ play }) => play.play.name);
  const near = nearestWord(name, names);
  throw new CallError(`There is no play called "${name}". ${near === undefined ? `There are: ${names.slice(0, 20).join(', ')}.` : `Did you mean "${near}"?`}`);
}

/** By the file as it is printed, or its last part, and any line of the play. */
function playAt(all: readonly PlayInFile[], place: string): PlayInFile | undefined {
  const [, name, number] = /^(.+):(\d+)$/.exec(place.trim()) ?? [];
  if (name === undefined) return undefined;
  const file = name === '-' ? standardInput : name.replaceAll('\\', '/').replace(/^\.\//, '');
  const line = Number(number);
  return [(one: string) => one === file, (one: string) => one.endsWith(`/${file}`)].map((isMeant) => all.find(({ file: { name: one, firstLineOf }, play }) => isMeant(one) && firstLineOf(play) <= line && line < firstLineOf(play) + play.block.lines.length)).find((found) => found !== undefined);
}

/** `plays/all.play:12`: what a play is called by when another has its name. */
export function placeOf({ file, play }: PlayInFile): string {
  return `${file.name === standardInput ? '-' : file.name}:${file.firstLineOf(play)}`;
}

/** Said beside what is shown: the name that was asked for is that of several. */
export function remarkOnSameName(found: readonly PlayInFile[], shown: 'first' | 'all'): void {
  if (found.length < 2) return;
  const taken = shown === 'first' ? `This is the first; another one with --play ${placeOf(found[1]!)}` : `${found.length === 2 ? 'Both' : 'All'} are here; one alone with --play ${placeOf(found[0]!)}`;
  remark(`${found.length} plays are called “${found[0]!.play.play.name}”: ${found.map(placeOf).join(', ')}. ${taken}`);
}

/** The one play a call means: the only one, the one named, else the first. */
export function onePlay(files: readonly OpenedFile[], name: string | undefined): PlayInFile {
  const found = playsNamed(files, name);
  if (name !== undefined) remarkOnSameName(found, 'first');
  return found[0]!;
}
