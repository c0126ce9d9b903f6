// What the list of words keeps from letter to letter changes nothing of what it says.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { CompletionRequest, CompletionResolveRequest, type ClientCapabilities, type CompletionItem, type CompletionList } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { lineCount, textOf } from '../../language/book/book.ts';
import { expectedAfter } from '../../language/grammar/expected.ts';
import { root } from '../../scripts/build.ts';
import { keepStanding, standingAt, type Standing } from '../../server/lsp/completion/standing.ts';
import { openDocuments } from '../../server/lsp/documents.ts';
import { talk, uri, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const used = 'file:///plays/own.play';
const own = 'notation 1\nspot "dock" is 1 m below left wing\n\nalignment "Kite"\n  1 top\n  2 right wing\n  3 left wing\n  4 right block\n  5 left block\n\nplay "Mirror"\n  from "Kite", ball with 2\n  step "One"\n    2 passes to 1\n';
const using = lighthouse.replace('notation 1', 'notation 1\nuse "own.play"').replace('from stack', 'from "Kite"').replace('2 clears to right corner', '2 clears to "dock"');

const said = ({ sayWhere, ...standing }: Standing) => ({ ...standing, words: ['1', '2', '3', '4', '5'].map((body) => sayWhere(body as never)) });

describe('who stands where, kept while a line is typed', () => {
  const typed = fc.record({ kind: fc.constant('type' as const), text: fc.constantFrom('1 passes to 3, ', '4 ', 'step "Late"', 'x', ' and ', '\n    2 cuts to rim\n', '#', 'play "Other"', '"') });
  const anything = fc.oneof(
    { weight: 4, arbitrary: typed },
    { weight: 2, arbitrary: fc.record({ kind: fc.constant('delete' as const), letters: fc.integer({ min: 1, max: 30 }) }) },
    { weight: 3, arbitrary: fc.record({ kind: fc.constant('go' as const), line: fc.nat(60), character: fc.nat(40) }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('use' as const), text: fc.constantFrom(own, own.replace('2 right wing', '2 right corner'), own.replace('1 m below', '2 m below'), '') }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('head' as const), text: fc.constantFrom('rules fiba', 'rules nba', 'level u10', '') }) },
  );

  test('it is what is read anew, through any edits', () => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: 5, maxLength: 40 }), (deeds) => {
        const documents = openDocuments();
        const kept = keepStanding();
        documents.open(uri, 1, using);
        documents.open(used, 1, own);
        let cursor = { line: 22, character: 4 };
        for (const [at, deed] of deeds.entries()) {
          if (deed.kind === 'go') cursor = { line: Math.min(deed.line, lineCount(documents.get(uri)!.file) - 1), character: deed.character };
          else if (deed.kind === 'use') documents.change(used, at + 2, [{ text: deed.text }]);
          else if (deed.kind === 'head') documents.change(uri, at + 2, [{ range: { start: { line: 2, character: 0 }, end: { line: 2, character: 40 } }, text: deed.text }]);
          else documents.change(uri, at + 2, [{ range: { start: cursor, end: { ...cursor, character: cursor.character + (deed.kind === 'delete' ? deed.letters : 0) } }, text: deed.kind === 'type' ? deed.text : '' }]);
          const document = documents.get(uri)!;
          const before = (textOf(document.file).split('\n')[cursor.line] ?? '').slice(0, cursor.character);
          expect(said(kept(documents.book(), document, cursor.line, before))).toEqual(said(standingAt(documents.book(), document, cursor.line, before)));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('while only its line is typed the play is not read again', () => {
    const documents = openDocuments();
    const kept = keepStanding();
    documents.open(uri, 1, lighthouse);
    const line = lighthouse.split('\n').indexOf('    1 passes to 3');
    const standing = (before: string) => kept(documents.book(), documents.get(uri)!, line, before);
    const first = standing('    ');
    documents.change(uri, 2, [{ range: { start: { line, character: 4 }, end: { line, character: 4 } }, text: '4 ' }]);
    expect(standing('    4 ')).toBe(first);
    expect(standing('    1 passes to 3, 3 ')).not.toBe(first);
  });
});

test('what can follow is the same whatever was asked before', () => {
  const lines = using.split('\n').flatMap((line) => Array.from({ length: line.length + 1 }, (_, end) => line.slice(0, end)));
  const asTyped = new Map(lines.map((prefix) => [prefix, JSON.stringify(expectedAfter(prefix))]));
  // Backwards nothing is still kept that the same letters left behind.
  for (const prefix of lines.toReversed()) expect(JSON.stringify(expectedAfter(prefix)), prefix).toBe(asTyped.get(prefix));
});

describe('an editor that takes what items share once', () => {
  const sharing: ClientCapabilities = { textDocument: { completion: { completionItem: { snippetSupport: true }, completionList: { itemDefaults: ['editRange', 'data'] } } } };
  let clients: readonly [Client, Client];
  beforeAll(async () => void (clients = [await talk({ capabilities: sharing }), await talk({ capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } } } })]));
  afterAll(() => clients.forEach((client) => client.close()));

  /** As the protocol says a list with defaults is to be read. */
  const written = ({ items, itemDefaults }: CompletionList): CompletionItem[] =>
    items.map(({ textEditText, ...item }) => ({
      ...item,
      textEdit: item.textEdit ?? { range: itemDefaults!.editRange as never, newText: textEditText ?? item.label },
      data: item.data ?? itemDefaults!.data,
    }));

  test.each(['    ', '    4 ', '    1 pa', '    3 cuts to left w', '  step "Other" instead of "', '    look ', '    1 passes to 3, '])('“%s”: it is offered the same', async (line) => {
    const text = lighthouse.replace('    1 passes to 3\n', `${line}\n`);
    const position = { line: lighthouse.split('\n').indexOf('    1 passes to 3'), character: line.length };
    const at = `file:///plays/shared-${line.length}.play`;
    const [shared, whole] = (await Promise.all(
      clients.map(async (client) => {
        await client.open(at, text);
        return client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri: at }, position });
      }),
    )) as [CompletionList, CompletionList];
    expect(whole.itemDefaults).toBeUndefined();
    expect(whole.items.length).toBeGreaterThan(0);
    expect(written(shared)).toEqual(whole.items);
    // Most of what a list of verbs weighs.
    if (line === '    4 ') expect(JSON.stringify(shared).length).toBeLessThan(JSON.stringify(whole).length / 3);
  });

  test('a word is explained and drawn to both', async () => {
    const text = lighthouse.replace('    1 passes to 3\n', '    3 cuts to \n');
    const position = { line: lighthouse.split('\n').indexOf('    1 passes to 3'), character: '    3 cuts to '.length };
    const explained = await Promise.all(
      clients.map(async (client) => {
        const at = 'file:///plays/drawn.play';
        await client.open(at, text);
        const list = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri: at }, position })) as CompletionList;
        const place = list.items.find(({ label }) => label === 'right elbow')!;
        const { documentation } = await client.connection.sendRequest(CompletionResolveRequest.type, { ...place, data: place.data ?? list.itemDefaults?.data });
        return documentation;
      }),
    );
    expect(JSON.stringify(explained[0])).toMatch(/3 from/);
    expect(explained[0]).toEqual(explained[1]);
  });
});
