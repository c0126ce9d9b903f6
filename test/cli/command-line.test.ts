// The real, built command line.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build } from 'esbuild';
import { buildCommandLine, runBuilt, type Ended } from './built.ts';

let folder = '';
let binary = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-cli-'));
  binary = await buildCommandLine(build, folder);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], input = '', env: Record<string, string> = {}) => runBuilt(binary, args, { input, env });

const broken = 'play "A"\n  from 5-out\n  1 dribles to left wing\n  look 1: jumper\n';

describe('setwright check', () => {
  test('ends with 0 on clean plays and says how many', async () => {
    const { code, out } = await run(['check', 'examples/lighthouse.play', 'examples/harbour.play']);
    expect(out).toMatch(/^2 plays in 2 files: nothing to mend\.\n$/);
    expect(code).toBe(0);
  });

  test('ends with 1 on an error, and marks it', async () => {
    const { code, out } = await run(['check', '-'], broken);
    expect(code).toBe(1);
    expect(out).toBe(
      [
        '<standard input>:3:5  error  unknown-word',
        '  "dribles" is no word I know here. Did you mean "dribbles"?',
        '  3 |   1 dribles to left wing',
        '    |     ^^^^^^^',
        '    = to mend it: Write "dribbles"',
        '',
        '1 play in 1 file: 1 error.',
        '',
      ].join('\n'),
    );
  });

  test('has no colour where nobody sees it', async () => {
    expect((await run(['check', '-'], broken)).out).not.toContain('\u001B');
  });

  test('lets no text speak to the terminal', async () => {
    const { out } = await run(['check', '-'], 'play "A"\n  1 dribles \u001B[2J to \u0007left wing\n');
    expect(out).toContain('1 dribles ·[2J to ·left wing');
    expect(out).not.toMatch(/[\u0000-\u0008\u001B]/);
  });

  test('marks the right word behind letters that take two columns', async () => {
    const { out } = await run(['check', '-'], 'play "日本 🏀"\n  look 3 "日本 🏀": blorf\n');
    const [, line, mark] = /\| (.*blorf.*)\n.*\| (.*)\n/.exec(out) ?? [];
    expect(mark!.indexOf('^')).toBe(line!.indexOf('blorf') + 2);
  });

  test('prints JSON with lines and columns from 1', async () => {
    const { code, out } = await run(['check', '--json', '-'], broken);
    expect(code).toBe(1);
    const said = JSON.parse(out);
    expect(said).toMatchObject({ version: 1, counts: { files: 1, plays: 1, error: 1, warning: 0, hint: 0 } });
    expect(said.files[0].findings[0]).toMatchObject({ line: 3, column: 5, endColumn: 12, code: 'unknown-word', severity: 'error', play: 'A', fixes: [{ edits: [{ line: 3, column: 5, endColumn: 12, text: 'dribbles', newLine: false, wholeLine: false }] }] });
  });

  test('takes folders and patterns, each file once', async () => {
    const { out } = await run(['check', 'examples', 'examples/light*.play', '--json']);
    const names = JSON.parse(out).files.map(({ file }: { file: string }) => file);
    expect(names).toContain('examples/lighthouse.play');
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('a call that is wrong ends with 2 and one sentence', () => {
  test.each([
    [['check', 'nowhere.play'], 'There is no file or folder called nowhere.play.'],
    [['check'], 'Say which files or folders. For example: setwright check examples/lighthouse.play'],
    [['page'], 'Say which file. For example: setwright page examples/lighthouse.play'],
    [['compare'], 'Say which two versions, the older one first, or since which version git knows. For example: setwright compare last-season plays'],
    [['compare', 'examples'], 'Say which two versions, the older one first, or since which version git knows. For example: setwright compare --since main examples'],
    [['compare', 'examples', 'examples', 'examples'], 'setwright compare takes two names, the older version first; names with blanks stand in quotes. For example: setwright compare last-season plays'],
    [['diff', 'examples', 'examples'], 'There is no command diff. Did you mean compare? "setwright --help" lists them all.'],
    [['chekc', 'examples'], 'There is no command chekc. Did you mean check?'],
    [['svg', 'examples'], 'There is no command svg. Did you mean draw?'],
    [['examples/quick.play'], 'Say what to do with examples/quick.play. For example: setwright check examples/quick.play'],
    [['check', '--loud', 'examples'], 'setwright check has no option --loud. "setwright check --help" lists them.'],
    [['check', '--jsn', 'examples'], 'Did you mean --json?'],
    [['check', 'examples', '--color', 'maybe'], '--color is one of auto, always, never, not "maybe".'],
    [['draw', 'a.play', 'b.play'], 'setwright draw takes one name at a time'],
    [['time', 'examples', '--play'], 'needs a word behind it'],
    [['list', 'examples', '--tag', 'nope'], 'No play has the tag nope. There are: '],
    [['explain', 'xyz'], 'There is no check called xyz.'],
    [['explain', 'screen-with-bal'], 'Did you mean screen-with-ball?'],
    [['draw', 'examples/lighthouse.play', '--at', 'noon'], 'A time is a number of seconds'],
    [['draw', 'examples/lighthouse.play', '--run', 'nothing'], 'There is no way called "nothing"'],
    [['time', 'examples', '--play', 'Lighthous'], 'Did you mean "Lighthouse"?'],
    [['jobs', 'examples/lighthouse.play', '--player', '7'], 'There is no player 7. A player is a number from 1 to 5, or the name a roster gives to one of them.'],
    [['jobs', 'examples/lighthouse.play', '--play', 'Lighthous'], 'Did you mean "Lighthouse"?'],
    [['page', 'examples/lighthouse.play', '-o', 'no/such/folder/x.html'], 'I cannot write no/such/folder/x.html: its folder is not there.'],
    [[], 'Usage: setwright'],
  ])('setwright %j', async (args, said) => {
    const { code, err, out } = await run(args);
    expect(err).toContain(said);
    expect(err).not.toMatch(/\n\s+at /);
    expect(err).not.toMatch(/error:|argument/);
    expect(out).toBe('');
    expect(code).toBe(2);
  });
});

describe('the other commands', () => {
  test('time prints what each look needs', async () => {
    const { code, out } = await run(['time', 'examples/lighthouse.play']);
    expect(code).toBe(0);
    await expect(out).toMatchFileSnapshot('golden/time-lighthouse.txt');
  });

  test('jobs prints what each player has to do, and when', async () => {
    const { code, out } = await run(['jobs', 'examples/lighthouse.play']);
    expect(code).toBe(0);
    await expect(out).toMatchFileSnapshot('golden/jobs-lighthouse.txt');
  });

  test('jobs of one player, by his number or by the name in the roster', async () => {
    const text = `roster\n  2 "Pip"\n  3 "Moss"\n\n${readFileSync('examples/harbour.play', 'utf8').replace(/^notation.*$/m, '')}`;
    const byName = await run(['jobs', '-', '--player', 'moss'], text);
    expect(byName.out).toContain('Harbour (u14, seconds from the hand-over, typically)');
    expect(byName.out).toContain('  3 Moss\n');
    expect(byName.out).toContain('You throw in.');
    expect(byName.out).not.toContain('Pip');
    expect((await run(['jobs', '-', '--player', '3'], text)).out).toBe(byName.out);
    expect((await run(['jobs', '-', '--player', 'mos'], text)).err).toContain('There is no player called "mos". Did you mean "Moss"?');
  });

  test('of a book: the names of its roster, and the times of each play as in its own file', async () => {
    const [book, alone] = [await run(['jobs', 'examples/club.play', '--player', 'Pip']), await run(['jobs', 'examples/lighthouse.play', '--player', '2'])];
    expect(book.out).toContain('\n  2 Pip\n');
    expect(book.out.split('\n\nLantern (')[0]!.trim()).toBe(alone.out.replace('\n  2\n', '\n  2 Pip\n').trim());
    expect((await run(['page', 'examples/club.play', '-o', '-'])).code).toBe(0);
  });

  test('the same on the throw-in', async () => {
    await expect((await run(['time', 'examples/harbour.play'])).out).toMatchFileSnapshot('golden/time-harbour.txt');
  });

  test('check on a play full of mistakes', async () => {
    const { out, code } = await run(['check', '-'], readFileSync('test/cli/mistakes.play', 'utf8'));
    expect(code).toBe(1);
    await expect(out).toMatchFileSnapshot('golden/check-mistakes.txt');
  });

  test('page writes one file that needs no other', async () => {
    const to = join(folder, 'page.html');
    const { code, err } = await run(['page', 'examples/lighthouse.play', '-o', to]);
    expect(code, err).toBe(0);
    const html = readFileSync(to, 'utf8');
    expect(html).toContain('Lighthouse');
    expect(html).not.toMatch(/(src|href)="(https?:)?\/\//);
  });

  test('draw gives a picture at a moment, and a strip', async () => {
    for (const args of [['--at', '4.5'], []]) {
      const { code, out } = await run(['draw', 'examples/lighthouse.play', ...args]);
      expect(code).toBe(0);
      expect(out).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
    }
  });

  test('draw shows every step of a play, with its counters and all looks, and with --run those of one way', async () => {
    const frames = async (...args: string[]) => [...(await run(['draw', 'examples/last-shot.play', '--play', 'Buoy', ...args])).out.matchAll(/>\d · ([^<]+)</g)].map(([, name]) => name);
    expect(await frames()).toEqual(['Over', 'Under', 'Back door']);
    expect(await frames('--run', 'over the top')).toEqual(['Over']);
    expect(await frames('--run', 'corner')).toEqual(['Over', 'Under']);
  });

  test('list names the plays', async () => {
    expect((await run(['list', 'examples'])).out).toMatch(/Harbour +examples\/harbour\.play/);
  });

  test('explain shows wrong and right', async () => {
    const { out, code } = await run(['explain', 'screen-with-ball']);
    expect(code).toBe(0);
    expect(out).toMatch(/Wrong:[\s\S]*Right:/);
  });

  test('explain takes a code as it is spoken, and a word of it', async () => {
    expect((await run(['explain', 'Screen with ball'])).out).toMatch(/^screen-with-ball \(error\)/);
    const { out } = await run(['explain', 'screen']);
    expect(out).toMatch(/^screen-with-ball +error/m);
    expect(out).not.toMatch(/^past-window/m);
  });

  test('draw says which play it has drawn, and where a way is over', async () => {
    const { out, err, code } = await run(['draw', 'examples', '--at', '999']);
    expect([code, out.startsWith('<svg')]).toEqual([0, true]);
    expect(err).toMatch(/Drawn is “.+”, the first of \d+ plays; another one with --play\.\nThis way is over after [\d.]+ s: its end is drawn\./);
  });

  test('a file of an older editor (UTF-16), and one with a mark at its front, are read', async () => {
    const text = 'play "Flut"\r\n  from 5-out\r\n  1 passes to 2\r\n  look 2: three\r\n';
    writeFileSync(join(folder, 'utf16.play'), Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]));
    writeFileSync(join(folder, 'marked.play'), `\uFEFF${text}`);
    expect((await run(['check', join(folder, 'utf16.play'), join(folder, 'marked.play')])).out).toBe('2 plays in 2 files: nothing to mend.\n');
  });

  test('a reader that stops early is no mistake', async () => {
    const { code, err } = await new Promise<Ended>((resolve) => {
      const child = spawn(process.execPath, [binary, 'check', 'examples', '--json'], { stdio: ['ignore', 'pipe', 'pipe'] });
      let said = '';
      child.stderr.on('data', (data: Buffer) => { said += data.toString(); });
      child.stdout.once('data', () => child.stdout.destroy());
      child.on('close', (ended) => resolve({ code: ended ?? -1, out: '', err: said }));
    });
    expect([code, err]).toEqual([0, '']);
  });

  test('a file that uses another finds its spots', async () => {
    writeFileSync(join(folder, 'spots.play'), 'spot "pocket" is 3 ft inside right elbow\n');
    writeFileSync(join(folder, 'uses.play'), 'use "spots.play"\nplay "A"\n  from 5-out\n  1 dribbles to "pocket"\n  look 1: jumper\n');
    const { out } = await run(['check', join(folder, 'uses.play')]);
    expect(out).not.toContain('unknown-spot');
  });
});
