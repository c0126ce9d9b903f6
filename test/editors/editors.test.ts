// Editors other than VS Code, with their own clients and the configuration that docs/other-editors.md gives, in front of the server as
// it is shipped: what a coach would see in them.
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildServer, root } from '../../scripts/build.ts';

interface Seen {
  readonly findings: readonly { readonly line: number; readonly words: string; readonly message: string }[];
  readonly formatted: readonly string[];
  readonly offered: readonly string[];
}

const onPath = (name: string) => (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, name)));
const howToInstall = 'Neovim is missing: "sudo apt-get install neovim" (or your system’s own way) lets this test look at Setwright in it.';

const configurationFor = (language: string): string => {
  const page = readFileSync(join(root, 'docs/other-editors.md'), 'utf8');
  return new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(page)![1]!;
};

const written = ['play "Pier"', 'from horns', '', 'step "Ebb"', '1 dribles to left wing', '    1  passes   to 2', ''];
const set = ['play "Pier"', '  from horns', '', '  step "Ebb"', '1 dribles to left wing', '    1 passes to 2'];

let home: string;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'setwright-editors-'));
  const server = await buildServer('test/out/editors');
  mkdirSync(join(home, 'bin'));
  symlinkSync(join(dirname(server), 'setwright.mjs'), join(home, 'bin/setwright'));
}, 60_000);
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Runs an editor that ends by itself; it finds `setwright` on its path, and its configuration and a play in its folder. */
function run(command: string, args: readonly string[], files: Readonly<Record<string, string>>): Promise<Seen> {
  for (const [name, text] of Object.entries(files)) writeFileSync(join(home, name), text);
  const path = [join(home, 'bin'), dirname(process.execPath), process.env.PATH].join(delimiter);
  const env = { ...process.env, HOME: home, XDG_CONFIG_HOME: join(home, 'config'), PATH: path, SEEN: join(home, 'seen.json') };
  return new Promise((resolve, reject) => {
    execFile(command, [...args], { cwd: home, env, timeout: 60_000 }, (error, out, err) => {
      if (error) return reject(new Error(`${command}: ${error.message}\n${out}\n${err}`));
      resolve(JSON.parse(readFileSync(join(home, 'seen.json'), 'utf8')) as Seen);
    });
  });
}

function expectPlaySeen({ findings, formatted, offered }: Seen): void {
  expect(findings).toContainEqual({ line: 4, words: 'dribles', message: expect.stringMatching(/"dribles" is no word I know here\. Did you mean "dribbles"\?/) });
  expect(formatted.filter((line, at) => line !== '' || at < set.length)).toEqual(set);
  expect(offered).toEqual(expect.arrayContaining(['2', '3', '4', '5']));
}

if (!onPath('nvim')) console.warn(`\n  ${process.env.CI ? 'FAILING' : 'SKIPPED'}. ${howToInstall}\n`);
describe.skipIf(!onPath('nvim') && !process.env.CI)('Neovim', () => {
  test('shows what cannot work, sets the file and lists what can follow', { timeout: 90_000 }, async () => {
    const files = { 'init.lua': configurationFor('lua'), 'pier.play': written.join('\n') };
    expectPlaySeen(await run('nvim', ['--headless', '-n', '-u', 'init.lua', 'pier.play', '-c', `luafile ${join(import.meta.dirname, 'look.lua')}`], files));
  });
});

// Emacs is larger and not installed for every run: no test is skipped for its sake.
if (onPath('emacs')) {
  describe('Emacs', () => {
    test('shows what cannot work, sets the file and lists what can follow', { timeout: 90_000 }, async () => {
      const files = { 'init.el': configurationFor('elisp'), 'gull.play': written.join('\n') };
      const args = ['--batch', '--eval', '(package-initialize)', '-l', join(home, 'init.el'), '-l', join(import.meta.dirname, 'look.el'), '--eval', '(look "gull.play")'];
      expectPlaySeen(await run('emacs', args, files));
    });
  });
}
