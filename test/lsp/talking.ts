// A client and a server in one process, on streams: what they say is what goes over a wire.
import { PassThrough } from 'node:stream';
import { createConnection, createProtocolConnection, StreamMessageReader, StreamMessageWriter, type ProtocolConnection } from 'vscode-languageserver/node';
import * as lsp from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createServer } from '../../server/lsp/server.ts';
import { nodeHost } from '../../server/lsp/node-host.ts';

export interface Client {
  readonly connection: ProtocolConnection;
  /** What the server says it can do. */
  readonly capabilities: lsp.ServerCapabilities;
  /** Every publication of diagnostics so far. */
  readonly published: lsp.PublishDiagnosticsParams[];
  open(uri: string, text: string, version?: number): Promise<void>;
  change(uri: string, version: number, changes: readonly lsp.TextDocumentContentChangeEvent[]): Promise<void>;
  /** The diagnostics of a version, once they are published. */
  diagnosticsOf(uri: string, version: number): Promise<lsp.Diagnostic[]>;
  close(): void;
}

export const uri = 'file:///plays/lighthouse.play';

/** What a client says of itself as it starts. */
export interface Said {
  readonly options?: object;
  readonly capabilities?: lsp.ClientCapabilities;
  readonly folders?: readonly string[];
}

/** A client in front of a server in this process. */
export async function talk({ options = {}, capabilities = {}, folders }: Said = {}): Promise<Client> {
  const [there, back] = [new PassThrough(), new PassThrough()];
  const server = createServer(createConnection(new StreamMessageReader(there), new StreamMessageWriter(back)), nodeHost);
  server.listen();
  return clientOn(createProtocolConnection(new StreamMessageReader(back), new StreamMessageWriter(there)), options, capabilities, folders);
}

/** A client on a connection to a server anywhere, initialized. */
export async function clientOn(connection: ProtocolConnection, options: object = {}, capabilities: lsp.ClientCapabilities = {}, folders?: readonly string[]): Promise<Client> {
  const published: lsp.PublishDiagnosticsParams[] = [];
  const waiting = new Set<() => void>();
  connection.onNotification(lsp.PublishDiagnosticsNotification.type, (params) => {
    published.push(params);
    waiting.forEach((look) => look());
  });
  connection.listen();
  const workspaceFolders = folders?.map((uri) => ({ uri, name: uri }));
  const { capabilities: able } = await connection.sendRequest(lsp.InitializeRequest.type, { processId: null, rootUri: null, capabilities, initializationOptions: options, ...(workspaceFolders && { workspaceFolders }) });
  await connection.sendNotification(lsp.InitializedNotification.type, {});
  return {
    connection,
    capabilities: able,
    published,
    open: (at, text, version = 1) => connection.sendNotification(lsp.DidOpenTextDocumentNotification.type, { textDocument: { uri: at, languageId: 'setwright', version, text } }),
    change: (at, version, contentChanges) => connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, { textDocument: { uri: at, version }, contentChanges: [...contentChanges] }),
    diagnosticsOf: (at, version) =>
      new Promise((resolve) => {
        const look = () => {
          const found = published.findLast((one) => one.uri === at && one.version === version);
          if (found === undefined) return;
          waiting.delete(look);
          resolve(found.diagnostics);
        };
        waiting.add(look);
        look();
      }),
    close: () => connection.dispose(),
  };
}

/** A text after edits of the protocol. */
export function edited(text: string, edits: readonly lsp.TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create(uri, 'setwright', 1, text), [...edits]);
}

/** All files after a workspace edit, by their addresses. */
export function editedFiles(files: Readonly<Record<string, string>>, edit: lsp.WorkspaceEdit): Record<string, string> {
  const after = { ...files };
  for (const change of edit.documentChanges ?? []) {
    if (!('textDocument' in change)) continue;
    after[change.textDocument.uri] = edited(after[change.textDocument.uri] ?? '', change.edits as lsp.TextEdit[]);
  }
  return after;
}

/** The words a range of a text holds. */
export function wordsIn(text: string, range: lsp.Range): string {
  const document = TextDocument.create(uri, 'setwright', 1, text);
  return document.getText(range);
}

/** A text without its cursor mark `|`, and where that stood. */
export function atMark(marked: string): { readonly text: string; readonly position: lsp.Position } {
  const at = marked.indexOf('|');
  if (at < 0) throw new Error('no | in the text');
  const before = marked.slice(0, at).split('\n');
  return { text: marked.slice(0, at) + marked.slice(at + 1), position: { line: before.length - 1, character: before.at(-1)!.length } };
}

export async function until(ask: () => boolean) {
  for (let times = 0; !ask(); times++) {
    if (times > 3000) throw new Error('waited in vain');
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
