/** `2`, `2 and 3`, `2, 3 and 5`. */
export function sayList(items: readonly (string | number)[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
