// What is printed on a terminal. A text cannot speak to it: control signs of a name become dots, one for one, so that marks stay below their words.

/** One line. */
export const printable = (line: string): string => line.replace(/[\u0000-\u0008\u000A-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/g, '·');

const lines = (text: string): string => text.split('\n').map(printable).join('\n');

/** What was asked for. */
export const print = (text: string): void => console.log(lines(text));

/** What is said beside it. */
export const remark = (text: string): void => console.error(lines(text));
