import fc from 'fast-check';
import { alignmentNames } from '../../language/court/alignments.ts';
import { pick, random } from '../grammar/sentences.ts';

/**
 * Plays with more of the notation than `writtenPlays`: screens of two men, counters at a defender's sign, pins, passes to a spot, men who
 * swap, throw-ins, zones, rebound lines, every court. The ball is followed; in time they may be as awkward as they come.
 */
export const widePlays: fc.Arbitrary<string> = fc.nat({ max: 0x7fffffff }).map((seed) => widePlay(random(seed)));

/** The same random source gives the same play. */
export function widePlay(next: () => number): string {
  const draw = drawing(next);
  const rules = draw.of(['fiba', 'nba', 'ncaa-men', 'ncaa-women', 'nfhs', 'mini']);
  const level = draw.of(rules === 'mini' ? ['u10', 'u12'] : ['u10', 'u12', 'u14', 'u16', 'hs', 'college', 'pro']);
  const throwIn = draw.chance(0.15);
  const thrower = throwIn ? draw.man() : 1;
  const lines = [...headOf(draw, throwIn), ...stepsOf(draw, throwIn, thrower)];
  return ['notation 1', `level ${level}`, `rules ${rules}`, 'play "Law"', ...lines.map((line) => `  ${line}`)].join('\n');
}

interface Drawing {
  readonly of: <T>(from: readonly T[]) => T;
  readonly chance: (share: number) => boolean;
  readonly upTo: (most: number) => number;
  /** One of the five who is none of these. */
  readonly man: (...not: readonly number[]) => number;
  readonly spot: () => string;
}

function drawing(next: () => number): Drawing {
  const of = <T>(from: readonly T[]): T => pick(from, next);
  const chance = (share: number): boolean => next() < share;
  const upTo = (most: number): number => 1 + Math.floor(next() * most);
  const man = (...not: readonly number[]): number => {
    let found = upTo(5);
    while (not.includes(found)) found = (found % 5) + 1;
    return found;
  };
  const metres = (least: number, most: number): string => (least + next() * (most - least)).toFixed(1);
  const spot = (): string => {
    const sort = next();
    if (sort < 0.6) return `${of(['left', 'right', 'ball-side', 'weak-side', ''])} ${of(['wing', 'corner', 'slot', 'elbow', 'block', 'short corner', 'mid-post', 'high post', 'dunker spot', 'hash', 'low post'])}`.trim();
    if (sort < 0.75) return of(['top', 'nail', 'rim', 'front of the rim', 'half court']);
    if (sort < 0.8) return `${of(['2 ft', '1 m', '1.5 m'])} ${of(['above', 'below', 'inside', 'outside'])} ${of(['left', 'right'])} ${of(['wing', 'elbow', 'block', 'corner'])}`;
    if (sort < 0.84) return `between ${of(['left', 'right'])} wing and ${of(['left corner', 'top', 'right corner', 'nail'])}`;
    if (sort < 0.87) return `(${metres(-6, 6)}, ${metres(0, 9)}) m`;
    return `${of(['left', 'right'])} ${of(['wing', 'corner', 'slot', 'elbow', 'block'])}`;
  };
  return { of, chance, upTo, man, spot };
}

function headOf({ of, chance, upTo }: Drawing, throwIn: boolean): readonly string[] {
  const from = `from ${of(alignmentNames)}`;
  return [
    throwIn ? from : `${from}, ball with 1${chance(0.1) ? ', mirrored' : ''}`,
    ...(chance(0.3) ? [`against ${of(['man', '2-3', '3-2', '1-3-1', 'man press', '2-2-1 press'])}`] : []),
    ...(chance(0.4) ? ['call with 24 on the clock'] : []),
    ...(chance(0.2) ? [`shot within ${5 + upTo(10)} seconds of the start`] : []),
    ...(chance(0.15) ? ['leave 3 seconds after a miss'] : []),
    ...(chance(0.15) ? ['rebound 2, 4, 5 crash, 1, 3 get back'] : []),
  ];
}

function stepsOf(draw: Drawing, throwIn: boolean, thrower: number): readonly string[] {
  const { of, chance, upTo, man } = draw;
  const lines: string[] = [];
  // A plain step follows the last plain one; a counter starts where the step it replaces did.
  let plain = '';
  let beforePlain = thrower;
  let afterPlain = thrower;
  const count = upTo(4);
  for (let step = 1; step <= count; step++) {
    const counter = step > 2 && chance(0.3);
    let holder = counter ? beforePlain : afterPlain;
    if (counter) lines.push(`step "S${step}" instead of "${plain}" when ${of(['"they switch"', 'X4 shows on 3', 'X2 denies', 'X5 switches to 1'])}`);
    else {
      lines.push(`step "S${step}"${step > 1 && chance(0.06) ? ' when 5 to 8 seconds are left' : ''}`);
      plain = `S${step}`;
      beforePlain = holder;
    }
    if (throwIn && step === 1) {
      const to = man(holder);
      lines.push(`  ${holder} inbounds from ${of(['the left sideline', 'the right sideline', 'under the basket', 'left baseline', 'right baseline'])}`, `  ${holder} inbounds to ${to}`);
      holder = to;
    }
    for (let line = upTo(4); line > 0; line--) {
      const { text, to } = lineOf(draw, holder);
      lines.push(`  ${text}`);
      holder = to;
    }
    while (chance(0.45)) lines.push(`  ${lookOf(draw, holder)}`);
    if (!counter) afterPlain = holder;
  }
  return lines;
}

function lookOf({ of, chance, man, spot }: Drawing, holder: number): string {
  const who = man();
  const pin = of(['', '', '', ' on the roll', ' "open"', ' on the cut', ` at ${spot()}`, ` as ${man()} rolls`, ' 1 second later']);
  const lead = chance(0.2) ? of(['lob, ', 'drives to rim, ', 'pass, ', `${holder} passes to ${who}, `]) : '';
  return `look ${who}${pin}: ${lead}${of(['layup', 'jumper', 'three', 'dunk', 'floater', 'three or jumper', 'hook'])}`;
}

/** A line, and who has the ball behind it. */
interface Line {
  readonly text: string;
  readonly to: number;
}

function lineOf(draw: Drawing, holder: number): Line {
  const { of } = draw;
  // As often as each stands here.
  const kind = of([...Array<typeof moveLine>(4).fill(moveLine), ...Array<typeof moveLine>(4).fill(passLine), ...Array<typeof moveLine>(3).fill(screenLine), ballScreenLine, ballScreenLine, joinedLine, dribbleLine, dribbleLine, doubleScreenLine, handOffLine, pairLine, standLine, defenceLine]);
  return kind(draw, holder);
}

const shapes = ['cuts', 'sprints', 'jogs', 'back-cuts', 'curls', 'flashes', 'fades', 'clears', 'spaces', 'lifts', 'drifts', 'walks', 'pops', 'dives', 'v-cuts', 'l-cuts', 'shallow-cuts'];

function waitOf({ of, chance, upTo, man }: Drawing): string {
  if (chance(0.75)) return '';
  return of(['1 second later, ', '2 seconds later, ', `once ${man()} ${of(['cuts', 'catches', 'rolls', 'passes'])}, `, `once ${man()} is set, `, 'then, ', 'at the same time, ', `half a second after ${man()} ${of(['cuts', 'catches', 'is set'])}, `, `while ${man()} ${of(shapes)}, `, `as ${man()} ${of(['cuts', 'rolls', 'passes', 'catches', 'drives'])}, `, `at ${4 + upTo(18)} on the clock, `]);
}

function moveLine(draw: Drawing, holder: number): Line {
  const { of, chance, man, spot } = draw;
  const who = man(holder);
  const off = chance(0.15) ? ` off ${man(who)}` : '';
  const way = chance(0.1) ? ` ${of(['0.75 m', '1.5 m', '5 ft'])} toward ${of([spot(), `${man(who)}`, 'the ball'])}` : ` to ${spot()}`;
  const to = chance(0.85) ? `${chance(0.1) ? ` via ${spot()}` : ''}${way}` : '';
  return { text: `${waitOf(draw)}${who} ${of(shapes)}${off}${to}`, to: holder };
}

/** Two men's ways in one line, joined in each of the ways there are. */
function joinedLine(draw: Drawing, holder: number): Line {
  const { of, man, spot } = draw;
  const [one, other] = [man(holder), man(holder)];
  return { text: `${waitOf(draw)}${one} ${of(shapes)} to ${spot()}${of([' and ', ', and ', ', ', ', then ', `, and as ${one} goes, `, ' and a second later '])}${other} ${of(shapes)} to ${spot()}`, to: holder };
}

function passLine(draw: Drawing, holder: number): Line {
  const { of, chance, man, spot } = draw;
  const to = man(holder);
  const where = `${chance(0.1) ? ` at ${spot()}` : ''}${chance(0.08) ? ' early' : ''}`;
  return { text: `${waitOf(draw)}${holder} ${of(['passes', 'bounce-passes', 'skips', 'lobs', 'chest-passes', 'swings'])} to ${to}${where}${chance(0.1) ? `, then ${of(shapes)} to ${spot()}` : ''}`, to };
}

function screenLine(draw: Drawing, holder: number): Line {
  const { of, chance, man, spot } = draw;
  const by = man(holder);
  const user = man(by, holder);
  const verb = of(['screens down', 'screens', 'back-screens', 'screens across', 'pin-screens', 'flare-screens', 'cross-screens', 'down-screens', 'up-screens', 'screens away']);
  const screen = `${waitOf(draw)}${by} ${verb} for ${user}${chance(0.1) ? ` at ${spot()}` : ''}`;
  if (chance(0.5)) return { text: `${screen}, ${user} ${of(['cuts', 'curls', 'fades', 'back-cuts'])} off ${by} to ${spot()}`, to: holder };
  return { text: `${screen}${chance(0.5) ? `, then ${of(['rolls', 'pops', 'slips', `screens for ${man(by)}`, `cuts to ${spot()}`])}` : ''}`, to: holder };
}

function doubleScreenLine({ of, chance, man, spot }: Drawing, holder: number): Line {
  const a = man(holder);
  const b = man(holder, a);
  const user = man(holder, a, b);
  const use = chance(0.7) ? `, ${user} ${of([`cuts between ${a} and ${b}`, `cuts off ${a} then ${b}`, `cuts off ${a} and ${b}`])} to ${spot()}` : '';
  return { text: `${a} and ${b} ${of(['stagger', 'double-screen', 'screen'])} for ${user}${use}`, to: holder };
}

function ballScreenLine(draw: Drawing, holder: number): Line {
  const { of, chance, man, spot } = draw;
  const by = man(holder);
  return { text: `${waitOf(draw)}${by} ${of(['ball-screens', 'drag-screens', 're-screens'])} for ${holder}${chance(0.5) ? `, then ${of(['rolls', 'pops', 'slips'])}` : ''}, ${holder} ${of(['drives', 'dribbles'])} off ${by} to ${spot()}`, to: holder };
}

function dribbleLine(draw: Drawing, holder: number): Line {
  const { of, man, spot } = draw;
  return { text: `${waitOf(draw)}${holder} ${of(['dribbles', 'drives'])} ${of([`to ${spot()}`, `to ${spot()}`, `2 m toward ${spot()}`, `at ${man(holder)}`, 'baseline', 'middle'])}`, to: holder };
}

function handOffLine({ chance, man, spot }: Drawing, holder: number): Line {
  const to = man(holder);
  return { text: `${holder} hands off to ${to}${chance(0.15) ? ` at ${spot()}` : ''}${chance(0.4) ? `, ${to} drives to ${spot()}` : ''}`, to };
}

function pairLine({ of, man }: Drawing, holder: number): Line {
  const a = man(holder);
  const b = man(holder, a);
  return { text: of([`${a} fills for ${b}`, `${a} replaces ${b}`, `${a} and ${b} ${of(['swap', 'exchange', 'cross'])}`, `${a} and ${b} ${of(['cut to the elbows', 'pop to the wings', 'clear to the corners', 'cut to the blocks'])}`]), to: holder };
}

function standLine({ of, man, spot }: Drawing, holder: number): Line {
  return { text: `${man(holder)} ${of(['stays', 'holds', 'holds for 1 second', 'posts up', `seals at ${spot()}`])}`, to: holder };
}

function defenceLine({ of, man, spot }: Drawing, holder: number): Line {
  const who = man();
  return { text: `X${man()} ${of([`switches to ${who}`, `goes under ${who}`, `trails ${who}`, 'helps at rim', `denies ${who}`, `shows on ${holder}`, `drops to ${spot()}`, `guards ${who}`, `doubles ${holder}`, `recovers to ${who}`, `follows ${who}`])}`, to: holder };
}
