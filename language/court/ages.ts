// An age in years as one of the levels there are times for.
import type { LevelId } from './youth.ts';

/** Up to which age the legs of a level are taken; `hs` is 15 to 18. Common practice, no source. */
const ages: readonly (readonly [upTo: number, level: LevelId])[] = [[10, 'u10'], [12, 'u12'], [14, 'u14'], [16, 'u16'], [18, 'hs'], [23, 'college']];

/** The level for `u15` and the like. */
export const levelOfAge = (age: number): LevelId => ages.find(([upTo]) => age <= upTo)?.[1] ?? 'pro';
