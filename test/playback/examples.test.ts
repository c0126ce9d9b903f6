import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { momentOf } from '../../language/playback/at.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { stripFrames } from '../../language/picture/frames.ts';
import { drawStrip } from '../../language/picture/strip.ts';

const files = readdirSync('examples').filter((name) => name.endsWith('.play'));
let book = emptyBook;
for (const name of files) book = openFile(book, `file:///${name}`, readFileSync(`examples/${name}`, 'utf8'));
const keeper = createKeeper();
const playbacks: readonly (readonly [string, Playback])[] = files.flatMap((name) => keeper.playsOf(book, `file:///${name}`).map((play) => [`${play.play.name} (${name})`, playbackOf(play)] as const));

describe.each(playbacks)('%s', (_, playback) => {
  it('crosses a border as it is', () => {
    expect(readPlayback(JSON.parse(JSON.stringify(playback)))).toMatchObject({ ok: true });
  });

  it('the ball does not jump from hand to hand', () => {
    for (const run of playback.runs) {
      for (const state of run.ball.slice(1)) {
        const [before, after] = [momentOf(playback, run, state.t0 - 0.01).ball!, momentOf(playback, run, state.t0).ball!];
        // A hand-off changes hands an arm apart.
        expect(Math.hypot(after.x - before.x, after.y - before.y), `${run.id} at ${state.t0} ms, ${state.kind}`).toBeLessThan(1.2);
      }
    }
  });

  it('is drawn at every half second, and as a strip', () => {
    for (const run of playback.runs) {
      for (let t = 0; t <= run.end; t += 500) expect(drawSvg(sceneAt(playback, run.id, t))).not.toMatch(/NaN|Infinity|undefined/);
      expect(drawStrip(playback, run.id)).not.toMatch(/NaN|Infinity|undefined/);
      for (const frame of stripFrames(playback, run.id)) expect(frame.carrier, `${run.id}, ${frame.title}`).toBeDefined();
    }
  });
});
