// Each word of the example playbook, typed again: is it in the list that opens where it stands?
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CompletionRequest, DidChangeTextDocumentNotification, type CompletionItem, type CompletionList, type TextEdit } from 'vscode-languageserver-protocol';
import { expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { talk } from './talking.ts';

/** Lines that only the coach knows. */
const freeLine = /^\s*(?:#|note|tags|notation|situation|spot|allow|use|roster|book|play|alignment|\d+ ")|^\s*$/;
/** Names he gives, and numbers that are no player's. */
const isFree = (before: string, rest: string): boolean =>
  (rest.startsWith('"') && /(?:\b(?:step|section|look[^:]*)|^\s*\d+)\s*$/.test(before)) || /^(?:[6-9]|\d\d|\d\.)/.test(rest) || (/^\d/.test(rest) && (/^\s*(?:call|shot|leave|must|inbound|clock)\b/.test(before) || /\bup to $/.test(before)));

interface Word {
  /** From 0. */
  readonly line: number;
  readonly at: number;
}

/** Words that are asked for: of equal beginnings, but for the players, one. */
function wordsOf(lines: readonly string[], seen: Set<string>): readonly Word[] {
  return lines.flatMap((text, line) => {
    if (freeLine.test(text)) return [];
    const written = text.replace(/\s*#.*$/, '');
    return [...written.matchAll(/(?<=^|\s)\S+/g)].flatMap(({ index: at }) => {
      const [before, rest] = [written.slice(0, at), written.slice(at)];
      const inQuotes = before.split('"').length % 2 === 0;
      const key = `${before}|${/^[^\s,:]+/.exec(rest)?.[0]}`.replace(/"[^"]*"/g, '""').replace(/[1-5]/g, '1');
      if (inQuotes || isFree(before, rest) || seen.has(key)) return [];
      seen.add(key);
      return [{ line, at }];
    });
  });
}

const withoutStops = (text: string): string => text.replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, '$1').replace(/\$\{\d+:([^}]*)\}/g, '$1').replace(/\$\d+/g, '').trim();

/** Whether the item goes on as the line does, at least to the end of the next word. */
function isMeant(item: CompletionItem, line: string, at: number): boolean {
  const { range, newText } = item.textEdit as TextEdit;
  const put = withoutStops(newText);
  const want = line.slice(range.start.character).replace(/^the /, '');
  const next = /^(?:the )?[^\s,:]+/.exec(line.slice(at))![0].replace(/^the /, '').length + (at - range.start.character);
  return want.startsWith(put) || (put.length >= next && want.slice(0, next) === put.slice(0, next));
}

test('nearly every word of the example playbook is offered where it stands, most of them among the first ten', async () => {
  const client = await talk({ capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } } } });
  const ranks: number[] = [];
  const missing: string[] = [];
  const seen = new Set<string>();
  for (const file of readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.play')).sort()) {
    const uri = pathToFileURL(join(root, 'examples', file)).href;
    const lines = readFileSync(join(root, 'examples', file), 'utf8').split('\n');
    await client.open(uri, lines.join('\n'));
    await client.diagnosticsOf(uri, 1);
    let version = 1;
    for (const { line, at } of wordsOf(lines, seen)) {
      const text = lines[line]!;
      const begun = lines.with(line, text.slice(0, at)).join('\n');
      await client.connection.sendNotification(DidChangeTextDocumentNotification.type, { textDocument: { uri, version: ++version }, contentChanges: [{ text: begun }] });
      const { items } = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position: { line, character: at } })) as CompletionList;
      const rank = items.findIndex((item) => isMeant(item, text, at));
      ranks.push(rank);
      if (rank < 0) missing.push(`${file}:${line + 1} ${text.slice(0, at)}|${text.slice(at)}`);
    }
  }
  client.close();
  const share = (few: number) => ranks.filter((rank) => rank >= 0 && rank < few).length / ranks.length;
  const told = `${ranks.length} words: first ${share(1).toFixed(3)}, of the first ten ${share(10).toFixed(3)}, at all ${share(Infinity).toFixed(3)}\n${missing.join('\n')}`;
  expect(ranks.length).toBeGreaterThan(500);
  expect(share(Infinity), told).toBeGreaterThan(0.98);
  expect(share(10), told).toBeGreaterThan(0.8);
});
