/** The word a slip of the pen most likely meant: at most a third of its letters away, the first of two equally near. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  let best: { word: string; edits: number } | undefined;
  for (const candidate of known) {
    const edits = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (edits <= Math.max(1, candidate.length / 3) && (best === undefined || edits < best.edits)) best = { word: candidate, edits };
  }
  return best?.word;
}

/** Letters put in, left out, replaced or swapped with the next. */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = row[j - 1]! + Number(a[i - 1] !== b[j - 1]);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? before[j - 2]! + 1 : Infinity;
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1, swapped));
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
}
