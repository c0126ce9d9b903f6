import fc from 'fast-check';
import { alignmentNames } from '../../language/court/alignments.ts';

/**
 * Small plays as a coach might write them, as text: the ball is followed, so that whoever passes has it. They read without a problem of
 * the reader; in time they may be awkward (crossing cuts, circles of waits, late screens), which is what laws are for.
 */
export interface WrittenPlay {
  readonly text: string;
  readonly lines: readonly string[];
}

const sided = ['wing', 'corner', 'slot', 'elbow', 'block', 'short corner'] as const;
const middle = ['top', 'nail', 'rim'] as const;
const moves = ['cuts', 'sprints', 'jogs', 'back-cuts', 'curls', 'flashes', 'fades'] as const;
const shots = ['layup', 'jumper', 'three'] as const;

const spot = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(fc.constantFrom('left', 'right'), fc.constantFrom(...sided)).map(([side, name]) => `${side} ${name}`) },
  { weight: 1, arbitrary: fc.constantFrom(...middle) },
);

type Draft =
  | { readonly kind: 'move'; readonly who: number; readonly verb: string; readonly to: string; readonly wait: string }
  | { readonly kind: 'screen'; readonly by: number; readonly user: number; readonly to: string; readonly verb: string; readonly off: boolean; readonly roll: boolean }
  | { readonly kind: 'dribble'; readonly to: string; readonly verb: string }
  | { readonly kind: 'pass'; readonly to: number; readonly verb: string }
  | { readonly kind: 'hand-off'; readonly to: number }
  | { readonly kind: 'hold'; readonly who: number }
  | { readonly kind: 'ball-screen'; readonly by: number; readonly to: string; readonly roll: boolean };

const player = fc.integer({ min: 1, max: 5 });
const wait = fc.oneof(
  { weight: 6, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: fc.constantFrom('1 second later, ', '2 seconds later, ') },
  { weight: 1, arbitrary: fc.tuple(fc.constantFrom('once', 'as'), player).map(([word, who]) => `${word} ${who} cuts, `) },
  { weight: 1, arbitrary: player.map((who) => `once ${who} catches, `) },
);

const draft: fc.Arbitrary<Draft> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('move' as const), who: player, verb: fc.constantFrom(...moves), to: spot, wait }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('screen' as const), by: player, user: player, to: spot, verb: fc.constantFrom('screens down', 'screens', 'back-screens', 'screens across'), off: fc.boolean(), roll: fc.boolean() }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('dribble' as const), to: spot, verb: fc.constantFrom('dribbles', 'drives') }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('pass' as const), to: player, verb: fc.constantFrom('passes', 'bounce-passes', 'skips') }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('hand-off' as const), to: player }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('hold' as const), who: player }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('ball-screen' as const), by: player, to: spot, roll: fc.boolean() }) },
);

interface StepDraft {
  readonly lines: readonly Draft[];
  readonly looks: readonly { readonly who: number; readonly shot: string }[];
  /** Hangs on the step before the last one. */
  readonly counter: boolean;
}

const step: fc.Arbitrary<StepDraft> = fc.record({
  lines: fc.array(draft, { minLength: 1, maxLength: 5 }),
  looks: fc.array(fc.record({ who: player, shot: fc.constantFrom(...shots) }), { maxLength: 2 }),
  counter: fc.boolean(),
});

/** Other numbers than these. */
function except(who: number, ...others: readonly number[]): number {
  let found = who;
  while (others.includes(found)) found = (found % 5) + 1;
  return found;
}

function write(alignment: string, steps: readonly StepDraft[], level: string): WrittenPlay {
  const lines: string[] = [`from ${alignment}, ball with 1`];
  // A plain step follows the last plain one; a counter starts where the step it replaces did.
  let afterPlain = 1;
  let beforePlain = 1;
  let plain = '';
  steps.forEach((entry, index) => {
    const counter = entry.counter && index > 1 && plain !== '';
    const name = `S${index + 1}`;
    lines.push(counter ? `step "${name}" instead of "${plain}" when "they switch"` : `step "${name}"`);
    let holder = counter ? beforePlain : afterPlain;
    if (!counter) {
      plain = name;
      beforePlain = holder;
    }
    for (const line of entry.lines) {
      const written = sentence(line, holder);
      lines.push(`  ${written.text}`);
      holder = written.holder;
    }
    for (const { who, shot } of entry.looks) lines.push(`  look ${who}: ${shot}`);
    if (!counter) afterPlain = holder;
  });
  const head = ['notation 1', `level ${level}`, 'rules fiba', 'play "Law"'];
  return { text: [...head, ...lines.map((line) => `  ${line}`)].join('\n'), lines };
}

function sentence(line: Draft, holder: number): { readonly text: string; readonly holder: number } {
  const same = (text: string) => ({ text, holder });
  switch (line.kind) {
    case 'move': {
      const who = except(line.who, holder);
      return same(`${line.wait}${who} ${line.verb} to ${line.to}`);
    }
    case 'screen': {
      const by = except(line.by, holder);
      const user = except(line.user, by, holder);
      const use = line.off ? `, ${user} cuts off ${by} to ${line.to}` : '';
      return same(`${by} ${line.verb} for ${user}${line.roll ? ', then rolls' : ''}${line.roll ? '' : use}`);
    }
    case 'dribble':
      return same(`${holder} ${line.verb} to ${line.to}`);
    case 'pass': {
      const to = except(line.to, holder);
      return { text: `${holder} ${line.verb} to ${to}`, holder: to };
    }
    case 'hand-off': {
      const to = except(line.to, holder);
      return { text: `${holder} hands off to ${to}`, holder: to };
    }
    case 'hold':
      return same(`${except(line.who, holder)} stays`);
    case 'ball-screen': {
      const by = except(line.by, holder);
      return same(`${by} ball-screens for ${holder}${line.roll ? ', then rolls' : ''}, ${holder} drives off ${by} to ${line.to}`);
    }
  }
}

/** Plays of one to five steps from a named alignment. */
export const writtenPlays: fc.Arbitrary<WrittenPlay> = fc
  .tuple(fc.constantFrom(...alignmentNames), fc.array(step, { minLength: 1, maxLength: 5 }), fc.constantFrom('u10', 'u14', 'hs', 'pro'))
  .map(([alignment, steps, level]) => write(alignment, steps, level));
