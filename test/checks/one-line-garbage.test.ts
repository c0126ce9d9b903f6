// A line that cannot be read costs that line only: nothing else is reported because of it.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../language/checks/catalogue.ts';
import { asPlay, compileText } from './compiled.ts';
import { editFile, emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';

const examples = readdirSync('examples').filter((name) => name.endsWith('.play'));
const halfTyped = '3 cu';
const garbage = ['@@@@ &&', 'blorf 17 wug', halfTyped];

describe.each(examples)('in %s, with any one line replaced', (name) => {
  const lines = readFileSync(`examples/${name}`, 'utf8').replaceAll('\r\n', '\n').split('\n');
  const uri = 'file:///example.play';
  const keeper = createKeeper();
  const book = openFile(emptyBook, uri, lines.join('\n'));
  const before = new Set(keeper.findingsOf(book, uri).map(({ code, part }) => `${code} ${part}`));
  const replaced = (line: number, words: string) =>
    keeper.findingsOf(editFile(book, uri, [{ range: { start: { line, character: 0 }, end: { line, character: lines[line]!.length } }, text: words }]), uri);

  // The two plays of every layer take each kind of garbage, the playbook one.
  test.each(/lighthouse|harbour/.test(name) ? garbage : garbage.slice(0, 1))('by “%s”, only that line is reported', (words) => {
    for (const [at, line] of lines.entries()) {
      if (line.trim() === '' || line.trim().startsWith('#')) continue;
      // A half-typed action stands where an action is to stand.
      if (words === halfTyped && !/^ {4}[\dX]/.test(line)) continue;
      const findings = replaced(at, words);
      const others = findings
        .filter(({ firstLine, place }) => firstLine + place.line !== at)
        .filter(({ code, part }) => !before.has(`${code} ${part}`))
        .map(({ code, message, firstLine, place }) => `line ${firstLine + place.line + 1}: ${code}: ${message}`);
      expect(others, `line ${at + 1} (${line.trim()}) replaced`).toEqual([]);
      expect(findings.some(({ firstLine, place }) => firstLine + place.line === at), `line ${at + 1} is reported`).toBe(true);
    }
  });
});

// The right examples stand at the edge of their checks: one line less, and a check may think it sees its mistake.
describe('in the right example of a check, with any one line replaced', () => {
  const shown = Object.values(catalogue).filter(({ manual }) => manual.right !== undefined);
  test.each(shown.map(({ code, manual }) => [code, manual] as const))('%s', (_, { right, beside }) => {
    const lines = asPlay(right!).split('\n');
    const before = new Set(compileText(lines.join('\n'), beside).findings.map(({ code, part }) => `${code} ${part}`));
    for (const words of garbage.slice(0, 2)) {
      for (const [at, line] of lines.entries()) {
        const { findings } = compileText(lines.with(at, words).join('\n'), beside);
        const others = findings.filter(({ firstLine, place, code, part }) => firstLine + place.line !== at && !before.has(`${code} ${part}`)).map(({ code, message, firstLine, place }) => `line ${firstLine + place.line + 1}: ${code}: ${message}`);
        expect(others, `line ${at + 1} (${line.trim()}) replaced by ${words}`).toEqual([]);
        expect(findings.some(({ firstLine, place }) => firstLine + place.line === at)).toBe(true);
      }
    }
  });
});
