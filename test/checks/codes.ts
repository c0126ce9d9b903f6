import { compileText } from './compiled.ts';

/** The codes found in a play with these lines, in text order, each once; hints too. */
export function codesIn(lines: string, header = 'level u14\nrules fiba'): readonly string[] {
  return [...new Set(compileText(`${header}\nplay "A"\n${lines.replace(/^/gm, '  ')}\n`).findings.map(({ code }) => code))];
}

/** The message of one code, `undefined` where it is silent. */
export function messageOf(code: string, lines: string, header = 'level u14\nrules fiba'): string | undefined {
  return compileText(`${header}\nplay "A"\n${lines.replace(/^/gm, '  ')}\n`).findings.find((finding) => finding.code === code)?.message;
}
