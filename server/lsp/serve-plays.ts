// What a client that shows plays asks beyond the Language Server Protocol.
import { firstLineOf } from '../../language/book/book.ts';
import { drawStrip } from '../../language/picture/strip.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Asking } from './asking.ts';
import { changeByHand } from './by-hand.ts';
import { manualText } from './manual.ts';
import * as protocol from './protocol.ts';
import { showPlays, type ShownPlays } from './shown-plays.ts';
import { partAtPosition, rangeOfPart } from './text-and-time.ts';

export function servePlays(asking: Asking): ShownPlays {
  const { connection, host, documents, answer, compileKey, compileAt } = asking;
  const shown = showPlays(
    host,
    {
      document: documents.get,
      playbackOf(uri, key) {
        const document = documents.get(uri);
        const compiled = document && compileKey(document, key);
        return compiled && playbackOf(compiled);
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
  connection.onRequest(protocol.partAtMethod, (value: unknown, token) => {
    const question = protocol.readPartAtQuestion(value);
    return question === undefined ? null : answer(token, question.uri, (document) => partAtPosition(document, compileAt, question.position));
  });
  connection.onRequest(protocol.rangeOfMethod, (value: unknown, token) => {
    const question = protocol.readRangeOfQuestion(value);
    return question === undefined
      ? null
      : answer(token, question.uri, (document) => {
          const compiled = compileKey(document, question.playKey);
          return compiled === undefined ? null : rangeOfPart(document, compiled, question);
        });
  });
  connection.onRequest<protocol.ByHandAnswer | null, void>(protocol.byHandMethod, (value: unknown, token) => {
    const question = protocol.readByHand(value);
    return question === undefined ? null : answer(token, question.uri, (document) => changeByHand(asking, document, question));
  });
  connection.onRequest(protocol.playMethod, (value: unknown, token) => {
    const question = protocol.readAtLine(value);
    return question === undefined
      ? null
      : answer(token, question.uri, (document) => {
          const compiled = compileAt(document, question.line);
          const firstLine = compiled && firstLineOf(document.file, compiled.key);
          return compiled === undefined || firstLine === undefined ? null : { documentVersion: document.version, playKey: compiled.key, title: compiled.play.name, firstLine, playback: playbackOf(compiled) };
        });
  });
  connection.onRequest(protocol.drawnMethod, (value: unknown, token) => {
    const question = protocol.readAtLine(value);
    return question === undefined
      ? null
      : answer(token, question.uri, (document) => {
          const compiled = compileAt(document, question.line);
          const playback = compiled && playbackOf(compiled);
          const run = playback?.runs[0];
          return playback === undefined || run === undefined ? null : { title: playback.play.name, svg: drawStrip(playback, run.id) };
        });
  });
  connection.onRequest(protocol.manualMethod, (value: unknown) => manualText(typeof value === 'string' ? value : ''));
  return shown;
}
