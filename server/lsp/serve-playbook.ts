// What a client that lists plays asks: the playbook, its order, new plays.
import type { CancellationToken } from 'vscode-languageserver';
import type { Asking } from './asking.ts';
import { newPlayChoices, newPlayText } from './new-play.ts';
import { atMost } from './host.ts';
import { longestRead, type PlayFiles } from './play-files.ts';
import * as protocol from './playbook-protocol.ts';
import { playbookOf } from './playbook.ts';
import { arrange } from './sections.ts';

export function servePlaybook({ connection, host, documents, keeper, written }: Asking, files: PlayFiles): void {
  const turn = () => new Promise<void>((resolve) => host.turn(resolve));

  connection.onRequest(protocol.playbookMethod, async (value: unknown, token: CancellationToken) => {
    const question = protocol.readPlaybookQuestion(value);
    if (question === undefined) return null;
    const { uri, again } = question;
    let unread = true;
    const reading = uri === undefined ? files.fetchAll(again === true) : (files.fetchUsed(uri) ?? Promise.resolve());
    await atMost(host, longestRead, reading.finally(() => (unread = false)));
    if (token.isCancellationRequested) return null;
    const uris = uri === undefined ? [...documents.book().files.keys()].sort() : [uri];
    // As it was before the plays were timed: what has come meanwhile is in the next answer.
    const more = unread && { unread };
    return { ...(await playbookOf(documents.book, keeper, written, uris, turn)), ...more };
  });
  connection.onRequest(protocol.arrangeMethod, (value: unknown) => {
    const question = protocol.readArrange(value);
    const file = question && documents.book().files.get(question.uri);
    const edits = question && file && arrange(file, question.from, question.to);
    return edits ? { edits } : null;
  });
  connection.onRequest(protocol.choicesMethod, async (value: unknown) => {
    const question = protocol.readChoicesQuestion(value);
    if (question === undefined) return null;
    const reading = question.uri === undefined ? undefined : files.fetchUsed(question.uri);
    if (reading !== undefined) await atMost(host, longestRead, reading);
    return newPlayChoices(documents.book(), question.uri);
  });
  connection.onRequest(protocol.newPlayMethod, (value: unknown) => {
    const question = protocol.readNewPlay(value);
    return question === undefined ? null : newPlayText(question);
  });
}
