// Plays that mirror each other, one after another: four times as many cost about four times as much.
import { expect, it } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';

/** ms of the processor to check a file of so many plays, each the mirror of the one above. */
function costOf(plays: number): number {
  const mirrors = Array.from({ length: plays }, (_, n) => `play "P${n + 1}" mirrors "P${n}"`).join('\n');
  const uri = 'file:///chain.play';
  const book = openFile(emptyBook, uri, `play "P0"\n  from horns\n  step "A"\n    1 passes to 2\n    look 2: three\n${mirrors}`);
  const before = process.cpuUsage();
  const findings = createKeeper().findingsOf(book, uri);
  const { user, system } = process.cpuUsage(before);
  expect(findings.length).toBeGreaterThan(plays / 2);
  return (user + system) / 1000;
}

it('a chain of plays is checked in the time its length says', () => {
  costOf(300);
  const [short, long] = [costOf(800), costOf(3200)];
  // 9 times and more while each name was looked for in the whole file.
  expect(long / short).toBeLessThan(7);
}, 60_000);
