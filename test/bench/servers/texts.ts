// Texts of the same number of lines in three languages, each with a place to make a mistake and a place to ask what can follow.
import { place, playOf } from '../../support/typed-play.ts';
import type { Text, Typed } from './drive.ts';

export interface PlayText extends Text {
  /** Behind a number, where a digit moves a player: the line stays readable, the times change. */
  readonly digit: Omit<Typed, 'letters'>;
}

export function playText(lines: number, file = 'bench.play'): PlayText {
  const all = playOf(lines).split('\n');
  const text = `${all.slice(0, lines - 1).join('\n')}\n`;
  const moved = all.findIndex((line) => line.includes(place));
  const passes = all.findIndex((line) => line.trim() === '1 passes to 3');
  return {
    file, text,
    // Not an x, which makes a defender of him.
    error: { line: moved, character: 4, letters: 'q' },
    digit: { line: moved, character: all[moved]!.indexOf('5.12') + 4 },
    list: { line: passes, character: 4, letters: '4 ' },
  };
}

/** What a file for a container says: instructions of every usual kind, and an empty line in the middle. */
export function dockerText(lines: number, file = 'bench.dockerfile'): Text {
  const middle = 20;
  const written = ['FROM node:24 AS base'];
  while (written.length < lines - 1) {
    const at = written.length;
    if (at === middle) written.push('');
    else written.push([`# part ${at}`, `RUN echo "part ${at}" && mkdir -p /srv/part${at}`, `ENV NAME_${at}=value${at}`, `COPY from/${at} /srv/to/${at}`, `WORKDIR /srv/part${at}`][at % 5]!);
  }
  return { file, text: `${written.join('\n')}\n`, error: { line: 21, character: 0, letters: 'x' }, list: { line: middle, character: 0, letters: 'R' } };
}

/** Small functions that call each other, an empty line in the middle. */
export function typeScriptText(lines: number, file = 'bench.ts'): Text {
  const written: string[] = [];
  for (let at = 0; written.length < lines - 1; at++) {
    if (written.length === 20) written.push('');
    else if (written.length > lines - 5) written.push(`// line ${written.length}`);
    else written.push(`export function part${at}(count: number, name = 'part'): string {`, `  const label = \`\${name} \${count + ${at}}\`;`, `  return label.trim();`, `}`);
  }
  return { file, text: `${written.join('\n')}\n`, error: { line: 1, character: 2, letters: 'x' }, list: { line: 20, character: 0, letters: 'p' } };
}
