// The plays a call means.
import type { Compiled } from '../../language/compile.ts';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { CallError } from './call-error.ts';
import type { OpenedFile } from './open-book.ts';

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

/** All plays of the files, or those of one name (upper and lower case alike). None is an error with the names there are. */
export function playsNamed(files: readonly OpenedFile[], name: string | undefined): readonly PlayInFile[] {
  const all = files.flatMap((file) => file.plays().map((play): PlayInFile => ({ file, play })));
  if (all.length === 0) throw new CallError(`There is no play in ${files.map((file) => file.name).join(', ')}. A play starts with a line such as: play "Lighthouse"`);
  if (name === undefined) return all;
  const found = all.filter(({ play }) => play.play.name.toLowerCase() === name.trim().toLowerCase());
  if (found.length > 0) return found;
  const names = all.map(({ play }) => play.play.name);
  const near = nearestWord(name, names);
  throw new CallError(`There is no play called "${name}". ${near === undefined ? `There are: ${names.slice(0, 20).join(', ')}.` : `Did you mean "${near}"?`}`);
}

/** The one play a call means: the only one, the one named, else the first. */
export function onePlay(files: readonly OpenedFile[], name: string | undefined): PlayInFile {
  return playsNamed(files, name)[0]!;
}
