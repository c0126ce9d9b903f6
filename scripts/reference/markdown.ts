// Markdown as a code host reads it.

/** Text that must stay text in a table cell or a sentence. */
export const plain = (text: string): string => text.replace(/[\\`*_[\]<>|#]/g, '\\$&');

export const code = (text: string): string => `\`${text}\``;

/** Lines of a play; the language name lights them where the host knows it. */
export const fenced = (lines: string, language = 'setwright'): string => `\`\`\`${language}\n${lines.replace(/\n+$/, '')}\n\`\`\``;

export function table(head: readonly string[], rows: readonly (readonly string[])[], right: readonly number[] = []): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, column) => (right.includes(column) ? '---:' : '---'))), ...rows.map(line)].join('\n');
}

/** A picture of a width in pixels; what it shows is said for those who cannot see it. */
export function picture(file: string, says: string, width: number): string {
  return `<img src="${file}" alt="${says.replaceAll('"', '&quot;')}" width="${width}">`;
}

/** Pictures three in a row, each under its name. */
export function gallery(shown: readonly { readonly name: string; readonly picture: string }[]): string {
  const rows = Array.from({ length: Math.ceil(shown.length / 3) }, (_, row) => [0, 1, 2].map((column) => shown[row * 3 + column]));
  const cells = rows.flatMap((row) => [row.map((one) => one?.name ?? ''), row.map((one) => one?.picture ?? '')]);
  return table(cells[0]!, cells.slice(1));
}

/** A place a link can lead to, whatever the heading below it says. */
export const anchor = (name: string): string => `<a id="${name}"></a>`;

export const slug = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');

/** A page: parts with an empty line between, a note on its origin at the end. */
export function page(...parts: readonly (string | undefined | readonly (string | undefined)[])[]): string {
  const kept = parts.flat().filter((part): part is string => part !== undefined && part !== '');
  return `${kept.join('\n\n')}\n\n---\n\n*Written by \`npm run reference\` from the source: change it there.*\n`;
}
