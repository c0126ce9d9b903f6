// The protocol counts in UTF-16 and ends lines in three ways: whatever a file was written with, words are found where they stand.
import * as lsp from 'vscode-languageserver-protocol';
import { afterEach, describe, expect, test } from 'vitest';
import { talk, uri, wordsIn, type Client } from './talking.ts';

const textDocument = { uri };
const lines = ['notation 1', 'play "Möle 🏀"', '  from horns', '  step "Ebb 👩🏽‍🏫"', '    1 passes to 2', '    look 2 "🏀🏀": blorf', ''];
const ends = ['\n', '\r\n', '\r'] as const;
const joined = (endOf: (line: number) => string) => lines.map((line, at) => line + (at < lines.length - 1 ? endOf(at) : '')).join('');

let client: Client;
afterEach(() => client.close());

describe.each([
  ['line feeds', joined(() => '\n')],
  ['carriage returns and line feeds', joined(() => '\r\n')],
  ['carriage returns', joined(() => '\r')],
  ['all three', joined((line) => ends[line % 3]!)],
  ['a byte order mark', `\uFEFF${joined(() => '\r\n')}`],
])('a file with %s', (_, text) => {
  const at = (found: lsp.Diagnostic) => wordsIn(text, found.range);

  test('has its findings where the words stand, behind letters of two units too', async () => {
    client = await talk({ options: { settings: { checks: { settle: 0 } } } });
    await client.open(uri, text);
    const wrong = (await client.diagnosticsOf(uri, 1)).filter(({ severity }) => severity === lsp.DiagnosticSeverity.Error);
    expect(wrong.map(at)).toEqual(['blorf']);
    const symbols = (await client.connection.sendRequest(lsp.DocumentSymbolRequest.type, { textDocument })) as lsp.DocumentSymbol[];
    expect(symbols.map(({ name }) => name)).toEqual(['Möle 🏀']);
    expect(wordsIn(text, symbols[0]!.selectionRange)).toContain('Möle 🏀');
  });

  test('takes an edit where the editor means it', async () => {
    client = await talk({ options: { settings: { checks: { settle: 0 } } } });
    await client.open(uri, text);
    const [wrong] = (await client.diagnosticsOf(uri, 1)).filter((found) => at(found) === 'blorf');
    await client.change(uri, 2, [{ range: wrong!.range, text: 'jumper' }]);
    expect((await client.diagnosticsOf(uri, 2)).filter(({ severity }) => severity === lsp.DiagnosticSeverity.Error)).toEqual([]);
    await client.change(uri, 3, [{ range: { start: { line: 5, character: 12 }, end: { line: 5, character: 14 } }, text: 'é' }]);
    const { contents } = (await client.connection.sendRequest(lsp.HoverRequest.type, { textDocument, position: { line: 5, character: 10 } }))!;
    expect((contents as lsp.MarkupContent).value).toContain('é🏀');
  });
});
