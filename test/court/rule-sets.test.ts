import { describe, expect, test } from 'vitest';
import { ruleSet, ruleSets } from '../../language/court/rule-sets.ts';
import { levelIds, youthNotes, youthNotesFor } from '../../language/court/youth.ts';

const hows = ['read', 'second-hand', 'computed', 'from memory', 'common practice, no source'];

/** Everything in a record that carries a value, with the way to it. */
function facts(record: object, way = ''): { way: string; fact: Record<string, unknown> }[] {
  return Object.entries(record).flatMap(([key, inner]) => {
    if (typeof inner !== 'object' || inner === null) return [];
    const here = `${way}/${key}`;
    return 'value' in inner ? [{ way: here, fact: inner as Record<string, unknown> }] : facts(inner, here);
  });
}

describe.each(ruleSets.map((set) => [set.id, set] as const))('the %s record', (_, set) => {
  test('says of every number where it comes from', () => {
    const all = facts(set);
    expect(all.length).toBeGreaterThan(25);
    for (const { way, fact } of all) {
      const source = fact['source'] as { text: string; how: string } | undefined;
      expect(source?.text.length, `${way} has no source`).toBeGreaterThan(5);
      expect(hows, way).toContain(source?.how);
    }
  });

  test('holds no bare number outside a value with a unit', () => {
    const bare = (record: object): string[] => Object.entries(record).flatMap(([key, inner]) => {
      if (typeof inner === 'number') return key === 'value' && 'unit' in record ? [] : [key];
      return typeof inner === 'object' && inner !== null ? bare(inner) : [];
    });
    expect(bare(set)).toEqual([]);
  });

  test('is dated', () => {
    expect(set.edition).toMatch(/20\d\d/);
  });
});

test.each([
  ['fiba', 8, 24, 14], ['nba', 8, 24, 14], ['ncaa-men', 10, 30, 20], ['ncaa-women', 10, 30, 20], ['nfhs', 10, undefined, undefined], ['mini', undefined, undefined, undefined],
] as const)('%s counts %s in the backcourt and %s on the shot clock, %s after an offensive rebound', (id, backcourt, shotClock, reset) => {
  const { counts } = ruleSet(id);
  expect(counts.throwIn.value).toBe(5);
  expect(counts.threeSeconds.value).toBe(3);
  expect(counts.backcourt?.value).toBe(backcourt);
  expect(counts.shotClock?.value).toBe(shotClock);
  expect(counts.shotClockAfterOffensiveRebound?.value).toBe(reset);
});

test('lengths stand in the rule book’s own unit and in metres', () => {
  const { threeRadius } = ruleSet('nba').court;
  expect(threeRadius?.printed).toBe('23 ft 9 in');
  expect(threeRadius?.value).toBeCloseTo(7.239, 3);
  expect(ruleSet('ncaa-men').court.threeCorner?.printed).toBe('21 ft 7 7/8 in');
  expect(ruleSet('ncaa-men').court.threeRadius?.printed).toBe('22 ft 1 3/4 in');
  expect(ruleSet('fiba').court.threeRadius?.printed).toBe('6.75 m');
});

test('every level has its youth notes, grown players none', () => {
  expect(youthNotesFor('u12').map((note) => note.topic)).toContain('three-point value');
  expect(youthNotesFor('u14').some((note) => note.topic === 'zone')).toBe(true);
  expect(youthNotesFor('pro')).toEqual([]);
  for (const note of youthNotes) {
    expect(note.source.text.length).toBeGreaterThan(5);
    for (const level of note.levels) expect(levelIds).toContain(level);
  }
});
