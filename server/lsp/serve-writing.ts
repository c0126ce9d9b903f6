// What changes the text: what can be typed next, mends and other actions, formatting, names changed everywhere.
import { LSPErrorCodes, MessageType, ResponseError, ShowMessageNotification } from 'vscode-languageserver';
import { asMessage } from './as-message.ts';
import type { Asking } from './asking.ts';
import { codeActions, resolveAction } from './code-actions.ts';
import { completion, documented } from './completion/completion.ts';
import { takesShared } from './completion/items.ts';
import { keepStanding } from './completion/standing.ts';
import { formatDocument, formatRange, formatTyped } from './formatting.ts';
import { moveFiles, prepareRename, rename } from './rename.ts';

export function serveWriting(asking: Asking): void {
  const { connection, documents, answer, answerTyping, answerAll, withAllFiles } = asking;
  const standing = keepStanding();
  connection.onCompletion(({ textDocument: { uri }, position }, token) =>
    answerTyping(token, uri, (document) => {
      const client = asking.client();
      const withStops = client.textDocument?.completion?.completionItem?.snippetSupport === true;
      return completion(documents.book(), document, position, { say: asking.say, standing, withStops, sharing: takesShared(client), times: () => asking.compileAt(document, position.line)?.timeline.times });
    }),
  );
  connection.onCompletionResolve((item, token) => answerAll(token, () => documented(asking, item)));
  connection.onCodeAction(({ textDocument: { uri }, range, context: { diagnostics, only } }, token) => answer(token, uri, (document) => codeActions(asking, document, { range, diagnostics, ...(only && { only }) })));
  connection.onCodeActionResolve((action, token) =>
    answerAll(token, () => {
      const resolved = resolveAction(asking, action);
      if ('action' in resolved) return resolved.action;
      // Editors show the error of a resolve to nobody.
      const reason = asMessage(asking.say(resolved.refused));
      void connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Info, message: reason });
      throw new ResponseError(LSPErrorCodes.RequestFailed, reason);
    }),
  );

  connection.onDocumentFormatting(({ textDocument: { uri } }, token) => answer(token, uri, formatDocument));
  connection.onDocumentRangeFormatting(({ textDocument: { uri }, range }, token) => answer(token, uri, (document) => formatRange(document, range)));
  connection.onDocumentOnTypeFormatting(({ textDocument: { uri }, position, ch }, token) => answer(token, uri, (document) => formatTyped(document, position.line, ch)));

  connection.onPrepareRename(({ textDocument: { uri }, position }, token) => answer(token, uri, (document) => prepareRename(documents.book(), document, position, asking.say)));
  connection.onRenameRequest(async ({ textDocument: { uri }, position, newName }, token) => {
    await withAllFiles();
    return answer(token, uri, (document) => rename(documents, document, position, newName, asking.say));
  });
  connection.workspace.onWillRenameFiles(async ({ files }, token) => {
    await withAllFiles();
    return answerAll(token, () => moveFiles(documents, files.map(({ oldUri, newUri }) => ({ from: oldUri, to: newUri }))));
  });
}
