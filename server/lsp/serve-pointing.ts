// What an editor asks about one place of the text: what it means, where it is given, where else it stands.
import type { Asking } from './asking.ts';
import { hasGroundPage } from './ground-page.ts';
import { hover } from './hover.ts';
import { definition, highlights, references } from './navigation.ts';
import { selections } from './selections.ts';

export function servePointing({ connection, host, documents, keeper, answer, compileAt, findingsOf, client, options, say, withAllFiles }: Asking): void {
  /** A client that shows our pages has one for each spot and alignment; beside the program on a disk there is one for all. */
  const pageOf = (key: string): string | undefined => {
    if (!hasGroundPage(key)) return undefined;
    const { pages } = options();
    return pages?.replace('{code}', encodeURIComponent(key)) ?? host.manual?.replace('checks.md#{code}', `${key.startsWith('spot') ? 'spots' : 'alignments'}.md`);
  };
  connection.onHover(({ textDocument: { uri }, position }, token) => answer(token, uri, (document) => hover(document, compileAt(document, position.line), findingsOf(uri, position.line), position, { say, theme: options().pictures, book: documents.book(), compile: (at, play) => keeper.compile(documents.book(), at, play) })));
  connection.onDefinition(({ textDocument: { uri }, position }, token) =>
    answer(token, uri, (document) => {
      const found = definition(documents.book(), document, compileAt(document, position.line), position, pageOf);
      if (client().textDocument?.definition?.linkSupport === true) return found;
      return found.map(({ targetUri, targetSelectionRange }) => ({ uri: targetUri, range: targetSelectionRange }));
    }),
  );
  connection.onReferences(async ({ textDocument: { uri }, position, context }, token) => {
    await withAllFiles();
    return answer(token, uri, (document) => references(documents.book(), document, position, context.includeDeclaration));
  });
  connection.onDocumentHighlight(({ textDocument: { uri }, position }, token) => answer(token, uri, (document) => highlights(documents.book(), document, position)));
  connection.onSelectionRanges(({ textDocument: { uri }, positions }, token) => answer(token, uri, (document) => selections(document, positions)));
}
