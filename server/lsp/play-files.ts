// The `.play` files of a workspace that no editor has open: read when a file names one with `use`, or when somebody asks for the
// whole playbook. What is open in the editor is newer than what lies on a disk, and wins.
import type { Connection } from 'vscode-languageserver';
import { usedUris } from '../../language/names/lookup.ts';
import type { Documents } from './documents.ts';
import { isIgnoreFile } from './ignore-files.ts';
import { withoutLeftOut } from './left-out.ts';
import { listFilesMethod, readFileMethod, readList, readText } from './playbook-protocol.ts';
import { PROTOCOL_VERSION } from './protocol.ts';
import { reaches } from './users.ts';

/** How files are reached. Both never fail: what cannot be read is not there. */
export interface FileAccess {
  /** Uris of the `.play` files of the workspace. */
  readonly list: () => Promise<readonly string[]>;
  /** A `.play` file, or one that says which files do not count. */
  readonly read: (uri: string) => Promise<string | undefined>;
}

/** Milliseconds that a request about all plays waits for those that nobody has open; reading goes on behind it. */
export const longestRead = 5000;

/** No playbook has more; a folder that does is no playbook. */
const mostFiles = 10_000;
/** Read at a time: a machine allows only so many open files. */
const atOnce = 256;

/** Files as the client sees them: also on a remote machine, in an archive, in a browser. */
export function filesOfClient(connection: Pick<Connection, 'sendRequest'>): FileAccess {
  const ask = <Answer>(method: string, params: object, read: (value: unknown) => Answer | undefined): Promise<Answer | undefined> =>
    connection.sendRequest<unknown>(method, { version: PROTOCOL_VERSION, ...params }).then(read, () => undefined);
  return {
    list: async () => (await ask(listFilesMethod, {}, readList)) ?? [],
    read: async (uri) => (await ask(readFileMethod, { uri }, readText)) ?? undefined,
  };
}

export interface PlayFiles {
  /** Reads the files a document uses, and those that they use. Undefined: nothing is missing. */
  readonly fetchUsed: (uri: string) => Promise<void> | undefined;
  /** Reads every `.play` file of the workspace that counts; `again` looks for new ones, and lets go of those that are gone. */
  readonly fetchAll: (again: boolean) => Promise<void>;
  /** A file, or a folder with all that is in it, has come, changed or gone on the disk. The uris that somebody here has asked for. */
  readonly changed: (uri: string) => Promise<readonly string[]>;
  /** The editor has closed a file: what lies on the disk counts again. */
  readonly closed: (uri: string) => Promise<void>;
  /** Which files count may be another question now: other folders, other settings. */
  readonly lookAgain: () => Promise<void>;
}

export interface Workspace {
  readonly folders: () => readonly string[];
  readonly access: () => FileAccess;
  /** Patterns of the setting `files.leaveOut`. */
  readonly leaveOut: () => readonly string[];
}

/** @param readAlone files that nobody here uses have been read: a book among them may name the players of what is shown. */
export function readPlayFiles(documents: Documents, { folders, access, leaveOut }: Workspace, readAlone: () => void = () => undefined): PlayFiles {
  /** Every file asked for, whether it is there or not. */
  const asked = new Map<string, Promise<void>>();
  let listed: ReadonlySet<string> = new Set();
  let everything: Promise<void> | undefined;

  const pending = new Set<string>();
  /** Several are put into the book together: each time it becomes another one. */
  const read = (...uris: readonly string[]): Promise<void> => {
    const { read: readOne } = access();
    const reading: Promise<void> = Promise.all(uris.map(async (uri) => [uri, await readOne(uri)] as const)).then(async (texts) => {
      const newest = texts.filter(([uri]) => asked.get(uri) === reading);
      newest.forEach(([uri]) => pending.delete(uri));
      documents.setOnDisk(newest);
      // One asked for again meanwhile: that answer counts, and whoever waits for this one waits for it.
      await Promise.all(texts.map(([uri]) => (asked.get(uri) === reading ? undefined : asked.get(uri))));
    });
    for (const uri of uris) {
      asked.set(uri, reading);
      pending.add(uri);
    }
    return reading;
  };
  const readOnce = (uri: string): Promise<void> => asked.get(uri) ?? read(uri);
  const forget = (uri: string) => {
    asked.delete(uri);
    pending.delete(uri);
    documents.setOnDisk([[uri, undefined]]);
  };

  const isMissing = (uri: string): boolean => !documents.book().files.has(uri) && (!asked.has(uri) || pending.has(uri));
  const usedBy = (uri: string): string[] => {
    const file = documents.book().files.get(uri);
    return file === undefined ? [] : usedUris(file).map((use) => use.uri);
  };
  const isUsed = (uri: string): boolean => documents.all().some((open) => open.uri !== uri && reaches(documents.book(), open.uri, uri));

  async function fetchFrom(uris: readonly string[]): Promise<void> {
    const reached = new Set(uris);
    for (const uri of reached) {
      if (!documents.book().files.has(uri)) await readOnce(uri);
      for (const used of usedBy(uri)) reached.add(used);
    }
  }

  function missesSome(uri: string): boolean {
    const reached = new Set(usedBy(uri));
    for (const each of reached) {
      if (isMissing(each)) return true;
      for (const used of usedBy(each)) reached.add(used);
    }
    return false;
  }

  const counting = (uris: readonly string[]): Promise<readonly string[]> => withoutLeftOut(uris, folders(), leaveOut(), access().read);

  async function readAll(): Promise<void> {
    const found = new Set((await counting(await access().list())).slice(0, mostFiles));
    const gone = [...listed].filter((uri) => !found.has(uri));
    listed = found;
    const uris = [...found];
    const before = documents.book();
    for (let at = 0; at < uris.length; at += atOnce) {
      const some = uris.slice(at, at + atOnce);
      await Promise.all([read(...some.filter((uri) => !asked.has(uri))), ...some.map((uri) => asked.get(uri))]);
    }
    for (const uri of gone) if (!isUsed(uri)) forget(uri);
    if (documents.book() !== before) readAlone();
  }

  const lookAgain = async (): Promise<void> => {
    if (everything !== undefined) await (everything = readAll());
  };

  return {
    fetchUsed: (uri) => (missesSome(uri) ? fetchFrom(usedBy(uri)) : undefined),
    fetchAll(again) {
      if (everything === undefined || again) everything = readAll();
      return everything.then(() => Promise.all(asked.values())).then(() => undefined);
    },
    async changed(uri) {
      if (isIgnoreFile(uri)) {
        await lookAgain();
        return [];
      }
      if (!uri.endsWith('.play')) {
        const below = uri.endsWith('/') ? uri : `${uri}/`;
        const known = [...asked.keys()].filter((one) => one.startsWith(below));
        await read(...known);
        await lookAgain();
        return known;
      }
      if (!asked.has(uri)) {
        if (everything === undefined || (await counting([uri])).length === 0) return [];
        listed = new Set([...listed, uri]);
      }
      await read(uri);
      return [uri];
    },
    async closed(uri) {
      if (listed.has(uri) || isUsed(uri)) await read(uri);
      else forget(uri);
    },
    lookAgain,
  };
}
