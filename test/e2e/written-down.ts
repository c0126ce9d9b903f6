// What a window keeps for the next time it is opened.
import { until } from './vscode.ts';
import type { Editor } from './window.ts';

/** VS Code writes down what is open and how only every few seconds: a window that goes before finds nothing of it when it comes again. */
export async function writtenDown({ page }: Editor, words: string) {
  const isWritten = async (words: string): Promise<boolean> => {
    const done = <T>(request: IDBRequest<T>) => new Promise<T>((resolve, reject) => ((request.onsuccess = () => resolve(request.result)), (request.onerror = () => reject(request.error))));
    for (const { name } of await indexedDB.databases()) {
      if (!name?.startsWith('vscode-web-state-db')) continue;
      const db = await done(indexedDB.open(name));
      const items = [...db.objectStoreNames].includes('ItemTable') ? await done(db.transaction('ItemTable').objectStore('ItemTable').getAll()) : [];
      db.close();
      // A text in a text in a text: each has its own marks before the quotes.
      if (items.some((item) => String(item).replaceAll('\\', '').includes(words))) return true;
    }
    return false;
  };
  await until(`the window has written down ${words}`, () => page.evaluate(isWritten, words));
}
