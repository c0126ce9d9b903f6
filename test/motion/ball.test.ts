import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ballFacts, ballHeight, passFlight, passSeconds, shotFlight, throwAt } from '../../language/motion/ball.ts';
import { LEVELS, levelIds } from '../../language/motion/levels.ts';

const fifty = (50 * Math.PI) / 180;
const passKinds = ['pass', 'bounce', 'lob', 'skip', 'overhead', 'baseball', 'tip'] as const;
const shotKinds = ['layup', 'dunk', 'jumper', 'three', 'hook', 'tip-in', 'shot'] as const;

// Own arithmetic, g 9.81 m/s²: release 2.3 m, ring 3.05 m, 50 degrees, without drag and [with drag, Cd 0.47]; tolerance 0.02.
describe.each([
  [3, 6.15, 0.759, 0.768], [5, 7.55, 1.031, 1.051], [6.02, 8.18, 1.144, 1.172], [6.75, 8.61, 1.219, 1.253], [7.24, 8.89, 1.267, 1.305],
])('a shot from %s m', (distance, speed, still, dragged) => {
  test(`leaves at ${speed} m/s and flies ${still} s without air`, () => {
    const thrown = throwAt(distance, 0.75, fifty);
    expect(Math.abs(thrown.speed - speed)).toBeLessThan(0.02);
    expect(Math.abs(thrown.seconds - still)).toBeLessThan(0.002);
  });

  test(`flies ${dragged} s with it`, () => {
    expect(Math.abs(shotFlight('jumper', distance, 2.3).durationMs / 1000 - dragged)).toBeLessThan(0.005);
  });
});

test('a layup is in the air about half as long as a jump shot', () => {
  for (const id of levelIds) {
    const height = LEVELS[id].releaseHeight;
    const ratio = shotFlight('layup', 0.8, height).durationMs / shotFlight('jumper', 4.6, height).durationMs;
    expect(ratio, id).toBeGreaterThan(0.35);
    expect(ratio, id).toBeLessThan(0.65);
  }
});

test('a dunk is through at once', () => {
  expect(shotFlight('dunk', 0.5, 2.45).durationMs).toBe(100);
});

// Own arithmetic, tolerance 0.01 s.
test.each([[7.5, 0.8], [9, 0.67], [11, 0.55], [14, 0.43]])('a 6 m pass at %s m/s takes %s s', (speed, expected) => {
  expect(Math.abs(passSeconds(6, speed) - expected)).toBeLessThan(0.01);
});

test('a 4.5 m pass at 9 m/s takes half a second, a 9 m skip at 11 m/s 0.82 s', () => {
  expect(passSeconds(4.5, 9)).toBeCloseTo(0.5, 9);
  expect(passSeconds(9, 11)).toBeCloseTo(0.82, 2);
});

test('a bounce pass meets the floor two thirds of the way and takes longer than a chest pass', () => {
  for (const id of levelIds) {
    const bounce = passFlight('bounce', 4, LEVELS[id]);
    expect(bounce.durationMs).toBeGreaterThan(passFlight('pass', 4, LEVELS[id]).durationMs);
    expect(bounce.bounceAt).toBeCloseTo(2 / 3, 9);
    expect(ballHeight(bounce, (bounce.durationMs / 1000) * (2 / 3))).toBeCloseTo(0.12, 3);
  }
});

test('a lob goes over a raised hand, a chest pass does not', () => {
  const top = (kind: 'lob' | 'pass'): number => {
    const flight = passFlight(kind, 6, LEVELS.hs);
    return Math.max(...Array.from({ length: 50 }, (_, i) => ballHeight(flight, (i / 50) * (flight.durationMs / 1000))));
  };
  expect(top('lob')).toBeGreaterThan(2.7);
  expect(top('pass')).toBeLessThan(2.2);
});

describe('laws of the ball', () => {
  const ways = fc.double({ min: 0, max: 25, noNaN: true });
  const levels = fc.constantFrom(...levelIds);

  test('every flight lasts a whole, positive number of milliseconds, and a longer pass no less', () => {
    fc.assert(fc.property(fc.constantFrom(...passKinds), ways, ways, levels, (kind, one, other, id) => {
      const short = passFlight(kind, Math.min(one, other), LEVELS[id]);
      const long = passFlight(kind, Math.max(one, other), LEVELS[id]);
      expect(Number.isInteger(short.durationMs)).toBe(true);
      expect(short.durationMs).toBeGreaterThan(0);
      expect(long.durationMs).toBeGreaterThanOrEqual(short.durationMs);
    }));
  });

  test('a shot from anywhere has a flight between a tap and a heave, whatever the hand’s height', () => {
    fc.assert(fc.property(fc.constantFrom(...shotKinds), ways, levels, fc.constantFrom(2.6, 3.05), (kind, way, id, ring) => {
      const flight = shotFlight(kind, way, LEVELS[id].releaseHeight, ring);
      expect(flight.durationMs).toBeGreaterThanOrEqual(50);
      expect(flight.durationMs).toBeLessThan(3000);
      if (kind !== 'dunk') expect(flight.angle).toBeGreaterThan(Math.atan2(ring - flight.fromHeight, Math.max(way, 0.3)));
    }));
  });

  test('the ball starts in the hand, ends where it is caught and never goes under the floor', () => {
    fc.assert(fc.property(fc.constantFrom(...passKinds), ways, levels, fc.double({ min: 0, max: 1, noNaN: true }), (kind, way, id, share) => {
      const flight = passFlight(kind, way, LEVELS[id]);
      expect(ballHeight(flight, 0)).toBe(flight.fromHeight);
      expect(ballHeight(flight, flight.durationMs / 1000)).toBe(flight.toHeight);
      expect(ballHeight(flight, share * (flight.durationMs / 1000))).toBeGreaterThanOrEqual(0.12);
    }));
  });

  test('numbers that are none give a flight all the same', () => {
    expect(passFlight('pass', Number.NaN, LEVELS.u14).durationMs).toBe(50);
    expect(shotFlight('jumper', Number.NaN, 2).durationMs).toBeGreaterThan(0);
  });
});

test('every number of the ball’s flight says where it comes from', () => {
  for (const [name, fact] of Object.entries(ballFacts)) expect(fact.source.text.length, name).toBeGreaterThan(5);
});
