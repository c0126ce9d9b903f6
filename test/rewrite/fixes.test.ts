// Every mend of every finding, in plays with slips of the pen: what it promises it does, and it touches nothing else.
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { blockOfKey, editFile, emptyBook, openFile, textOf, type Book } from '../../language/book/book.ts';
import { createKeeper, type FileFinding } from '../../language/keeper.ts';
import { fixAll } from '../../language/rewrite/fix-all.ts';
import { after } from '../../language/rewrite/here.ts';
import { inEnglish } from '../../language/message/message.ts';
import { textEditOf } from '../../server/lsp/positions.ts';
import { writtenPlays } from '../support/plays.ts';

const uri = 'file:///plays/test.play';
const folder = 'examples';
const examples = readdirSync(folder).filter((name) => name.endsWith('.play')).map((name) => readFileSync(`${folder}/${name}`, 'utf8'));
const alignments = readFileSync(`${folder}/alignments.play`, 'utf8');
const keeper = createKeeper();

const bookOf = (text: string): Book => openFile(openFile(emptyBook, 'file:///plays/alignments.play', alignments), uri, text);
const findingsOf = (book: Book): readonly FileFinding[] => keeper.findingsOf(book, uri);
const textIn = (book: Book): string => textOf(book.files.get(uri)!);
const commentsOf = (book: Book): readonly string[] =>
  book.files.get(uri)!.blocks.flatMap(({ lines }) => lines.flatMap(({ parsed: { text, comment } }) => (comment === undefined ? [] : [text.slice(comment.at).trimEnd()]))).toSorted();

/** What a line has no place for may stand behind it as a remark, before one that stood there. */
const commentsLost = (before: Book, then: Book): readonly string[] => {
  const left = [...commentsOf(then)];
  return commentsOf(before).filter((comment) => {
    const at = left.findIndex((one) => one.endsWith(comment));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
};

/** As an editor would make it. */
function mended(book: Book, finding: FileFinding, fix: FileFinding['fixes'][number]): Book {
  const block = blockOfKey(book.files.get(uri)!, finding.block)!;
  const edits = fix.edits.map((edit) => textEditOf(block, finding.firstLine, edit)).toSorted((a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character);
  return edits.reduce((now, { range, newText }) => editFile(now, uri, [{ range, text: newText }]), book);
}

/** What a hand that slips makes of a line. */
const slip = fc.oneof(
  fc.record({ kind: fc.constant('swap' as const), at: fc.nat(200) }),
  fc.record({ kind: fc.constant('lose' as const), at: fc.nat(200) }),
  fc.record({ kind: fc.constant('twice' as const), at: fc.nat(200) }),
  fc.record({ kind: fc.constant('number' as const), at: fc.nat(9) }),
  fc.record({ kind: fc.constant('word' as const), at: fc.nat(12) }),
  fc.record({ kind: fc.constant('gone' as const), at: fc.constant(0) }),
  fc.record({ kind: fc.constant('again' as const), at: fc.constant(0) }),
  fc.record({ kind: fc.constant('remark' as const), at: fc.constant(0) }),
);
type Slip = typeof slip extends fc.Arbitrary<infer T> ? T : never;

function slipped(line: string, { kind, at }: Slip): string {
  const place = line.length === 0 ? 0 : at % line.length;
  if (kind === 'swap') return line.slice(0, place) + (line[place + 1] ?? '') + (line[place] ?? '') + line.slice(place + 2);
  if (kind === 'lose') return line.slice(0, place) + line.slice(place + 1);
  if (kind === 'twice') return line.slice(0, place) + (line[place] ?? '') + line.slice(place);
  if (kind === 'number') return line.replace(/[1-5]/, String((at % 5) + 1));
  if (kind === 'gone') return '';
  if (kind === 'again') return `${line}\n${line}`;
  if (kind === 'remark') return `${line}  # é 🏀 "so"`;
  const words = line.split(' ');
  return words.toSpliced(at % words.length, 1).join(' ');
}

const written = writtenPlays.map(({ text }) => text);
const tornFrom = (whole: fc.Arbitrary<string>) => fc
  .tuple(whole, fc.array(fc.tuple(fc.nat(400), slip), { minLength: 1, maxLength: 4 }), fc.constantFrom('\n', '\r\n'), fc.boolean())
  .map(([text, slips, eol, last]) => {
    const lines = text.trimEnd().split('\n');
    for (const [at, how] of slips) lines[at % lines.length] = slipped(lines[at % lines.length]!, how);
    return lines.join('\n').replaceAll('\n', eol) + (last ? eol : '');
  });
const torn = fc.oneof(tornFrom(fc.constantFrom(...examples)), tornFrom(written));

const sameAs = ({ code, message }: FileFinding): string => `${code} ${message}`;
const countOf = (findings: readonly FileFinding[], wanted: FileFinding): number => findings.filter((one) => sameAs(one) === sameAs(wanted)).length;

describe('whatever a hand has torn', () => {
  let inVain = 0;
  const mendsOf = (text: string, wanted: (finding: FileFinding) => boolean): number => {
    const book = bookOf(text);
    const findings = findingsOf(book);
    let made = 0;
    for (const finding of findings.filter(wanted)) {
      expect(finding.fixes.filter(({ preferred }) => preferred === true).length, finding.message).toBeLessThanOrEqual(1);
      for (const fix of finding.fixes) {
        const then = mended(book, finding, fix);
        expect(textIn(then), `${finding.code}: ${inEnglish(fix.title)}`).not.toBe(text);
        const helps = countOf(findingsOf(then), finding) < countOf(findings, finding);
        // A line that cannot be read can be read afterwards, always. What is wrong in the game may be so for a second reason.
        if (finding.part === undefined) expect(helps, `${finding.code}: ${finding.message}\n${inEnglish(fix.title)}\n${text}`).toBe(true);
        else inVain += helps ? 0 : 1;
        expect(commentsLost(book, then), inEnglish(fix.title)).toEqual([]);
        const touched = new Set(fix.edits.map(({ line }) => line + finding.firstLine));
        const [old, fresh] = [text, textIn(then)].map((one) => one.split(/(?<=\n)/)) as [string[], string[]];
        const kept = old.filter((_, line) => !touched.has(line) && !touched.has(line + 1));
        let from = 0;
        for (const line of kept) {
          const at = fresh.indexOf(line, from);
          expect(at, `${inEnglish(fix.title)} keeps ${line}`).toBeGreaterThanOrEqual(0);
          from = at + 1;
        }
        made++;
      }
    }
    return made;
  };
  const each = 'takes its finding away, loses no remark and leaves the other lines as they are';

  test(`each mend in the playbook ${each}`, { timeout: 120_000 }, () => {
    let made = 0;
    fc.assert(fc.property(tornFrom(fc.constantFrom(...examples)), (text) => void (made += mendsOf(text, () => true))), { numRuns: 80 });
    // A law that is never put to the test would hold.
    expect(made).toBeGreaterThan(25);
    expect(inVain / made).toBeLessThan(0.05);
  });

  // Plays made up by chance are awkward in time: there only the lines that cannot be read are asked for.
  test(`each mend of a line in any play ${each}`, { timeout: 120_000 }, () => {
    let made = 0;
    fc.assert(fc.property(tornFrom(written), (text) => void (made += mendsOf(text, ({ part }) => part === undefined))), { numRuns: 100 });
    expect(made).toBeGreaterThan(20);
  });

  test('all mends at once leave less that is wrong, and nothing more for a second time', { timeout: 120_000 }, () => {
    let made = 0;
    fc.assert(
      fc.property(torn, (text) => {
        const book = bookOf(text);
        const edits = fixAll(book, uri, findingsOf);
        if (edits.length === 0) return;
        made++;
        const then = after(book, edits);
        const [before, left] = [findingsOf(book), findingsOf(then)];
        const broken = (all: readonly FileFinding[]) => all.filter(({ part }) => part === undefined).length;
        expect(broken(left) < broken(before) || left.length < before.length).toBe(true);
        expect(commentsLost(book, then)).toEqual([]);
        expect(fixAll(then, uri, findingsOf)).toEqual([]);
      }),
      { numRuns: 80 },
    );
    expect(made).toBeGreaterThan(10);
  });
});
