// How old a team’s players are, where its name says so.
import { levelOfAge } from '../language/court/ages.ts';

/** The level whose times are meant, and the age as the name has it where that is no level itself: U15 is timed as under 16. */
export interface AgeOfTeam {
  readonly level: string;
  readonly insteadOf?: string;
}

/** Of what stands behind a name’s U no other number is an age. */
const youngest = 6;
const oldest = 23;

/** `Heron Bay U14`, `Otters under-15`: the level of the playbook that fits. */
export function ageOfTeam(levels: readonly string[], team: string): AgeOfTeam | undefined {
  const written = /(?<![\p{L}\p{N}])(?:u|under)[ -]?(\d{1,2})(?!\p{N})/iu.exec(team)?.[1];
  const age = Number(written);
  if (written === undefined || age < youngest || age > oldest) return undefined;
  const level = levelOfAge(age);
  if (!levels.includes(level)) return undefined;
  return { level, ...(level !== `u${age}` && { insteadOf: `U${age}` }) };
}

/** That age is offered first, the others behind it in their order. */
export function ofTheTeamFirst(levels: readonly string[], team: string): string[] {
  const level = ageOfTeam(levels, team)?.level;
  return levels.toSorted((a, b) => Number(b === level) - Number(a === level));
}
