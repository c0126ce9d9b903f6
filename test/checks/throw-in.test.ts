import { describe, expect, test } from 'vitest';
import { compileText } from './compiled.ts';

const throwIn = (lines: string, rules = 'fiba') => compileText(`rules ${rules}\nplay "A"\n  situation sideline throw-in\n  from 1 at right corner, 2 at right wing, 4 at left elbow, 5 at right block\n  3 inbounds from left sideline\n  step "In"\n${lines}`).findings;
const slow = '    1 cuts to rim\n    1 cuts to right corner\n    1 cuts to left slot\n    3 inbounds to 1\n    look 1: three\n';

describe('the five seconds of the throw-in', () => {
  test('run from the hand-over to the release, and the rule is named', () => {
    const late = throwIn(slow).find(({ code }) => code === 'inbound-late');
    expect(late?.message).toMatch(/^3 throws in \d+(\.\d)? s after he is handed the ball; the count is 5 s\./);
    expect(late?.source?.text).toMatch(/17\.3\.1/);
    expect(late?.place.line).toBe(8);
  });

  test('are named by the rule set in force', () => {
    expect(throwIn(slow, 'nfhs').find(({ code }) => code === 'inbound-late')?.source?.text).toMatch(/7-6-2/);
  });

  test('are kept by a man who stands free', () => {
    expect(throwIn('    3 inbounds to 4\n    look 4: jumper\n').map(({ code }) => code)).not.toContain('inbound-late');
  });
});

describe('the thrower', () => {
  const from = (place: string, lines: string, rules = 'fiba', situation = 'backcourt throw-in') => compileText(`rules ${rules}\nplay "A"\n  situation ${situation}\n  from 1 backcourt middle, 2 right wing, 4 right corner, 5 left corner\n  3 inbounds from ${place}\n${lines}  look 2: three\n`).findings.map(({ code }) => code);
  const runs = '  3 runs to 3 m right of far baseline\n  3 inbounds to 1\n  1 passes to 2\n';

  test('keeps to his spot', () => expect(from('the left baseline', '  3 runs to right baseline\n  3 inbounds to 1\n  1 passes to 2\n')).toContain('thrower-moves'));
  test('may shift by a step', () => expect(from('the left baseline', '  3 runs to 2 ft right of left baseline\n  3 inbounds to 1\n  1 passes to 2\n')).not.toContain('thrower-moves'));
  test('may run his own endline only after a basket', () => {
    expect(from('the far baseline', runs)).toContain('thrower-moves');
    expect(from('the far baseline', runs, 'fiba', 'backcourt throw-in, "after a basket"')).not.toContain('thrower-moves');
    for (const said of ['after a basket', 'after a made basket', 'after a score']) expect(from('the far baseline', runs, 'fiba', `backcourt throw-in, ${said}`)).not.toContain('thrower-moves');
  });
  test('steps in after the release, not before', () => {
    expect(from('the left baseline', '  3 steps in\n  3 inbounds to 1\n  1 passes to 2\n')).toContain('thrower-steps-in');
    expect(from('the left baseline', '  3 inbounds to 1\n  3 steps in\n  1 passes to 2\n')).not.toContain('thrower-steps-in');
  });
  test('throws the ball: he neither dribbles it in nor shoots', () => {
    expect(from('the left sideline', '  3 dribbles to left wing\n  3 passes to 2\n')).toContain('thrower-steps-in');
    expect(from('the left sideline', '  look 3: three\n')).toContain('thrower-steps-in');
    expect(from('the left sideline', '  3 inbounds to 2\n  3 steps in\n  2 passes to 3\n  3 dribbles to left wing\n  3 passes to 2\n')).not.toContain('thrower-steps-in');
  });
  test('who stands behind a line without the ball is told the line that makes him the thrower', () => {
    const said = (place: string) => compileText(`play "A"\n  from 5-out, 3 at ${place}\n  1 passes to 2\n  look 2: three\n`).findings.find(({ code }) => code === 'out-of-bounds')?.message;
    expect(said('far baseline')).toContain('3 inbounds from the far baseline');
    expect(said('left far sideline')).toContain('3 inbounds from the left far sideline');
    expect(said('right sideline')).toContain('3 inbounds from the right sideline');
  });
  test('does not hand the ball over the line', () => {
    expect(from('the left baseline', '  3 hands off to 5\n  5 passes to 2\n')).toContain('thrower-hands-over');
    expect(from('the left baseline', '  3 inbounds to 5\n  5 hands off to 2\n')).not.toContain('thrower-hands-over');
  });
  test('his own window is told below the rule’s count, not beside it', () => {
    expect(throwIn(`    inbound within 3 seconds\n${slow}`).map(({ code }) => code)).not.toContain('throw-in-window');
    expect(from('the left baseline', '  inbound within 2 seconds\n  5 cuts to rim, then cuts to left wing\n  3 inbounds to 5\n  5 passes to 2\n')).toContain('throw-in-window');
  });
});
