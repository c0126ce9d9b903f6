import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { withChange } from '../../language/playback/change.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import { root } from '../../scripts/build.ts';
import { cursorMethod, frameMethod, hideMethod, partAtMethod, rangeOfMethod, readFrame, readPart, readRange, showMethod, type UnreadFrame } from '../../server/lsp/protocol.ts';
import { talk, uri, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const lines = lighthouse.split('\n');
const lineOf = (words: string) => lines.findIndex((line) => line.includes(words));
const clears = lineOf('2 clears');
const endOfClears = { line: clears, character: lines[clears]!.length };

let client: Client;
let frames: UnreadFrame[];
beforeEach(async () => {
  client = await talk();
  frames = [];
  client.connection.onNotification(frameMethod, (value: unknown) => void frames.push(readFrame(value)!));
});
afterEach(() => client.close());

const show = (what: object, panel = 'a', at = uri) => client.connection.sendNotification(showMethod, { version: 1, panel, uri: at, what });
const type = (version: number, start: { line: number; character: number }, end: { line: number; character: number }, text: string) => client.change(uri, version, [{ range: { start, end }, text }]);

async function frame(number: number): Promise<UnreadFrame> {
  for (let times = 0; frames.length < number; times++) {
    if (times > 300) throw new Error(`${frames.length} frames, not ${number}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  return frames[number - 1]!;
}
const noMore = async (number: number) => {
  if (number > 0) await frame(number);
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(frames).toHaveLength(number);
};

describe('a panel that follows', () => {
  test('is given the play of the line, whole and valid', async () => {
    await client.open(uri, lighthouse);
    await show({ kind: 'follow', line: clears });
    const first = await frame(1);
    expect(readPlayback(first.playback)).toMatchObject({ ok: true });
    expect(first).toMatchObject({ playKey: 'play:lighthouse', firstLine: 4, stale: false });
  });

  test('keeps the last good picture while the line being typed is unfinished, and names the line', async () => {
    await client.open(uri, lighthouse);
    await show({ kind: 'follow', line: clears });
    await frame(1);
    await type(2, { line: clears, character: 13 }, endOfClears, 'to ');
    expect(await frame(2)).toMatchObject({ playback: null, stale: true, staleLine: clears, title: 'Lighthouse' });
    await type(3, { line: clears, character: 16 }, { line: clears, character: 16 }, 'left corner');
    const third = await frame(3);
    expect(third.stale).toBe(false);
    expect(third.playback).not.toBeNull();
  });

  test('is given the play without that line once the cursor has left it', async () => {
    await client.open(uri, lighthouse);
    await show({ kind: 'follow', line: clears });
    await frame(1);
    await type(2, { line: clears, character: 13 }, endOfClears, 'to ');
    await frame(2);
    await show({ kind: 'follow', line: clears + 4 });
    expect(await frame(3)).toMatchObject({ stale: false, playback: expect.anything() });
  });

  test('is sent nothing when the cursor moves within the play, and the other play when it moves there', async () => {
    await client.open(uri, `${lighthouse}\nplay "Other"\n  from horns\n  1 passes to 2\n  look 2: three\n`);
    await show({ kind: 'follow', line: clears });
    await frame(1);
    await show({ kind: 'follow', line: clears + 3 });
    await noMore(1);
    await show({ kind: 'follow', line: lines.length + 2 });
    expect(await frame(2)).toMatchObject({ playKey: 'play:other', title: 'Other' });
  });

  test('is sent one frame for edits that arrive together', async () => {
    await client.open(uri, lighthouse);
    await show({ kind: 'follow', line: clears });
    await frame(1);
    for (let version = 2; version < 12; version++) void type(version, { line: 0, character: 0 }, { line: 0, character: 0 }, '\n');
    await noMore(2);
    expect(frames[1]).toMatchObject({ documentVersion: 11, firstLine: 14 });
  });

  test('is told quietly what is missing of a play whose end is being written, and in full once the cursor has gone elsewhere', async () => {
    const begun = 'play "Driftwood"\n  from horns, ball with 1\n  step "Open"\n    1 dribbles to left wing\n';
    await client.open(uri, begun);
    await show({ kind: 'follow', line: 4 });
    const severities = (one: UnreadFrame) => (one.playback as { findings: { code: string; severity: string }[] }).findings.filter(({ code }) => code === 'no-ending').map(({ severity }) => severity);
    expect(severities(await frame(1))).toEqual(['warning']);
    await type(2, { line: 4, character: 0 }, { line: 4, character: 0 }, '    2 cuts to rim');
    expect(severities(await frame(2))).toEqual(['hint']);
    await client.connection.sendNotification(cursorMethod, { version: 1, uri, line: 1 });
    expect(severities(await frame(3))).toEqual(['warning']);
  });

  test('is told when there is no play to show', async () => {
    await client.open(uri, 'level u14\n');
    await show({ kind: 'follow', line: 0 });
    expect(await frame(1)).toMatchObject({ playKey: null, playback: null, stale: false });
  });
});

describe('a panel that takes changes', () => {
  const takeChanges = (what: object) => client.connection.sendNotification(showMethod, { version: 1, panel: 'a', uri, what, changes: true });
  const follow = { kind: 'follow', line: clears };

  test('is given the play whole, then what has changed of it: together the play as anybody else is given it', async () => {
    await client.open(uri, lighthouse);
    await takeChanges(follow);
    const first = await frame(1);
    expect(first.change).toBeUndefined();
    await type(2, { line: clears, character: 13 }, endOfClears, 'to (5.1, 1.2) m');
    const second = await frame(2);
    expect(second).toMatchObject({ playback: null, stale: false, title: 'Lighthouse', change: { from: first.seq } });
    await type(3, { line: clears, character: 13 }, { line: clears, character: 13 }, ' ');
    const third = await frame(3);
    expect(third.change).toMatchObject({ from: second.seq });
    const made = withChange(withChange(first.playback, second.change!.to), third.change!.to);
    await show({ kind: 'follow', line: clears }, 'somebody else');
    expect(made).toEqual((await frame(4)).playback);
    expect(readPlayback(made)).toMatchObject({ ok: true });
    expect(JSON.stringify(second).length).toBeLessThan(JSON.stringify(first).length / 2);
  });

  test('is told of changes since the last picture, however long a line was unfinished', async () => {
    await client.open(uri, lighthouse);
    await takeChanges(follow);
    const first = await frame(1);
    await type(2, { line: clears, character: 13 }, endOfClears, 'to ');
    expect(await frame(2)).toMatchObject({ playback: null, stale: true });
    expect(frames[1]!.change).toBeUndefined();
    await type(3, { line: clears, character: 16 }, { line: clears, character: 16 }, 'left corner');
    expect(await frame(3)).toMatchObject({ playback: null, stale: false, change: { from: first.seq } });
  });

  test('is given another play whole, and the first again when it comes back to it', async () => {
    await client.open(uri, `${lighthouse}\nplay "Other"\n  from horns\n  1 passes to 2\n  look 2: three\n`);
    await takeChanges(follow);
    await frame(1);
    await takeChanges({ kind: 'follow', line: lines.length + 2 });
    expect((await frame(2)).playback).not.toBeNull();
    await takeChanges(follow);
    expect((await frame(3)).playback).not.toBeNull();
  });

  test('is given the whole after there was none, and after it was hidden and shown again', async () => {
    await client.open(uri, lighthouse);
    await takeChanges(follow);
    await frame(1);
    client.change(uri, 2, [{ text: 'level u14\n' }]);
    expect(await frame(2)).toMatchObject({ playKey: null, playback: null, stale: false });
    client.change(uri, 3, [{ text: lighthouse }]);
    expect((await frame(3)).playback).not.toBeNull();
    await client.connection.sendNotification(hideMethod, { version: 1, panel: 'a' });
    await takeChanges(follow);
    expect((await frame(4)).playback).not.toBeNull();
  });
});

test('a pinned play is shown wherever it moves and under another name', async () => {
  await client.open(uri, lighthouse);
  await show({ kind: 'pin', playKey: 'play:lighthouse' });
  await frame(1);
  await type(2, { line: 4, character: 6 }, { line: 4, character: 16 }, 'Beacon');
  expect(await frame(2)).toMatchObject({ playKey: 'play:beacon', title: 'Beacon' });
});

test('a panel that is gone gets nothing more', async () => {
  await client.open(uri, lighthouse);
  await show({ kind: 'follow', line: 0 });
  await frame(1);
  await client.connection.sendNotification(hideMethod, { version: 1, panel: 'a' });
  await type(2, { line: 0, character: 0 }, { line: 0, character: 0 }, '\n');
  await noMore(1);
});

test('a message of another version, or of none, is left alone', async () => {
  await client.open(uri, lighthouse);
  await client.connection.sendNotification(showMethod, { version: 2, panel: 'a', uri, what: { kind: 'follow', line: 0 } });
  await client.connection.sendNotification(showMethod, { nonsense: true });
  await noMore(0);
});

describe('text and time', () => {
  beforeEach(() => client.open(uri, lighthouse));
  const partAt = async (line: number, character: number) => readPart(await client.connection.sendRequest(partAtMethod, { version: 1, uri, position: { line, character } }));

  test.each([
    ['    1 dribbles', 8, 'zip/1.1'],
    ['4 ball-screens', 8, 'middle/4.1'],
    ['4 ball-screens', 34, 'middle/4.2'],
    ['look 4 on the roll', 10, 'middle?4.1'],
    ['step "Slip"', 5, 'slip'],
    ['call with', 3, 'call'],
  ] as const)('%s at column %i is %s', async (words, character, part) => {
    expect(await partAt(lineOf(words), character)).toMatchObject({ playKey: 'play:lighthouse', part });
  });

  test('an action is at its start, a step at its opening, a header at 0', async () => {
    const [dribble, step, header] = await Promise.all([partAt(lineOf('    1 dribbles'), 8), partAt(lineOf('step "Middle"'), 5), partAt(lineOf('call with'), 3)]);
    expect(dribble!.t).toBeGreaterThan(0);
    expect(step!.t).toBeGreaterThan(dribble!.t!);
    expect(header!.t).toBe(0);
  });

  test('every part that has words is found where its words are', async () => {
    await show({ kind: 'follow', line: clears });
    const { playback } = (await frame(1)) as { playback: { text: Record<string, { line: number; at: number; to: number }> } };
    for (const [part, place] of Object.entries(playback.text).filter(([, { at, to }]) => to > at)) {
      const range = readRange(await client.connection.sendRequest(rangeOfMethod, { version: 1, uri, playKey: 'play:lighthouse', part }));
      expect(range, part).toEqual({ start: { line: 4 + place.line, character: place.at }, end: { line: 4 + place.line, character: place.to } });
    }
  });

  test('a pass that only follows from a look is found at the look', async () => {
    const range = readRange(await client.connection.sendRequest(rangeOfMethod, { version: 1, uri, playKey: 'play:lighthouse', part: 'middle?2.1/3.1' }));
    expect(range!.start.line).toBe(lineOf('look 2 "corner"'));
  });
});

test('a book that lists the play gives its players their names, as it is opened and as its roster changes', async () => {
  const club = uri.replace(/[^/]*$/, 'club.play');
  const names = (frame: UnreadFrame) => (frame.playback as { jobs: { who: string; name?: string }[] }).jobs.map(({ name }) => name);
  await client.open(uri, lighthouse);
  await show({ kind: 'follow', line: clears });
  expect(names(await frame(1))).toEqual([undefined, undefined, undefined, undefined, undefined]);
  await client.open(club, `use "${uri.replace(/^.*\//, '')}"\nroster\n  2 "Pip"\nbook "Season"\n  section "Late": "Lighthouse"\n`);
  expect(names(await frame(2))[1]).toBe('Pip');
  await client.change(club, 2, [{ range: { start: { line: 2, character: 5 }, end: { line: 2, character: 8 } }, text: 'Moss' }]);
  expect(names(await frame(3))[1]).toBe('Moss');
});
