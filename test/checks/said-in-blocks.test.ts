// Rosters, alignments and books as coaches write them: what is told, and what its mend makes of the file.
import { expect, it } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { findingsOfOther } from '../../language/checks/other-blocks.ts';

const uri = 'file:///ours.play';

/** The findings of the file's only block, and the file once each is mended by its first fix, one by one from the last. */
function mended(text: string): { readonly said: readonly string[]; readonly text: string } {
  const block = openFile(emptyBook, uri, text).files.get(uri)!.blocks.find(({ kind }) => kind !== 'file')!;
  const findings = findingsOfOther(block, []).filter(({ severity }) => severity === 'error');
  const lines = text.split('\n');
  for (const { fixes } of findings.toReversed()) {
    for (const { line, at, to, text: put } of fixes[0]?.edits.toReversed() ?? []) lines[line] = lines[line]!.slice(0, at) + put + lines[line]!.slice(to);
  }
  return { said: findings.map(({ message }) => message), text: lines.join('\n') };
}

it.each([
  ['1 Ana', '1 "Ana"'],
  ['2: Bo', '2 "Bo"'],
  ['3 - Cy', '3 "Cy"'],
  ['5. Eva Maria', '5 "Eva Maria"'],
  ['No. 7 "Gil"', '7 "Gil"'],
  ['8 "Hal", PG', '8 "Hal" # PG'],
  ['9 "Ida" (captain)', '9 "Ida" # captain'],
  ['10 Jo - left hand', '10 "Jo" # left hand'],
  ['12, Léa 🏀', '12 "Léa 🏀"'],
])('a roster with “%s”', (line, plain) => {
  const { said, text } = mended(`roster "Ours"\n  ${line}\n`);
  expect(said).toEqual([`A player of the roster is his number and his name in quotes: ${plain}.`]);
  expect(text).toBe(`roster "Ours"\n  ${plain}\n`);
});

it.each([['3: left wing', '3 left wing'], ['4 - right block', '4 right block']])('an alignment with “%s”', (line, plain) => {
  const { said, text } = mended(`alignment "Wide"\n  1 top\n  ${line}\n`);
  expect(said).toEqual([`Who stands where in an alignment is said without signs between: ${plain}.`]);
  expect(text).toBe(`alignment "Wide"\n  1 top\n  ${plain}\n`);
});

it('the plays of a section on lines of their own go behind its name', () => {
  expect(mended('book "Ours"\n  section "Quick"\n    "Pier"\n').text).toBe('book "Ours"\n  section "Quick": "Pier"\n\n');
  expect(mended('book "Ours"\n  section "Quick": "Quay"\n    - Pier,\n').text).toBe('book "Ours"\n  section "Quick": "Quay", "Pier"\n\n');
});

it('a remark behind the line stays where it is, and a pace is told by what is wrong with it', () => {
  expect(mended('roster\n  1 Ana   # since May\n').text).toBe('roster\n  1 "Ana"   # since May\n');
  expect(mended('roster\n  11 "Kit", 30 m in 4.9\n').text).toBe('roster\n  11 "Kit", 30 m in 4.9 seconds\n');
  expect(mended('roster\n  1 "Wren", fst\n').text).toBe('roster\n  1 "Wren", fast\n');
});

it.each(['roster', 'alignment "Wide"', 'book "Ours"'])('an endless line of a %s is told as one, and not gone through', (head) => {
  const began = process.cpuUsage();
  expect(mended(`${head}\n  1 a${' '.repeat(200_000)}"(x\n`).said[0]).toContain('characters');
  expect(process.cpuUsage(began).user / 1000).toBeLessThan(5000);
});

it('a line that means nothing else keeps its own message', () => {
  expect(mended('roster\n  hello\n').said[0]).toContain('hello');
  expect(mended('book "Ours"\n  "Pier"\n').said[0]).toContain('A name does not stand alone');
});
