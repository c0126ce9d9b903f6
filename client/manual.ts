// The manual of the findings as read-only documents: what the code beside a message links to. The spots and alignments have pages there too.
import { workspace, type Disposable, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { manualMethod } from '../server/lsp/protocol.ts';

const scheme = 'setwright-manual';
/** Where the server finds the entry of a finding's code, or of a spot. */
export const manualLink = `${scheme}:/{code}.md`;

export function registerManual(running: Promise<BaseLanguageClient>): Disposable {
  return workspace.registerTextDocumentContentProvider(scheme, {
    async provideTextDocumentContent({ path }: Uri) {
      const client = await running;
      const text: unknown = await client.sendRequest(manualMethod, path.replace(/^\//, '').replace(/\.md$/, ''));
      return typeof text === 'string' ? text : '';
    },
  });
}
