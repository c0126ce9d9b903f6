// Every finding of an action or a look shows the way it is true on, the moment and the spot.
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../language/checks/catalogue.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { asPlay, compileText } from './compiled.ts';

const shown = Object.values(catalogue).filter(({ manual }) => manual.wrong !== undefined);

/** What never happens has no moment. */
const neverHappens = ['pass-to-defender', 'no-holder-for-look', 'defender-attacks', 'pass-to-nobody'];

describe('a finding about something that happens says on which way, when and where', () => {
  test.each(shown.map((entry) => [entry.code, entry] as const))('%s', (code, { manual }) => {
    const { plays, findings } = compileText(asPlay(manual.wrong!), manual.beside);
    for (const finding of findings) {
      const compiled = plays.find(({ key }) => key === finding.block);
      const ways = compiled?.timeline.runs ?? [];
      const run = ways.find(({ id }) => id === finding.run);
      if (finding.run !== undefined) expect(run, 'the way is one of the play').toBeDefined();
      if (finding.moment !== undefined && run !== undefined) {
        expect(finding.moment).toBeGreaterThanOrEqual(0);
        expect(finding.moment).toBeLessThanOrEqual(run.end);
      }
      const happens = finding.part !== undefined && ways.some((way) => way.events.some(({ part, who }) => part === finding.part && who !== undefined && !who.startsWith('X')));
      if (finding.code === code && happens && !neverHappens.includes(code)) expect([finding.run, finding.moment, finding.spot], finding.message).not.toContain(undefined);
    }
  });
});

test('the spot is where the man is at that moment', () => {
  const { plays, findings } = compileText('play "A"\n  from horns\n  4 clears to right short corner\n  5 screens for 3 at left wing\n  3 cuts to right elbow\n  look 3: jumper\n');
  const refused = findings.find(({ code }) => code === 'screen-refused')!;
  const run = plays[0]!.timeline.runs.find(({ id }) => id === refused.run)!;
  expect(refused.spot).toEqual(trackAt(run.tracks['5']!, refused.moment!));
  expect(refused.related).toMatchObject([{ message: { template: 'his way' } }]);
});

test('of two ways it names the one on which it fails', () => {
  const { findings } = compileText('play "A"\n  from 4-out 1-in\n  step "Set"\n    1 dribbles to left slot\n    5 clears to left short corner\n    look 1: jumper\n  step "Drive" after "Set" when X2 denies\n    1 passes to 2\n    2 drives to rim\n    look 2: layup\n  step "Kick" after "Set" otherwise\n    2 passes to 3\n    look 3: three\n');
  expect(findings.map(({ code, run }) => [code, run])).toEqual([['ball-needed', 'kick?3.1']]);
});

const keptInACounter = (kept: string) => `level u16
play "A"
  from 1-4 high
  against man
  step "Enter"
    1 dribbles to right wing
    2 clears to right corner
    4 cuts to right block
    5 cuts to top
    1 passes to 5
  step "Go"
    4 screens down for 2
    2 curls off 4 to nail
    ${kept}
    look 2: jumper
  step "Slip" instead of "Go" when X4 switches to 2
    4 slips to rim
    2 cuts to right corner
    look 4: layup
`;

test('a wait of a line kept in a counter, for what no longer happens there, is left out without a word', () => {
  const { findings } = compileText(keptInACounter('as 2 curls, 3 drifts to left corner'));
  expect(findings.map(({ code }) => code)).not.toContain('wait-unknown');
});

test('what a kept line meets in a counter is told of the counter, not of the way it was written for', () => {
  const { findings } = compileText(keptInACounter('3 cuts to right corner'));
  const taken = findings.filter(({ code }) => code === 'spot-taken');
  expect(taken.map(({ params, run }) => [params['who'], run?.split('?')[0]])).toEqual([['3', 'slip']]);
});
