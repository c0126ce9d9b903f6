// What the program knows of lines before it reads the first: worked out here, once, instead of at every start.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'esbuild';
import { globSync } from 'tinyglobby';
import { buildParser } from '../language/grammar/reading/line-parser.ts';
import { tablesOf, type LineTables } from '../language/grammar/reading/line-tables.ts';
import { loadGrammar } from '../language/grammar/reading/load-grammar.ts';
import { inAscii } from './in-ascii.ts';

const root = join(import.meta.dirname, '..');

/** The grammar's words, and the shapes of all the lines in the example plays and the reference. Any other line is read as ever. */
export function lineTables(): LineTables {
  const tables = tablesOf(loadGrammar());
  const parser = buildParser({ tables });
  for (const line of usualLines()) parser.parse(parser.lexer.lex(line));
  return { ...tables, usual: parser.shapes!.written() };
}

function usualLines(): readonly string[] {
  const plays = globSync('examples/*.play', { cwd: root }).sort().flatMap((file) => linesOf(file));
  const shown = globSync('docs/*.md', { cwd: root }).sort().flatMap((file) => linesInFences(linesOf(file)));
  return [...plays, ...plays.flatMap(movedByHand), ...shown].filter((line) => line.trim() !== '');
}

/** The same line with a man who was dragged to a place that no words name. */
function movedByHand(line: string): readonly string[] {
  const to = / to [^,:]+$/.exec(line);
  return to === null ? [] : ['(1.5, 2.5) m', '(-1.5, 2.5) m'].map((place) => `${line.slice(0, to.index)} to ${place}`);
}

const linesOf = (file: string): readonly string[] => readFileSync(join(root, file), 'utf8').split(/\r?\n/);

function linesInFences(lines: readonly string[]): readonly string[] {
  let inside = false;
  return lines.filter((line) => {
    const fence = line.startsWith('```');
    if (fence) inside = !inside;
    return inside && !fence;
  });
}

/** Puts the tables where `built-tables.ts` has none: as text, which costs a start nothing until the first line is read. */
export function tablesForEsbuild(tables: LineTables): Plugin {
  return {
    name: 'line-tables',
    setup(build) {
      build.onLoad({ filter: /[/\\]language[/\\]grammar[/\\]reading[/\\]built-tables\.ts$/ }, () => ({ contents: `export const builtTables = () => JSON.parse(${JSON.stringify(inAscii(JSON.stringify(tables)))});`, loader: 'js' }));
    },
  };
}
