// What the extension reads for the language server: plays, what says which of them count, and nothing that would keep everybody waiting.
import type { BaseLanguageClient } from 'vscode-languageclient';
import { expect, test, vi } from 'vitest';
import { serveFiles } from '../../client/files-for-server.ts';
import { readFileMethod } from '../../server/lsp/playbook-protocol.ts';

const onDisk = new Map([['/plays/ours.play', 40], ['/plays/film.play', 300_000_000], ['/plays/.gitignore', 12], ['/plays/letters.txt', 30]]);
const read = vi.hoisted(() => [] as string[]);

vi.mock('vscode', () => ({
  FileType: { File: 1, Directory: 2 },
  Uri: { parse: (text: string) => ({ path: text.replace('file://', '') }) },
  workspace: {
    fs: {
      stat: async ({ path }: { path: string }) => {
        const size = onDisk.get(path);
        if (size === undefined) throw new Error('not there');
        return { size };
      },
      readFile: async ({ path }: { path: string }) => (read.push(path), new TextEncoder().encode(`text of ${path}`)),
    },
  },
}));

const handlers = new Map<string, (value: unknown) => Promise<unknown>>();
const client = { onRequest: (method: string, answer: (value: unknown) => Promise<unknown>) => (handlers.set(method, answer), { dispose: () => undefined }) };
serveFiles(client as unknown as BaseLanguageClient);

test.each([
  ['/plays/ours.play', 'text of /plays/ours.play'], ['/plays/.gitignore', 'text of /plays/.gitignore'], ['/plays/gone.play', null], ['/plays/letters.txt', null],
  // Three hundred megabytes are no text that a coach wrote.
  ['/plays/film.play', null],
])('%s is answered with %s', async (path, text) => {
  expect(await handlers.get(readFileMethod)!({ version: 1, uri: `file://${path}` })).toBe(text);
  expect(read.includes(path)).toBe(text !== null);
});

test('a question that cannot be read is answered with nothing', async () => {
  expect(await handlers.get(readFileMethod)!({ uri: 3 })).toBeNull();
});
