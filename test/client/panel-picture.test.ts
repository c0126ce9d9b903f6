import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keepPicture } from '../../client/panel/panel-picture.ts';
import { createInbox } from '../../client/preview/inbox.ts';
import { changeBetween, noChange } from '../../language/playback/change.ts';
import type { UnreadFrame } from '../../server/lsp/protocol.ts';

const frame = (seq: number, more: Partial<UnreadFrame>): UnreadFrame =>
  ({ version: 1, panel: 'a', uri: 'file:///a.play', documentVersion: seq, seq, playKey: 'play:a', title: 'A', firstLine: 0, playback: null, stale: false, ...more });

describe('the picture of a panel', () => {
  test('is told whole at first, then as what has changed, each by its own number', () => {
    const picture = keepPicture();
    expect(picture.take(frame(7, { playback: { at: 1 } }))).toMatchObject({ seq: 1, playback: { at: 1 } });
    expect(picture.take(frame(8, { stale: true, staleLine: 4 }))).toMatchObject({ seq: 2, playback: null, stale: true, line: 5 });
    const change = { keys: { at: { is: 2 } } };
    expect(picture.take(frame(9, { change: { from: 7, to: change } }))).toMatchObject({ seq: 3, playback: null, stale: false, change: { from: 1, to: change } });
    expect(picture.whole()).toMatchObject({ seq: 3, playback: { at: 2 } });
    expect(picture.seq()).toBe(3);
  });

  test('is asked for anew where the frame that a change starts from has not come, and goes on from the whole', () => {
    const picture = keepPicture();
    expect(picture.take(frame(2, { change: { from: 1, to: noChange } }))).toBeUndefined();
    picture.take(frame(1, { playback: { at: 1 } }));
    expect(picture.take(frame(3, { change: { from: 2, to: noChange } }))).toBeUndefined();
    expect(picture.take(frame(1, { playback: { at: 5 } }))).toMatchObject({ playback: { at: 5 } });
  });

  // The server as it speaks, the player as it hears: whatever is typed and however often the player starts anew, it has the newest good picture.
  test('is what the server last made of the text, in a player that starts anew at any time', () => {
    const step = fc.record({ kind: fc.constantFrom('text', 'unfinished', 'reload', 'nothing'), at: fc.array(fc.nat(3), { maxLength: 3 }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const picture = keepPicture();
        let inbox = createInbox();
        let seq = 0;
        let sent: { readonly seq: number; readonly playback: unknown } | undefined;
        let shown: unknown = null;
        const tell = (given: UnreadFrame) => {
          const message = picture.take(given)!;
          expect(inbox.put(structuredClone(message))).toBe(true);
          shown = inbox.takeShow()!.playback ?? (given.stale ? shown : null);
        };
        for (const one of steps) {
          if (one.kind === 'reload') {
            inbox = createInbox();
            const whole = picture.whole();
            if (whole !== undefined) inbox.put(structuredClone(whole));
            shown = inbox.takeShow()?.playback ?? null;
          } else if (one.kind === 'unfinished') tell(frame(++seq, { stale: true, staleLine: 1 }));
          else if (one.kind === 'nothing') {
            sent = undefined;
            tell(frame(++seq, { playKey: null, title: '' }));
          } else {
            const playback = { at: one.at };
            const before = sent;
            sent = { seq: ++seq, playback };
            tell(frame(seq, before === undefined ? { playback } : { change: { from: before.seq, to: changeBetween(before.playback, playback) ?? noChange } }));
          }
          expect(shown).toEqual(sent?.playback ?? null);
        }
      }),
    );
  });
});
