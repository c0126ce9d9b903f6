// Files as git has them: what they were in another version of the folder. Asks the git that is installed; changes nothing.
import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { dirname, posix, relative, resolve } from 'node:path';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { CallError } from './call-error.ts';
import { decode, type SourceFile } from './files.ts';
import type { Shelf } from './open-book.ts';

/** A version of a folder: what a call names in it, and what those files use. */
export interface GitVersion {
  readonly sources: readonly SourceFile[];
  readonly shelf: Shelf;
}

export interface Repository {
  /** Of what a branch, a tag or a commit is called: the commit. */
  readonly commitOf: (revision: string) => string;
  /** Where two lines of versions parted: what has been done on the one since is not a change of the other. */
  readonly parting: (one: string, other: string) => string | undefined;
  readonly versionAt: (commit: string, called: string) => GitVersion;
}

/** The repository that a file or a folder lies in, or lay in. */
export function repositoryOf(wanted: string): Repository {
  const folder = folderOf(wanted);
  const git = (...args: readonly string[]) => askGit(folder, wanted, args);
  const prefix = git('rev-parse', '--show-prefix').toString().trim();
  const pathOf = (file: string) => posix.join(prefix, relative(folder, resolve(file)).replaceAll('\\', '/'));
  const onDisk = (path: string) => resolve(folder, posix.relative(prefix === '' ? '.' : prefix, path));
  return {
    commitOf: (revision) => commitOf(git, revision),
    parting: (one, other) => said(() => git('merge-base', one, other)),
    versionAt: (commit, called) => {
      const blobs = blobsOf(git('ls-tree', '-r', '-z', '--full-tree', commit).toString());
      const nameAt = (path: string) => `${called}:${relative('', onDisk(path)).replaceAll('\\', '/')}`;
      const text = (path: string) => {
        const blob = blobs.get(path);
        return blob === undefined ? undefined : decode(git('cat-file', 'blob', blob));
      };
      const names = [...blobs.keys()].filter(isWanted(pathOf(wanted)));
      const texts = contentsOf((asked) => askGit(folder, wanted, ['cat-file', '--batch'], asked), names.map((path) => blobs.get(path)!)).map(decode);
      return {
        sources: names.map((path, at) => ({ name: nameAt(path), text: texts[at]!, path: onDisk(path) })),
        shelf: { nameOf: (file) => nameAt(pathOf(file)), textAt: (file) => text(pathOf(file)) },
      };
    },
  };
}

type Git = (...args: readonly string[]) => Buffer;

/** The file itself, or the plays below the folder. */
function isWanted(wanted: string): (path: string) => boolean {
  const folder = wanted.replace(/\/$/, '');
  const inside = folder === '.' || folder === '' ? '' : `${folder}/`;
  return (path) => path === wanted || (path.startsWith(inside) && path.endsWith('.play') && !path.split('/').includes('node_modules'));
}

/** Of what `ls-tree -z` lists the files, by path: `100644 blob 1a2b…\tplays/tide.play`. */
function blobsOf(listed: string): ReadonlyMap<string, string> {
  const rows = listed.split('\0').map((row) => /^100\d+ blob (\w+)\t(.+)$/s.exec(row));
  return new Map(rows.flatMap((row) => (row === null ? [] : [[row[2]!, row[1]!] as const])));
}

/** What the files hold, in one question for all of them; each answer is a line `1a2b… blob 120`, so many bytes, and a line's end. */
function contentsOf(ask: (asked: string) => Buffer, blobs: readonly string[]): readonly Buffer[] {
  if (blobs.length === 0) return [];
  const answer = ask(`${blobs.join('\n')}\n`);
  let at = 0;
  return blobs.map(() => {
    const from = answer.indexOf('\n', at) + 1;
    const head = answer.toString('latin1', at, from).trim();
    const size = Number(/ blob (\d+)$/.exec(head)?.[1]);
    if (Number.isNaN(size)) throw new CallError(`git no longer holds all files of that version: ${head}. Fetch it again, or give both versions: setwright compare OLDER NEWER`);
    at = from + size + 1;
    return answer.subarray(from, from + size);
  });
}

/** The nearest folder that is there: what is asked for may be gone. */
function folderOf(wanted: string): string {
  for (let folder = resolve(wanted); ; folder = dirname(folder)) if (folder === dirname(folder) || statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true) return folder;
}

/** A clone that a machine made often knows a branch only as the server's. */
function commitOf(git: Git, revision: string): string {
  const commit = revision.startsWith('-') ? undefined : [revision, `origin/${revision}`].map((name) => said(() => git('rev-parse', '--verify', '--quiet', `${name}^{commit}`))).find((hash) => hash !== undefined);
  if (commit !== undefined) return commit;
  const names = (said(() => git('for-each-ref', '--format=%(refname:short)', 'refs/heads', 'refs/tags')) ?? '').split('\n').filter((name) => name !== '');
  const near = nearestWord(revision, names);
  throw new CallError(`git knows no version called ${revision} here. ${near === undefined ? (names.length === 0 ? 'A version is a branch, a tag or a commit.' : `There are: ${names.slice(0, 20).join(', ')}.`) : `Did you mean ${near}?`}`);
}

/** What it says, or nothing where it says no. */
function said(ask: () => Buffer): string | undefined {
  try {
    return ask().toString().trim() || undefined;
  } catch (error) {
    if (error instanceof CallError) throw error;
    return undefined;
  }
}

const most = 1 << 29;

function askGit(folder: string, wanted: string, args: readonly string[], asked = ''): Buffer {
  try {
    return execFileSync('git', ['-C', folder, ...args], { input: asked, maxBuffer: most, stdio: ['pipe', 'pipe', 'pipe'], env: { ...process.env, LC_ALL: 'C' } });
  } catch (error) {
    const { code, stderr } = error as { readonly code?: unknown; readonly stderr?: Buffer };
    const why = String(stderr ?? '');
    const instead = 'Without git give both versions: setwright compare OLDER NEWER';
    if (code === 'ENOENT') throw new CallError(`How the plays were is asked of git, and there is no git on this computer. ${instead}`);
    if (why.includes('not a git repository')) throw new CallError(`${wanted} lies in no git repository, so it has no earlier version here. ${instead}`);
    if (why.includes('dubious ownership')) throw new CallError(`The git repository of ${wanted} belongs to somebody else on this computer, so git does not open it. If you trust it: git config --global --add safe.directory ${folder}`);
    throw error;
  }
}
