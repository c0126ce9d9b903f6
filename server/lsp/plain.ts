/** Words as they stand, inside Markdown: no sign of theirs means anything, no address becomes a link by itself. */
export const plain = (text: string): string =>
  text
    .replace(/&/g, '&amp;')
    .replace(/[\\`*_{}[\]<>#|~@]|^[-+]|(?<=^\d+)\.|:(?=\/\/)|(?<=\bwww)\./gi, '\\$&');
