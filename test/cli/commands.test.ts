// What the commands do with files, folders, colours and versions; the real, built command line.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { compileText } from '../checks/compiled.ts';
import { buildCommandLine, runBuilt, type Around } from './built.ts';
import { offences, type Schema } from './schema.ts';

let folder = '';
let binary = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-commands-'));
  binary = await buildCommandLine(build, folder);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], around: Around = {}) => runBuilt(binary, args, { cwd: folder, ...around });

const play = (name: string) => `play "${name}"\n  from 5-out\n  1 passes to 2\n  look 2: three\n`;
const broken = 'play "A"\n  from 5-out\n  1 dribles to left wing\n  look 1: jumper\n';

describe('check --json', () => {
  const schema = JSON.parse(readFileSync('docs/check-output.schema.json', 'utf8'));

  test('is as the written schema says, with every kind of finding', async () => {
    const { out } = await run(['check', '--json', '-'], { input: readFileSync('test/cli/mistakes.play', 'utf8') });
    const said = JSON.parse(out);
    expect(said.files[0].findings.length).toBeGreaterThan(5);
    expect(offences(schema, said)).toEqual([]);
  });

  test('and the schema would notice', () => {
    expect(offences(schema, { version: 2, files: [{ file: 1 }], counts: {} }).length).toBeGreaterThan(4);
  });
});

describe('check --sarif', () => {
  const schema = JSON.parse(readFileSync('test/cli/sarif-2.1.0.schema.json', 'utf8')) as Schema;
  const mistakes = readFileSync('test/cli/mistakes.play', 'utf8');

  test('is SARIF 2.1.0; each finding stands at its line, with its manual entry and its fix', async () => {
    mkdirSync(join(folder, 'sarif/a b'), { recursive: true });
    writeFileSync(join(folder, 'sarif/a b/ours #1.play'), mistakes);
    writeFileSync(join(folder, 'sarif/photo.play'), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]));
    const [{ out, code }, { out: asJson }] = await Promise.all([run(['check', 'sarif', '--sarif']), run(['check', 'sarif', '--json'])]);
    const said = JSON.parse(out);
    expect(offences(schema, said)).toEqual([]);
    expect(code).toBe(1);
    const [{ results, tool: { driver: { rules } } }] = said.runs;
    const findings = JSON.parse(asJson).files.flatMap((file: { findings: readonly object[] }) => file.findings) as readonly { line: number; column: number; code: string; message: string; severity: string; fixes: readonly object[] }[];
    expect(findings.length).toBeGreaterThan(5);
    const [last, ...placed] = results.toReversed();
    expect(last).toMatchObject({ ruleId: 'unreadable-file', level: 'error', locations: [{ physicalLocation: { artifactLocation: { uri: 'sarif/photo.play' } } }] });
    for (const [at, finding] of findings.entries()) {
      const result = placed.toReversed()[at];
      expect(result).toMatchObject({ ruleId: finding.code, level: finding.severity === 'hint' ? 'note' : finding.severity });
      expect(result.message.text.startsWith(finding.message)).toBe(true);
      expect(result.locations[0].physicalLocation).toMatchObject({ artifactLocation: { uri: 'sarif/a%20b/ours%20%231.play' }, region: { startLine: finding.line, startColumn: finding.column } });
      expect((result.fixes ?? []).length).toBe(finding.fixes.length);
      expect(rules[result.ruleIndex]).toMatchObject({ id: finding.code, help: { text: expect.stringContaining('Rests on: '), markdown: expect.stringContaining(`allow ${finding.code} `) } });
    }
    expect(results.some(({ fixes = [] }: { fixes?: readonly object[] }) => fixes.length > 0)).toBe(true);
  });

  test('and the schema would notice', async () => {
    const said = JSON.parse((await run(['check', '-', '--sarif'], { input: mistakes })).out);
    expect(offences(schema, said)).toEqual([]);
    const spoils: readonly ((run: typeof said.runs[0]) => void)[] = [
      ({ tool }) => { delete tool.driver.name; },
      ({ results: [first] }) => { first.level = 'hint'; },
      ({ results: [first] }) => { first.line = 3; },
      ({ results: [first] }) => { first.locations[0].physicalLocation = {}; },
      ({ results: [first] }) => { first.locations[0].physicalLocation.region.startLine = 0; },
    ];
    for (const spoil of spoils) {
      const spoilt = structuredClone(said);
      spoil(spoilt.runs[0]);
      expect(offences(schema, spoilt).length, String(spoil)).toBeGreaterThan(0);
    }
  });

  test('says what was not checked at all, and is not asked for together with JSON', async () => {
    const [newer, both] = await Promise.all([run(['check', '-', '--sarif'], { input: `notation 2\n${play('A')}` }), run(['check', '-', '--sarif', '--json'], { input: play('A') })]);
    const said = JSON.parse(newer.out);
    expect(offences(schema, said)).toEqual([]);
    expect([newer.code, said.runs[0].invocations[0].executionSuccessful, said.runs[0].invocations[0].toolExecutionNotifications[0].message.text]).toEqual([2, false, expect.stringContaining('is written in notation 2')]);
    expect([both.code, both.err.trim()]).toEqual([2, 'setwright: --sarif and --json are two forms of the same: ask for one of them.']);
  });
});

describe('colours', () => {
  test('come where they are asked for', async () => expect((await run(['check', '--color', 'always', '-'], { input: broken })).out).toContain('\u001B['));
  test('and not into a file, nor where NO_COLOR is set', async () => {
    expect((await run(['check', '-'], { input: broken, env: { NO_COLOR: '1' } })).out).not.toContain('\u001B[');
    expect((await run(['check', '--color', 'never', '-'], { input: broken })).out).not.toContain('\u001B[');
  });
  test('nobody is told how far it is where nobody looks', async () => expect((await run(['check', '-'], { input: broken })).err).toBe(''));
});

describe('a play with lines that cannot be read', () => {
  const two = 'level u16\n\nplay "A"\n  from 5-out\n  1 dribles to left wing\n  2 gets busy\n  look 1: jumper\n';
  test.each([['time'], ['jobs'], ['list'], ['draw'], ['page', '-o', '-']])('%s says beside what it gives that they are missing, and still gives it', async (...args) => {
    const { code, out, err } = await run([...args, '-'], { input: two });
    expect(err).toContain('2 lines of “A” cannot be read (5, 6) and are left out');
    expect(err).toContain('setwright check');
    expect(out).not.toContain('cannot be read (5');
    expect([code, out.length > 0]).toEqual([0, true]);
  });
  test('time shows a look no shot comes of without figures, instead of leaving it out', async () => {
    const { out } = await run(['time', '-'], { input: 'play "A"\n  from 5-out\n  look 1: three\n  1 pases to 2\n  2 passes to 5\n  look 5: 5 passes to 3, 3 shoots three\n' });
    expect(out).toMatch(/^ +5 +start +– +– +–$/m);
    expect(out).toContain('– no shot comes of it');
  });
  test('and nothing is said of one that can be read', async () => expect((await run(['time', '-'], { input: play('A') })).err).toBe(''));
});

describe('a file that cannot be read', () => {
  beforeAll(() => {
    mkdirSync(join(folder, 'folder.play'), { recursive: true });
    writeFileSync(join(folder, 'photo.play'), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]));
    symlinkSync('gone', join(folder, 'link.play'));
    writeFileSync(join(folder, 'first.play'), broken);
    writeFileSync(join(folder, 'last.play'), broken);
  });

  test('is told at its place, and the others are checked', async () => {
    const { code, out } = await run(['check', 'first.play', 'folder.play', 'photo.play', 'link.play', 'last.play']);
    expect(code).toBe(1);
    const heads = out.split('\n').filter((line) => /  error  /.test(line)).map((line) => line.replace(/:.*| {2}error.*/, ''));
    expect(heads).toEqual(['first.play', 'folder.play', 'photo.play', 'link.play', 'last.play']);
    expect(out).toContain('This file cannot be read: it is no text, but a picture or a program.');
    expect(out).toContain('2 plays in 5 files: 5 errors.');
  });

  test('stands in the JSON, as its schema says', async () => {
    const { out } = await run(['check', '--json', 'first.play', 'photo.play']);
    const said = JSON.parse(out);
    expect(said.files[1]).toEqual({ file: 'photo.play', findings: [], unreadable: 'it is no text, but a picture or a program' });
    expect(said.counts.error).toBe(2);
    expect(offences(JSON.parse(readFileSync('docs/check-output.schema.json', 'utf8')), said)).toEqual([]);
  });

  test('stops no other command either, which ends with 1', async () => {
    writeFileSync(join(folder, 'sound.play'), play('Sound'));
    const { code, out, err } = await run(['list', 'photo.play', 'sound.play']);
    expect([code, err]).toEqual([1, 'setwright: I cannot read photo.play: it is no text, but a picture or a program.\n']);
    expect(out).toContain('Sound');
  });

  test('alone is a wrong call where there is nothing to show', async () => expect(await run(['time', 'photo.play'])).toMatchObject({ code: 2, out: '' }));
});

describe('the notation’s version', () => {
  test('a newer one is refused, with what to do', async () => {
    const { code, err, out } = await run(['check', '-'], { input: `notation 2\n${play('A')}` });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('is written in notation 2, and this Setwright reads up to 1. Install a newer Setwright');
  });
  test('and the other files are checked all the same', async () => {
    writeFileSync(join(folder, 'newer.play'), `notation 2\n${play('A')}`);
    writeFileSync(join(folder, 'older.play'), broken);
    const { code, err, out } = await run(['check', 'newer.play', 'older.play']);
    expect(code).toBe(2);
    expect(err).toContain('newer.play is written in notation 2');
    expect(out).toMatch(/older\.play:3:5 +error +unknown-word[^]*1 play in 1 file: 1 error\./);
  });
  test('an older one is read', async () => expect((await run(['check', '-'], { input: `notation 1\n${play('A')}` })).code).toBe(0));
  test('the editor tells it at its line', () => expect(compileText(`notation 3\n${play('A')}`).findings.map(({ code, place }) => [code, place.line])).toEqual([['notation-newer', 0]]));
});

/** What a page carries. */
const dataOn = (html: string) => JSON.parse(inflateSync(Buffer.from(/id="setwright-plays">([^<]*)</.exec(html)![1]!, 'base64')).toString()) as { title: string; plays: { play: { name: string } }[]; sections?: (string | null)[] };

/** The names of its plays, in order. */
const playsOn = (html: string): readonly string[] => dataOn(html).plays.map(({ play: { name } }) => name);

describe('page', () => {
  test('of several plays is one page with all of them, and in a folder a page for each', async () => {
    const here = join(folder, 'several');
    mkdirSync(here);
    writeFileSync(join(here, 'all.play'), `${play('Tide')}\n${play('Out / back')}\n${play('..')}`);
    expect((await run(['page', 'all.play', '-o', 'pages'], { cwd: here })).code).toBe(0);
    expect(readdirSync(join(here, 'pages')).sort()).toEqual(['out-back.html', 'tide.html', 'unnamed.html']);
    expect((await run(['page', 'all.play'], { cwd: here })).code).toBe(0);
    expect(playsOn(readFileSync(join(here, 'all.html'), 'utf8'))).toEqual(['Tide', 'Out / back', '..']);
    expect((await run(['page', '.', '-o', 'book.html'], { cwd: here })).code).toBe(0);
    expect(playsOn(readFileSync(join(here, 'book.html'), 'utf8'))).toEqual(['Tide', 'Out / back', '..']);
    expect((await run(['page', 'all.play', '--play', 'Tide', '-o', 'one.html'], { cwd: here })).code).toBe(0);
    expect(playsOn(readFileSync(join(here, 'one.html'), 'utf8'))).toEqual(['Tide']);
  });

  test('of a book has its plays in its order, each once and under its section, and behind them what stands in none', async () => {
    const here = join(folder, 'booked');
    mkdirSync(here);
    writeFileSync(join(here, 'all.play'), ['Tide', 'Ebb', 'Spare'].map(play).join('\n'));
    writeFileSync(join(here, 'club.play'), 'use "all.play"\nbook "Ours"\n  section "Late": "Ebb", "Nobody"\n  section "Early": "Tide", "Ebb"\n');
    const page = (file: string) => dataOn(readFileSync(join(here, file), 'utf8'));
    expect((await run(['page', 'club.play'], { cwd: here })).code).toBe(0);
    expect(page('club.html').plays.map(({ play: { name } }) => name)).toEqual(['Ebb', 'Tide']);
    expect((await run(['page', '.', '-o', 'book.html'], { cwd: here })).code).toBe(0);
    expect(page('book.html').plays.map(({ play: { name } }) => name)).toEqual(['Ebb', 'Tide', 'Spare']);
    expect(page('book.html').sections).toEqual(['Late', 'Early', null]);
    // The book's name, of two books the folder's.
    expect(page('book.html').title).toBe('Ours');
    writeFileSync(join(here, 'more.play'), 'use "all.play"\nbook "Others"\n  section "Late": "Ebb"\n');
    expect((await run(['page', '.', '-o', 'two.html'], { cwd: here })).code).toBe(0);
    expect(page('two.html').title).toBe('booked');
  });

  test('writes again when the text changes, and bears a text that says nothing', async () => {
    const here = join(folder, 'watched');
    mkdirSync(here);
    const file = join(here, 'tide.play');
    writeFileSync(file, play('Tide'));
    const child = spawn(process.execPath, [binary, 'page', 'tide.play', '--watch'], { cwd: here });
    let err = '';
    child.stderr.on('data', (data: Buffer) => { err += data.toString(); });
    const said = (what: RegExp) => expect.poll(() => err, { timeout: 8000 }).toMatch(what);
    try {
      await said(/Wrote tide\.html[^]*Watching/);
      err = '';
      writeFileSync(file, '# nothing yet\n');
      await said(/There is no play/);
      err = '';
      writeFileSync(file, play('Ebb'));
      await said(/Wrote tide\.html/);
      expect(readFileSync(join(here, 'tide.html'), 'utf8')).toContain('Ebb');
    } finally {
      child.kill();
    }
  }, 30_000);
});

describe('two plays of one name', () => {
  beforeAll(() => {
    mkdirSync(join(folder, 'twins'), { recursive: true });
    writeFileSync(join(folder, 'twins/early.play'), `level u14\n\n${play('Tide')}`);
    writeFileSync(join(folder, 'twins/late.play'), play('Tide').replace('1 passes to 2', '1 passes to 3').replace('look 2', 'look 3'));
  });
  const said = '2 plays are called “Tide”: twins/early.play:3, twins/late.play:1. ';

  test('draw takes the first, says so, and takes the other by its place', async () => {
    const [first, other] = await Promise.all([run(['draw', 'twins', '--play', 'tide']), run(['draw', 'twins', '--play', 'late.play:3'])]);
    expect(first.err).toBe(`${said}This is the first; another one with --play twins/late.play:1\n`);
    expect([other.err, other.code]).toEqual(['', 0]);
    expect(other.out).not.toBe(first.out);
    expect(other.out).toBe((await run(['draw', 'twins/late.play'])).out);
  });

  test('time and page have both, and tell them apart', async () => {
    const [time, page, alone, wrong] = await Promise.all([run(['time', 'twins', '--play', 'Tide']), run(['page', 'twins', '--play', 'Tide', '-o', '-']), run(['time', 'twins', '--play', 'twins/early.play:3']), run(['time', 'twins', '--play', 'twins/early.play:99'])]);
    expect(time.out).toMatch(/^Tide \(u14, .*, twins\/early\.play:3\)[^]*^Tide \(.*, twins\/late\.play:1\)/m);
    for (const { err } of [time, page]) expect(err).toContain(`${said}Both are here; one alone with --play twins/early.play:3`);
    expect(playsOn(page.out)).toEqual(['Tide', 'Tide']);
    expect(alone.out.match(/^Tide/gm)).toHaveLength(1);
    expect(wrong).toMatchObject({ code: 2, err: expect.stringContaining('There is no play called "twins/early.play:99"') });
  });
});

test('a file with a book brings the plays of the files it uses to time, list and draw too', async () => {
  mkdirSync(join(folder, 'with-book'), { recursive: true });
  writeFileSync(join(folder, 'with-book/all.play'), play('Tide'));
  writeFileSync(join(folder, 'with-book/club.play'), 'use "all.play"\nbook "Ours"\n  section "Late": "Tide"\n');
  const [time, list, page] = await Promise.all([run(['time', 'with-book/club.play']), run(['list', 'with-book/club.play']), run(['page', 'with-book/club.play', '--play', 'Tide', '-o', '-'])]);
  expect(time.out).toMatch(/^Tide \(/);
  expect(list.out).toMatch(/^Tide +with-book\/all\.play/m);
  expect(playsOn(page.out)).toEqual(['Tide']);
});

describe('new', () => {
  test('writes a file whose play has nothing wrong, from any alignment', async () => {
    for (const alignment of ['horns', 'box', '5-out']) {
      const { code, out } = await run(['new', '-', '--name', 'Tide', '--alignment', alignment]);
      expect(code).toBe(0);
      expect(compileText(out).findings.filter(({ severity }) => severity !== 'hint').map(({ message }) => message)).toEqual([]);
    }
  });
  test('adds a play to a file, once for each name', async () => {
    writeFileSync(join(folder, 'own.play'), play('Ebb'));
    expect((await run(['new', 'own.play', '--name', 'Tide'])).code).toBe(0);
    expect(compileText(readFileSync(join(folder, 'own.play'), 'utf8')).plays.map(({ play: { name } }) => name)).toEqual(['Ebb', 'Tide']);
    const again = await run(['new', 'own.play', '--name', 'tide']);
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('There is a play called "tide" in own.play already')]);
  });
  test('names the nearest alignment', async () => expect((await run(['new', '-', '--alignment', 'horn'])).err).toContain('Did you mean horns?'));
});

test('every command shows examples', async () => {
  for (const command of ['check', 'time', 'compare', 'page', 'draw', 'list', 'new', 'explain', 'lsp']) expect((await run([command, '--help'])).out, command).toContain('Examples:');
});

test('lsp without the server beside it says what to do', async () => {
  const { code, err } = await run(['lsp']);
  expect([code, err]).toEqual([2, expect.stringContaining('Build the whole: npm run build')]);
});
