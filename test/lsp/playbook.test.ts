// The whole playbook as a client asks for it: files that nobody has open, times, the order of a book, new plays.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { emptyBook, openFile, setFiles, textOf } from '../../language/book/book.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { createKeeper } from '../../language/keeper.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { levelIds } from '../../language/court/youth.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { OFFENCE } from '../../language/play/play.ts';
import { sayPlace } from '../../language/words/say-place.ts';
import { root } from '../../scripts/build.ts';
import { newPlayChoices, newPlayText } from '../../server/lsp/new-play.ts';
import { filesOnDisk } from '../../server/lsp/node-files.ts';
import * as protocol from '../../server/lsp/playbook-protocol.ts';
import { frameMethod, playMethod, readFrame, readPlay, showMethod, type UnreadFrame } from '../../server/lsp/protocol.ts';
import { talk, type Client } from './talking.ts';

const folder = 'file:///plays/';
const examples = Object.fromEntries(readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.play')).map((name) => [`${folder}${name}`, readFileSync(join(root, 'examples', name), 'utf8')]));

let client: Client;
let disk: Record<string, string>;
beforeEach(async () => {
  disk = { ...examples };
  client = await talk({ options: { files: true, settings: { checks: { settle: 0 } } } });
  client.connection.onRequest(protocol.listFilesMethod, () => Object.keys(disk));
  client.connection.onRequest(protocol.readFileMethod, (value: unknown) => disk[protocol.readReadFile(value)!.uri] ?? null);
});
afterEach(() => client.close());

const playbook = async (more: object = {}) => protocol.readPlaybook(await client.connection.sendRequest(protocol.playbookMethod, { version: 1, ...more }))!;
const changedOnDisk = (uri: string) => client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });

test('the plays of files that nobody has open are there, with what a coach chooses by', async () => {
  const { plays } = await playbook();
  const lighthouse = plays.find(({ name }) => name === 'Lighthouse')!;
  expect(lighthouse).toMatchObject({ uri: `${folder}lighthouse.play`, line: 4, against: 'man', from: 'stack', throwIn: null, level: 'u14', call: { from: 22, to: 26 }, errors: 0 });
  expect(lighthouse.first!.fromCall).toBeGreaterThan(5);
  expect(lighthouse.all!.fromCall).toBeGreaterThanOrEqual(lighthouse.first!.fromCall);
  expect(Math.max(...lighthouse.looks.map(({ needs }) => needs))).toBe(lighthouse.all!.fromCall);
  expect(plays.find(({ name }) => name === 'Ferry')).toMatchObject({ throwIn: 'sideline', tags: ['throw-in', 'sideline', 'man'] });
  expect(plays.find(({ name }) => name === 'Shell')).toMatchObject({ against: '2-3', throwIn: 'baseline' });
});

test('a book has its sections in order, each name with its play', async () => {
  const { plays, books } = await playbook();
  expect(books.map(({ name }) => name)).toEqual(['Reedbank Otters, this season']);
  const first = books[0]!.sections[0]!;
  expect(first.name).toBe('Last shot');
  expect(first.plays.map(({ play }) => plays[play!]?.name)).toEqual(first.plays.map(({ name }) => name));
});

test.each([
  ['the playbook', () => playbook()],
  ['the names of all files', () => client.connection.sendRequest('workspace/symbol', { query: 'x' })],
])('once the files are read for %s, a play that is shown has the names that its book gives the players; the page of all plays too', async (_, readAll) => {
  const uri = `${folder}lighthouse.play`;
  const frames: UnreadFrame[] = [];
  client.connection.onNotification(frameMethod, (value: unknown) => void frames.push(readFrame(value)!));
  const namesOf = (playback: unknown) => (playback as Playback).jobs!.map(({ name }) => name);
  await client.open(uri, examples[uri]!);
  await client.connection.sendNotification(showMethod, { version: 1, panel: 'a', uri, what: { kind: 'follow', line: 4 } });
  await expect.poll(() => frames.length).toBe(1);
  await readAll();
  await expect.poll(() => namesOf(frames.at(-1)!.playback)).toEqual(['Wren', 'Pip', 'Moss', 'Juno', 'Badger']);
  expect(namesOf(readPlay(await client.connection.sendRequest(playMethod, { version: 1, uri, line: 4 }))!.playback)).toEqual(['Wren', 'Pip', 'Moss', 'Juno', 'Badger']);
});

test('what is open in the editor is newer than the disk', async () => {
  await client.open(`${folder}lighthouse.play`, examples[`${folder}lighthouse.play`]!.replace('"Lighthouse"', '"Lamp"'));
  const { plays } = await playbook();
  expect(plays.map(({ name }) => name)).toContain('Lamp');
  expect(plays.map(({ name }) => name)).not.toContain('Lighthouse');
});

test('one document alone can be asked for', async () => {
  await client.open(`${folder}quick.play`, examples[`${folder}quick.play`]!);
  const { plays } = await playbook({ uri: `${folder}quick.play` });
  expect(new Set(plays.map(({ uri }) => uri))).toEqual(new Set([`${folder}quick.play`]));
});

test('a question that cannot be read is answered with nothing', async () => {
  expect(await client.connection.sendRequest(protocol.playbookMethod, { version: 7 })).toBeNull();
  expect(await client.connection.sendRequest(protocol.arrangeMethod, 'x')).toBeNull();
});

describe('a file named by use', () => {
  const user = 'notation 1\nuse "own.play"\n\nplay "Mine"\n  from "Own"\n\n  step "Go"\n    1 passes to 2\n    look 2: jumper\n';
  const own = 'notation 1\nalignment "Own"\n  1 top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n';

  const unknown = (found: readonly { readonly code?: unknown }[]) => found.map(({ code }) => String(code)).filter((code) => code.startsWith('unknown'));

  test('is found on the disk, and its names are known', async () => {
    disk[`${folder}own.play`] = own;
    await client.open(`${folder}mine.play`, user);
    expect(unknown(await client.diagnosticsOf(`${folder}mine.play`, 1))).toEqual([]);
  });

  test('is said to be missing when it is, and no longer once it has come', async () => {
    await client.open(`${folder}mine.play`, user);
    expect(unknown(await client.diagnosticsOf(`${folder}mine.play`, 1))).toEqual(['unknown-file', 'unknown-alignment']);
    disk[`${folder}own.play`] = own;
    const before = client.published.length;
    await changedOnDisk(`${folder}own.play`);
    while (client.published.length === before) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(unknown(client.published.at(-1)!.diagnostics)).toEqual([]);
  });
});

test('a machine’s own files are listed below a folder, node_modules left out', async () => {
  const files = filesOnDisk([pathToFileURL(join(root, 'examples')).href]);
  const found = await files.list();
  expect(found.some((uri) => uri.endsWith('/lighthouse.play'))).toBe(true);
  expect(await files.read(found[0]!)).toContain('notation 1');
  expect(await files.read('file:///no/such.play')).toBeUndefined();
  expect(await filesOnDisk(['file:///no/such/folder', 'vscode-vfs://x/y']).list()).toEqual([]);
});

describe('the order of a book', () => {
  const uri = `${folder}club.play`;
  const text = 'book "Ours"\n  section "Quick": "A", "B", "C" # by heart\n  section "Side": "D"\n  section "Later"\n';
  const arranged = async (from: protocol.Slot, to: protocol.Slot) => {
    const answer = protocol.readArranged(await client.connection.sendRequest(protocol.arrangeMethod, { version: 1, uri, from, to }));
    return answer && TextDocument.applyEdits(TextDocument.create(uri, 'setwright', 1, text), answer.edits).split('\n').slice(1, 4);
  };
  beforeEach(() => client.open(uri, text));

  test.each([
    ['down', { line: 1, index: 0 }, { line: 1, index: 2 }, ['  section "Quick": "B", "A", "C" # by heart', '  section "Side": "D"', '  section "Later"']],
    ['to the end', { line: 1, index: 0 }, { line: 1, index: 3 }, ['  section "Quick": "B", "C", "A" # by heart', '  section "Side": "D"', '  section "Later"']],
    ['up', { line: 1, index: 2 }, { line: 1, index: 0 }, ['  section "Quick": "C", "A", "B" # by heart', '  section "Side": "D"', '  section "Later"']],
    ['into another section', { line: 1, index: 1 }, { line: 2, index: 0 }, ['  section "Quick": "A", "C" # by heart', '  section "Side": "B", "D"', '  section "Later"']],
    ['into an empty section, which leaves one empty', { line: 2, index: 0 }, { line: 3, index: 0 }, ['  section "Quick": "A", "B", "C" # by heart', '  section "Side"', '  section "Later": "D"']],
    ['nowhere', { line: 1, index: 1 }, { line: 1, index: 2 }, text.split('\n').slice(1, 4)],
  ] as const)('a play goes %s', async (_, from, to, lines) => {
    expect(await arranged(from, to)).toEqual(lines);
  });

  test('a slot that is none moves nothing', async () => {
    expect(await arranged({ line: 0, index: 0 }, { line: 1, index: 0 })).toBeNull();
    expect(await arranged({ line: 1, index: 9 }, { line: 1, index: 0 })).toBeNull();
  });
});

describe('a new play', () => {
  const uri = 'file:///plays/new.play';
  /** All but what is said of the team's age: that the coach has chosen. */
  const wrongWith = (text: string) => {
    const keeper = createKeeper();
    const book = openFile(emptyBook, uri, text);
    return { plays: keeper.playsOf(book, uri), wrong: keeper.findingsOf(book, uri).filter(({ code }) => !code.startsWith('youth-')).map(({ code, message }) => `${code}: ${message}`) };
  };

  test.each(newPlayChoices(emptyBook, undefined).alignments)('from $name $throwIn moves at once and has nothing wrong, at every level and against everything', ({ name: alignment, throwIn }) => {
    for (const level of levelIds)
      for (const against of newPlayChoices(emptyBook, undefined).defences) {
        const { plays, wrong } = wrongWith(newPlayText({ version: 1, as: 'file', name: 'Ours', alignment, throwIn, against, level }));
        expect(wrong, `${level} ${against}`).toEqual([]);
        const [play] = plays;
        expect(play!.play.name).toBe('Ours');
        expect(Object.values(play!.timeline.runs[0]!.tracks).some((track) => track.segments.length > 0)).toBe(true);
        expect(play!.timeline.times.firstLook!.fromCall).toBeGreaterThan(0);
      }
  });

  test('tells of each alignment where everybody stands, by spots that could be written, in one line of VS Code’s list', () => {
    for (const { name, places } of newPlayChoices(emptyBook, undefined).alignments) {
      expect(parseLine(`  from ${places.replaceAll(/ (above|below|left of|right of)(?= )/g, '')}`).fault, `${name}: ${places}`).toBeUndefined();
      // What is longer is cut off there.
      expect(places.length, places).toBeLessThanOrEqual(80);
    }
  });

  test.each(['sideline', 'baseline'] as const)('can begin with a throw-in from the %s, as the choice tells it', (throwIn) => {
    const choice = newPlayChoices(emptyBook, undefined).alignments.find((one) => one.throwIn === throwIn)!;
    const { plays } = wrongWith(newPlayText({ version: 1, as: 'file', name: 'Ours', alignment: choice.name, throwIn, against: 'man', level: 'u14' }));
    const court = courtOf(ruleSet('fiba'));
    const told = OFFENCE.map((who) => `${who} ${sayPlace(court, plays[0]!.timeline.runs[0]!.tracks[who]!.start)}`);
    expect(told.join(', ')).toBe(choice.places);
    expect(plays[0]!.play.start.throwIn).toMatchObject({ by: { value: 1 }, side: throwIn });
  });

  test('in a playbook stands in its first section', () => {
    const text = newPlayText({ version: 1, as: 'playbook', name: 'Ours', alignment: 'horns', against: 'man', team: 'Otters' });
    expect(wrongWith(text).wrong).toEqual([]);
    expect(text).toContain('book "Otters"\n  section "First plays": "Ours"');
  });

  test('behind another one in the same file takes that file’s level', () => {
    const lighthouse = examples[`${folder}lighthouse.play`]!;
    const { plays, wrong } = wrongWith(lighthouse + newPlayText({ version: 1, as: 'play', name: 'Ours', alignment: 'box', against: '2-3' }));
    expect(wrong).toEqual([]);
    expect(plays.map(({ play }) => [play.name, play.level.value])).toEqual([['Lighthouse', 'u14'], ['Ours', 'u14']]);
  });

  test('is asked the age of with the playbook’s own first', () => {
    const files: readonly (readonly [string, string])[] = [['file:///a.play', 'level u16\n'], ['file:///b.play', 'level u16\nplay "B"\n'], ['file:///c.play', 'level hs\nplay "C"\n'], ['file:///d.play', 'play "D"\n']];
    const book = setFiles(emptyBook, files);
    const first = (uri?: string) => newPlayChoices(book, uri).levels[0];
    expect([first(), first('file:///c.play'), first('file:///d.play')]).toEqual(['u16', 'hs', 'u16']);
    expect(newPlayChoices(emptyBook, undefined).levels).toEqual(['u10', 'u12', 'u14', 'u16', 'hs', 'college', 'pro']);
    expect(newPlayChoices(book, undefined).levels.toSorted()).toEqual(newPlayChoices(emptyBook, undefined).levels.toSorted());
  });

  test('takes any words for its name, and none of them gets out of the quotes', () => {
    const { plays } = wrongWith(newPlayText({ version: 1, as: 'file', name: 'A "b"\nplay "c"', alignment: '“x”', against: '\n', level: 'nonsense' }));
    expect(plays).toHaveLength(1);
  });

  test('can start from an alignment of the coach’s own, of a file that his uses', () => {
    let book = openFile(emptyBook, `${folder}alignments.play`, examples[`${folder}alignments.play`]!);
    book = openFile(book, uri, 'notation 1\nlevel u14\nuse "alignments.play"\n');
    const { alignments, levelSaid } = newPlayChoices(book, uri);
    expect(alignments.filter(({ own }) => own).map(({ name }) => name)).toContain('Kite');
    expect(levelSaid).toBe(true);
    book = openFile(book, uri, textOf(book.files.get(uri)!) + newPlayText({ version: 1, as: 'play', name: 'Ours', alignment: 'Four low', against: 'man' }));
    expect(createKeeper().findingsOf(book, uri).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

test('a press all over the floor is told from man to man', async () => {
  const { plays } = await playbook();
  const pressed = Object.values(examples).join('\n').match(/against man press/g)!.length;
  expect(pressed).toBeGreaterThan(0);
  expect(plays.filter(({ against }) => against === 'man press')).toHaveLength(pressed);
});
