// A language in which every template is only its gaps between two marks: what a coach is shown must stand between the marks, and what is left
// of it must be the play's own words. So nothing English comes by another way than a template, nor through a gap.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { entries } from '../../language/checks/catalogue.ts';
import { tellFinding } from '../../language/checks/tell-finding.ts';
import { sayWith } from '../../language/message/message.ts';
import { youthNotes } from '../../language/court/youth.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { root } from '../../scripts/build.ts';
import { compileExample } from '../../scripts/reference/compile-example.ts';
import { asPlay } from '../../scripts/reference/checks-page.ts';
import { allTemplates } from '../../scripts/templates.ts';
import * as protocol from '../../server/lsp/protocol.ts';
import { talk, type Client } from '../lsp/talking.ts';

const words = Object.fromEntries(allTemplates().found.map((template) => [template, `⟦${(template.match(/\{[\w:]+\}/g) ?? []).join(' ')}⟧`]));
const say = sayWith(words);

const lettersIn = (text: string): readonly string[] => text.toLowerCase().match(/(?<![\d\p{L}])\p{L}+/gu) ?? [];

/** Words of the notation, of measures and of rule books. */
const known = new Set([
  ...[...readFileSync(join(root, 'language/grammar/line.langium'), 'utf8').matchAll(/'([a-z][\w -]*)'/g)].flatMap(([, keyword]) => keyword!.split(/[ -]/)),
  ...['s', 'm', 'x', 'ft', 'in', 'seconds', 'fiba', 'nba', 'ncaa', 'nfhs', 'mini', 'basketball'],
  ...entries.flatMap(({ code }) => code.split('-')),
  // Titles of rule books and guidelines stay as they are printed.
  ...youthNotes.flatMap(({ source }) => lettersIn(source.text)),
  ...ruleSets.flatMap(({ edition }) => lettersIn(edition)),
  // What joins the words of one line where the play is told: notation read aloud.
  ...['who', 'he', 'his', 'then', 'the'],
]);

/** Names go from one file to the others. */
const examples = readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.play'));
const inExamples = examples.flatMap((name) => lettersIn(readFileSync(join(root, 'examples', name), 'utf8').replaceAll(/#.*/g, '')));

/** What of a text is neither the play's nor the notation's. The steps of a repetition are numbered by the notation (`Right, 1st time`). */
function strangers(text: string, source: string): readonly string[] {
  const own = new Set([...lettersIn(source), ...inExamples]);
  return lettersIn(text.replaceAll(/`[^`]*`|\(data:[^)]*\)/g, '')).filter((word) => !own.has(word) && !known.has(word) && !known.has(word.replace(/e?s$/, '')));
}

const expectTold = (text: string | undefined, source: string, about: string): void => {
  expect(text, about).toMatch(/^⟦[^]*⟧$/);
  expect(strangers(text!, source), `${about}: ${text}`).toEqual([]);
};

describe('every check', () => {
  const wrong = entries.flatMap(({ code, manual }) => (manual.wrong === undefined ? [] : [{ code, text: asPlay(manual.wrong), beside: manual.beside }]));

  test.each(wrong)('$code', ({ text, beside }) => {
    for (const finding of compileExample(text, beside).findings) {
      const told = tellFinding(finding, say);
      expectTold(told.message, text, finding.message);
      for (const { message } of told.related) expectTold(message, text, finding.message);
      for (const { title } of told.fixes) expectTold(title, `${text} ${told.fixes.flatMap(({ edits }) => edits.map((edit) => edit.text)).join(' ')}`, finding.message);
    }
  });
});

describe('everything the server shows of', () => {
  let client: Client;
  beforeAll(async () => {
    client = await talk({ options: { words, commands: true, settings: { hints: { clock: true, places: true, ball: true } } }, capabilities: { textDocument: { codeAction: { resolveSupport: { properties: ['edit'] } } } } });
  });
  afterAll(() => client.close());

  const ask = <Answer>(method: string, params: object): Promise<Answer> => client.connection.sendRequest<Answer>(method, params);

  test.each(examples.slice(0, 4))('%s', async (name) => {
    const uri = `file:///examples/${name}`;
    const text = readFileSync(join(root, 'examples', name), 'utf8');
    const lines = text.split('\n').slice(0, 60);
    await client.open(uri, text);
    const textDocument = { uri };

    for (const { message } of await client.diagnosticsOf(uri, 1)) expectTold(String(message), text, 'a finding');
    for (const { command } of await ask<lsp.CodeLens[]>(lsp.CodeLensRequest.method, { textDocument })) expectTold(command!.title, text, 'a lens');
    const whole = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
    for (const { tooltip } of await ask<lsp.InlayHint[]>(lsp.InlayHintRequest.method, { textDocument, range: whole })) expectTold(String(tooltip), text, 'a hint');

    for (const [line, content] of lines.entries()) {
      const at = content.search(/\S/);
      if (at < 0) continue;
      const position = { line, character: at + 1 };
      const hover = await ask<lsp.Hover | null>(lsp.HoverRequest.method, { textDocument, position });
      // Its head is the words it is of.
      const [head = '', ...rest] = hover === null ? [] : (hover.contents as lsp.MarkupContent).value.split(/\n+/).filter((row) => !row.startsWith('!['));
      expect(strangers(head, text), head).toEqual([]);
      for (const row of rest) expectTold(row.replace(/^- /, '').trim().replaceAll(/⟧ ⟦/g, ' '), text, `hover on ${content}`);
      const range = { start: position, end: position };
      for (const { title } of await ask<lsp.CodeAction[]>(lsp.CodeActionRequest.method, { textDocument, range, context: { diagnostics: [] } })) expectTold(title, text, `an action on ${content}`);
    }

    for (const [line, content] of lines.entries()) {
      if (!/^\s+(\d|look|from)/.test(content) || line % 3 !== 0) continue;
      const position = { line, character: /^\s*\S+ /.exec(content)![0].length };
      const { items } = await ask<lsp.CompletionList>(lsp.CompletionRequest.method, { textDocument, position });
      for (const item of items.slice(0, 25)) {
        if (item.labelDetails?.description !== undefined) expect(strangers(item.labelDetails.description, text), item.label).toEqual([]);
        const { documentation } = await ask<lsp.CompletionItem>(lsp.CompletionResolveRequest.method, item);
        const told = typeof documentation === 'string' ? documentation : documentation?.value;
        if (told !== undefined) for (const row of told.split(/\n+/)) if (!row.startsWith('![')) expectTold(row, `${text} ${item.label}`, item.label);
      }
    }

    // A file of alignments has no play.
    const line = text.split('\n').findIndex((content) => content.startsWith('play '));
    if (line < 0) return;
    const { playback } = await ask<{ playback: Playback }>(protocol.playMethod, { version: protocol.PROTOCOL_VERSION, uri, line });
    for (const { text: sentence, part } of playback.told) if (part === undefined || !/\/|^.*:end/.test(part)) expect(strangers(sentence, text), sentence).toEqual([]);
    for (const { label } of playback.runs) expect(strangers(label, text), label).toEqual([]);
  });
});
