// The age that a new playbook offers first.
import { expect, it } from 'vitest';
import { ofTheTeamFirst } from '../../client/age-of-team.ts';

const levels = ['u10', 'u12', 'u14', 'u16', 'hs', 'college', 'pro'];

it.each([
  ['Heron Bay U14', 'u14'],
  ['Otters u-12 girls', 'u12'],
  ['U 16 der Möwen', 'u16'],
])('%s: %s', (team, first) => expect(ofTheTeamFirst(levels, team)).toEqual([first, ...levels.filter((level) => level !== first)]));

it.each(['Herons', 'Haus14', 'U99', 'U145', ''])('a name that says no age the playbook knows leaves them in order: “%s”', (team) => expect(ofTheTeamFirst(levels, team)).toEqual(levels));
