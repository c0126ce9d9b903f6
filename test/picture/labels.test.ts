import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { placeLabels, widthOfText, type Placed, type Room, type Wanted } from '../../language/picture/labels.ts';
import type { Pt } from '../../language/picture/lines.ts';
import { BODY_CLEAR, labelsAt, sceneAt } from '../../language/picture/scene.ts';
import { stepFrames, stripFrames } from '../../language/picture/frames.ts';
import { viewOf } from '../../language/picture/view.ts';
import { momentOf } from '../../language/playback/at.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { examplePlaybacks } from '../support/examples.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import { writtenPlays } from '../support/plays.ts';

const view = viewOf(lighthouse);
const room: Room = { view, size: 42, bodies: [], bodyRadius: BODY_CLEAR };

/** How far a point is from a label's box, cm; 0 inside. */
function apart(label: Placed, [x, y]: Pt): number {
  return Math.hypot(Math.max(Math.abs(x - label.x) - label.width / 2, 0), Math.max(Math.abs(y - label.y) - label.height / 2, 0));
}

function overlaps(a: Placed, b: Placed): boolean {
  return Math.abs(a.x - b.x) * 2 < a.width + b.width && Math.abs(a.y - b.y) * 2 < a.height + b.height;
}

function playbacksOf(texts: readonly string[]): readonly Playback[] {
  const name = (i: number) => `file:///club/${i}.play`;
  const book = texts.reduce((known, text, i) => openFile(known, name(i), text), emptyBook);
  const keeper = createKeeper();
  return texts.flatMap((_, i) => keeper.playsOf(book, name(i)).map(playbackOf));
}

interface Counted {
  wanted: number;
  placed: number;
  onLabel: number;
  onPlayer: number;
  onLineEnd: number;
  onRing: number;
}

const nothing = (): Counted => ({ wanted: 0, placed: 0, onLabel: 0, onPlayer: 0, onLineEnd: 0, onRing: 0 });

/** A number is read from within 38 cm of its middle, an arrow's head from within 15 cm of its tip, the ring from within 25 cm. */
function count(into: Counted, labels: readonly Placed[], bodies: readonly Pt[], ends: readonly Pt[], scale: number): void {
  into.placed += labels.length;
  for (const [i, label] of labels.entries()) {
    into.onLabel += labels.slice(i + 1).filter((other) => overlaps(label, other)).length;
    into.onPlayer += bodies.filter((body) => apart(label, body) < 38 * scale).length;
    into.onLineEnd += ends.filter((end) => apart(label, end) < 15).length;
    into.onRing += apart(label, [0, 0]) < 25 ? 1 : 0;
  }
}

function moving(plays: readonly Playback[], everyMs: number): Counted {
  const counted = nothing();
  for (const play of plays) {
    for (const run of play.runs) {
      for (let t = 0; t <= run.end; t += everyMs) {
        const { labels, bodies, ways, view: shown } = sceneAt(play, run.id, t);
        counted.wanted += labelsAt(play, run, momentOf(play, run, t), shown.bodies).length;
        const ends = ways.filter(({ phase }) => phase !== 'done').map(({ way }) => way.points.at(-1)!);
        count(counted, labels, bodies.map(({ x, y }): Pt => [x, y]), ends, shown.bodies);
      }
    }
  }
  return counted;
}

function printed(plays: readonly Playback[]): Counted {
  const counted = nothing();
  for (const play of plays) {
    for (const run of play.runs) {
      const there = new Set(run.events.filter(({ kind }) => kind === 'read').map(({ part }) => part));
      if (run.look !== undefined) there.add(run.look);
      for (const { step, labels, bodies, ways } of stripFrames(play, run.id, { defence: true })) {
        counted.wanted += play.looks.filter((look) => look.step === step && there.has(look.id)).length;
        count(counted, labels, bodies.map(({ at }) => at), ways.map(({ points }) => points.at(-1)!), viewOf(play).bodies);
      }
    }
  }
  return counted;
}

/** Every step of a play with all its looks at once, as on the printed sheet. */
function onSheets(plays: readonly Playback[]): Counted {
  const counted = nothing();
  for (const play of plays) {
    const taken = new Set(play.runs.map(({ look }) => look));
    for (const { step, labels, bodies, ways } of stepFrames(play)) {
      counted.wanted += play.looks.filter((look) => look.step === step && taken.has(look.id)).length;
      count(counted, labels, bodies.map(({ at }) => at), ways.map(({ points }) => points.at(-1)!), viewOf(play).bodies);
    }
  }
  return counted;
}

const clear = { onLabel: 0, onPlayer: 0, onLineEnd: 0, onRing: 0 };

describe('labels of the club’s own plays', () => {
  const plays = examplePlaybacks();

  it('stand all on the moving floor, on no player, no other label, no line’s end and not on the ring, ten times a second', () => {
    const { wanted, placed, ...covered } = moving(plays, 100);
    expect(wanted).toBeGreaterThan(1000);
    expect(placed).toBe(wanted);
    expect(covered).toEqual(clear);
  });

  it('stand all in the printed frames, as clear of everything, defenders too', () => {
    const { wanted, placed, ...covered } = printed(plays);
    expect(wanted).toBeGreaterThan(100);
    expect(placed).toBe(wanted);
    expect(covered).toEqual(clear);
  });
});

describe('labels on a printed sheet', () => {
  it('name every look of every step of the club’s plays, on no number, no other label, no line’s end and not on the ring', () => {
    const { wanted, placed, ...covered } = onSheets(examplePlaybacks());
    expect(wanted).toBeGreaterThan(80);
    expect(placed).toBe(wanted);
    expect(covered).toEqual(clear);
  });

  it('stand in the order the looks are read', () => {
    const middle = stepFrames(lighthouse).find(({ title }) => title === 'Middle')!;
    expect(middle.labels.map(({ text }) => text)).toEqual(['1. pull-up', '2. on the roll']);
  });
});

describe('labels of plays nobody has drawn before', () => {
  const plays = playbacksOf(fc.sample(writtenPlays, { numRuns: 60, seed: 20 }).map(({ text }) => text));

  it('stand as clear on the moving floor', () => {
    const { wanted, placed, ...covered } = moving(plays, 200);
    expect(placed).toBe(wanted);
    expect(covered).toEqual(clear);
  });

  it('stand as clear in the printed frames', () => {
    const { wanted, placed, ...covered } = printed(plays);
    expect(placed).toBe(wanted);
    expect(covered).toEqual(clear);
  });
});

describe('labels', () => {
  const spot = fc.tuple(fc.integer({ min: -750, max: 750 }), fc.integer({ min: -100, max: 1200 })).map(([x, y]) => [x, y] as const);
  const wanted = fc.array(fc.record({ text: fc.string({ minLength: 1, maxLength: 40 }), anchor: spot }), { maxLength: 5 });

  it('cover no player and no other label, and stay in the picture', () => {
    fc.assert(
      fc.property(wanted, fc.array(spot, { maxLength: 10 }), (labels, bodies) => {
        const wants = labels.map(({ text, anchor }, i): Wanted => ({ key: `${i}`, text, kind: 'look', anchor, gap: BODY_CLEAR }));
        const placed = placeLabels(wants, { ...room, bodies });
        for (const [i, a] of placed.entries()) {
          for (const [x, y] of bodies) {
            const dx = Math.max(Math.abs(x - a.x) - a.width / 2, 0);
            const dy = Math.max(Math.abs(y - a.y) - a.height / 2, 0);
            expect(Math.hypot(dx, dy)).toBeGreaterThanOrEqual(BODY_CLEAR);
          }
          for (const b of placed.slice(i + 1)) expect(Math.abs(a.x - b.x) * 2 >= a.width + b.width || Math.abs(a.y - b.y) * 2 >= a.height + b.height).toBe(true);
          expect(a.x - a.width / 2).toBeGreaterThanOrEqual(view.left);
          expect(a.x + a.width / 2).toBeLessThanOrEqual(view.right);
          expect(widthOfText(a.text, a.size)).toBeLessThan(a.width);
        }
      }),
    );
  });

  it('there is room for them in a real play, at every moment', () => {
    for (const run of lighthouse.runs) {
      for (let t = 0; t <= run.end; t += 50) {
        const { labels } = sceneAt(lighthouse, run.id, t);
        if (t > (run.releaseAt ?? Infinity)) expect(labels.some(({ key }) => key === run.look)).toBe(true);
      }
    }
  });

  it('stay where they are while there is room, so that they do not flicker', () => {
    const want: Wanted = { key: 'a', text: 'pull-up', kind: 'look', anchor: [0, 500], gap: BODY_CLEAR };
    const before = placeLabels([want], { ...room, bodies: [[0, 420]] });
    const after = placeLabels([want], room, before);
    expect(after[0]!.place).toBe(before[0]!.place);
    expect(after[0]!.place).not.toBe(placeLabels([want], room)[0]!.place);
  });
});
