// What the server says it can do. It stands apart from what does it: an editor asks for this first, and is answered before the rest is
// loaded (node-first-answer.ts).
import { TextDocumentSyncKind, type ClientCapabilities, type FileOperationRegistrationOptions, type InitializeResult, type ServerCapabilities } from 'vscode-languageserver';
import { CodeActionKind, type SemanticTokensLegend } from 'vscode-languageserver-types';
import type { Host } from './host.ts';

export const tokenTypes = ['variable', 'parameter', 'function', 'enumMember', 'number', 'class', 'method', 'event', 'struct', 'property', 'namespace', 'string', 'comment'] as const;
const legend: SemanticTokensLegend = { tokenTypes: [...tokenTypes], tokenModifiers: ['declaration'] };

export const fixAllKind = `${CodeActionKind.SourceFixAll}.setwright`;
const actionKinds = [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, CodeActionKind.RefactorExtract, fixAllKind];

const filesOfPlays: FileOperationRegistrationOptions = { filters: [{ pattern: { glob: '**/*.play', matches: 'file' } }, { pattern: { glob: '**', matches: 'folder' } }] };

const pointing: ServerCapabilities = {
  hoverProvider: true,
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  selectionRangeProvider: true,
};

const writing: ServerCapabilities = {
  completionProvider: { triggerCharacters: [' ', '"', '“', ':', ',', '-'], resolveProvider: true },
  codeActionProvider: { codeActionKinds: actionKinds, resolveProvider: true },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n', moreTriggerCharacter: ['"', '“'] },
  renameProvider: { prepareProvider: true },
};

const overview: ServerCapabilities = {
  documentSymbolProvider: { label: 'Setwright' },
  workspaceSymbolProvider: true,
  foldingRangeProvider: true,
  codeLensProvider: { resolveProvider: false },
  documentLinkProvider: { resolveProvider: false },
  semanticTokensProvider: { legend, full: { delta: true }, range: true },
  inlayHintProvider: true,
};

const workspace: ServerCapabilities['workspace'] = {
  workspaceFolders: { supported: true, changeNotifications: true },
  fileOperations: { willRename: filesOfPlays, didRename: filesOfPlays, didDelete: filesOfPlays, didCreate: filesOfPlays },
};

const findingsForThoseWhoAsk: ServerCapabilities = { diagnosticProvider: { identifier: 'setwright', interFileDependencies: true, workspaceDiagnostics: true, workDoneProgress: true } };

export function abilities(client: ClientCapabilities, { place, version }: Pick<Host, 'place' | 'version'>): InitializeResult {
  return {
    capabilities: {
      positionEncoding: 'utf-16',
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, willSave: true },
      ...pointing, ...writing, ...overview, workspace,
      ...(client.textDocument?.diagnostic !== undefined && findingsForThoseWhoAsk),
    },
    serverInfo: { name: `Setwright language server (${place})`, version },
  };
}
