import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { handlesAt, type Handle } from '../../client/preview/handles.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { momentOf } from '../../language/playback/at.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { PartId } from '../../language/play/play.ts';

const uri = 'file:///club/sets.play';
const playback = playbackOf(createKeeper().playsOf(openFile(emptyBook, uri, readFileSync('examples/lighthouse.play', 'utf8')), uri)[0]!);
const run = playback.runs[0]!;

function handles(t: number, picked?: PartId): readonly Handle[] {
  return handlesAt(playback, run, momentOf(playback, run, t), picked, false);
}
const endOfTheCut = (t: number, picked?: PartId) => handles(t, picked).find(({ kind, part }) => kind === 'end' && part === 'zip/3.1');

describe('what can be taken hold of on the floor', () => {
  test('the end of 3’s cut to the top lies under 1 while he stands there: his number stays readable, and a hand takes him', () => {
    expect(endOfTheCut(0)?.under).toBe(true);
    expect(handles(0).find(({ key }) => key === 'start 1')?.under ?? false).toBe(false);
  });

  test('but where that cut is picked its end is what a hand draws, though 1 stands on it', () => {
    expect(endOfTheCut(0, 'zip/3.1')).toMatchObject({ under: false, over: true });
    expect(endOfTheCut(0, 'zip/2.1')).toMatchObject({ under: true, over: false });
    expect(endOfTheCut(4500, 'zip/3.1')).toMatchObject({ under: false, over: false });
  });

  test('once 1 has dribbled away it can be taken hold of', () => {
    expect(endOfTheCut(4500)?.under).toBe(false);
  });

  test('no player lies under anything', () => {
    for (let t = 0; t <= run.end; t += 250) expect(handles(t).filter(({ kind, under }) => kind === 'player' && under === true)).toEqual([]);
  });
});
