// What the notation calls sayable means something: each line of it in a play, each spot and alignment on each of the six courts.
import { describe, expect, it } from 'vitest';
import { alignment, alignmentNames, alignmentPoints } from '../../language/court/alignments.ts';
import { courtOf } from '../../language/court/court.ts';
import { distance } from '../../language/court/point.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import { allSpots, isThrowInPlace } from '../../language/court/spots.ts';
import { compileText } from '../checks/compiled.ts';
import { notationLines } from '../grammar/notation-lines.ts';
import { readLines } from './reading.ts';
import { readingOf, timelineOf } from '../support/timeline-of.ts';

/** Said by the notation, read, and not acted out: each is told to the coach. */
const notActedOut = /behind the board|inbound|throws? (it |the ball )?in|takes (it|the ball) out|passes it in/;

describe('a line of the notation does something', () => {
  const statements = [...new Set(notationLines.filter(([, kind]) => kind === 'Statement').map(([line]) => line.trim()))];
  it.each(statements)('%s', (line) => {
    const { play, problems } = readLines('spot "pocket" is 3 ft inside right elbow', 'from horns', 'step "Before"', '1 dribbles to left wing', '4 and 5 screen for 2', '2 cuts to top', 'step "One"', line);
    const { actions } = play.steps.find(({ name }) => name === 'One')!;
    const isRole = / is the (safety|thrower)/.test(line) || /inbounds from/.test(line);
    if (!isRole) expect(actions.length, line).toBeGreaterThan(0);
    if (!notActedOut.test(line)) expect(problems.filter(({ code }) => code === 'not-yet'), line).toEqual([]);
  });

  const looks = [...new Set(notationLines.filter(([, kind]) => kind === 'Look').map(([line]) => line.trim()))];
  it.each(looks)('%s: somebody shoots', (line) => {
    const { play } = readLines('from horns', 'step "One"', '1 passes to 2', line);
    const [look] = play.steps[0]!.looks;
    expect(look!.tail.filter(({ kind }) => kind === 'shot').length, line).toBeGreaterThan(0);
  });
});

describe.each(ruleSets.map(({ id }) => id))('on the court of %s', (id) => {
  const rules = ruleSets.find((each) => each.id === id)!;
  const court = courtOf(rules);

  it('a man sent to a spot ends there', () => {
    for (const spot of allSpots(court)) {
      if (isThrowInPlace(spot.name)) continue;
      const { runs } = timelineOf(`play "A"\n  rules ${id}\n  from 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left corner, ball with 2\n  already set\n  everyone else holds\n  1 cuts to ${spot.label}\n`);
      const track = runs[0]!.tracks['1']!;
      const end = track.segments.at(-1)?.path.at(-1) ?? track.start;
      // Where another man stands he stops beside him.
      const taken = ['right wing', 'left wing', 'right corner', 'left corner', 'right free-throw line extended', 'left free-throw line extended'].includes(spot.label);
      if (!taken) expect(distance(end, spot.point), `${spot.label}: ${end.x}, ${end.y}`).toBeLessThan(0.35);
    }
  });

  it('an alignment puts everybody where it says', () => {
    for (const name of alignmentNames) {
      const { play } = readingOf(`play "A"\n  rules ${id}\n  from ${name}\n  1 passes to 2\n`);
      expect(play.start.alignment.value, name).toBe(alignment(name)!.name);
      const { runs } = timelineOf(`play "A"\n  rules ${id}\n  from ${name}\n  already set\n  1 passes to 2\n`);
      for (const [player, point] of alignmentPoints(court, name)!) expect(distance(runs[0]!.tracks[`${player}`]!.start, point), `${name}: ${player}`).toBeLessThan(0.01);
    }
  });

  it('a three from the corner counts three, where the floor has a line', () => {
    const { findings } = compileText(`level hs\nrules ${id}\nplay "A"\n  from 5-out\n  1 passes to 4\n  look 4: three\n`);
    const told = findings.map(({ code }) => code).filter((code) => /three-inside-line|no-three-line/.test(code));
    if (id === 'mini') expect(told.length).toBeGreaterThan(0);
    else expect(told).toEqual([]);
  });
});
