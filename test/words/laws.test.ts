import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { Action, Wait } from '../../language/play/play.ts';
import { sayAction } from '../../language/words/say-action.ts';
import { tellPlay } from '../../language/words/tell-play.ts';
import { sayWait } from '../../language/words/say-wait.ts';
import { compileText } from '../checks/compiled.ts';
import { drawSentence } from '../grammar/sentences.ts';

const seeds = Array.from({ length: 500 }, (_, index) => index * 7919 + 11);
const spots = ['  spot "Zip" is (1, 2) m', '  spot "Big Middle" is (2, 5) m', '  spot "Überzahl 🏀" is (-3, 4) m', '  spot "with # inside" is (-1, 4) m', '  spot "curly" is (0, 4) m'];

function playWith(ball: string, ...lines: readonly string[]): string {
  return ['play "Drawn"', ...spots, `  from 5-out, ball with ${ball}`, '  step "One"', ...lines.map((line) => `    ${line}`), ''].join('\n');
}

/** What is said, without where it stands and where its values came from. */
function meaning(said: Action | Wait | undefined): unknown {
  const left = new Set(['id', 'step', 'line', 'link', 'origin', 'waits', 'together', 'formation', 'repeats', 'throwIn', 'part']);
  // `tips in a three` is a three; the kind of shot is what counts.
  const dropsVerb = said?.kind === 'shot';
  return said && JSON.parse(JSON.stringify(said, (key, value: unknown) => (left.has(key) || (dropsVerb && key === 'verb') ? undefined : value)));
}

const withBall = new Set(['pass', 'dribble', 'shot', 'hand-off']);

describe('a line drawn from the grammar', () => {
  const drawn = seeds.map((seed) => {
    const line = drawSentence(seed, { kind: 'Statement', longest: 90 });
    return { line, compiled: compileText(playWith('1', line, 'look 1: jumper')) };
  });
  const actions = drawn.flatMap(({ line, compiled }) => (compiled.plays[0]?.play.steps[0]?.actions ?? []).map((action) => ({ line, action })));

  it('is compiled, and the play told, whatever it says', () => {
    expect(drawn.every(({ compiled }) => compiled.plays.length === 1)).toBe(true);
    for (const { compiled } of drawn) for (const { text } of tellPlay(compiled.plays[0]!.play, compiled.plays[0]!.timeline)) expect(text.length).toBeGreaterThan(2);
    expect(actions.length).toBeGreaterThan(300);
  });

  it('has actions whose words read back to the same action', () => {
    const lost: string[] = [];
    for (const { line, action } of actions) {
      // A defender's line is told as it is written; `then to the wing` of a man who seals goes on with the verb before.
      if (action.kind === 'defend' || action.origin !== 'written' || (action.kind === 'move' && action.style === 'seal' && (action.via.length > 0 || action.to?.value.kind === 'player'))) continue;
      if (action.verb === 'close-behind') continue;
      // Two men side by side round a place that is itself beside somebody: no words of the notation say where each of them stands.
      if (/ of (beside|behind|between|[\d.]+ m) /.test(sayAction(action))) continue;
      const again = compileText(playWith(withBall.has(action.kind) ? action.who : action.who === '1' ? '2' : '1', sayAction(action)));
      if (!isDeepStrictEqual(meaning(again.plays[0]?.play.steps[0]?.actions[0]), meaning(action))) lost.push(`${line}: ${sayAction(action)}`);
    }
    expect(lost).toEqual([]);
  });

  it('has waits whose words read back to the same wait', () => {
    let count = 0;
    for (const { line, action } of actions) {
      for (const wait of action.waits) {
        const words = sayWait(wait);
        if (words === undefined) continue;
        count++;
        const again = compileText(playWith('1', wait.kind === 'until' ? `3 holds ${words}` : `${words}, 3 holds`));
        expect(meaning(again.plays[0]?.play.steps[0]?.actions[0]?.waits[0]), `${line}: ${words}`).toEqual(meaning(wait));
      }
    }
    expect(count).toBeGreaterThan(50);
  });
});
