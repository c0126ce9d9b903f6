// Every phrase of the server's own and every message of a check can be put into another language; what is not translated stays English.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { afterEach, describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { talk, uri, type Client } from './talking.ts';

const examples = readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.play')).map((name) => readFileSync(join(root, 'examples', name), 'utf8'));
const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');

let client: Client;
afterEach(() => client.close());

/** A language of which one sees at once that it is not English. */
const words = Object.fromEntries(Object.keys(JSON.parse(readFileSync(join(root, 'l10n/bundle.l10n.json'), 'utf8')) as object).map((text) => [text, `«${text}»`]));

describe('in another language', () => {
  const torn = examples.join('\n').replace(/within \d+ sec/g, 'within 7 sec').replace(/(\d) passes to (\d)/g, '$1 passes to $2, $1 screens for $2').replace(/ball with \d/g, 'ball with 5');

  test('the findings are told, each with its own numbers in its place', async () => {
    client = await talk({ options: { words } });
    await client.open(uri, torn);
    const plain = await talk();
    await plain.open(uri, torn);
    const [found, english] = [await client.diagnosticsOf(uri, 1), await plain.diagnosticsOf(uri, 1)];
    plain.close();
    const told = found.map((one, at) => ({ code: String(one.code), message: String(one.message), english: String(english[at]!.message) }));
    expect(new Set(told.map(({ code }) => code)).size).toBeGreaterThan(8);
    for (const one of told) {
      expect(one.message, one.code).toMatch(/^«/);
      expect(one.message.replace(/[«»]/g, ''), one.code).toBe(one.english);
    }
  });

  test('so are lenses, hints and what can be done', async () => {
    client = await talk({ options: { words, commands: true, settings: { hints: { ball: true } } } });
    await client.open(uri, lighthouse);
    const textDocument = { uri };
    const range = { start: { line: 0, character: 0 }, end: { line: 60, character: 0 } };
    const lenses = (await client.connection.sendRequest(lsp.CodeLensRequest.type, { textDocument }))!;
    expect(lenses.length).toBeGreaterThan(2);
    for (const { command } of lenses) expect(command!.title).toMatch(/^«.*»$/);
    const hints = (await client.connection.sendRequest(lsp.InlayHintRequest.type, { textDocument, range }))!;
    for (const { tooltip } of hints) expect(tooltip).toMatch(/^«.*»$/);
    const head = { start: { line: 4, character: 0 }, end: { line: 4, character: 0 } };
    const actions = (await client.connection.sendRequest(lsp.CodeActionRequest.type, { textDocument, range: head, context: { diagnostics: [] } })) as lsp.CodeAction[];
    expect(actions.map(({ title }) => title)).toContain('«Mirror this play: left and right swapped»');
    await expect(client.connection.sendRequest(lsp.PrepareRenameRequest.type, { textDocument, position: { line: 0, character: 2 } })).rejects.toThrow('«Only names in quotation marks can be renamed.»');
  });

  test('what nobody has translated is told in English', async () => {
    client = await talk({ options: { commands: true, words: { '▶ Show': '▶ Zeigen' } } });
    await client.open(uri, lighthouse);
    const titles = (await client.connection.sendRequest(lsp.CodeLensRequest.type, { textDocument: { uri } }))!.map(({ command }) => command!.title);
    expect(titles[0]).toBe('▶ Zeigen');
    expect(titles[1]).toMatch(/^Draw$/);
  });
});
