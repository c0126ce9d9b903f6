import { describe, expect, test } from 'vitest';
import { createInbox } from '../../client/preview/inbox.ts';
import type { Show } from '../../client/preview/messages.ts';

const show = (seq: number, more: Partial<Show>): Show => ({ v: 1, kind: 'show', seq, title: 'Lighthouse', playback: null, stale: false, ...more });
const whole = show(1, { playback: { name: 'Lighthouse', runs: [1, 2] } });
const changed = (seq: number, from: number, run: number) => show(seq, { change: { from, to: { keys: { runs: { items: { 1: { is: run } }, length: 2 } } } } });

describe('a picture that says what has changed', () => {
  test('is made whole from the last one, shown or not', () => {
    const inbox = createInbox();
    inbox.put(whole);
    expect(inbox.put(changed(2, 1, 5))).toBe(true);
    expect(inbox.takeShow()).toEqual(show(2, { playback: { name: 'Lighthouse', runs: [1, 5] } }));
    inbox.put(changed(3, 2, 6));
    inbox.put(changed(4, 3, 7));
    expect(inbox.takeShow()).toMatchObject({ seq: 4, playback: { runs: [1, 7] } });
    expect(inbox.takeShow()).toBeUndefined();
  });

  test('is made from the last good one after an unfinished line', () => {
    const inbox = createInbox();
    inbox.put(whole);
    inbox.put(show(2, { stale: true, line: 3 }));
    inbox.takeShow();
    inbox.put(changed(3, 1, 5));
    expect(inbox.takeShow()).toMatchObject({ seq: 3, playback: { runs: [1, 5] }, stale: false });
  });

  test('is refused where the one it speaks of is not here, and what was here stays', () => {
    const inbox = createInbox();
    expect(inbox.put(changed(2, 1, 5))).toBe(false);
    inbox.put(whole);
    expect(inbox.put(changed(3, 2, 5))).toBe(false);
    expect(inbox.put(show(3, { change: { from: 1, to: 'nonsense' } }))).toBe(false);
    expect(inbox.takeShow()).toEqual(whole);
    expect(inbox.put(changed(4, 1, 5))).toBe(true);
  });
});
