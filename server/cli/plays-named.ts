// The plays a call means.
import type { Compiled } from '../../language/compile.ts';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { CallError } from './call-error.ts';
import type { OpenedFile } from './open-book.ts';

export interface PlayInFile {
  readonly file: OpenedFile;
  readonly play: Compiled;
}

/** All plays of the files, or those of one name (upper and lower case alike). None is an error with the names there are. */
export function playsNamed(files: readonly OpenedFile[], name: string | undefined): readonly PlayInFile[] {
  const all = files.flatMap((file) => file.plays().map((play) => ({ file, play })));
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
