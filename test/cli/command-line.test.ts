// The real, built command line.
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build } from 'esbuild';
import { buildCommandLine } from './built.ts';

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

let folder = '';
let binary = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-cli-'));
  binary = await buildCommandLine(build, folder);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(args: readonly string[], input = '', env: Record<string, string> = {}): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(process.execPath, [binary, ...args], { env: { ...process.env, ...env } }, (error, out, err) => resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err }));
    child.stdin!.end(input);
  });
}

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
    [['check'], 'missing required argument'],
    [['chekc', 'examples'], 'unknown command'],
    [['check', '--loud', 'examples'], 'unknown option'],
    [['explain', 'screen-with-bal'], 'Did you mean screen-with-ball?'],
    [['draw', 'examples/lighthouse.play', '--at', 'noon'], 'A time is a number of seconds'],
    [['draw', 'examples/lighthouse.play', '--run', 'nothing'], 'There is no way called "nothing"'],
    [['time', 'examples', '--play', 'Lighthous'], 'Did you mean "Lighthouse"?'],
    [['page', 'examples/lighthouse.play', '-o', 'no/such/folder/x.html'], 'I cannot write no/such/folder/x.html: it is not there.'],
    [[], 'Usage: setwright'],
  ])('setwright %j', async (args, said) => {
    const { code, err, out } = await run(args);
    expect(err).toContain(said);
    expect(err).not.toMatch(/\n\s+at /);
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

  test('list names the plays', async () => {
    expect((await run(['list', 'examples'])).out).toMatch(/Harbour +examples\/harbour\.play/);
  });

  test('explain shows wrong and right', async () => {
    const { out, code } = await run(['explain', 'screen-with-ball']);
    expect(code).toBe(0);
    expect(out).toMatch(/Wrong:[\s\S]*Right:/);
  });

  test('a file that uses another finds its spots', async () => {
    writeFileSync(join(folder, 'spots.play'), 'spot "pocket" is 3 ft inside right elbow\n');
    writeFileSync(join(folder, 'uses.play'), 'use "spots.play"\nplay "A"\n  from 5-out\n  1 dribbles to "pocket"\n  look 1: jumper\n');
    const { out } = await run(['check', join(folder, 'uses.play')]);
    expect(out).not.toContain('unknown-spot');
  });
});
