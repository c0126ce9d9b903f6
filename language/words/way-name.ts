import type { Play } from '../play/play.ts';

/** A run-through by what it ends in: `“pull-up” for 3`, `the look for 4 in Slip`, `the end of Zip`. */
export function wayName(play: Play, run: string): string {
  for (const step of play.steps) {
    const look = step.looks.find(({ id }) => id === run);
    if (look === undefined) continue;
    const who = look.who.join(' or ');
    return look.label === undefined ? `the look for ${who} in ${step.name}` : `“${look.label}” for ${who}`;
  }
  const last = play.steps.find(({ key }) => key === run);
  return `the end of ${last?.name ?? run}`;
}
