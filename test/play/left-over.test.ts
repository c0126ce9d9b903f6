// Nothing a coach writes is dropped without a word: each part of a line that is read ends up in the play, or a finding names it.
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { globSync } from 'tinyglobby';
import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { notationLines } from '../grammar/notation-lines.ts';
import { drawSentence } from '../grammar/sentences.ts';
import { actionsOf, codes, readLines, short } from './reading.ts';

const around = [
  'from 1 at top, 2 at left wing, 3 at right wing, 4 at left elbow, 5 at right elbow', 'spot "Zip" is left wing', 'spot "Big Middle" is right elbow', 'spot "with # inside" is left corner', 'spot "Überzahl 🏀" is left block', 'spot “curly” is nail',
  'step "A"', '5 screens for 2', '4 screens for 3', '3 cuts off 4 to top',
];

/**
 * What may stand in a line and be said by something else in it, or by the line as it is: who goes on is the subject again, the ball in `swings the ball`, where one
 * comes from, the screen’s man beside his defender, `overhead` of a throw, where a man looked for is going (his move says it), the taker he has just dribbled at, the man of a look whom another passes to, `open spot` of a fill; a shot’s kind read over.
 */
// What a man has done himself he does not wait for (told-above.ts).
const saidTwice = /^(Clause\.subject|(?:Clause\.triggers|Statement\.lead)\/(?:SameTime|OfWhatIsAbove)|TailClause\.subject|Players\.players|\w+\.parts\/PassBall|Move\.parts\/(ComesFrom|OpenSpot)|Pass\.parts\/PassStyle|HandOff\.parts\/PassTo|Look\.tail\/ShotKinds|OnMove\.(toward|heading|spots)|Screen\.parts\/ScreenWay)/;
const saidTwiceIn: ReadonlySet<string> = new Set(['5 screens on X4 for 4']);

interface Node {
  readonly $type: string;
  readonly at: number;
  readonly to: number;
}

function nodesOf(tree: unknown, path = ''): readonly (readonly [path: string, node: Node])[] {
  if (Array.isArray(tree)) return tree.flatMap(each => nodesOf(each, path));
  if (typeof tree !== 'object' || tree === null) return [];
  const node = tree as Node;
  const own = typeof node.at === 'number' && typeof node.$type === 'string' ? [[`${path}/${node.$type}`, node] as const] : [];
  return [...own, ...Object.entries(tree).flatMap(([key, value]) => (key === 'spans' ? [] : nodesOf(value, `${node.$type}.${key}`)))];
}

/** The parts of a line that it reads the same without, although nothing is told of it. */
function withoutOwner(line: string): readonly string[] {
  const { tree } = parseLine(line);
  const whole = tree && readLines(...around, line);
  if (whole === undefined || whole.problems.length > 0) return [];
  return nodesOf(tree).flatMap(([path, { at, to }]) => {
    const words = line.slice(at, to);
    const cut = `${line.slice(0, at)}${line.slice(to)}`.replace(/\s+/g, ' ').replaceAll(' ,', ',');
    const other = parseLine(cut);
    if (words.trim() === '' || words.trim() === line.trim() || other.fault !== undefined || other.warnings.some(({ code }) => code !== 'verb-number') || other.tree?.$type !== tree!.$type || saidTwice.test(path) || (path === 'Pass.parts/PassTo' && tree!.$type === 'Look')) return [];
    const without = readLines(...around, cut);
    return without.problems.length === 0 && JSON.stringify(without.play) === JSON.stringify(whole.play) ? [`${path} “${words}” in “${line}”`] : [];
  });
}

const isOfAStep = /^(\d|x\d|look|everyone|both|once|as |when |at )/i;

describe('each part of a line has an owner', () => {
  it('in the examples and in the lines of the notation', () => {
    const examples = globSync('examples/**/*.play').flatMap(file => readFileSync(file, 'utf8').split('\n'));
    const lines = [...examples, ...notationLines.map(([line]) => line)].map(line => line.replace(/#.*/, '').trim()).filter(line => isOfAStep.test(line) && !saidTwiceIn.has(line));
    expect([...new Set(lines)].flatMap(withoutOwner)).toEqual([]);
  }, 120_000);

  it.each([['Statement', 600], ['Look', 300]] as const)('in sentences drawn from the grammar (%s)', (kind, numRuns) => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 0x7fffffff }), seed => {
      const line = drawSentence(seed, { kind });
      // Who throws in, and from where, is read with the start of the play.
      if (/thrower|out of bounds|takes? (the ball|it) out|inbounds?|in it|throws?|triggers?/.test(line)) return;
      expect(withoutOwner(line), line).toEqual([]);
    }), { numRuns, seed: 20_26 });
  }, 240_000);
});

describe('words that a link has no room for', () => {
  it.each([
    ['2 cuts to left wing at right corner', 'at right corner'],
    ['2 cuts to left slot in the backcourt', 'in the backcourt'],
    ['2 cuts to left wing and right corner', 'right corner'],
    ['1 passes at left wing to 2', 'at left wing'],
    ['1 passes over the top along the baseline to 2', 'along the baseline'],
    ['1 hands off to 2 to 3', 'to 3'],
    ['4 screens down across for 2', 'across'],
    ['4 flare-screens down for 2', 'down'],
    ['4 screens at left elbow at nail for 2', 'at nail'],
    ['2 stays at left wing at right corner', 'at right corner'],
    ['2 fills for 3 to top', 'to top'],
    ['look 2 flashing 4: layup', '4'],
    ['X4 helps at rim at nail', 'at nail'],
    ['X4 guards 2 on 3', 'on 3'],
    ['5 boxes out, then for 3', 'for 3'],
    ['once 2 stops at left wing, 3 cuts to rim', 'at left wing'],
  ])('%s: “%s” is told', (line, words) => {
    const reading = readLines(...around, line);
    expect(reading.problems.map(({ code, params }) => [code, params['words']])).toEqual([['words-left-over', words]]);
  });

  it.each([
    ['2 cuts baseline to right corner'],
    ['2 cuts to left wing to right corner'],
    ['4 screens down for 2'],
    ['4 back-screens up for 2'],
    ['5 screens on X4 for 4'],
    ['1 swings the ball to 2'],
    ['5 flashes from the left block to nail'],
    ['3 pops to left wing or corner'],
    ['2 and 3 cut to the corners'],
  ])('%s says nothing too much', line => {
    expect(codes(readLines(...around, line))).toEqual([]);
  });
});

describe('several places in one move', () => {
  it('the last is where he ends, the others are on his way', () => {
    const [cut] = actionsOf('2 cuts to left wing, to right corner'.replace(',', ''));
    expect(short(cut!)).toMatchObject({ via: [{ kind: 'spot', name: 'wing', side: 'left' }], to: { value: { kind: 'spot', name: 'corner', side: 'right' } } });
  });

  it('a direction gives way to a place', () => {
    const [cut] = actionsOf('2 cuts baseline to right corner');
    expect(short(cut!)).toMatchObject({ via: [{ kind: 'spot', name: 'short corner' }], to: { value: { kind: 'spot', name: 'corner', side: 'right' } } });
    const [drive] = actionsOf('1 drives middle to left elbow');
    expect(short(drive!)).toMatchObject({ to: { value: { kind: 'spot', name: 'elbow', side: 'left' } } });
  });

  it('each of several passes has its own spot', () => {
    const passes = actionsOf('1 passes to 2 at left wing to 3');
    expect(passes.map(action => (action.kind === 'pass' ? [action.to, action.at?.value] : []))).toEqual([['2', { kind: 'spot', name: 'wing', side: 'left' }], ['3', undefined]]);
  });

  it('two who fill for two fill one each, and two who go by two places by one each', () => {
    expect(actionsOf('2 and 3 fill for 4 and 5').map(action => (action.kind === 'move' ? action.to?.value : undefined))).toEqual([{ kind: 'player', who: '4' }, { kind: 'player', who: '5' }]);
    expect(actionsOf('2 and 3 cut via left elbow and right elbow to the corners').map(action => (action.kind === 'move' ? action.via : undefined))).toEqual([[{ kind: 'spot', name: 'elbow', side: 'left' }], [{ kind: 'spot', name: 'elbow', side: 'right' }]]);
  });

  it('a dribble is kept for as long as is said', () => {
    expect(actionsOf('1 keeps his dribble for 3 seconds').map(action => [action.kind, action.kind === 'hold' ? action.seconds : undefined])).toEqual([['dribble', undefined], ['hold', 3]]);
  });
});

describe('off a screen of several', () => {
  it('the word says whether it is that of all of them', () => {
    const offOf = (line: string) => actionsOf('4 and 5 stagger for 2', line).flatMap(action => (action.kind === 'move' ? [action.off] : []));
    expect(offOf('2 comes off the stagger to left wing')).toEqual([['4', '5']]);
    expect(offOf('2 comes off the screen to left wing')).toEqual([['5']]);
  });
});
