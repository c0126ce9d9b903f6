// The age that a new playbook offers first.
import { expect, it } from 'vitest';
import { ageOfTeam, ofTheTeamFirst } from '../../client/age-of-team.ts';

const levels = ['u10', 'u12', 'u14', 'u16', 'hs', 'college', 'pro'];

it.each([
  ['Heron Bay U14', 'u14'],
  ['Otters u-12 girls', 'u12'],
  ['U 16 der Möwen', 'u16'],
  ['Terns under 12', 'u12'],
])('%s: %s', (team, level) => {
  expect(ofTheTeamFirst(levels, team)).toEqual([level, ...levels.filter((one) => one !== level)]);
  expect(ageOfTeam(levels, team)).toEqual({ level });
});

it.each([
  ['Heron Bay U15', 'u16', 'U15'],
  ['Otters U13', 'u14', 'U13'],
  ['Under-11s of Reed Lane', 'u12', 'U11'],
  ['Terns U8', 'u10', 'U8'],
  ['Terns U17', 'hs', 'U17'],
  ['Terns U18', 'hs', 'U18'],
  ['Terns U20', 'college', 'U20'],
])('an age that is no level has the one that fits, and says whose times these are not: %s', (team, level, insteadOf) => {
  expect(ofTheTeamFirst(levels, team)[0]).toBe(level);
  expect(ageOfTeam(levels, team)).toEqual({ level, insteadOf });
});

it.each(['Herons', 'Haus14', 'U99', 'U145', 'U2', 'Menu15', ''])('a name that says no age the playbook knows leaves them in order: “%s”', (team) => {
  expect(ofTheTeamFirst(levels, team)).toEqual(levels);
  expect(ageOfTeam(levels, team)).toBeUndefined();
});
