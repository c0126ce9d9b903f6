// How a time is printed, everywhere: to the tenth, and never to the coach's harm. A moment is rounded up, so that nothing looks earlier
// than it is; what is left on the clock is rounded down, so that it never looks more than it is.

/** Seconds of a moment or a stretch, rounded up to the tenth. */
export function latest(milliseconds: number): number {
  return Math.ceil(milliseconds / 100 - 1e-9) / 10 + 0;
}

/** Seconds left, rounded down to the tenth. */
export function least(milliseconds: number): number {
  return Math.floor(milliseconds / 100 + 1e-9) / 10 + 0;
}

/** `15.8` of 15,712 ms: a moment's figure without its unit. */
export function sayTenths(milliseconds: number): string {
  return latest(milliseconds).toFixed(1);
}

/** `15.8 s`: a moment or a stretch of time in a message. */
export function sayMoment(milliseconds: number): string {
  return `${sayTenths(milliseconds)} s`;
}

/** `4 seconds`, `1 second`, `1.5 seconds`: as the notation writes a time, to the nearest tenth. */
export function saySeconds(seconds: number): string {
  const tenths = Math.round(seconds * 10) / 10;
  return `${tenths} ${tenths === 1 ? 'second' : 'seconds'}`;
}
