import { readFileSync } from 'node:fs';

/** The play most tests speak of, as it stands among the examples. */
export const lighthouse = readFileSync('examples/lighthouse.play', 'utf8');
