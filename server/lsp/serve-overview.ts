// What an editor asks about a whole document, or all of them: outline, folds, lenses, links, colours, hints beside the lines.
import type { Block } from '../../language/book/book.ts';
import type { Asking } from './asking.ts';
import { inlayHints } from './inlay-hints.ts';
import { lenses } from './lenses.ts';
import { links } from './links.ts';
import { compileOneByOne } from './one-by-one.ts';
import { keepTokens, semanticTokens } from './semantic-tokens.ts';
import { foldings, symbols } from './symbols.ts';
import { workspaceSymbols } from './workspace-symbols.ts';

export interface Overview {
  readonly closed: (uri: string) => void;
}

export function serveOverview(asking: Asking): Overview {
  const { connection, documents, keeper, options, say, answer, answerAll, withAllFiles } = asking;
  const compileIn = (uri: string) => (block: Block) => keeper.compile(documents.book(), uri, block);
  const tokens = keepTokens();
  connection.onDocumentSymbol(({ textDocument: { uri } }, token) => answer(token, uri, (document) => symbols(document, say)));
  connection.onWorkspaceSymbol(async ({ query }, token) => {
    await withAllFiles();
    return answerAll(token, () => workspaceSymbols(documents.book(), query));
  });
  connection.onFoldingRanges(({ textDocument: { uri } }, token) => answer(token, uri, foldings));
  connection.onCodeLens(async ({ textDocument: { uri } }, token) => {
    // Every play's times: those of a long file not in one go.
    await compileOneByOne(asking, uri, () => token.isCancellationRequested);
    return answer(token, uri, (document) => lenses(document, compileIn(uri), say, options().commands === true));
  });
  connection.onDocumentLinks(({ textDocument: { uri } }, token) => answer(token, uri, links));

  const { semanticTokens: on } = connection.languages;
  const none = { data: [] };
  on.on(async ({ textDocument: { uri } }, token) => (await answer(token, uri, tokens.full)) ?? none);
  on.onDelta(async ({ textDocument: { uri }, previousResultId }, token) => (await answer(token, uri, (document) => tokens.delta(document, previousResultId))) ?? none);
  on.onRange(async ({ textDocument: { uri }, range }, token) => (await answer(token, uri, (document) => ({ data: semanticTokens(document, { from: range.start.line, to: range.end.line }) }))) ?? none);

  connection.languages.inlayHint.on(({ textDocument: { uri }, range }, token) =>
    answer(token, uri, (document) => inlayHints(document, compileIn(uri), options().settings.hints, range, say)),
  );
  return { closed: tokens.forget };
}
