import { addLines } from './add-lines.ts';
import { choiceToStep } from './choice-to-step.ts';
import type { Here, Offer } from './here.ts';
import { mirroredCopy } from './mirrored-copy.ts';
import { nameAlignment } from './name-alignment.ts';
import { lookToStep, nameStep, splitStep } from './steps.ts';
import { otherUnit } from './units.ts';
import { writeDefence } from './write-defence.ts';

/** Everything that can be done at a place of a play, likeliest first. */
export function offersAt(here: Here): readonly Offer[] {
  const single = [choiceToStep, lookToStep, splitStep, nameStep, nameAlignment, mirroredCopy, writeDefence].map((offer) => offer(here)).filter((offer) => offer !== undefined);
  return [...single, ...addLines(here), ...otherUnit(here)];
}
