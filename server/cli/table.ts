/** A table for a terminal: columns as wide as needed, numbers (and `-`) flush right, two blanks between, no blanks at a line's end. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => row[column]?.length ?? 0)));
  const right = head.map((_, column) => rows.length > 0 && rows.every((row) => /^[\d.:-]*( s)?$/.test(row[column] ?? '')));
  const line = (cells: readonly string[]) =>
    cells.map((cell, column) => (right[column] ? cell.padStart(widths[column]!) : cell.padEnd(widths[column]!))).join('  ').trimEnd();
  return [head, ...rows].map(line).join('\n');
}

/** Each line two blanks further in. */
export const indented = (text: string): string => text.replace(/^/gm, '  ');
