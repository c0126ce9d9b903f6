// Which files of a workspace are nobody's plays: what its .gitignore and .ignore files leave out, and what a setting adds. A file that
// another names with `use` is read all the same.
import ignore, { type Ignore } from 'ignore';
import { readablePart } from '../../language/names/uris.ts';
import { ignoreFileNames } from './ignore-files.ts';

/** Of these files those that count. `roots` are the workspace's folders; `patterns` are written as in a .gitignore at each root. Never fails. */
export async function withoutLeftOut(uris: readonly string[], roots: readonly string[], patterns: readonly string[], read: (uri: string) => Promise<string | undefined>): Promise<readonly string[]> {
  const rules = new Map<string, Promise<Ignore>>();
  const rulesIn = (folder: string, more: readonly string[] = []): Promise<Ignore> => {
    const known = rules.get(folder) ?? rulesOf(folder, more, read);
    rules.set(folder, known);
    return known;
  };
  const counts = async (uri: string): Promise<boolean> => {
    const root = roots.map(withSlash).filter((each) => uri.startsWith(each)).toSorted((a, b) => b.length - a.length)[0];
    if (root === undefined) return true;
    const parts = uri.slice(root.length).split('/');
    let out = false;
    for (let depth = 0; depth < parts.length; depth++) {
      const folder = root + parts.slice(0, depth).map((part) => `${part}/`).join('');
      const verdict = verdictOn(await rulesIn(folder, depth === 0 ? patterns : []), parts.slice(depth).map(readablePart).join('/'));
      // The nearer file has the last word.
      out = verdict ?? out;
    }
    return !out;
  };
  const kept = await Promise.all(uris.map(async (uri) => ({ uri, counts: await counts(uri) })));
  return kept.filter((one) => one.counts).map(({ uri }) => uri);
}

async function rulesOf(folder: string, more: readonly string[], read: (uri: string) => Promise<string | undefined>): Promise<Ignore> {
  const texts = await Promise.all(ignoreFileNames.map((name) => read(folder + name)));
  return ignore().add(texts.filter((text) => text !== undefined).join('\n')).add([...more]);
}

/** Whether it is left out; undefined where these rules say nothing of it. */
function verdictOn(rules: Ignore, path: string): boolean | undefined {
  if (!ignore.isPathValid(path)) return undefined;
  const { ignored, unignored } = rules.test(path);
  return ignored ? true : unignored ? false : undefined;
}

const withSlash = (folder: string): string => (folder.endsWith('/') ? folder : `${folder}/`);
