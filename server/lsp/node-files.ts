// The files of a machine, for an editor that does not read them for the server.
// Not from `node:fs/promises`: that would be loaded at every start, and most texts use no other file.
import { promises } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { largestFile } from './largest-file.ts';
import type { FileAccess } from './play-files.ts';

export function filesOnDisk(folders: readonly string[]): FileAccess {
  return {
    list: async () => (await Promise.all(folders.map(playsBelow))).flat().sort(),
    read: async (uri) => {
      try {
        const path = fileURLToPath(uri);
        const found = await promises.stat(path);
        return found.isFile() && found.size <= largestFile ? await promises.readFile(path, 'utf8') : undefined;
      } catch {
        return undefined;
      }
    },
  };
}

async function playsBelow(folder: string): Promise<string[]> {
  const base = folder.endsWith('/') ? folder : `${folder}/`;
  try {
    const path = fileURLToPath(base);
    const entries = await promises.readdir(path, { withFileTypes: true });
    const found = entries.map(async (entry): Promise<string[]> => {
      const uri = new URL(encodeURIComponent(entry.name), pathToFileURL(path)).href;
      if (entry.isDirectory()) return entry.name === 'node_modules' || entry.name.startsWith('.') ? [] : playsBelow(uri);
      return entry.isFile() && entry.name.endsWith('.play') ? [uri] : [];
    });
    return (await Promise.all(found)).flat();
  } catch {
    return [];
  }
}
