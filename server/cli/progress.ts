// What long work says of itself: one line on the terminal's error output that is taken back at the end. Nothing where nobody looks.
const worthIt = 50;
const everyMs = 100;

/** Goes through the items one by one and counts them for the reader. */
export function withProgress<Item, Result>(items: readonly Item[], noun: string, work: (item: Item) => Result): readonly Result[] {
  const shown = items.length >= worthIt && process.stderr.isTTY === true;
  let last = performance.now();
  const results = items.map((item, at) => {
    if (shown && performance.now() - last >= everyMs) {
      last = performance.now();
      process.stderr.write(`\r${at} of ${items.length} ${noun}`);
    }
    return work(item);
  });
  if (shown) process.stderr.write(`\r${' '.repeat(`${items.length} of ${items.length} ${noun}`.length)}\r`);
  return results;
}
