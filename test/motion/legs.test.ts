import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Leg, Profile } from '../../language/motion/legs.ts';
import { distanceAt, legProfile, secondsAt, speedAt, turnSpeed } from '../../language/motion/legs.ts';
import { LEVELS, levelIds } from '../../language/motion/levels.ts';

const flatOut = { v0: 0, v1: 99, brake: 4 };
const seconds = (distance: number, vmax: number, tau: number): number => legProfile({ distance, vmax, tau, ...flatOut }).seconds;

describe('a sprint without a stop', () => {
  // Own arithmetic from the model, tolerance 0.002 s.
  test.each([
    [8, 1, 5, 1.371], [8, 1, 10, 2.131], [8, 1, 20, 3.469], [8, 1, 28, 4.489], [6.6, 0.9, 5, 1.485], [6.6, 0.9, 10, 2.349], [6.6, 0.9, 20, 3.919],
  ])('top speed %s m/s, %s s to build it, %s m: %s s', (vmax, tau, distance, expected) => {
    expect(Math.abs(seconds(distance, vmax, tau) - expected)).toBeLessThan(0.002);
  });

  // Draft combine, three quarters of the court, 75 ft: mean 3.275 s, n 1460 (open dataset). Without a start offset the time constant has to shrink.
  test.each([[8, 0.42], [8.5, 0.59], [9, 0.74], [9.5, 0.89]])('top speed %s m/s and %s s run the combine’s 22.86 m in its 3.275 s', (vmax, tau) => {
    expect(Math.abs(seconds(22.86, vmax, tau) - 3.275)).toBeLessThan(0.02);
  });

  test('with the 0.3 s before the combine’s clock starts, 8.6 m/s and 0.95 s give 3.586 s', () => {
    expect(Math.abs(seconds(22.86, 8.6, 0.95) - 3.586)).toBeLessThan(0.002);
  });

  test('the professional level runs the combine’s sprint within one standard deviation, the start offset taken off', () => {
    const { vmax, tau } = LEVELS.pro;
    expect(Math.abs(seconds(22.86, vmax, tau) - 0.3 - 3.275)).toBeLessThan(0.135);
  });
});

// Own arithmetic: v²/2a and v/a at 4 m/s².
test.each([[4, 2, 1], [5, 3.125, 1.25], [6, 4.5, 1.5], [7, 6.125, 1.75]])('from %s m/s a stop takes %s m and %s s', (v0, distance, time) => {
  const stop = legProfile({ distance, v0, v1: 0, vmax: 8, tau: 1, brake: 4 });
  expect(stop.seconds).toBeCloseTo(time, 6);
  expect(stop.v1).toBeCloseTo(0, 6);
});

/** Thousandths between two bounds, evenly spread. */
const between = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: least * 1000, max: most * 1000 }).map((thousandths) => thousandths / 1000);
const legs: fc.Arbitrary<Leg> = fc.record({
  distance: between(0.001, 30), v0: between(0, 9), v1: between(0, 9), vmax: between(1, 9), tau: between(0.3, 1.5), brake: between(1, 8),
});
const shares = between(0, 1);
const span = (profile: Profile): number => profile.durationMs / 1000;

describe('laws of a leg', () => {
  test('it starts at nothing and ends exactly at its distance, after a whole number of milliseconds', () => {
    fc.assert(fc.property(legs, (leg) => {
      const profile = legProfile(leg);
      expect(Number.isInteger(profile.durationMs)).toBe(true);
      expect(distanceAt(profile, 0)).toBe(0);
      expect(distanceAt(profile, span(profile))).toBe(leg.distance);
      expect(distanceAt(profile, span(profile) + 5)).toBe(leg.distance);
      expect(Math.abs(distanceAt(profile, span(profile) - 1e-9) - leg.distance)).toBeLessThan(1e-6);
    }), { numRuns: 500 });
  });

  test('he never goes back and never faster than he can', () => {
    fc.assert(fc.property(legs, shares, shares, (leg, one, other) => {
      const profile = legProfile(leg);
      const [early, late] = [Math.min(one, other) * span(profile), Math.max(one, other) * span(profile)];
      const covered = distanceAt(profile, late) - distanceAt(profile, early);
      expect(covered).toBeGreaterThanOrEqual(0);
      expect(covered).toBeLessThanOrEqual(leg.vmax * (late - early) + 1e-9);
      expect(speedAt(profile, early)).toBeLessThanOrEqual(leg.vmax + 1e-9);
    }), { numRuns: 500 });
  });

  test('speed is what the distance grows by', () => {
    fc.assert(fc.property(legs, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (leg, share) => {
      const profile = legProfile(leg);
      const h = 1e-5;
      const t = share * span(profile);
      fc.pre(span(profile) > 0.01);
      const slope = (distanceAt(profile, t + h) - distanceAt(profile, t - h)) / (2 * h);
      expect(Math.abs(slope - speedAt(profile, t))).toBeLessThan(1e-2);
    }), { numRuns: 500 });
  });

  test('he speeds up and brakes no harder than his legs allow', () => {
    fc.assert(fc.property(legs, shares, (leg, share) => {
      const profile = legProfile(leg);
      // Just after the start: at the start itself the speed is the one asked for, not the one stretched to whole milliseconds.
      const t = Math.max(1e-6, share * span(profile));
      const change = speedAt(profile, Math.min(span(profile) - 1e-7, t + 1e-3)) - speedAt(profile, t);
      fc.pre(t < span(profile) - 2e-3);
      expect(change).toBeLessThanOrEqual((leg.vmax / leg.tau) * 1e-3 + 1e-6);
      expect(change).toBeGreaterThanOrEqual(-leg.brake * 1e-3 - 1e-6);
    }), { numRuns: 500 });
  });

  test('he ends at the speed asked for, or as near to it as the distance lets him', () => {
    fc.assert(fc.property(legs, (leg) => {
      const profile = legProfile(leg);
      const asked = Math.min(leg.v1, leg.vmax);
      const entry = Math.min(leg.v0, leg.vmax);
      if (profile.v1 > asked) expect(entry * entry - 2 * leg.brake * leg.distance).toBeGreaterThanOrEqual(asked * asked - 1e-9);
      if (profile.v1 < asked) expect(profile.rampDistance).toBe(leg.distance);
      expect(Math.abs(speedAt(profile, span(profile)) - profile.v1)).toBe(0);
    }), { numRuns: 500 });
  });

  test('longer takes longer, and so does stopping at the end', () => {
    fc.assert(fc.property(legs, fc.double({ min: 0.01, max: 5, noNaN: true }), (leg, more) => {
      const profile = legProfile(leg);
      const longer = legProfile({ ...leg, distance: leg.distance + more });
      const fromRest = legProfile({ ...leg, v0: 0 });
      expect(longer.seconds).toBeGreaterThan(profile.seconds - 1e-9);
      expect(fromRest.seconds).toBeGreaterThanOrEqual(profile.seconds - 1e-9);
      expect(legProfile({ ...leg, v1: 0 }).seconds).toBeGreaterThanOrEqual(profile.seconds - 1e-9);
    }), { numRuns: 300 });
  });

  test('a way run in two pieces, the speed kept between them, takes as long as in one', () => {
    fc.assert(fc.property(legs, shares, (leg, share) => {
      const whole = legProfile(leg);
      const cut = share * leg.distance;
      fc.pre(cut > 0.01 && leg.distance - cut > 0.01);
      const passing = speedAt({ ...whole, durationMs: whole.seconds * 1000 }, secondsAt({ ...whole, durationMs: whole.seconds * 1000 }, cut));
      const first = legProfile({ ...leg, distance: cut, v1: passing });
      const second = legProfile({ ...leg, distance: leg.distance - cut, v0: first.v1 });
      expect(Math.abs(first.seconds + second.seconds - whole.seconds)).toBeLessThan(1e-3);
    }), { numRuns: 300 });
  });

  test('asking when he is somewhere and where he is then gives the same place', () => {
    fc.assert(fc.property(legs, shares, (leg, share) => {
      const profile = legProfile(leg);
      const metres = share * leg.distance;
      expect(Math.abs(distanceAt(profile, secondsAt(profile, metres)) - metres)).toBeLessThan(1e-5);
    }), { numRuns: 500 });
  });

  test('looking into the middle of a leg gives the same as playing up to it', () => {
    fc.assert(fc.property(legs, fc.integer({ min: 0, max: 60 }), (leg, frame) => {
      const profile = legProfile(leg);
      const played: number[] = [];
      for (let f = 0; f <= frame; f++) played.push(distanceAt(profile, f / 60));
      expect(distanceAt(JSON.parse(JSON.stringify(profile)) as Profile, frame / 60)).toBe(played[frame]);
    }), { numRuns: 100 });
  });

  test('numbers that are none do not throw and do not spread', () => {
    const wild = fc.oneof(fc.double(), fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1, 0));
    fc.assert(fc.property(fc.record({ distance: wild, v0: wild, v1: wild, vmax: wild, tau: wild, brake: wild }), wild, (leg, t) => {
      const profile = legProfile(leg);
      expect(Number.isNaN(profile.seconds)).toBe(false);
      expect(Number.isNaN(distanceAt(profile, t))).toBe(false);
    }), { numRuns: 500 });
  });
});

test('no way takes no time', () => {
  expect(legProfile({ distance: 0, v0: 2, v1: 0, vmax: 7, tau: 1, brake: 4 })).toMatchObject({ durationMs: 0, v1: 2 });
});

describe('a turn', () => {
  const degrees = (angle: number): number => (angle * Math.PI) / 180;

  /** Seconds lost against running on at the same speed: braking to the speed kept, and getting it back. */
  function cost(v: number, angle: number, vmax: number, tau: number, brake: number): number {
    const kept = turnSpeed(v, degrees(angle));
    const braking = legProfile({ distance: (v * v - kept * kept) / (2 * brake), v0: v, v1: kept, vmax, tau, brake });
    const regain = -tau * Math.log((vmax - v) / (vmax - kept));
    const way = vmax * regain - (vmax - kept) * tau * (1 - Math.exp(-regain / tau));
    return braking.seconds - braking.distance / v + regain - way / v;
  }

  // Sizes from memory: under 0.1 s at 45 degrees, 0.1-0.25 s at 90.
  test.each([[45, 0, 0.1], [90, 0.1, 0.25]])('of %s degrees costs between %s and %s s at a cut’s speed', (angle, least, most) => {
    const lost = cost(4.5, angle, 8, 1, 4);
    expect(lost).toBeGreaterThan(least);
    expect(lost).toBeLessThan(most);
  });

  test('back the way he came costs 0.5 to 0.7 s by the 505 test: ten metres with the turn, less ten metres straight', () => {
    // Definition Nimphius 2016 (seen), size from memory; a trained man, vmax 8, tau 1, brake 5, a 10 m run-up.
    const runUp = legProfile({ distance: 15, v0: 0, v1: 0, vmax: 8, tau: 1, brake: 5 });
    const timed = runUp.seconds - secondsAt(runUp, 10) + seconds(5, 8, 1);
    const deficit = timed - seconds(10, 8, 1);
    expect(deficit).toBeGreaterThan(0.5);
    expect(deficit).toBeLessThan(0.7);
    expect(turnSpeed(6, Math.PI)).toBeCloseTo(0, 6);
  });

  test('straight on costs nothing, and a sharper turn never less', () => {
    expect(turnSpeed(5, 0)).toBe(5);
    fc.assert(fc.property(fc.double({ min: 0, max: Math.PI, noNaN: true }), fc.double({ min: 0, max: Math.PI, noNaN: true }), (a, b) => {
      expect(turnSpeed(5, Math.max(a, b))).toBeLessThanOrEqual(turnSpeed(5, Math.min(a, b)));
      expect(turnSpeed(5, -a)).toBe(turnSpeed(5, a));
    }));
  });
});

test('an older level is never slower over ten metres, from the youngest up', () => {
  const times = levelIds.map((id) => seconds(10, LEVELS[id].vmax, LEVELS[id].tau));
  expect(times).toEqual([...times].sort((a, b) => b - a));
});
