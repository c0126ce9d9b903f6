/**
 * The same JavaScript or JSON with every other sign written as `\uXXXX`. V8 keeps a text of ASCII alone in half the memory, and a program is
 * read in two thirds of the time. For text in which such signs stand in quotes and patterns only; esbuild leaves them in patterns.
 */
export function inAscii(text: string): string {
  return text.replace(/[^\x00-\x7f]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
