// The rules of the tree (DEVELOPERS.md tells their reasons). Each takes files and returns what offends, in words.
import type { Import, SourceFile } from './source-file.ts';

type Rule = (files: readonly SourceFile[]) => readonly string[];

/** The way of the data: a folder of language/ may import from itself and from those before it. */
export const wayOfTheData = [
  'message', 'court', 'grammar', 'book', 'names', 'play', 'motion', 'timeline', 'defence', 'words', 'checks', 'edit', 'rewrite', 'playback', 'picture', 'compare',
] as const;

/** Packages that the language may use, being as pure as itself. */
const purePackages = ['valibot'];

const inside = (folder: string) => (path: string) => path.startsWith(`${folder}/`);
const inLanguage = inside('language');
const inPlayer = inside('client/preview');
const isGenerated = (path: string) => path.includes('/generated/');
const isTest = (path: string) => path.endsWith('.test.ts');
const isLangium = (name: string) => /^(langium|chevrotain)/.test(name);
const isEditor = (name: string) => name === 'vscode' || name.startsWith('vscode-languageclient');
const isProtocol = (name: string) => /^vscode-(languageserver|jsonrpc)/.test(name);
const isNode = (name: string) => name.startsWith('node:');

function offences(files: readonly SourceFile[], where: (path: string) => boolean, what: (one: Import) => boolean, why: string): string[] {
  return files
    .filter(({ path }) => where(path) && !isTest(path))
    .flatMap(({ path, imports }) => imports.filter(what).map(({ to }) => `${path} imports ${to}: ${why}`));
}

export const languageRunsAnywhere: Rule = (files) => [
  ...offences(files, inLanguage, ({ to, ours }) => !ours && !isLangium(to) && !purePackages.includes(to), 'language/ needs no editor, no Node, no browser and few packages'),
  ...offences(files, inLanguage, ({ to, ours }) => ours && !inLanguage(to), 'language/ knows nothing around it'),
];

/** Names that bring in an editor's, a machine's or a browser's state, a clock, or chance. */
const fromOutside = [
  ...['window', 'document', 'navigator', 'location', 'localStorage', 'self', 'globalThis', 'fetch', 'Worker'],
  ...['process', 'Buffer', 'require', 'console'],
  ...['Date', 'performance', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'requestAnimationFrame'],
  'Math.random',
];

export const languageIsPure: Rule = (files) =>
  files
    .filter(({ path }) => inLanguage(path) && !isTest(path) && !isGenerated(path))
    .flatMap(({ path, globals }) => fromOutside.filter((name) => globals.has(name)).map((name) => `${path} uses ${name}: the same text must give the same bytes everywhere`));

export const fewKnowLangium: Rule = (files) =>
  offences(
    files,
    (path) => /^(language|server|client)\//.test(path) && !/^(language\/(grammar|book)\/|server\/lsp\/completion)/.test(path),
    ({ to }) => isLangium(to),
    'only language/grammar, language/book and completion know the parser',
  );

export const onlyClientKnowsTheEditor: Rule = (files) => [
  ...offences(files, (path) => /^(language|server|scripts)\//.test(path), ({ to }) => isEditor(to), 'only client/ knows vscode'),
  ...offences(files, inside('client'), ({ to }) => isProtocol(to), 'only server/ speaks the protocol itself'),
  ...offences(files, inside('server/cli'), ({ to }) => isProtocol(to), 'the command line speaks no protocol'),
  ...offences(files, (path) => inside('client')(path) || (inside('server/lsp')(path) && !/\/node[^/]*\.ts$/.test(path)), ({ to }) => isNode(to), 'this also runs in a browser'),
];

/** What the player brings along when it runs, and what it names at all. */
export const playerIsSmall: Rule = (files) => {
  const forbidden = (to: string) => isEditor(to) || isProtocol(to) || isNode(to) || isLangium(to) || /^language\/(grammar|book)\//.test(to);
  const direct = offences(files, inPlayer, ({ to }) => forbidden(to), 'the player gets compiled data and knows neither editor nor parser');
  const byPath = new Map(files.map((file) => [file.path, file]));
  const reached = new Set<string>();
  const found: string[] = [];
  const follow = (path: string, way: readonly string[]) => {
    if (reached.has(path)) return;
    reached.add(path);
    for (const { to, typeOnly } of byPath.get(path)?.imports ?? []) {
      if (typeOnly) continue;
      if (forbidden(to) && way.length > 0) found.push(`${[...way, path, to].join(' → ')}: the player would carry this along`);
      else follow(to, [...way, path]);
    }
  };
  for (const { path } of files) if (inPlayer(path) && !isTest(path)) follow(path, []);
  return [...direct, ...found];
};

export const importsGoDown: Rule = (files) => {
  const place = (path: string) => wayOfTheData.indexOf(/^language\/([^/]+)\//.exec(path)?.[1] as (typeof wayOfTheData)[number]);
  const strangers = files.filter(({ path }) => /^language\/[^/]+\//.test(path) && place(path) < 0).map(({ path }) => `${path}: its folder has no place in the way of the data`);
  const upwards = files
    .filter(({ path }) => place(path) >= 0 && !isTest(path))
    .flatMap(({ path, imports }) =>
      imports
        .filter((one) => one.ours && inLanguage(one.to))
        .filter(({ to }) => place(to) < 0 || place(to) > place(path))
        .map(({ to }) => `${path} imports ${to}, which comes later in the way of the data`),
    );
  return [...strangers, ...upwards];
};

/** The way of a line: a folder of language/grammar/ may import from itself, from those before it and from what lies beside them. */
const wayOfALine = ['rewording', 'reading', 'mending'] as const;
/** What begins the way needs nothing of it, what ends it all of it. */
const endsOfTheWay = ['language/grammar/parse-line.ts', 'language/grammar/expected.ts'];

export const linesGoDown: Rule = (files) => {
  const place = (path: string) => (endsOfTheWay.includes(path) ? wayOfALine.length : wayOfALine.indexOf(/^language\/grammar\/([^/]+)\//.exec(path)?.[1] as (typeof wayOfALine)[number]));
  return files
    .filter(({ path }) => path.startsWith('language/grammar/') && !isTest(path) && !isGenerated(path))
    .flatMap(({ path, imports }) => imports.filter(({ to }) => to.startsWith('language/grammar/') && place(to) > place(path)).map(({ to }) => `${path} imports ${to}, which comes later on the way of a line`));
};

export const noCycles: Rule = (files) => {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, way: readonly string[]) => {
    if (way.includes(path)) {
      found.push([...way.slice(way.indexOf(path)), path].join(' → '));
      return;
    }
    if (done.has(path)) return;
    for (const { to, ours } of byPath.get(path)?.imports ?? []) if (ours && byPath.has(to)) visit(to, [...way, path]);
    done.add(path);
  };
  for (const { path } of files) if (!isGenerated(path)) visit(path, []);
  return found;
};

/** What is exported has a reader elsewhere; one that only tests read does something in its own file too. */
export const exportsAreUsed: Rule = (files) => {
  const readers = new Map<string, string[]>();
  for (const { path, names } of files) for (const name of names.keys()) readers.set(name, [...(readers.get(name) ?? []), path]);
  return files
    .filter(({ path }) => /^(language|server|client)\//.test(path) && !isTest(path) && !isGenerated(path))
    .flatMap(({ path, exported, names }) =>
      exported.flatMap((name) => {
        const elsewhere = (readers.get(name) ?? []).filter((one) => one !== path);
        if (elsewhere.length === 0) return [`${path} exports ${name}, which no other file names`];
        return elsewhere.every((one) => one.startsWith('test/')) && names.get(name) === 1 ? [`${path} exports ${name}, which only tests use`] : [];
      }),
    );
};

export const importsNameTheFile: Rule = (files) =>
  files.flatMap(({ path, imports }) => imports.filter(({ to, ours }) => ours && !/\.[a-z]+$/.test(to)).map(({ to }) => `${path} imports ${to} without its extension`));

export const filesAreReadable: Rule = (files) => {
  const most = 500;
  return files.filter(({ path, lines }) => lines > most && !isGenerated(path)).map(({ path, lines }) => `${path} has ${lines} lines, more than ${most}: split it`);
};

/** A place that exists on the machine of whoever wrote it, or a private address. The words are put together so that this file is clean. */
const machinePlaces = new RegExp(`(^|[\\s"'\`(=:,])/(${['work', 'tmp', 'root', 'home', 'Users'].join('|')})/|[A-Z]:\\\\\\\\?Users|"${'resolved'}": "http`);

export function machinePathsIn(path: string, text: string): string[] {
  return text.split('\n').flatMap((line, at) => (machinePlaces.test(line) ? [`${path}:${at + 1} names a place on one machine: ${line.trim().slice(0, 100)}`] : []));
}

/** Unit tests share their modules (`vitest.config.ts`); one that puts something else in a module's place has them for itself, by its file's name. */
export function strayMocksIn(path: string, text: string): string[] {
  return /\bvi\.(mock|doMock|resetModules|stubGlobal|stubEnv)\(/.test(text) && !path.endsWith('.mocked.test.ts') ? [`${path} puts something in the place of what other tests use: name it .mocked.test.ts`] : [];
}
