// The manifest, and every word of it in each language. What the code says is looked at in test/l10n/.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { globSync } from 'tinyglobby';
import { expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';

const read = (path: string) => readFileSync(join(root, path), 'utf8');
const json = (path: string) => JSON.parse(read(path)) as Record<string, string>;
const manifest = JSON.parse(read('package.json')) as Manifest;
const english = json('package.nls.json');

interface Manifest {
  readonly activationEvents: readonly string[];
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly icon?: string }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string; readonly when?: string }[]>>;
    readonly keybindings: readonly { readonly command: string; readonly when?: string }[];
    readonly views: Readonly<Record<string, readonly { readonly id: string; readonly when?: string }[]>>;
    readonly viewsWelcome: readonly { readonly view: string; readonly contents: string; readonly when?: string }[];
    readonly walkthroughs: readonly { readonly steps: readonly { readonly media: { readonly image: Readonly<Record<string, string>> } }[] }[];
  };
}
const { commands, menus, keybindings, views, viewsWelcome, walkthroughs } = manifest.contributes;
const client = globSync(['client/**/*.ts'], { cwd: root, ignore: ['client/preview/**'] }).map(read).join('\n');

test('every word of the manifest that is named is written, and none in vain', () => {
  const named = [...read('package.json').matchAll(/"%([\w.]+)%"/g)].map(([, key]) => key!);
  expect(named.filter((key) => english[key] === undefined)).toEqual([]);
  expect(Object.keys(english).filter((key) => !named.includes(key))).toEqual([]);
});

test('nothing a coach reads in the manifest is written outside of the bundles', () => {
  const written = [...read('package.json').matchAll(/"(title|shortTitle|markdownDescription|description|contextualTitle|altText)": "([^"]*)"/g)].map(([, , words]) => words!);
  expect(written.length).toBeGreaterThan(30);
  expect(written.filter((words) => !/^%[\w.]+%$/.test(words) && words !== 'Setwright')).toEqual([]);
});

test('every command is there when it is asked for, has a picture, and stands nowhere that it could not run', () => {
  const known = commands.map(({ command }) => command);
  expect(known.filter((command) => !client.includes(`registerCommand('${command}'`))).toEqual([]);
  expect(commands.filter(({ icon }) => icon === undefined)).toEqual([]);
  const used = [...Object.values(menus).flat(), ...keybindings].map(({ command }) => command);
  expect(used.filter((command) => !known.includes(command))).toEqual([]);
  for (const [menu, items] of Object.entries(menus)) if (menu !== 'file/newFile') expect(items.filter(({ when }) => when === undefined), menu).toEqual([]);
  expect(keybindings.filter(({ when }) => when === undefined)).toEqual([]);
});

test('it starts for a play and for nothing else', () => {
  expect(manifest.activationEvents).toEqual(['onLanguage:setwright', 'onWebviewPanel:setwright.play']);
});

test('every view says what to do when it is empty', () => {
  const ids = Object.values(views).flat().map(({ id }) => id);
  expect(ids.filter((id) => !viewsWelcome.some(({ view }) => view === id))).toEqual([]);
  const linked = Object.values(english).flatMap((text) => [...text.matchAll(/\(command:(setwright\.[\w.]+)/g)].map(([, command]) => command!));
  expect(linked.filter((command) => !commands.some((one) => one.command === command))).toEqual([]);
});

/** Of what a `when` says only: names, `!`, a number compared, `&&`. */
const holds = (when: string | undefined, context: Readonly<Record<string, boolean | number>>) =>
  (when ?? '').split(' && ').every((term) => {
    const [, not, name, sign, number] = /^(!?)([\w.]+)(?: (==|!=) (\d+))?$/.exec(term) ?? [];
    if (name === undefined) return term === '';
    return sign === undefined ? Boolean(context[name]) !== (not === '!') : (context[name] === Number(number)) === (sign === '==');
  });

test.each([
  ['a folder with plays', { workspaceFolderCount: 1, 'setwright.hasPlays': true }],
  ['a folder with none', { workspaceFolderCount: 1, 'setwright.hasPlays': false }],
  ['no folder', { workspaceFolderCount: 0, 'setwright.hasPlays': false }],
])('a newcomer in %s has every button once, and a way to a play of his own', (_, window) => {
  const context = { ...window, 'setwright.newcomer': true, 'setwright.playbookRead': true, 'setwright.filtering': false };
  const empty = new Set(Object.values(views).flat().filter(({ id, when }) => holds(when, context) && (id !== 'setwright.playbook' || !window['setwright.hasPlays'])).map(({ id }) => id));
  const shown = viewsWelcome.filter(({ view, when }) => empty.has(view) && holds(when, context)).map(({ contents }) => english[contents.slice(1, -1)]!);
  const buttons = shown.flatMap((text) => [...text.matchAll(/\(command:([\w.]+)\)/g)].map(([, command]) => command!));
  expect(buttons.filter((command, at) => buttons.indexOf(command) !== at)).toEqual([]);
  expect(buttons).toEqual(expect.arrayContaining(['setwright.newPlay', 'setwright.newPlaybook', 'setwright.firstMinutes']));
});

test('every picture of the first minutes is there', () => {
  const pictures = walkthroughs.flatMap(({ steps }) => steps.flatMap(({ media }) => Object.values(media.image)));
  const there = new Set(readdirSync(join(root, 'media/walkthrough')).map((name) => `media/walkthrough/${name}`));
  expect(pictures.filter((path) => !there.has(path))).toEqual([]);
});

test.each(globSync('package.nls.*.json', { cwd: root }))('%s translates all that the manifest names, with the same links', (name) => {
  const translated = json(name);
  expect(Object.keys(translated).filter((key) => english[key] === undefined)).toEqual([]);
  expect(Object.keys(english).filter((key) => translated[key] === undefined)).toEqual([]);
  const links = (text: string) => [...text.matchAll(/\(command:[^)]+\)|`#?[\w.]+#?`/g)].map(String).sort();
  for (const [key, text] of Object.entries(english)) expect(links(translated[key]!), key).toEqual(links(text));
});
