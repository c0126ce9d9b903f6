// What `setwright compare` says of two versions, and where it gets them from; the real, built command line and a real git.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { build } from 'esbuild';
import { marked } from 'marked';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { repositoryOf } from '../../server/cli/git.ts';
import { buildCommandLine, runBuilt, type Around } from './built.ts';

let folder = '';
let binary = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-compare-'));
  binary = await buildCommandLine(build, folder);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], around: Around = {}) => runBuilt(binary, args, { cwd: folder, ...around });
const put = (path: string, text: string) => {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
};

const play = (name: string) => `play "${name}"\n  from 5-out\n  1 passes to 2\n  look 2: three\n`;
const tide = 'level u14\nplay "Tide"\n  from horns\n  step "Open"\n    4 ball-screens for 1, then rolls\n    1 drives off 4 to right elbow\n    look 1: jumper\n';

describe('two versions', () => {
  test('says of two versions what came, what went, and what a change costs', async () => {
    put('was/ours.play', `${tide}${play('Reef')}`);
    put('is/ours.play', `${tide.replace('right elbow', 'the rim')}${play('Spray').replace('1 passes to 2', '1 passes to 3').replace('look 2', 'look 3')}`);
    const { code, out } = await run(['compare', 'was', 'is']);
    expect(code).toBe(0);
    expect(out).toMatch(/^Tide {2}changed {2}is\/ours\.play\n {2}step Open\n {4}- 1 drives off 4 to right elbow\.\n {4}\+ 1 drives off 4 to the rim\.\n/);
    expect(out).toMatch(/1: jumper +\d\.\d s → \d\.\d s/);
    expect(out).toContain('Spray  new  is/ours.play');
    expect(out).toContain('Reef  gone  was/ours.play');
    expect(out).toMatch(/Plays: 1 changed, 1 new, 1 gone\.\s*$/);
  });

  test('reads one of the two from standard input, and says when all is as before', async () => {
    put('is/ours.play', tide);
    expect((await run(['compare', '-', 'is'], { input: tide.replaceAll('\n', '\r\n').replace('# ', '') })).out.trim()).toBe('The play is as before.');
    const { code, err } = await run(['compare', '-', '-']);
    expect([code, err.trim()]).toEqual([2, expect.stringContaining('Standard input can be one of the two versions, not both.')]);
  });

  test('tells a mistake that is new with its words, and a play that has none before it', async () => {
    put('was/ours.play', tide);
    put('is/ours.play', tide.replace('4 ball-screens for 1, then rolls', '1 ball-screens for 4'));
    expect((await run(['compare', 'was', 'is'])).out).toMatch(/new error, screen-with-ball: /);
    expect((await run(['compare', 'is', 'was'])).out).toMatch(/error gone, screen-with-ball: /);
  });

  test('tells of a new play what it needs on the clock and what is wrong with it', async () => {
    put('was/ours.play', tide);
    put('is/ours.play', `${tide}${play('Spray').replace('1 passes to 2', '1 dribles to left wing')}`);
    expect((await run(['compare', 'was', 'is'])).out).toMatch(/^Spray {2}new {2}is\/ours\.play\n {2}on the clock for the first look: \d+ s\n[^]*error, unknown-word: [^]*\(line 10\)/);
  });
});

describe('a file with a book', () => {
  const club = 'use "ours.play"\nroster "Otters"\n  1 "Wren", fast\nbook "Season"\n  section "Late": "Tide", "Reef"\n  section "Side": "Spray"\n';
  const ours = `${tide}${play('Reef')}${play('Spray')}`;

  test('alone brings the plays of the files it uses, and tells of sections and roster', async () => {
    put('was/ours.play', ours);
    put('was/club.play', club);
    put('is/ours.play', ours.replace('right elbow', 'the rim'));
    put('is/club.play', club.replace('"Tide", "Reef"', '"Reef"').replace('"Spray"', '"Spray", "Tide"').replace('1 "Wren", fast', '1 "Heron"'));
    const { out } = await run(['compare', 'was/club.play', 'is/club.play']);
    expect(out).toContain('Tide  changed  is/ours.play');
    expect(out).toContain('Book “Season”  changed  is/club.play\n  “Tide” moved from section “Late” to “Side”');
    expect(out).toContain('Roster “Otters”  changed  is/club.play\n  - 1 "Wren", fast\n  + 1 "Heron"');
    expect(out).toMatch(/Plays: 1 changed, 2 as before\. Beside them: 1 book, 1 roster\.\s*$/);
  });

  test('names a play that is no longer there: told once, at its line', async () => {
    put('is/ours.play', `${tide}${play('Reef')}`);
    put('is/club.play', club);
    expect((await run(['compare', 'was/club.play', 'is/club.play'])).out).toMatch(/Outside the plays\n {2}new error, unknown-play: There is no play called “Spray”[^]* \(is\/club\.play, line 6\)/);
  });

  test('a play that is called otherwise does not move in its section', async () => {
    put('is/ours.play', ours.replace('"Tide"', '"Ebb"').replace('right elbow', 'the rim'));
    put('is/club.play', club.replace('"Tide"', '"Ebb"'));
    const { out } = await run(['compare', 'was', 'is']);
    expect(out).toContain('Ebb  was called “Tide”  is/ours.play\n  step Open\n    - 1 drives');
    expect(out).not.toContain('Book');
  });
});

test('an alignment in a file beside it tells which plays stand in it', async () => {
  const text = 'use "shapes.play"\nplay "Tide"\n  from "Dock"\n  1 passes to 2\n  look 2: three\n';
  const shape = 'alignment "Dock"\n  1 top\n  2 left wing\n  3 right wing\n  4 left block\n  5 right block\n';
  for (const version of ['was', 'is']) {
    rmSync(join(folder, version), { recursive: true });
    put(`${version}/tide.play`, text);
    put(`${version}/shapes.play`, version === 'was' ? shape : shape.replace('2 left wing', '2 left corner'));
  }
  const { out } = await run(['compare', 'was/tide.play', 'is/tide.play']);
  expect(out).toContain('Alignment “Dock”  changed  is/shapes.play\n  - 2 left wing\n  + 2 left corner\n  used by “Tide”');
  expect(out).toMatch(/^Tide {2}changed/);
});

describe('git', () => {
  const here = () => join(folder, 'repository');
  const git = (...args: readonly string[]) => execFileSync('git', ['-C', here(), '-c', 'user.name=A', '-c', 'user.email=a@example.org', '-c', 'init.defaultBranch=main', ...args], { stdio: 'pipe' }).toString();
  const since = (...args: readonly string[]) => run(['compare', '--since', ...args], { cwd: here() });
  const shape = 'alignment "Dock"\n  1 top\n  2 left wing\n  3 right wing\n  4 left block\n  5 right block\n';
  beforeAll(() => {
    put('repository/plays/tide.play', tide);
    put('repository/plays/reef.play', `use "../shapes.play"\n${play('Reef').replace('5-out', '"Dock"')}`);
    put('repository/shapes.play', shape);
    git('init', '--quiet');
    git('add', '.');
    git('commit', '--quiet', '--message', 'as they were');
    git('switch', '--quiet', '--create', 'assistant');
    put('repository/plays/tide.play', tide.replace('right elbow', 'the rim'));
    git('commit', '--quiet', '--all', '--message', 'to the rim');
    git('switch', '--quiet', 'main');
    put('repository/plays/late.play', play('Late'));
    git('add', '.');
    git('commit', '--quiet', '--message', 'meanwhile');
    git('switch', '--quiet', 'assistant');
  });

  test('has the plays as they were on another branch, and what they use', async () => {
    put('repository/shapes.play', shape.replace('2 left wing', '2 left corner'));
    const { code, out, err } = await since('main', 'plays');
    put('repository/shapes.play', shape);
    expect([code, err.trim()]).toEqual([0, 'main has gone on meanwhile: compared with main as it was when this version parted from it.']);
    expect(out).toContain('Tide  changed  plays/tide.play');
    expect(out).toContain('- Dock: 1 at the top, 2 at left wing,');
    expect(out).toContain('Alignment “Dock”  changed  shapes.play');
    // What main got meanwhile is no change of this branch.
    expect(out).not.toContain('Late');
  });

  test('compares one file, a folder that is gone, the folder one stands in, and two versions it has both', async () => {
    expect((await since('main', 'plays/tide.play')).out).toMatch(/^Tide {2}changed[^]*Plays: 1 changed\.\s*$/);
    expect((await run(['compare', '--since', 'main'], { cwd: join(here(), 'plays') })).out).toMatch(/^Tide {2}changed {2}tide\.play[^]*Plays: 1 changed, 1 as before\.\s*$/);
    rmSync(join(here(), 'plays'), { recursive: true });
    expect((await since('main', 'plays')).out).toMatch(/Tide {2}gone {2}main:plays\/tide\.play[^]*Plays: 2 gone\./);
    git('checkout', '--', '.');
    expect((await since('assistant', '--until', 'main', 'plays')).out).toMatch(/^Late {2}new {2}main:plays\/late\.play[^]*Plays: 1 new, 2 as before\.\s*$/);
  });

  test('a clone that knows a branch as the server’s finds it all the same, also without its history', async () => {
    execFileSync('git', ['clone', '--quiet', '--depth', '1', '--no-single-branch', '--branch', 'assistant', `file://${here()}`, join(folder, 'shallow')], { stdio: 'pipe' });
    const { out, err } = await run(['compare', '--since', 'main', 'plays'], { cwd: join(folder, 'shallow') });
    expect(err).toContain('compared with main as it is');
    expect(out).toContain('Tide  changed');
  });

  test('has every file whole: an empty one, one without a last line end, CRLF, accents and astral characters', () => {
    const texts = { 'a.play': '', 'b.play': 'play "Möwe 🏀"', 'c.play': tide.replaceAll('\n', '\r\n'), 'd é.play': '\n\n', 'e.play': tide };
    for (const [name, text] of Object.entries(texts)) put(`whole/${name}`, text);
    const there = (...args: readonly string[]) => execFileSync('git', ['-C', join(folder, 'whole'), '-c', 'user.name=A', '-c', 'user.email=a@example.org', '-c', 'core.autocrlf=false', ...args], { stdio: 'pipe' }).toString();
    there('init', '--quiet');
    there('add', '.');
    there('commit', '--quiet', '--message', 'whole');
    const repository = repositoryOf(join(folder, 'whole'));
    const version = () => repository.versionAt(repository.commitOf('HEAD'), 'HEAD').sources.map(({ path, text }) => [basename(path!), text]);
    expect(Object.fromEntries(version())).toEqual(texts);
    const lost = there('rev-parse', 'HEAD:c.play').trim();
    rmSync(join(folder, 'whole/.git/objects', lost.slice(0, 2), lost.slice(2)), { force: true });
    expect(version).toThrow(`git no longer holds all files of that version: ${lost} missing. Fetch it again`);
  });

  test('says what to do about what it does not know', async () => {
    const repository = repositoryOf(here());
    expect(() => repository.commitOf('mian')).toThrow('git knows no version called mian here. Did you mean main?');
    expect(() => repository.commitOf('--all')).toThrow('git knows no version called --all here. There are: assistant, main.');
    expect(() => repositoryOf(join(folder, 'was'))).toThrow('was lies in no git repository, so it has no earlier version here. Without git give both versions');
    expect(await since('main', 'nowhere')).toMatchObject({ code: 2, err: expect.stringContaining('There is no play file in nowhere, neither now nor in main.') });
    expect(await since('main', 'plays', 'plays')).toMatchObject({ code: 2, err: expect.stringContaining('With --since give one name') });
    expect(await run(['compare', '--since', 'main', 'plays'], { cwd: here(), env: { PATH: '' } })).toMatchObject({ code: 2, err: expect.stringContaining('there is no git on this computer') });
  });
});

describe('for a review', () => {
  beforeAll(() => {
    for (const version of ['was', 'is']) rmSync(join(folder, version), { recursive: true, force: true });
    put('was/ours.play', `${tide}${play('Reef')}${play('A | *b* <c> @d')}${play('50% &lt; all')}`);
    put('is/ours.play', `${tide.replace('right elbow', 'the rim').replace('4 ball-screens for 1, then rolls', '1 ball-screens for 4')}${play('Spray').replaceAll('2', '3')}${play('A | *b* <c> @d').replace('three', 'jumper')}${play('50% &lt; all').replace('three', 'jumper')}`);
  });

  test('the comment has a table of the plays with their calls, the changed lines, and findings with their lines', async () => {
    const { out } = await run(['compare', 'was', 'is', '--markdown']);
    expect(out).toMatch(/^\| \*\*Tide\*\* \| changed \| \d+ s( → \d+ s)? \| [^|]* \| \d+ error[^|]* new/m);
    expect(out).toMatch(/^\| \*\*Spray\*\* \| new \| \d+ s \| \d+ s \|/m);
    expect(out).toMatch(/^\| \*\*Reef\*\* \| gone \| \d+ s \|/m);
    expect(out).toContain('```diff\n- 4 ball-screens for 1');
    expect(out).toMatch(/^- \*\*new error\*\*, line 5: .*\(`screen-with-ball`\)$/m);
    const html = await marked(out);
    expect(html.match(/<table>/g)!.length).toBeGreaterThanOrEqual(2);
  });

  test('whatever a play is called, it breaks no table, sets nothing in bold and calls nobody', async () => {
    const { out } = await run(['compare', 'was', 'is', '--markdown']);
    const html = await marked(out);
    expect(html).not.toContain('<c>');
    expect(html).not.toContain('<em>b</em>');
    expect(html).toContain('A | *b* &lt;c&gt; @\u2060d');
    expect(html).toContain('50% &amp;lt; all');
    expect(out).not.toContain('@d');
  });

  test('a comment that would be too long says what it leaves out', async () => {
    const many = Array.from({ length: 60 }, (_, i) => `play "Tide ${i + 1}"\n  from horns\n${Array.from({ length: 30 }, (__, at) => `  note "${at} ${'so it goes '.repeat(4)}${i}"\n`).join('')}`).join('');
    put('many-was/all.play', many);
    put('many-is/all.play', many.replaceAll('so it goes', 'so it went'));
    const { out } = await run(['compare', 'many-was', 'many-is', '--markdown']);
    expect(out.length).toBeLessThan(65_536);
    expect(out).toMatch(/^\d+ more plays have changed than a comment has room for/m);
  }, 30_000);

  test('pictures: each play before and after, and a page that needs nothing else', async () => {
    const { code, out } = await run(['compare', 'was', 'is', '--pictures', 'drawn/here', '--markdown', '--pictures-at', 'https://example.org/drawn']);
    expect(code).toBe(0);
    expect(readdirSync(join(folder, 'drawn/here')).sort()).toEqual(['50%-&lt;-all-after.svg', '50%-&lt;-all-before.svg', 'a----b---c--@d-after.svg', 'a----b---c--@d-before.svg', 'index.html', 'reef-before.svg', 'spray-after.svg', 'tide-after.svg', 'tide-before.svg']);
    const [was, is] = ['before', 'after'].map((when) => readFileSync(join(folder, `drawn/here/tide-${when}.svg`), 'utf8'));
    expect([was!.startsWith('<svg'), was === is]).toEqual([true, false]);
    const page = readFileSync(join(folder, 'drawn/here/index.html'), 'utf8');
    expect([...page.matchAll(/(?:src|href)="([^"]{0,5})/g)].map(([, address]) => address)).toEqual(Array.from({ length: 8 }, () => 'data:'));
    expect(page).toContain('<del>1 drives off 4 to right elbow.</del>');
    // Times and findings as on the command line.
    const told = (await run(['compare', 'was', 'is'])).out;
    expect(page).toContain(`<li>${/on the clock for every look: .*/.exec(told)![0]}</li>`);
    expect(page).toMatch(/<li>new error: 1 sets a screen while he has the ball/);
    expect(page).toMatch(/<li>[^<]*: typically [^<]*, late [^<]*<\/li>/);
    expect(out).toContain('<img alt="Before" src="https://example.org/drawn/tide-before.svg"');
    // An address in which a sign of a play's name stands for itself.
    expect([...out.matchAll(/src="([^"]*)"/g)].map(([, address]) => decodeURIComponent(new URL(address!).pathname)).filter((path) => path.includes('50%'))).toEqual(['/drawn/50%-&lt;-all-before.svg', '/drawn/50%-&lt;-all-after.svg']);
    expect(await run(['compare', 'was', 'is', '--pictures-at', 'https://example.org'])).toMatchObject({ code: 2, err: expect.stringContaining('needs --markdown and --pictures') });
  });

  test('a play that looks the same has one picture', async () => {
    put('same/ours.play', readFileSync(join(folder, 'is/ours.play'), 'utf8').replace('  from horns\n', '  from horns\n  tags quick\n'));
    await run(['compare', 'is', 'same', '--pictures', 'same-drawn']);
    expect(readdirSync(join(folder, 'same-drawn')).sort()).toEqual(['index.html', 'tide-after.svg']);
  });
});
