import type { PartId, StepKey } from '../play/play.ts';

/** `zip/3.1#to` → `zip/3.1`: the action, look or header that a value belongs to. A second step of one name, `zip#2`, is its own. */
export function ownerOf(part: PartId): PartId {
  return part.replace(/#[a-z][\w-]*$/i, '');
}

/** `zip#2/3.1#to` → `zip#2`: the step a part stands in. */
export function stepOf(part: PartId): StepKey {
  return ownerOf(part).split(/[/?:]/, 1)[0]!;
}
