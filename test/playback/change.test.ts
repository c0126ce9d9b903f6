import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeBetween, withChange } from '../../language/playback/change.ts';
import { anyPlayback } from '../support/any-playback.ts';
import { compileText } from '../checks/compiled.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { playOf } from '../support/typed-play.ts';

const playbackOfText = (text: string) => playbackOf(compileText(text).plays[0]!);
const sent = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const size = (value: unknown): number => JSON.stringify(value).length;

describe('what has changed of a playback', () => {
  const before = playbackOfText(playOf(31));
  const after = playbackOfText(playOf(31).replace('(5.12, 1.2)', '(5.127, 1.2)'));

  it('makes the new one of the old one, once it has been sent', () => {
    expect(withChange(sent(before), sent(changeBetween(before, after)))).toEqual(sent(after));
  });

  it('is a small part of it, and leaves the rest the same objects', () => {
    const change = changeBetween(before, after);
    expect(size(change)).toBeLessThan(size(after) / 2);
    const known = sent(before) as typeof before;
    const made = withChange(known, sent(change)) as typeof before;
    expect(made.court).toBe(known.court);
    expect(made.runs[0]!.tracks['3']).toBe(known.runs[0]!.tracks['3']);
    expect(made.runs[0]).not.toBe(known.runs[0]);
  });

  it('is nothing where a remark was written', () => {
    expect(changeBetween(before, playbackOfText(`${playOf(31)}\n# well`))).toBeUndefined();
  });

  it('from any play to any other gives the other, and is no larger than it', () => {
    fc.assert(
      fc.property(anyPlayback, anyPlayback, (a, b) => {
        const change = sent(changeBetween(a, b) ?? null);
        if (change === null) return expect(sent(a)).toEqual(sent(b));
        expect(withChange(sent(a), change)).toEqual(sent(b));
        expect(size(change)).toBeLessThan(size(b) * 1.1 + 50);
      }),
    );
  });
});

describe('of any JSON', () => {
  // `undefined` as a value in memory is no value in JSON.
  const value = fc.letrec<{ value: unknown }>((tie) => ({
    value: fc.oneof(fc.constantFrom(null, true, 0, 1, 'a', ''), fc.array(tie('value'), { maxLength: 4 }), fc.dictionary(fc.constantFrom('a', 'b', '__proto__', 'is', 'keys'), fc.option(tie('value'), { nil: undefined }), { maxKeys: 4 })),
  })).value;

  it('the change makes the one of the other, names in their order', () => {
    fc.assert(
      fc.property(value, value, (a, b) => {
        const change = changeBetween(a, b);
        const made = change === undefined ? sent(a) : withChange(sent(a), sent(change));
        expect(JSON.stringify(made)).toBe(JSON.stringify(b));
      }),
    );
  });

  it('what is no change, or one of something else, makes nothing and throws nothing', () => {
    fc.assert(fc.property(fc.anything(), fc.anything(), (a, change) => void withChange(a, change)));
    expect(withChange({ a: 1 }, { items: { 0: { is: 1 } }, length: 1 })).toBeUndefined();
    expect(withChange([1], { items: { 4: { is: 1 } }, length: 5 })).toBeUndefined();
    expect(withChange([1], { items: {}, length: 2 })).toBeUndefined();
    expect(withChange([1], { items: {}, length: 1e9 })).toBeUndefined();
    expect(withChange([1], { keys: { 0: { is: 1 } } })).toBeUndefined();
    expect(withChange({ a: 1 }, 'all of it')).toBeUndefined();
  });
});
