// Above each play: a way to see it move, a way to draw it or to make a page of it; when to call it and when its looks come. Beside the panel
// a window of 1,280 px leaves room for some 70 letters: what can be pressed stands first, what stands elsewhere too stands last.
import type { CodeLens } from 'vscode-languageserver-types';
import { blocksBetween, type Block } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { sayMoment, sayTenths } from '../../language/words/say-seconds.ts';
import type { OpenDocument } from './documents.ts';
import { message, type Say } from '../../language/message/message.ts';

/** Commands of the client, each with the document's uri and a line of the play. */
const deeds = [
  [message('▶ Show'), 'setwright.showPlay'],
  [message('Draw'), 'setwright.saveDrawing'],
  [message('Page'), 'setwright.savePage'],
] as const;

export function lenses({ uri, file }: OpenDocument, compile: (block: Block) => Compiled, say: Say, withCommands: boolean): CodeLens[] {
  return blocksBetween(file, 0, Infinity).flatMap(({ block, firstLine: line }) => {
    if (block.kind !== 'play') return [];
    const range = { start: { line, character: 0 }, end: { line, character: 0 } };
    const times = sayTimes(compile(block), say);
    if (!withCommands) return times.map((title) => ({ range, command: { title, command: '' } }));
    const at = (title: string, command: string): CodeLens => ({ range, command: { title, command, arguments: [uri, line] } });
    return [...deeds.map(([title, command]) => at(say(title), command)), ...times.map((title) => at(title, deeds[0][1]))];
  });
}

/** Short, to stand side by side; seconds from the call, or from the hand-over at a throw-in. */
function sayTimes({ timeline: { times } }: Compiled, say: Say): readonly string[] {
  const { firstLook, allLooks, looks } = times;
  if (firstLook === undefined || allLooks === undefined || looks.length === 0) return [];
  const typical = looks.map((look) => look.typical);
  const [first, last] = [Math.min(...typical), Math.max(...typical)];
  return [
    firstLook.fromCall === allLooks.fromCall ? say(message('Call with {seconds} s', { seconds: firstLook.fromCall })) : say(message('Call with {seconds} s, all looks {all} s', { seconds: firstLook.fromCall, all: allLooks.fromCall })),
    first === last ? say(message('Look at {at}', { at: sayMoment(first) })) : say(message('Looks {first} to {last}', { first: sayTenths(first), last: sayMoment(last) })),
  ];
}
