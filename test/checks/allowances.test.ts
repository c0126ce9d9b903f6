import { expect, test } from 'vitest';
import { compileText } from './compiled.ts';
import { expectMarked } from './marked.ts';

const steps = (allow: string, inStep = '') => `play "A"
  from 5-out
${allow}  step "One"
${inStep}    1 dribbles to left slot
    5 screens for 4
    look 1: three
`;

test('an allowance silences its check in its play', () => expectMarked(steps('  allow screen-unused "a decoy"\n')));

test('or in its step', () => expectMarked(steps('', '    allow screen-unused "a decoy"\n')));

test('one that silences nothing is reported', () =>
  expectMarked(`play "A"
  from 5-out
  allow pass-waits "he can"
  ^^^^^^^^^^^^^^^^^^^^^^^^^ warning allow-unused: “allow pass-waits” silences nothing here
  1 dribbles to left slot
  look 1: three
`));

test('one for a check that does not exist offers the nearest', () =>
  expectMarked(`play "A"
  from 5-out
  allow three-second "quick"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^ warning allow-unknown: the nearest is “three-seconds”
  1 dribbles to left slot
  look 1: three
`));

test('an allowance for one step leaves the others as they are', () =>
  expectMarked(`play "A"
  from 5-out
  step "One"
    allow screen-unused "a decoy"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning allow-unused
    1 dribbles to left slot
  step "Two"
    5 screens for 4
    ^^^^^^^^^^^^^^^ warning screen-unused
    look 1: three
`));

test('an allowance in the second step of a name silences that step alone', () => {
  const step = (inside: string) => `  step "Zip"\n${inside}    1 passes to 1\n`;
  const text = `play "A"\n  from 5-out\n  1 dribbles to left slot\n${step('')}${step('    allow pass-to-self "a slip we keep"\n')}    look 1: jumper\n`;
  expect(compileText(text).findings.map(({ code, place }) => [code, place.line])).toEqual([['pass-to-self', 4], ['duplicate-name', 5]]);
});
