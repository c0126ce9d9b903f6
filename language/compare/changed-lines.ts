// Which lines went and which came between two lists, in the order in which they stand: what both have in the same order is left out.

export interface ChangedLine {
  readonly kind: 'went' | 'came';
  readonly text: string;
}

/** By the longest list that both have in common; of lines that changed places the fewest are named. For lists as long as a play. */
export function changedLines(before: readonly string[], after: readonly string[]): readonly ChangedLine[] {
  // common[i][j]: how many lines the rest of `before` from i and the rest of `after` from j have in common.
  const common = Array.from({ length: before.length + 1 }, () => new Array<number>(after.length + 1).fill(0));
  for (let i = before.length - 1; i >= 0; i--) {
    for (let j = after.length - 1; j >= 0; j--) common[i]![j] = before[i] === after[j] ? common[i + 1]![j + 1]! + 1 : Math.max(common[i + 1]![j]!, common[i]![j + 1]!);
  }
  const changed: ChangedLine[] = [];
  let [i, j] = [0, 0];
  while (i < before.length || j < after.length) {
    if (i < before.length && j < after.length && before[i] === after[j]) {
      i++;
      j++;
    } else if (j === after.length || (i < before.length && common[i + 1]![j]! >= common[i]![j + 1]!)) changed.push({ kind: 'went', text: before[i++]! });
    else changed.push({ kind: 'came', text: after[j++]! });
  }
  return changed;
}
