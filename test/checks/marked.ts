// A text with its findings marked below the lines:
//
//     1 ball-screens for 3
//     ^^^^^^^^^^^^^^^^^^^^ error screen-with-ball: 1 sets a screen while he has the ball
//
// What stands behind the colon has to be in the message.
import { expect } from 'vitest';
import { compileText } from './compiled.ts';

interface Mark {
  readonly line: number;
  readonly at: number;
  readonly to: number;
  readonly severity: string;
  readonly code: string;
  readonly says: string;
}

const marker = /^(\s*)(\^+) (error|warning|hint) ([\w-]+)(?:: (.*))?$/;

function unmark(marked: string): { readonly text: string; readonly marks: readonly Mark[] } {
  const lines: string[] = [];
  const marks: Mark[] = [];
  for (const line of marked.split('\n')) {
    const found = marker.exec(line);
    if (found === null) lines.push(line);
    else {
      const at = found[1]!.length;
      marks.push({ line: lines.length - 1, at, to: at + found[2]!.length, severity: found[3]!, code: found[4]!, says: found[5] ?? '' });
    }
  }
  return { text: lines.join('\n'), marks };
}

/** The findings of a text are those marked in it, no more and no fewer. */
export function expectMarked(marked: string): void {
  const { text, marks } = unmark(marked);
  for (const eol of ['\n', '\r\n']) {
    const { findings } = compileText(text.replaceAll('\n', eol));
    const found = findings.map(({ code, severity, place, firstLine, message }) => ({ line: firstLine + place.line, at: place.at, to: place.to, severity, code, message }));
    const shown = found.map(({ message, ...rest }) => ({ ...rest, says: marks.find((mark) => mark.line === rest.line && mark.code === rest.code && message.includes(mark.says))?.says ?? message }));
    expect(shown).toEqual(marks);
  }
}
