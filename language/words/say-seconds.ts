/** `4 seconds`, `1 second`, `1.5 seconds`: as the notation writes a time, to the tenth. */
export function saySeconds(seconds: number): string {
  const tenths = Math.round(seconds * 10) / 10;
  return `${tenths} ${tenths === 1 ? 'second' : 'seconds'}`;
}

/** `15.8 s`: a time in a message, from milliseconds, to the tenth. */
export function sayMoment(milliseconds: number): string {
  return `${(Math.round(milliseconds / 100) / 10).toFixed(1)} s`;
}
