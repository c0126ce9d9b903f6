/**
 * How many keystrokes lie between two words (insert, leave out, change, swap neighbours), or `limit + 1` if more than `limit`.
 */
export function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, beforeLast[j - 2]! + 1);
      row.push(best);
      least = Math.min(least, best);
    }
    if (least > limit) return limit + 1;
    beforeLast = last;
    last = row;
  }
  return Math.min(last[b.length]!, limit + 1);
}

/** How far a word may be off and still be meant: one keystroke in short words, a third of a long one. */
export function reach(word: string): number {
  return Math.max(1, Math.floor(word.length / 3));
}
