// What a client that shows plays asks beyond the Language Server Protocol.
import type { CancellationToken } from 'vscode-languageserver';
import { firstLineOf } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { drawPlay } from '../../language/picture/strip.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { namedByBook } from '../../language/play/read-names.ts';
import type { Asking } from './asking.ts';
import { changeByHand } from './by-hand.ts';
import type { OpenDocument } from './documents.ts';
import { manualText } from './manual.ts';
import * as protocol from './protocol.ts';
import { showPlays, type ShownPlays } from './shown-plays.ts';
import { partAtPosition, rangeOfPart } from './text-and-time.ts';

export function servePlays(asking: Asking): ShownPlays {
  const { connection, host, documents, written, answer, compileKey, compileAt, say } = asking;
  const named = (uri: string, compiled: Compiled): Compiled => namedByBook(compiled, documents.book(), uri);
  const shown = showPlays(
    host,
    {
      document: documents.get,
      playbackOf(uri, key) {
        const document = documents.get(uri);
        const compiled = document && compileKey(document, key);
        if (document === undefined || compiled === undefined) return undefined;
        const findings = written.quieter(uri, compiled.block, firstLineOf(document.file, key) ?? 0, compiled.findings);
        return playbackOf({ ...named(uri, compiled), findings, say });
      },
    },
    (frame) => void connection.sendNotification(protocol.frameMethod, frame),
  );
  connection.onNotification(protocol.showMethod, (value: unknown) => {
    const wanted = protocol.readShow(value);
    if (wanted !== undefined) shown.show(wanted);
  });
  connection.onNotification(protocol.hideMethod, (value: unknown) => {
    const wanted = protocol.readHide(value);
    if (wanted !== undefined) shown.hide(wanted.panel);
  });
  /** A question about an open document; one that cannot be read is answered with nothing. */
  function answers<Question extends { readonly uri: string }>(method: string, read: (value: unknown) => Question | undefined, work: (document: OpenDocument, question: Question) => object | null) {
    connection.onRequest<object | null, void>(method, (value: unknown, token: CancellationToken) => {
      const question = read(value);
      return question === undefined ? null : answer(token, question.uri, (document) => work(document, question));
    });
  }
  answers(protocol.partAtMethod, protocol.readPartAtQuestion, (document, { position }) => partAtPosition(document, compileAt, position));
  answers(protocol.rangeOfMethod, protocol.readRangeOfQuestion, (document, question) => {
    const compiled = compileKey(document, question.playKey);
    return compiled === undefined ? null : rangeOfPart(document, compiled, question);
  });
  answers(protocol.byHandMethod, protocol.readByHand, (document, question): protocol.ByHandAnswer => changeByHand(asking, document, question));
  answers(protocol.playMethod, protocol.readAtLine, (document, { line }) => {
    const compiled = compileAt(document, line);
    const firstLine = compiled && firstLineOf(document.file, compiled.key);
    return compiled === undefined || firstLine === undefined ? null : { documentVersion: document.version, playKey: compiled.key, title: compiled.play.name, firstLine, playback: playbackOf({ ...named(document.uri, compiled), say }) };
  });
  answers(protocol.drawnMethod, protocol.readAtLine, (document, { line }) => {
    const compiled = compileAt(document, line);
    const playback = compiled && playbackOf({ ...compiled, say });
    return playback === undefined || playback.runs.length === 0 ? null : { title: playback.play.name, svg: drawPlay(playback, { say }) };
  });
  connection.onRequest(protocol.manualMethod, (value: unknown) => manualText(typeof value === 'string' ? value : ''));
  return shown;
}
