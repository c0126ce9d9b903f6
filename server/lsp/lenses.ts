// Above each play: when to call it, and a way to see it move.
import type { CodeLens } from 'vscode-languageserver-types';
import { firstLineOf } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import type { OpenDocument } from './documents.ts';

/** A command of the client: with the document's uri and a line of the play. */
export const showCommand = 'setwright.showPlay';

export function lenses({ uri, file }: OpenDocument, plays: readonly Compiled[]): CodeLens[] {
  return plays.flatMap(({ key, timeline }) => {
    const line = firstLineOf(file, key);
    if (line === undefined) return [];
    const range = { start: { line, character: 0 }, end: { line, character: 0 } };
    const { firstLook, allLooks } = timeline.times;
    const when = firstLook === undefined || allLooks === undefined ? 'Show it' : firstLook.fromCall === allLooks.fromCall ? `Call it with ${firstLook.fromCall} s or more` : `Call it with ${firstLook.fromCall} s or more, ${allLooks.fromCall} for every look`;
    return [
      { range, command: { title: '▶ Show', command: showCommand, arguments: [uri, line] } },
      ...(firstLook === undefined ? [] : [{ range, command: { title: when, command: showCommand, arguments: [uri, line] } }]),
    ];
  });
}
