// Which picture stays while a line is unfinished: what was meant last, not what the letters meant in passing.
import { beforeEach, describe, expect, test } from 'vitest';
import { createKeeper } from '../../language/keeper.ts';
import { blockOfKey } from '../../language/book/book.ts';
import { withChange } from '../../language/playback/change.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { openDocuments, type Documents } from '../../server/lsp/documents.ts';
import type { Frame } from '../../server/lsp/protocol.ts';
import { showPlays, type ShownPlays } from '../../server/lsp/shown-plays.ts';

const uri = 'file:///plays/driftwood.play';
const head = ['play "Driftwood"', '  from horns, ball with 1', '  step "Open"', '    1 dribbles to left wing'];
const line = head.length;

let documents: Documents;
let shown: ShownPlays;
let frames: Frame[];
let time: number;
let picture: Playback | null;
let version: number;
let lines: string[];

beforeEach(() => {
  documents = openDocuments();
  const keeper = createKeeper();
  [frames, time, picture, version, lines] = [[], 0, null, 1, [...head, '    ', '']];
  const source = {
    document: documents.get,
    playbackOf(at: string, key: string) {
      const block = blockOfKey(documents.get(at)!.file, key)!;
      return playbackOf(keeper.compile(documents.book(), at, block));
    },
  };
  const take = (frame: Frame) => {
    frames.push(frame);
    if (frame.change !== undefined) picture = withChange(picture, frame.change.to) as Playback;
    else if (frame.playback !== null || !frame.stale) picture = frame.playback;
  };
  shown = showPlays({ turn: (work) => work() }, source, take, () => time);
  documents.open(uri, 1, lines.join('\n'));
});

/** A letter at once after the one before. */
function write(text: string, at = line) {
  time += 120;
  documents.change(uri, ++version, [{ range: { start: { line: at, character: 0 }, end: { line: at, character: lines[at]!.length } }, text }]);
  lines[at] = text;
  shown.changed(uri, at);
}
const typeOn = (from: string, more: string, at = line) => [...more].forEach((_, i) => write(from + more.slice(0, i + 1), at));
/** Where 4 ends in the picture. */
const endOf4 = () => picture!.says['open/4.1'] ?? 'nothing';
/** Whether it is marked as older than the text. */
const isStale = () => frames.at(-1)!.stale;

describe.each([false, true])('a panel that takes changes: %s', (changes) => {
  beforeEach(() => shown.show({ version: 1, panel: 'a', uri, what: { kind: 'follow', line }, changes }));

  test('shows at each letter what stands there, and what stood there before while the line is unfinished', () => {
    typeOn('    ', '4 cuts');
    expect([endOf4(), isStale()]).toEqual(['4 cuts', false]);
    typeOn('    4 cuts', ' t');
    expect([endOf4(), isStale()]).toEqual(['nothing', true]);
    typeOn('    4 cuts t', 'o left');
    expect(isStale(), 'to the rim by way of the left').toBe(false);
    typeOn('    4 cuts to left', ' w');
    expect([endOf4(), isStale()]).toEqual(['nothing', true]);
    typeOn('    4 cuts to left w', 'ing');
    expect([endOf4(), isStale()]).toEqual(['4 cuts to left wing', false]);
  });

  test('keeps what the line said before he began to change it', () => {
    typeOn('    ', '4 cuts to left wing');
    time += 5000;
    for (const text of ['4 cuts to left win', '4 cuts to left ', '4 cuts to ', '4 cuts', '4 cuts t']) write(`    ${text}`);
    expect([endOf4(), isStale()]).toEqual(['4 cuts to left wing', true]);
    typeOn('    4 cuts t', 'o right corner');
    expect([endOf4(), isStale()]).toEqual(['4 cuts to right corner', false]);
  });

  test('takes what has stood for a while for meant', () => {
    typeOn('    ', '4 cuts');
    time += 3000;
    typeOn('    4 cuts', ' t');
    expect([endOf4(), isStale()]).toEqual(['4 cuts', true]);
  });

  test('takes a line that he has ended for meant', () => {
    typeOn('    ', '4 cuts');
    write('    2 cl', line + 1);
    expect([endOf4(), isStale()]).toEqual(['4 cuts', true]);
  });
});
