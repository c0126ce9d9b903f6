// The `.play` files of a workspace that no editor has open: read when a file names one with `use`, or when somebody asks for the
// whole playbook. What is open in the editor is newer than what lies on a disk, and wins.
import type { Connection } from 'vscode-languageserver';
import { usedUris } from '../../language/names/lookup.ts';
import type { Documents } from './documents.ts';
import { listFilesMethod, readFileMethod, readList, readText } from './playbook-protocol.ts';
import { PROTOCOL_VERSION } from './protocol.ts';

/** How files are reached. Both never fail: what cannot be read is not there. */
export interface FileAccess {
  /** Uris of the `.play` files of the workspace. */
  readonly list: () => Promise<readonly string[]>;
  readonly read: (uri: string) => Promise<string | undefined>;
}

/** No playbook has more; a folder that does is no playbook. */
const mostFiles = 2000;

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
  /** Reads every `.play` file of the workspace; `again` looks for new ones. */
  readonly fetchAll: (again: boolean) => Promise<void>;
  /** A file has come, changed or gone on the disk. */
  readonly changed: (uri: string) => Promise<void>;
}

export function readPlayFiles(documents: Documents, access: () => FileAccess): PlayFiles {
  /** Every file asked for, whether it is there or not. */
  const asked = new Map<string, Promise<void>>();
  let everything: Promise<void> | undefined;

  const read = async (uri: string): Promise<void> => documents.setOnDisk(uri, await access().read(uri));
  const readOnce = (uri: string): Promise<void> => {
    const reading = asked.get(uri) ?? read(uri);
    asked.set(uri, reading);
    return reading;
  };
  const isMissing = (uri: string): boolean => !documents.book().files.has(uri) && !asked.has(uri);
  const usedBy = (uri: string): string[] => {
    const file = documents.book().files.get(uri);
    return file === undefined ? [] : usedUris(file).map((use) => use.uri);
  };

  async function fetchFrom(uris: readonly string[]): Promise<void> {
    const reached = new Set(uris);
    for (const uri of reached) {
      if (isMissing(uri)) await readOnce(uri);
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

  return {
    fetchUsed: (uri) => (missesSome(uri) ? fetchFrom(usedBy(uri)) : undefined),
    fetchAll(again) {
      if (everything === undefined || again) {
        everything = access()
          .list()
          .then(async (uris) => void (await Promise.all(uris.slice(0, mostFiles).map(readOnce))));
      }
      return everything.then(() => Promise.all(asked.values())).then(() => undefined);
    },
    async changed(uri) {
      if (!asked.has(uri) && everything === undefined) return;
      const reading = read(uri);
      asked.set(uri, reading);
      await reading;
    },
  };
}
