import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { CodeActionRequest, DiagnosticSeverity, TextDocumentSaveReason, type CodeAction, type Diagnostic } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { catalogue } from '../../language/checks/catalogue.ts';
import { root } from '../../scripts/build.ts';
import { cursorMethod } from '../../server/lsp/protocol.ts';
import { manualBeside } from '../../server/lsp/node-manual.ts';
import { talk, until, uri, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const broken = lighthouse.replace('    5 screens down for 3', '    1 screens down for 3');
const lineOf = (text: string, words: string) => text.split('\n').findIndex((line) => line.includes(words));

let client: Client;
beforeEach(async () => void (client = await talk({ options: { manual: 'manual:/{code}.md', settings: { checks: { settle: 60 } } } })));
afterEach(() => client.close());

test('Lighthouse as printed is clean', async () => {
  await client.open(uri, lighthouse);
  expect(await client.diagnosticsOf(uri, 1)).toEqual([]);
});

test('a finding comes with its code, a link to the manual, its place and what belongs to it', async () => {
  await client.open(uri, broken);
  const found = (await client.diagnosticsOf(uri, 1)).find(({ code }) => code === 'screen-with-ball');
  const line = lineOf(broken, '1 screens down');
  expect(found).toMatchObject({ severity: DiagnosticSeverity.Error, source: 'setwright', codeDescription: { href: 'manual:/screen-with-ball.md' }, range: { start: { line, character: 4 }, end: { line, character: 24 } } });
  expect(found!.message).toMatch(/1 sets a screen while he has the ball/);
});

test('where nobody says otherwise the link leads into the reference beside the program, and each check has its place there', () => {
  const manual = manualBeside(join(root, 'server/lsp/node.ts'))!;
  expect(manual).toBe(`${pathToFileURL(join(root, 'docs/checks.md')).href}#{code}`);
  const page = readFileSync(fileURLToPath(manual.replace(/#.*/, '')), 'utf8');
  expect(Object.keys(catalogue).filter((code) => !page.includes(`id="${code}"`))).toEqual([]);
  expect(manualBeside('/no/such/program')).toBeUndefined();
});

test('a window too short is said of each look, with the window as what belongs to it', async () => {
  await client.open(uri, lighthouse.replace('within 16 seconds', 'within 6 seconds'));
  const found = (await client.diagnosticsOf(uri, 1)).filter(({ code }) => code === 'past-window');
  expect(found.length).toBeGreaterThanOrEqual(2);
  expect(found[0]!.relatedInformation?.[0]?.location.range.start.line).toBe(lineOf(lighthouse, 'shot within'));
});

describe('while a line is typed', () => {
  const at = lineOf(lighthouse, '2 clears');
  const end = { line: at, character: '    2 clears to right corner'.length };

  test('what is new on it waits, and comes once', async () => {
    await client.open(uri, lighthouse);
    await client.diagnosticsOf(uri, 1);
    await client.change(uri, 2, [{ range: { start: { line: at, character: 13 }, end }, text: 'to rigth corner' }]);
    expect(await client.diagnosticsOf(uri, 2)).toEqual([]);
    await until(() => client.published.filter(({ version }) => version === 2).length === 2);
    expect(client.published.at(-1)!.diagnostics.map(({ range }) => range.start.line)).toEqual([at]);
  });

  test('a line that just stops is a hint, in the end', async () => {
    await client.open(uri, lighthouse);
    await client.diagnosticsOf(uri, 1);
    await client.change(uri, 2, [{ range: { start: { line: at, character: 13 }, end }, text: 'to ' }]);
    await until(() => client.published.filter(({ version }) => version === 2).length === 2);
    expect(client.published.at(-1)!.diagnostics).toMatchObject([{ severity: DiagnosticSeverity.Hint, range: { start: { line: at } } }]);
  });

  describe('and ends in what may be the beginning of another word', () => {
    const told = () => client.published.at(-1)!.diagnostics.map(({ code, severity }) => [code, severity]);
    const typed = async () => {
      await client.open(uri, lighthouse);
      await client.diagnosticsOf(uri, 1);
      await client.change(uri, 2, [{ range: { start: { line: at, character: 13 }, end }, text: 'to corner right' }]);
      await until(() => told().length === 1);
      expect(told()).toEqual([['word-order', DiagnosticSeverity.Hint]]);
    };
    const inFull = () => until(() => told().some(([, severity]) => severity === DiagnosticSeverity.Error));

    test('it is told in full once the cursor has left the line, or the text', async () => {
      await typed();
      await client.connection.sendNotification(cursorMethod, { version: 1, uri, line: at + 1 });
      await inFull();
      await client.change(uri, 3, [{ range: { start: { line: at, character: 0 }, end: { line: at, character: 0 } }, text: ' ' }]);
      await until(() => told().every(([, severity]) => severity === DiagnosticSeverity.Hint));
      await client.connection.sendNotification(cursorMethod, { version: 1, uri });
      await inFull();
    });

    test.each([[TextDocumentSaveReason.Manual], [TextDocumentSaveReason.FocusOut]])('it is told in full once the text is saved (reason %i), not when the editor saves by itself', async (reason) => {
      await typed();
      await client.connection.sendNotification('textDocument/willSave', { textDocument: { uri }, reason: TextDocumentSaveReason.AfterDelay });
      await client.change(uri, 3, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '' }]);
      await client.change(uri, 4, [{ range: { start: { line: at, character: 0 }, end: { line: at, character: 0 } }, text: ' ' }]);
      await client.diagnosticsOf(uri, 4);
      expect(told()).toEqual([['word-order', DiagnosticSeverity.Hint]]);
      await client.connection.sendNotification('textDocument/willSave', { textDocument: { uri }, reason });
      await inFull();
    });

    test('it is told in full when the text is opened so', async () => {
      await client.open(uri, lighthouse.replace('2 clears to right corner', '2 clears to corner right'));
      expect((await client.diagnosticsOf(uri, 1)).map(({ severity }) => severity)).toEqual([DiagnosticSeverity.Error]);
    });
  });

  test('what is wrong elsewhere comes at once', async () => {
    await client.open(uri, lighthouse);
    await client.diagnosticsOf(uri, 1);
    const window = lineOf(lighthouse, 'shot within');
    await client.change(uri, 2, [{ range: { start: { line: window, character: 14 }, end: { line: window, character: 16 } }, text: '6' }]);
    expect((await client.diagnosticsOf(uri, 2)).map(({ code }) => code)).toContain('past-window');
    expect(client.published.filter(({ version }) => version === 2)).toHaveLength(1);
  });

  test('what was said of it stays said while he goes on typing', async () => {
    await client.open(uri, broken);
    await client.diagnosticsOf(uri, 1);
    const line = lineOf(broken, '1 screens down');
    await client.change(uri, 2, [{ range: { start: { line, character: 24 }, end: { line, character: 24 } }, text: ' ' }]);
    expect((await client.diagnosticsOf(uri, 2)).map(({ code }) => code)).toContain('screen-with-ball');
  });
});

test('however fast he types, each version is told once and whole, and once more at most with what waited; nothing goes and comes back', async () => {
  await client.open(uri, broken);
  await client.diagnosticsOf(uri, 1);
  const at = lineOf(broken, '2 clears');
  const words = ' to left wing, 3 cuts to top';
  const end = '    2 clears to right corner'.length;
  let version = 1;
  for (const [nth, letter] of [...words].entries()) {
    version++;
    await client.change(uri, version, [{ range: { start: { line: at, character: end + nth }, end: { line: at, character: end + nth } }, text: letter }]);
    if (nth % 3 === 0) await client.diagnosticsOf(uri, version);
  }
  await client.diagnosticsOf(uri, version);
  await new Promise((resolve) => setTimeout(resolve, 150));
  const told = client.published.filter((one) => one.uri === uri);
  const versions = told.map((one) => one.version!);
  expect(versions).toEqual(versions.toSorted((a, b) => a - b));
  for (const one of new Set(versions)) expect(versions.filter((each) => each === one).length).toBeLessThanOrEqual(2);
  for (const { diagnostics } of told) expect(diagnostics.map(({ code }) => code)).toContain('screen-with-ball');
});

describe('what is wrong with the other lines of a play', () => {
  const at = lineOf(broken, '2 clears');
  const said = async (version: number) => (await client.diagnosticsOf(uri, version)).map(({ code, range }) => [code, range.start.line]);
  const screen = ['screen-with-ball', lineOf(broken, '1 screens down')];

  test('stays told while one is half typed, also after a pause, and moves with its line', async () => {
    await client.open(uri, broken);
    expect(await said(1)).toContainEqual(screen);
    await client.change(uri, 2, [{ range: { start: { line: at, character: 13 }, end: { line: at, character: 15 } }, text: 'too' }]);
    expect(await said(2)).toContainEqual(screen);
    await until(() => client.published.filter(({ version }) => version === 2).length === 2);
    expect(await said(2)).toEqual(expect.arrayContaining([screen, [expect.anything(), at]]));
    await client.change(uri, 3, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '# a remark\n' }]);
    expect((await said(3)).map(([code]) => code), 'he has gone elsewhere: what is unsure is told no more').not.toContain('screen-with-ball');
    await client.change(uri, 4, [{ range: { start: { line: at + 1, character: 13 }, end: { line: at + 1, character: 16 } }, text: 'to' }]);
    expect(await said(4)).toContainEqual([screen[0], Number(screen[1]) + 1]);
  });

  test('is told no more once it is mended, half-typed line or not', async () => {
    await client.open(uri, broken);
    await client.diagnosticsOf(uri, 1);
    await client.change(uri, 2, [{ range: { start: { line: at, character: 13 }, end: { line: at, character: 15 } }, text: 'too' }]);
    expect(await said(2)).toContainEqual(screen);
    await client.change(uri, 3, [{ range: { start: { line: Number(screen[1]), character: 4 }, end: { line: Number(screen[1]), character: 5 } }, text: '5' }]);
    expect((await said(3)).map(([code]) => code)).not.toContain('screen-with-ball');
  });
});

describe('what is missing of a play whose end is being written', () => {
  const begun = 'level u14\n\nplay "Driftwood"\n  from horns, ball with 1\n  against man\n  step "Open"\n    1 dribbles to left wing\n';
  const end = begun.split('\n').length - 1;
  const severityOf = (items: readonly Diagnostic[]) => items.find(({ code }) => code === 'no-ending')?.severity;
  const insert = (line: number, character: number, text: string) => ({ range: { start: { line, character }, end: { line, character } }, text });
  const cursorAt = (line: number) => client.connection.sendNotification(cursorMethod, { version: 1, uri, line });

  test('is a hint from the first line on, and whole when the text is opened or he writes elsewhere', async () => {
    await client.open(uri, begun);
    expect(severityOf(await client.diagnosticsOf(uri, 1))).toBe(DiagnosticSeverity.Warning);
    await client.change(uri, 2, [insert(end, 0, '    2 cuts to rim\n')]);
    expect(severityOf(await client.diagnosticsOf(uri, 2))).toBe(DiagnosticSeverity.Hint);
    await client.change(uri, 3, [insert(4, 2, '# ')]);
    expect(severityOf(await client.diagnosticsOf(uri, 3))).toBe(DiagnosticSeverity.Warning);
  });

  test('is whole once the cursor has gone elsewhere, and not while it goes on below', async () => {
    await client.open(uri, begun);
    await client.change(uri, 2, [insert(end, 0, '    2 cuts to rim\n\n')]);
    expect(severityOf(await client.diagnosticsOf(uri, 2))).toBe(DiagnosticSeverity.Hint);
    await cursorAt(end + 2);
    await cursorAt(end + 1);
    expect(severityOf(client.published.at(-1)!.diagnostics)).toBe(DiagnosticSeverity.Hint);
    await cursorAt(3);
    await until(() => severityOf(client.published.at(-1)!.diagnostics) === DiagnosticSeverity.Warning);
  });
});

test('several edits that arrive together are checked once, as the newest text', async () => {
  await client.open(uri, lighthouse);
  await client.diagnosticsOf(uri, 1);
  const before = client.published.length;
  for (let version = 2; version <= 20; version++) void client.change(uri, version, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '#' }]);
  await client.diagnosticsOf(uri, 20);
  expect(client.published.length - before).toBeLessThan(19);
  expect(client.published.at(-1)!.version).toBe(20);
});

test('a closed document has no findings left', async () => {
  await client.open(uri, broken);
  await client.diagnosticsOf(uri, 1);
  await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  await until(() => client.published.at(-1)!.diagnostics.length === 0);
});

describe('quick fixes', () => {
  test.each([['\n'], ['\r\n']])('the mend of a screen by the man with the ball passes first (line ends %j)', async (eol) => {
    const text = broken.replaceAll('\n', eol);
    await client.open(uri, text);
    const diagnostics = await client.diagnosticsOf(uri, 1);
    const found = diagnostics.find(({ code }) => code === 'screen-with-ball')!;
    const actions = (await client.connection.sendRequest(CodeActionRequest.type, { textDocument: { uri }, range: found.range, context: { diagnostics } })) as CodeAction[];
    const mend = actions.find(({ title }) => /^Pass to 3 first/.test(title))!;
    expect(mend).toMatchObject({ kind: 'quickfix', isPreferred: true, diagnostics: [{ code: 'screen-with-ball' }] });
    const change = mend.edit!.documentChanges![0] as { textDocument: { version: number }; edits: Parameters<typeof TextDocument.applyEdits>[1] };
    expect(change.textDocument.version).toBe(1);
    const mended = TextDocument.applyEdits(TextDocument.create(uri, 'setwright', 1, text), change.edits);
    expect(mended).toBe(text.replace('    1 screens down', `    1 passes to 3${eol}    1 screens down`));
    await client.change(uri, 2, [{ text: mended }]);
    expect((await client.diagnosticsOf(uri, 2)).map(({ code }) => code)).not.toContain('screen-with-ball');
  });

  test('none where another kind is asked for', async () => {
    await client.open(uri, broken);
    const diagnostics = await client.diagnosticsOf(uri, 1);
    const range = diagnostics[0]!.range;
    expect(await client.connection.sendRequest(CodeActionRequest.type, { textDocument: { uri }, range, context: { diagnostics, only: ['source.organizeImports'] } })).toEqual([]);
  });
});
