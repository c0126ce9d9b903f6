import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Compiled } from '../../language/compile.ts';
import { compileText } from '../checks/compiled.ts';
import { sayAction } from '../../language/words/say-action.ts';
import { tellPlay } from '../../language/words/tell-play.ts';
import type { Action } from '../../language/play/play.ts';

const files = ['lighthouse', 'harbour', 'quick', 'last-shot', 'press-and-zone', 'beginners', 'sideline', 'baseline'];

/** What an action says, without where it stands and where its values came from. */
function meaning({ id, step, line, link, origin, waits, ...rest }: Action): unknown {
  return JSON.parse(JSON.stringify(rest, (key, value) => (key === 'origin' || key === 'together' || key === 'formation' || key === 'repeats' || key === 'throwIn' ? undefined : value)));
}

describe.each(files)('the actions of %s', (name) => {
  const { plays } = compileText(readFileSync(`examples/${name}.play`, 'utf8'));

  test('are said in lines that read back to the same action', () => {
    for (const { play } of plays) {
      for (const action of play.steps.flatMap((step) => step.actions)) {
        if (action.kind === 'defend' || action.origin === 'copied') continue;
        const said = sayAction(action);
        const before = action.kind === 'pass' && action.throwIn ? '' : `  ball with ${action.kind === 'pass' || action.kind === 'dribble' || action.kind === 'shot' || action.kind === 'hand-off' ? action.who : 1}\n`;
        // Who closes behind a man closes the gate he went through.
        const cut = action.verb === 'close-behind' ? '    2 cuts between 4 and 5\n' : '';
        const again = compileText(`play "Again"\n${Object.entries(play.spots).map(([own, { x, y }]) => `  spot "${own}" is (${x}, ${y}) m\n`).join('')}${before}  step "One"\n${cut}    ${said}\n`);
        const read = again.plays[0]!.play.steps[0]!.actions.at(cut === '' ? 0 : -1);
        expect(again.findings.filter(({ code, part }) => part === undefined && code !== 'idle-player').map(({ message }) => message), said).toEqual([]);
        expect(read && meaning(read), said).toEqual(meaning(action));
      }
    }
  });
});

test.each(['X4 switches to 1', 'X4 shows on 1', 'X5 helps on 1', 'X5 helps at rim', 'X5 recovers to 5', 'X3 rotates to 5', 'X3 closes out on 3', 'X2 jumps to 1', 'X1 goes under 4', 'X3 denies 3', 'X4 drops to lane'])('a defender’s line is said as it is written: %s', (line) => {
  const [{ play }] = compileText(`play "A"\n${line}\nends with no shot`).plays as [Compiled];
  expect(sayAction(play.steps[0]!.actions[0]!)).toBe(line);
});

test.each(['5 seals X5 at left block', '4 posts up at right block', '3 spots up at left corner', '1 dribbles over half court', '1 dribbles over half court to left wing', '1 dribbles to half court'])('a way’s end is told as it is written: %s', (line) => {
  const [{ play }] = compileText(`play "A"\n${line}\nends with no shot`).plays as [Compiled];
  expect(sayAction(play.steps[0]!.actions[0]!)).toBe(line);
});

test('a play is told in sentences, in the order it is written', async () => {
  const { plays } = compileText(readFileSync('examples/lighthouse.play', 'utf8'));
  const told = tellPlay(plays[0]!.play, plays[0]!.timeline).map(({ text }) => text).join('\n');
  await expect(`${told}\n`).toMatchFileSnapshot('golden/told-lighthouse.txt');
});

test('a stack is told by the spots beside it, never by numbers on the floor', () => {
  const { play, timeline } = compileText('play "Stack"\nfrom stack on right lane line: 2, 3, 4, 5 from the baseline up\n2 cuts to left corner\nlook 2: three').plays[0]!;
  const [first] = tellPlay(play, timeline);
  expect(first!.text).toMatch(/2 at right block/);
  expect(first!.text).not.toMatch(/\(\d/);
});

test('who holds does so until the clock shows that', () => {
  const said = (line: string) => {
    const { play, timeline } = compileText(`play "A"\ncall with 20 on the clock\n${line}\nlook 1: three`).plays[0]!;
    return tellPlay(play, timeline).map(({ text }) => text);
  };
  expect(said('1 holds until 8 on the clock')).toContain('1 holds until 8 on the clock.');
  expect(said('1 keeps his dribble until 8 on the clock')).toContain('1 keeps his dribble until 8 on the clock.');
  expect(said('at 8 on the clock, 1 drives to rim')).toContain('At 8 on the clock, 1 drives to the rim.');
});
