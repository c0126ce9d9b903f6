// The language server: one object on a connection and a host, so that tests need no process and no socket.
import { TextDocuments, TextDocumentSyncKind, type Connection, type InitializeResult } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { answerUnlessCancelled } from './cancelling.ts';
import { hover } from './hover.ts';
import type { Host } from './host.ts';

export interface Server {
  readonly documents: TextDocuments<TextDocument>;
  /** Starts to answer; nothing is read from the connection before. */
  listen(): void;
}

export function createServer(connection: Connection, host: Host): Server {
  const documents = new TextDocuments(TextDocument);

  connection.onInitialize(
    (): InitializeResult => ({
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        hoverProvider: true,
      },
      serverInfo: { name: `Setwright language server (${host.place})`, version: host.version },
    }),
  );

  // Nothing is checked yet. The empty list is sent all the same: it carries the version it belongs to.
  documents.onDidChangeContent(({ document }) => {
    void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics: [] });
  });
  documents.onDidClose(({ document }) => {
    void connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
  });

  connection.onHover((params, token) =>
    answerUnlessCancelled(token, () => {
      const document = documents.get(params.textDocument.uri);
      return document ? hover(document, params.position) : null;
    }),
  );

  return {
    documents,
    listen() {
      documents.listen(connection);
      connection.listen();
    },
  };
}
