/**
 * One leg: a distance run from an entry speed to an exit speed. Speed grows towards the top speed as
 * v(t) = vmax - (vmax - v0) e^(-t/tau) and falls at a constant rate before the end. The exponential is the sprint model of
 * Furusawa, Hill and Parkinson 1927 in the form of Samozino 2016 (seen as cited by an open sprint package); a constant braking rate
 * is common practice, no source.
 */

export interface Leg {
  /** Metres along the way. */
  readonly distance: number;
  /** Speed at the start and wanted at the end, m/s. */
  readonly v0: number;
  readonly v1: number;
  /** Top speed of this leg, m/s, and the time constant of getting there, s. */
  readonly vmax: number;
  readonly tau: number;
  /** Rate of braking, m/s², a positive number. */
  readonly brake: number;
}

/** A leg solved: plain data, closed in t. */
export interface Profile {
  readonly distance: number;
  readonly v0: number;
  /**
   * Speed at the end. Below the one asked for where the leg is too short to reach it, above it where it is too short to
   * brake to it.
   */
  readonly v1: number;
  readonly vmax: number;
  readonly tau: number;
  readonly brake: number;
  /** Seconds and metres of speeding up before the braking begins. */
  readonly rampSeconds: number;
  readonly rampDistance: number;
  /** Speed where the braking begins, m/s. */
  readonly peak: number;
  /** The exact duration in seconds; the committed one is `durationMs`. */
  readonly seconds: number;
  /** Whole milliseconds, rounded up, so that nobody runs faster than he can. */
  readonly durationMs: number;
}

const slowest = 0.05;
const shortestTau = 0.05;
const weakestBrake = 0.1;
// Nothing on a court is longer or faster; keeps absurd input from turning into no number at all.
const largest = 1000;

/**
 * Solves a leg. An entry speed above `vmax` counts as `vmax`. Never throws: what is not a finite number counts as nothing,
 * nothing counts for more than 1000, and top speed, time constant and braking have floors (0.05 m/s, 0.05 s, 0.1 m/s²).
 */
export function legProfile(leg: Leg): Profile {
  const vmax = Math.max(slowest, finite(leg.vmax));
  const tau = Math.max(shortestTau, finite(leg.tau));
  const brake = Math.max(weakestBrake, finite(leg.brake));
  const v0 = Math.min(vmax, Math.max(0, finite(leg.v0)));
  const wanted = Math.min(vmax, Math.max(0, finite(leg.v1)));
  const distance = Math.max(0, finite(leg.distance));
  if (distance === 0) return { distance, v0, v1: v0, vmax, tau, brake, rampSeconds: 0, rampDistance: 0, peak: v0, seconds: 0, durationMs: 0 };

  const tooFastToBrake = v0 > wanted && (v0 * v0 - wanted * wanted) / (2 * brake) >= distance;
  if (tooFastToBrake) {
    const v1 = Math.sqrt(Math.max(0, v0 * v0 - 2 * brake * distance));
    return finish({ distance, v0, v1, vmax, tau, brake, rampSeconds: 0, rampDistance: 0, peak: v0 });
  }

  const flatOut = solveRamp(distance, v0, vmax, tau, undefined, 0);
  const fastest = speedOnRamp(flatOut, v0, vmax, tau);
  if (fastest <= wanted) {
    return finish({ distance, v0, v1: fastest, vmax, tau, brake, rampSeconds: flatOut, rampDistance: distance, peak: fastest });
  }

  const rampSeconds = solveRamp(distance, v0, vmax, tau, brake, wanted);
  const rampDistance = Math.min(distance, distanceOnRamp(rampSeconds, v0, vmax, tau));
  // What is left of the way decides the speed the braking begins at, so that the end is met exactly.
  const peak = Math.max(wanted, Math.sqrt(wanted * wanted + 2 * brake * (distance - rampDistance)));
  return finish({ distance, v0, v1: wanted, vmax, tau, brake, rampSeconds, rampDistance, peak });
}

function finite(value: number): number {
  return Number.isFinite(value) ? Math.min(value, largest) : 0;
}

function finish({ distance, v0, v1, vmax, tau, brake, rampSeconds, rampDistance, peak }: Omit<Profile, 'seconds' | 'durationMs'>): Profile {
  const seconds = rampSeconds + (peak - v1) / brake * Number(rampDistance < distance);
  return { distance, v0, v1, vmax, tau, brake, rampSeconds, rampDistance, peak, seconds, durationMs: Math.max(1, Math.ceil(seconds * 1000 - 1e-6)) };
}

function speedOnRamp(t: number, v0: number, vmax: number, tau: number): number {
  return vmax - (vmax - v0) * Math.exp(-t / tau);
}

function distanceOnRamp(t: number, v0: number, vmax: number, tau: number): number {
  return vmax * t - (vmax - v0) * tau * (1 - Math.exp(-t / tau));
}

/**
 * How long to speed up so that the way covered, and the way it then takes to brake to `exit`, make up the distance. Without a brake
 * the whole distance is run up. The sum only grows with t, so Newton's step inside a shrinking bracket always ends.
 */
function solveRamp(distance: number, v0: number, vmax: number, tau: number, brake: number | undefined, exit: number): number {
  let low = 0;
  let high = distance / vmax + tau * (1 - v0 / vmax);
  let t = brake === undefined ? high : high / 2;
  for (let round = 0; round < 50; round++) {
    const decay = Math.exp(-t / tau);
    const v = vmax - (vmax - v0) * decay;
    const covered = vmax * t - (vmax - v0) * tau * (1 - decay);
    const stopping = brake === undefined ? 0 : (v * v - exit * exit) / (2 * brake);
    const error = covered + stopping - distance;
    if (Math.abs(error) < 1e-10) return t;
    if (error > 0) high = t;
    else low = t;
    const slope = brake === undefined ? v : v * (1 + ((vmax - v0) * decay) / (tau * brake));
    const next = slope > 0 ? t - error / slope : Number.NaN;
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}

/** Metres covered at this many seconds after the start: 0 before it, exactly the whole way at the end and after it. */
export function distanceAt(profile: Profile, seconds: number): number {
  if (!(seconds > 0)) return 0;
  if (seconds >= profile.durationMs / 1000) return profile.distance;
  const t = seconds * pace(profile);
  if (t <= profile.rampSeconds) return Math.min(profile.rampDistance, distanceOnRamp(t, profile.v0, profile.vmax, profile.tau));
  const braking = t - profile.rampSeconds;
  return Math.min(profile.distance, profile.rampDistance + profile.peak * braking - (profile.brake * braking * braking) / 2);
}

/** Speed in m/s at this many seconds after the start; the exit speed at the end and after it. */
export function speedAt(profile: Profile, seconds: number): number {
  if (!(seconds > 0)) return profile.v0;
  if (seconds >= profile.durationMs / 1000) return profile.v1;
  const scale = pace(profile);
  const t = seconds * scale;
  if (t <= profile.rampSeconds) return scale * speedOnRamp(t, profile.v0, profile.vmax, profile.tau);
  return scale * Math.max(profile.v1, profile.peak - profile.brake * (t - profile.rampSeconds));
}

/** The committed duration is up to a millisecond longer than the exact one; the leg is stretched to fill it. */
function pace(profile: Profile): number {
  return (profile.seconds * 1000) / profile.durationMs;
}

/** Seconds into the leg at which this many metres are covered, the other way round of `distanceAt`. */
export function secondsAt(profile: Profile, metres: number): number {
  if (!(metres > 0)) return 0;
  if (metres >= profile.distance) return profile.durationMs / 1000;
  if (metres <= profile.rampDistance) {
    return solveRamp(metres, profile.v0, profile.vmax, profile.tau, undefined, 0) / pace(profile);
  }
  const rest = metres - profile.rampDistance;
  const v = Math.sqrt(Math.max(0, profile.peak * profile.peak - 2 * profile.brake * rest));
  return (profile.rampSeconds + (profile.peak - v) / profile.brake) / pace(profile);
}

/**
 * Speed kept through a turn of this many radians (0 straight on, pi back the way he came): v cos(angle/2)^1.5.
 * The power is chosen so that the time a turn costs, braking and speeding up again included, falls into the ranges
 * recalled from change-of-direction studies: under 0.1 s at 45 degrees, 0.1-0.25 s at 90, 0.5-0.7 s at 180 by the definition "505 time minus 10 m
 * time" (definition Nimphius 2016, seen; the sizes from memory).
 */
export function turnSpeed(v: number, angle: number): number {
  const turn = Math.min(Math.PI, Math.abs(finite(angle)));
  return Math.max(0, v) * Math.cos(turn / 2) ** 1.5;
}
