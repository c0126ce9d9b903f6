/** A name in a list of choices stays as it is written: the list reads `$(…)` as an icon. */
export const asLabel = (words: string): string => words.replaceAll('$(', '\\$(');
