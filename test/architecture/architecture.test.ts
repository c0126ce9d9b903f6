import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { globSync } from 'tinyglobby';
import { describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { typecheck } from '../../scripts/typecheck.ts';
import * as rules from './rules.ts';
import { readSource } from './source-file.ts';

const files = globSync(['{language,server,client,scripts,test}/**/*.{ts,mjs}', '*.ts'], { cwd: root, ignore: ['**/node_modules/**'] })
  .filter((path) => !path.endsWith('.d.ts'))
  .map((path) => readSource(path, readFileSync(join(root, path), 'utf8')));

interface Row {
  readonly says: string;
  readonly rule: (files: Parameters<typeof rules.noCycles>[0]) => readonly string[];
  /** made-up files, path and text, that the rule must not let pass */
  readonly bad: readonly (readonly [string, string])[];
  /** and some that it must */
  readonly good: readonly (readonly [string, string])[];
}

const rows: readonly Row[] = [
  {
    says: 'the language needs no editor, no Node, no browser',
    rule: rules.languageRunsAnywhere,
    bad: [
      ['language/court/a.ts', `import { readFileSync } from 'node:fs';`],
      ['language/court/b.ts', `import type { Uri } from 'vscode';`],
      ['language/court/c.ts', `export type Place = import('vscode-languageserver').Position;`],
      ['language/court/d.ts', `export * from '../../server/lsp/host.ts';`],
      ['language/court/e.ts', `export const late = () => import('playwright-core');`],
    ],
    good: [['language/court/f.ts', `import { rim } from './rim.ts';`], ['server/cli/g.ts', `import { readFileSync } from 'node:fs';`]],
  },
  {
    says: 'the language reads no clock, no screen and no dice',
    rule: rules.languageIsPure,
    bad: [
      ['language/motion/a.ts', `export const now = Date.now();`],
      ['language/motion/b.ts', `export const luck = () => Math.random();`],
      ['language/motion/c.ts', `console.log('x');`],
      ['language/motion/d.ts', `export const at = new Date();`],
      ['language/motion/e.ts', `document.body.append('x');`],
    ],
    good: [['language/motion/f.ts', `export const length = (window: { to: number }) => Math.abs(window.to);`]],
  },
  {
    says: 'few know the parser',
    rule: rules.fewKnowLangium,
    bad: [
      ['language/play/a.ts', `import type { AstNode } from 'langium';`],
      ['server/lsp/hover.ts', `import { Parser } from 'chevrotain';`],
    ],
    good: [['language/grammar/b.ts', `import { Parser } from 'chevrotain';`], ['server/lsp/completion-words.ts', `import type { AstNode } from 'langium';`]],
  },
  {
    says: 'only the client knows the editor, only the server the protocol',
    rule: rules.onlyClientKnowsTheEditor,
    bad: [
      ['server/lsp/a.ts', `import { Uri } from 'vscode';`],
      ['server/cli/b.ts', `import { Position } from 'vscode-languageserver';`],
      ['client/c.ts', `import { Position } from 'vscode-languageserver-types';`],
      ['server/lsp/d.ts', `import { join } from 'node:path';`],
    ],
    good: [['client/e.ts', `import { Uri } from 'vscode';`], ['server/lsp/node.ts', `import { join } from 'node:path';`]],
  },
  {
    says: 'the player carries neither editor nor parser',
    rule: rules.playerIsSmall,
    bad: [
      ['client/preview/a.ts', `import { readBook } from '../../language/book/book.ts';`],
      ['client/preview/b.ts', `import type { Uri } from 'vscode';`],
      ['client/preview/c.ts', `import { at } from '../../language/playback/far.ts';`],
      ['language/playback/far.ts', `import { readLine } from '../grammar/line.ts';`],
    ],
    good: [['client/preview/d.ts', `import { at } from '../../language/playback/near.ts';`], ['language/playback/near.ts', `import type { Tree } from '../grammar/tree.ts';`]],
  },
  {
    says: 'imports go down the way of the data',
    rule: rules.importsGoDown,
    bad: [
      ['language/court/a.ts', `import { play } from '../play/play.ts';`],
      ['language/court/b.ts', `import type { Play } from '../play/play.ts';`],
      ['language/utils/c.ts', `export const x = 1;`],
      ['language/play/d.ts', `import { compile } from '../compile.ts';`],
      ['language/names/f.ts', `import { emptyPlay } from '../play/play.ts';`],
    ],
    good: [['language/play/e.ts', `import { rim } from '../court/rim.ts';`], ['language/compile.ts', `import { draw } from './picture/draw.ts';`]],
  },
  {
    says: 'a line is reworded, read, mended, in this order',
    rule: rules.linesGoDown,
    bad: [
      ['language/grammar/rewording/a.ts', `import { lex } from '../reading/lexer.ts';`],
      ['language/grammar/reading/b.ts', `import { mend } from '../mending/mend.ts';`],
      ['language/grammar/tree.ts', `import { c } from './rewording/c.ts';`],
      ['language/grammar/mending/d.ts', `import { parseLine } from '../parse-line.ts';`],
    ],
    good: [['language/grammar/parse-line.ts', `import { messages } from './mending/messages.ts';`], ['language/grammar/mending/e.ts', `import { f } from '../rewording/f.ts'; import { tree } from '../tree.ts';`]],
  },
  {
    says: 'no file imports itself by a way round',
    rule: rules.noCycles,
    bad: [
      ['language/play/a.ts', `import { b } from './b.ts';`],
      ['language/play/b.ts', `import type { C } from './c.ts';`],
      ['language/play/c.ts', `export { a } from './a.ts';`],
    ],
    good: [['language/play/d.ts', `import { e } from './e.ts'; import { f } from './f.ts';`], ['language/play/e.ts', `import { f } from './f.ts';`], ['language/play/f.ts', ``]],
  },
  {
    says: 'an import names its file whole',
    rule: rules.importsNameTheFile,
    bad: [['language/play/a.ts', `import { b } from './b';`]],
    good: [['language/play/a.ts', `import { b } from './b.ts';`]],
  },
  {
    says: 'what is exported is used',
    rule: rules.exportsAreUsed,
    bad: [['language/play/a.ts', 'export const alone = 1;'], ['server/lsp/b.ts', 'export function itsOwn() {}\nitsOwn();']],
    good: [
      ['language/play/d.ts', 'export const read = 1;\nexport const triedApart = 2;\nconst sum = triedApart + 1;\nexport type Told = number;'],
      ['server/lsp/e.ts', `import { read } from '../../language/play/d.ts';`],
      ['test/play/d.test.ts', `import { triedApart } from '../../language/play/d.ts';`],
    ],
  },
  {
    says: 'no file is too long to read',
    rule: rules.filesAreReadable,
    bad: [['language/play/a.ts', 'export {};\n'.repeat(501)]],
    good: [['language/play/a.ts', 'export {};\n'.repeat(500)], ['language/grammar/generated/ast.ts', 'export {};\n'.repeat(501)]],
  },
];

describe.each(rows)('$says', ({ rule, bad, good }) => {
  const read = (made: Row['bad']) => made.map(([path, text]) => readSource(path, text));

  test('in this tree', () => {
    expect(rule(files)).toEqual([]);
  });

  test('and a file that breaks the rule would be found', () => {
    const found = rule(read(bad)).join('\n');
    const alone = bad.filter(([path]) => found.includes(path)).map(([path]) => path);
    expect(alone).toEqual(bad.map(([path]) => path));
  });

  test('and a file that keeps it is let pass', () => {
    expect(rule(read(good))).toEqual([]);
  });
});

test('what only tests use is found too', () => {
  const made = [['client/panel/a.ts', 'export const tried = 1;'], ['test/client/a.test.ts', `import { tried } from '../../client/panel/a.ts';`]] as const;
  expect(rules.exportsAreUsed(made.map(([path, text]) => readSource(path, text)))).toEqual(['client/panel/a.ts exports tried, which only tests use']);
});

test('the tree is there to be looked at', () => {
  expect(files.map(({ path }) => path)).toEqual(expect.arrayContaining(['server/lsp/server.ts', 'client/preview/main.ts', 'language/play/play.ts']));
});

test('the compiler shows the language neither Node nor a browser', () => {
  const folder = mkdtempSync(join(root, 'node_modules/.setwright-'));
  try {
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ extends: join(root, 'language/tsconfig.json'), include: ['probe.ts'] }));
    writeFileSync(join(folder, 'probe.ts'), `export const a = process.argv;\nexport const b = document.body;\nexport const c = setTimeout;\nexport const d = Math.abs(-1);\n`);
    const said = typecheck(folder);
    expect([...said.matchAll(/probe\.ts\((\d+),/g)].map(([, line]) => Number(line))).toEqual([1, 2, 3]);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

describe('nothing in the repository points to one machine', () => {
  test('in the files under version control', () => {
    const tracked = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' }).split('\0').filter(Boolean);
    const found = tracked
      .filter((path) => existsSync(join(root, path)))
      .map((path) => [path, readFileSync(join(root, path), 'utf8')] as const)
      .filter(([, text]) => !text.includes('\0'))
      .flatMap(([path, text]) => rules.machinePathsIn(path, text));
    expect(tracked.length).toBeGreaterThan(20);
    expect(found).toEqual([]);
  });

  test('and such a line would be found', () => {
    const homes = ['home', 'Users', 'root', 'tmp', 'work'];
    for (const home of homes) expect(rules.machinePathsIn('a.ts', `const file = '/${home}/ann/play.txt';`)).toHaveLength(1);
    expect(rules.machinePathsIn('package-lock.json', `      "resolved": "${'http'}://registry.example/a.tgz",`)).toHaveLength(1);
    expect(rules.machinePathsIn('a.ts', `import { at } from '../${'work'}/at.ts'; // homework/rooted/tmpfile`)).toEqual([]);
  });
});

describe('a test that replaces a module has its modules for itself', () => {
  test('in this tree', () => {
    const tests = globSync('{language,server,client,scripts,test}/**/*.test.ts', { cwd: root, ignore: ['**/node_modules/**', 'test/architecture/**'] });
    expect(tests.flatMap((path) => rules.strayMocksIn(path, readFileSync(join(root, path), 'utf8')))).toEqual([]);
  });

  test('and one that does not would be found', () => {
    const text = `vi.mock('../../server/lsp/hover.ts');`;
    expect(rules.strayMocksIn('test/lsp/a.test.ts', text)).toHaveLength(1);
    expect(rules.strayMocksIn('test/lsp/a.mocked.test.ts', text)).toEqual([]);
  });
});
