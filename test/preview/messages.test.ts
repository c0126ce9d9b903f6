import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFromPlayer, readKept, readToPlayer } from '../../client/preview/messages.ts';

describe('what editor and player say to each other', () => {
  it.each([
    { v: 1, kind: 'show', seq: 3, title: 'Lighthouse', playback: null, stale: true, line: 12 },
    { v: 1, kind: 'show', seq: 3, title: 'Lighthouse', playback: { version: 1 }, stale: false },
    { v: 1, kind: 'show', seq: 4, title: 'Lighthouse', playback: null, change: { from: 3, to: { keys: {} } }, stale: false },
    { v: 1, kind: 'cursor', part: 'zip/3.1', t: 4000 },
    { v: 1, kind: 'cursor', part: 'zip/3.1' },
    { v: 1, kind: 'outcome', id: 3, words: 'left wing', at: { x: -5, y: 6 }, changes: 'every run-through' },
    { v: 1, kind: 'outcome', id: 3, refused: 'The text has changed meanwhile.' },
  ])('the editor: $kind', (message) => {
    expect(readToPlayer(structuredClone(message))).toEqual(message);
    expect(readFromPlayer(message)).toBeUndefined();
  });

  it.each([
    { v: 1, kind: 'ready' },
    { v: 1, kind: 'select', play: 'play:lighthouse', part: 'zip/3.1', place: { line: 10, at: 4, to: 20 } },
    { v: 1, kind: 'now', play: 'play:lighthouse', part: null, t: 0 },
    { v: 1, kind: 'state', play: 'play:lighthouse', run: 'middle?3.1', t: 4000, speed: 0.5 },
    { v: 1, kind: 'shown', seq: 4 },
    { v: 1, kind: 'intent', id: 0, play: 'play:lighthouse', seq: 4, dry: true, intent: { kind: 'move-end', action: 'zip/2.1', to: { x: 6, y: 2 } } },
    { v: 1, kind: 'fix', id: 1, play: 'play:lighthouse', seq: 4, code: 'screen-with-ball', finding: 0, fix: 0 },
    { v: 1, kind: 'refused', seq: 4, message: 'Update Setwright.' },
    { v: 1, kind: 'missed', seq: 4 },
    { v: 1, kind: 'text', does: 'undo' },
  ])('the player: $kind', (message) => {
    expect(readFromPlayer(structuredClone(message))).toEqual(message);
    expect(readToPlayer(message)).toBeUndefined();
  });

  it.each([
    { v: 2, kind: 'cursor', part: 'zip/3.1' },
    { v: 1, kind: 'show', seq: NaN, title: '', playback: null, stale: false },
    { v: 1, kind: 'show', seq: 1, title: 7, playback: null, stale: false },
    { v: 1, kind: 'show', seq: 1, title: '', playback: null, change: { from: 'the last' }, stale: false },
    { v: 1, kind: 'intent', id: 0, play: 'p', seq: 4, dry: true, intent: { kind: 'move-end', action: 'zip/2.1', to: { x: 6000, y: 2 } } },
    { v: 1, kind: 'intent', id: 0, play: 'p', seq: 4, dry: true, intent: { kind: 'write', text: 'rm' } },
    { v: 1, kind: 'eval', code: 'alert(1)' },
    { v: 1, kind: 'text', does: 'workbench.action.quit' },
    'ready',
    null,
  ])('anything else is not heard: %j', (message) => {
    expect(readToPlayer(message)).toBeUndefined();
    expect(readFromPlayer(message)).toBeUndefined();
  });

  it('what was kept by another version starts afresh', () => {
    expect(readKept({ v: 2, kind: 'state', play: 'p', run: 'r', t: 1, speed: 1 })).toBeUndefined();
    expect(readKept({ v: 1, kind: 'state', play: 'p', run: 'r', t: -1, speed: 1 })).toBeUndefined();
    expect(readKept(undefined)).toBeUndefined();
  });

  it('never throws', () => {
    fc.assert(fc.property(fc.anything(), (value) => readToPlayer(value) === undefined && readFromPlayer(value) === undefined && readKept(value) === undefined));
  });
});
