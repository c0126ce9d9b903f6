import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { reflection } from '../../language/grammar/generated/ast.ts';
import { lineParser } from '../../language/grammar/reading/line-parser.ts';
import { otherNumber, verbOf, verbs } from '../../language/grammar/verbs.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';

const root = join(import.meta.dirname, '../..');

it('the generated files are those of the grammar', () => {
  const out = mkdtempSync(join(tmpdir(), 'setwright-stale-'));
  try {
    execFileSync(process.execPath, [join(root, 'scripts/generate.mjs'), '--out', out]);
    const committed = join(root, 'language/grammar/generated');
    expect(readdirSync(committed).sort()).toEqual(readdirSync(out).sort());
    for (const file of readdirSync(out)) expect(readFileSync(join(committed, file), 'utf8'), `${file}: run npm run generate`).toBe(readFileSync(join(out, file), 'utf8'));
  } finally {
    rmSync(out, { recursive: true });
  }
});

it('every verb of the grammar has a class and a base form, and no other word has', () => {
  expect([...verbs.keys()].sort()).toEqual([...lineParser().lexer.verbs].sort());
});

it('singular and plural of a verb are of one class and one base form', () => {
  for (const [one, other] of otherNumber) {
    expect(verbOf(one)).toMatchObject({ class: verbOf(other)!.class, base: verbOf(other)!.base });
    expect(verbOf(one)!.number).not.toBe(verbOf(other)!.number);
  }
});

it('a verb belongs to the action of its class', () => {
  const actions: { readonly [verbClass: string]: string } = {
    move: 'Move', seal: 'Seal', rebound: 'Crash', dribble: 'Dribble', pass: 'Pass', 'hand-off': 'HandOff', screen: 'Screen', shot: 'Shot', hold: 'Hold', 'throw-in': 'ThrowIn', role: 'Role', defend: 'Defend',
  };
  for (const [word, verb] of verbs) {
    if (verb.class === 'event' || verb.class === 'close') continue;
    const { tree } = parseLine(`${verb.class === 'defend' ? 'X3' : '3'} ${word}`);
    expect(tree?.$type === 'Statement' && tree.first.action.$type, word).toBe(actions[verb.class]);
  }
});

it('no property of the tree is called like the columns of a node', () => {
  for (const type of reflection.getAllTypes()) for (const name of Object.keys(reflection.getTypeMetaData(type).properties)) expect(['at', 'to', 'spans']).not.toContain(name);
});

it('the reader of lines bundles without the language-server protocol and without an editor', async () => {
  const result = await build({ entryPoints: [join(root, 'language/grammar/parse-line.ts')], bundle: true, minify: true, write: false, format: 'esm', platform: 'neutral', mainFields: ['module', 'main'], metafile: true });
  expect(Object.keys(result.metafile.inputs).filter((input) => /vscode|node:/.test(input) && result.metafile.outputs['<stdout>']?.inputs[input]?.bytesInOutput)).toEqual([]);
  expect(result.outputFiles[0]!.contents.length).toBeLessThan(700_000);
});
