// The files of the workspace for the language server, wherever they are: on this machine, a remote one, in a browser's memory.
import { FileType, Uri, workspace, type Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { ignoreFileNames, isIgnoreFile } from '../server/lsp/ignore-files.ts';
import { largestFile } from '../server/lsp/largest-file.ts';
import { listFilesMethod, readFileMethod, readReadFile } from '../server/lsp/playbook-protocol.ts';

const pattern = '**/*.play';
const leftOut = '**/node_modules/**';
const most = 10_000;

export function serveFiles(client: BaseLanguageClient): Disposable[] {
  return [
    client.onRequest(listFilesMethod, async () => (await playFiles()).map(String)),
    client.onRequest(readFileMethod, async (value: unknown) => {
      const question = readReadFile(value);
      return question === undefined ? null : textOf(Uri.parse(question.uri));
    }),
  ];
}

/** Plays, and what says which of them do not count. */
export const watchPlayFiles = () => workspace.createFileSystemWatcher(`**/{*.play,${ignoreFileNames.join(',')}}`);

/** Every `.play` file of the workspace folders, in the order of their names. */
async function playFiles(): Promise<readonly Uri[]> {
  const found = await workspace.findFiles(pattern, leftOut, most).then((uris) => uris, () => []);
  const files = found.length > 0 ? found : await walkFolders();
  return files.toSorted((a, b) => (a.toString() < b.toString() ? -1 : 1));
}

/** Not every virtual file system can be searched; all can be walked. */
async function walkFolders(): Promise<readonly Uri[]> {
  const files: Uri[] = [];
  const waiting = (workspace.workspaceFolders ?? []).map(({ uri }) => ({ uri, depth: 0 }));
  for (const { uri, depth } of waiting) {
    const entries = await workspace.fs.readDirectory(uri).then((list) => list, () => []);
    for (const [name, type] of entries) {
      if (files.length >= most) return files;
      if ((type & FileType.Directory) !== 0 && depth < 5 && name !== 'node_modules' && !name.startsWith('.')) waiting.push({ uri: Uri.joinPath(uri, name), depth: depth + 1 });
      if ((type & FileType.File) !== 0 && name.endsWith('.play')) files.push(Uri.joinPath(uri, name));
    }
  }
  return files;
}

async function textOf(uri: Uri): Promise<string | null> {
  if (!uri.path.endsWith('.play') && !isIgnoreFile(uri.path)) return null;
  try {
    const { size } = await workspace.fs.stat(uri);
    return size <= largestFile ? new TextDecoder().decode(await workspace.fs.readFile(uri)) : null;
  } catch {
    return null;
  }
}
