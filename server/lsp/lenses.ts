// Above each play: a way to see it move, when its first and last look come and when to call it; a way to draw it, or to make a page of it.
import type { CodeLens } from 'vscode-languageserver-types';
import { firstLineOf } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';
import type { OpenDocument } from './documents.ts';
import { message, type Say } from '../../language/message/message.ts';

/** Commands of the client, each with the document's uri and a line of the play. */
const deeds = [
  [message('▶ Show'), 'setwright.showPlay'],
  [message('Draw'), 'setwright.saveDrawing'],
  [message('Page'), 'setwright.savePage'],
] as const;

export function lenses({ uri, file }: OpenDocument, plays: readonly Compiled[], say: Say, withCommands: boolean): CodeLens[] {
  return plays.flatMap((compiled) => {
    const line = firstLineOf(file, compiled.key);
    if (line === undefined) return [];
    const range = { start: { line, character: 0 }, end: { line, character: 0 } };
    const times = sayTimes(compiled, say);
    if (!withCommands) return times.map((title) => ({ range, command: { title, command: '' } }));
    const at = (title: string, command: string): CodeLens => ({ range, command: { title, command, arguments: [uri, line] } });
    const [[show, showCommand], ...others] = deeds;
    return [at(say(show), showCommand), ...times.map((title) => at(title, showCommand)), ...others.map(([title, command]) => at(say(title), command))];
  });
}

/** Short, to stand side by side; seconds from the call, or from the hand-over at a throw-in. */
function sayTimes({ timeline: { times } }: Compiled, say: Say): readonly string[] {
  const { firstLook, allLooks, looks } = times;
  if (firstLook === undefined || allLooks === undefined || looks.length === 0) return [];
  const typical = looks.map((look) => look.typical);
  const [first, last] = [sayMoment(Math.min(...typical)), sayMoment(Math.max(...typical))];
  return [
    looks.length === 1 ? say(message('Look at {at}', { at: first })) : say(message('First look at {first}, last {last}', { first, last })),
    firstLook.fromCall === allLooks.fromCall ? say(message('Call it with {seconds} s or more', { seconds: firstLook.fromCall })) : say(message('Call it with {seconds} s or more, {all} for every look', { seconds: firstLook.fromCall, all: allLooks.fromCall })),
  ];
}
