// What an assistant changed, as a coach would ask: which plays, what in them, what it costs, what is wrong now.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { changedLines } from '../../language/compare/changed-lines.ts';
import { comparePlays, type PlayChange } from '../../language/compare/compare-plays.ts';
import { likenessOf } from '../../language/compare/pair-plays.ts';
import type { Compiled } from '../../language/compile.ts';
import { compileText } from '../checks/compiled.ts';
import fc from 'fast-check';

const before = `level u14
play "Tide"
  tags quick   # for the end
  from horns, ball with 1
  leave 3 seconds after a miss
  rebound 3, 4, 5 crash, 1, 2 get back
  step "Open"
    4 ball-screens for 1, then rolls
    1 drives off 4 to right elbow
    note 4 "hold it"
    look 1: jumper
    look 4 on the roll: layup
play "Reef"
  from 5-out
  1 passes to 2
  look 2: three
`;
const compared = (after: string, was = before): readonly PlayChange<Compiled>[] => comparePlays(compileText(was).plays, compileText(after).plays);
const changed = (after: string, was = before) => {
  const [first, ...others] = compared(after, was);
  expect(others).toEqual([]);
  if (first?.kind !== 'changed') throw new Error(`${first?.kind}`);
  return first;
};
const lines = (change: { readonly parts: readonly { readonly step?: string; readonly lines: readonly { readonly kind: string; readonly text: string }[] }[] }) =>
  change.parts.flatMap(({ step = '', lines: all }) => all.map(({ kind, text }) => `${step} ${kind}: ${text}`.trim()));

describe('the same play', () => {
  test('is one that is set otherwise, remarked on otherwise, or said in other words', () => {
    expect(compared(before)).toEqual([]);
    expect(compared(before.replaceAll('\n', '\r\n').replaceAll('    ', '\t'))).toEqual([]);
    expect(compared(before.replace('# for the end', '').replace('  tags quick', '  tags   quick'))).toEqual([]);
    expect(compared(before.replace('4 ball-screens for 1, then rolls', '4 sets a ball screen for 1 and then rolls'))).toEqual([]);
  });
  test('is one that stands elsewhere in its file', () => {
    const [head, tide, reef] = before.split(/(?=^play )/m);
    expect(compared(`${head}${reef}${tide}`)).toEqual([]);
  });
});

test('a line that is another is told as it went and as it came, with what it costs', () => {
  const change = changed(before.replace('to right elbow', 'to the rim'));
  expect(lines(change)).toEqual(['Open went: 1 drives off 4 to right elbow.', 'Open came: 1 drives off 4 to the rim.']);
  expect(change.looks.map(({ name }) => name)).toContain('1: jumper');
  for (const { before: was, after: is } of change.looks) expect(is!.typical).not.toBe(was!.typical);
  expect(change.after.timeline.times.firstLook!.fromCall).toBe(change.firstLook?.after ?? change.before.timeline.times.firstLook!.fromCall);
});

test('what stands above the steps is told as it is written; a note of a step in its step', () => {
  expect(lines(changed(before.replace('tags quick', 'tags quick, man').replace('"hold it"', '"hold it longer"')))).toEqual([
    'went: tags quick', 'came: tags quick, man', 'Open went: Note for 4: hold it', 'Open came: Note for 4: hold it longer',
  ]);
});

test('with the same line they stand elsewhere: in an alignment of his own, or in the play that is mirrored', () => {
  const was = 'alignment "Dock"\n  1 top\n  2 left wing\n  3 right wing\n  4 left block\n  5 right block\nplay "Tide"\n  from "Dock"\n  1 passes to 2\n  look 2: three\nplay "Tide left" mirrors "Tide"\n';
  const changes = compared(was.replace('4 left block', '4 left elbow'), was);
  expect(changes.map((change) => change.kind === 'changed' && lines(change))).toEqual([[expect.stringMatching(/^went: .*4 at left block/), expect.stringMatching(/^came: .*4 at left elbow/)], [expect.stringContaining('4 at right block'), expect.stringContaining('4 at right elbow')]]);
  expect(lines(changed(before.replace('from horns, ball with 1', 'from box, ball with 1')))).toEqual(['went: from horns, ball with 1', 'came: from box, ball with 1']);
});

test('a level above all plays is told of each play whose times it changes', () => {
  const changes = compared(before.replace('level u14', 'level hs'));
  expect(changes.map((change) => change.kind === 'changed' && [change.after.play.name, ...lines(change)])).toEqual([['Tide', 'went: level u14', 'came: level hs'], ['Reef', 'went: level u14', 'came: level hs']]);
});

test('a look that is new has no time before, and one that is gone none after', () => {
  const { looks } = changed(before.replace('look 4 on the roll: layup', 'look 3 "corner": three'));
  expect(looks.map(({ name, before: was, after: is }) => [name, was !== undefined, is !== undefined])).toEqual([['“corner” for 3', false, true], ['4 on the roll', true, false]]);
});

test('a step that came or went is told whole', () => {
  const more = before.replace('play "Reef"', '  step "Slip" instead of "Open" when X4 shows on 1\n    4 slips\n    look 4: lob, layup\nplay "Reef"');
  const [came] = changed(more).parts;
  expect(came).toMatchObject({ step: 'Slip', only: 'came' });
  expect(came!.lines.length).toBeGreaterThan(1);
  expect(came!.lines[0]!.text).toBe('Slip, instead of Open, when X4 shows on 1:');
  const [gone] = compared(before, more);
  expect(gone).toMatchObject({ kind: 'changed', parts: [{ step: 'Slip', only: 'went' }] });
});

test('a step with nothing but a name is not told its name twice', () => {
  expect(lines(changed(before.replace('step "Open"', 'step "Ajar"'))).filter((line) => line.endsWith(':'))).toEqual([]);
});

test('a play that came, went, or only has another name', () => {
  expect(compared(`${before}play "Spray"\n  from box\n  1 passes to 3\n  look 3: jumper\n`)).toMatchObject([{ kind: 'came', after: { play: { name: 'Spray' } } }]);
  expect(compared(before.slice(0, before.indexOf('play "Reef"')))).toMatchObject([{ kind: 'went', before: { play: { name: 'Reef' } } }]);
  expect(compared(before.replace('"Tide"', '"Ebb"').replace('tags quick', 'tags slow'))).toMatchObject([{ kind: 'changed', renamed: true, before: { play: { name: 'Tide' } }, after: { play: { name: 'Ebb' } } }]);
  expect(compared(before.replace('"Reef"', '"Shoal"'))).toMatchObject([{ kind: 'changed', renamed: true, parts: [], before: { play: { name: 'Reef' } }, after: { play: { name: 'Shoal' } } }]);
});

test('a step’s bare name is not told, whatever its name is read out as', () => {
  const away = before.replace('play "Reef"', '  step "Drive to rim" after "Open"\n    1 passes to 2\n  step "Drive to rim again"\n    2 passes to 1\nplay "Reef"');
  const steps = changed(away).parts.filter(({ only }) => only === 'came');
  expect(steps.map(({ step, lines: [first] }) => [step, first?.text])).toEqual([['Drive to rim', expect.stringMatching(/^Drive to .*rim, after Open:$/)], ['Drive to rim again', '1 passes to 2.'.replace('1', '2').replace('to 2', 'to 1')]]);
});

describe('a play that was renamed and changed', () => {
  const long = `level u14
play "Tide"
  from horns, ball with 1
  step "Open"
    4 ball-screens for 1, then rolls
    1 drives off 4 to right elbow
    5 lifts to left wing
    2 cuts to left corner
    look 1: jumper
    look 4 on the roll: layup
`;
  const kinds = (was: string, is: string) => compared(is, was).map((change) => [change.kind, change.kind === 'changed' ? `${change.before.play.name} → ${change.after.play.name}` : (change.kind === 'came' ? change.after : change.before).play.name]);

  test('is known by its lines, and told with what is changed', () => {
    const [change, ...others] = compared(long.replace('"Tide"', '"Ebb"').replace('right elbow', 'the rim'), long);
    expect(others).toEqual([]);
    expect(change).toMatchObject({ kind: 'changed', renamed: true, before: { play: { name: 'Tide' } }, after: { play: { name: 'Ebb' } } });
    expect(change?.kind === 'changed' && lines(change)).toEqual(['Open went: 1 drives off 4 to right elbow.', 'Open came: 1 drives off 4 to the rim.']);
  });
  test('is the one it is most like, where there are two', () => {
    const other = long.replace('level u14\n', '').replace('"Tide"', '"Squall"').replace('5 lifts to left wing', '5 cuts to right corner').replace('look 1: jumper', 'look 5: three');
    expect(kinds(long + other, long.replace('"Tide"', '"Neap"').replace('right elbow', 'the rim') + other.replace('"Squall"', '"Gale"').replace('right elbow', 'the rim'))).toEqual([['changed', 'Tide → Neap'], ['changed', 'Squall → Gale']]);
  });
  test('keeps its name where both are there', () => {
    expect(kinds(long, `${long}${long.replace('level u14\n', '').replace('"Tide"', '"Ebb"')}`)).toEqual([['came', 'Ebb']]);
  });
  test('is another one where only half of it is the same, or it is so short that nothing can be told', () => {
    expect(kinds(long, long.replace('"Tide"', '"Ebb"').replace('horns', 'box').replace('right elbow', 'the rim').replace('5 lifts', '2 lifts').replace('look 1: jumper', 'look 2: three'))).toEqual([['came', 'Ebb'], ['went', 'Tide']]);
    const short = 'play "Reef"\n  from 5-out\n  1 passes to 2\n  look 2: three\n';
    expect(kinds(short, short.replace('"Reef"', '"Shoal"').replace('three', 'jumper'))).toEqual([['came', 'Shoal'], ['went', 'Reef']]);
  });
  test('no two plays of the examples are taken for each other, but a play and its mirror', () => {
    const beside = { name: 'alignments.play', text: readFileSync('examples/alignments.play', 'utf8') };
    const plays = readdirSync('examples').filter((name) => !['club.play', beside.name].includes(name)).flatMap((name) => compileText(readFileSync(`examples/${name}`, 'utf8'), beside).plays);
    expect(plays.length).toBeGreaterThan(30);
    const alike = plays.flatMap((one, at) => plays.slice(at + 1).filter((other) => likenessOf(one, other) > 0).map((other) => [one.play.name, other.play.name]));
    expect(alike).toEqual([['Skiff', 'Skiff left']]);
  });
});

test('what is said of the same thing with other numbers is neither new nor gone', () => {
  const text = readFileSync('examples/last-shot.play', 'utf8');
  const shapes = readFileSync('examples/alignments.play', 'utf8');
  const plays = (alignments: string) => compileText(text, { name: 'alignments.play', text: alignments }).plays;
  const [beacon, ...others] = comparePlays(plays(shapes), plays(shapes.replace('2 at left short corner', '2 at left corner')));
  expect(others).toEqual([]);
  if (beacon?.kind !== 'changed') throw new Error(beacon?.kind);
  const { came, went, otherwise } = beacon.findings;
  expect([came, went]).toEqual([[], []]);
  expect(otherwise.map(({ after: { code } }) => code)).toEqual(['closely-guarded', 'closely-guarded']);
  for (const { before: was, after: is } of otherwise) expect(was.message).not.toBe(is.message);
});

test('what is wrong since, and what no longer is', () => {
  const wrong = before.replace('4 ball-screens for 1, then rolls', '1 ball-screens for 4');
  const { findings } = changed(wrong);
  expect(findings.came.map(({ code }) => code)).toContain('screen-with-ball');
  const [back] = compared(before, wrong);
  expect(back?.kind === 'changed' && back.findings.went.map(({ code }) => code)).toContain('screen-with-ball');
});

describe('of every example with one line lost', () => {
  const beside = { name: 'alignments.play', text: readFileSync('examples/alignments.play', 'utf8') };
  const names = readdirSync('examples').filter((name) => name !== 'club.play' && name !== beside.name);

  test.each(names)('%s: what is told one way round is told the other way round', (name) => {
    const rows = readFileSync(`examples/${name}`, 'utf8').split('\n');
    const plays = (text: string) => compileText(text, beside).plays;
    const whole = plays(rows.join('\n'));
    expect(comparePlays(whole, plays(rows.join('\r\n')))).toEqual([]);
    for (let at = 0; at < rows.length; at += 19) {
      const less = plays(rows.toSpliced(at, 1).join('\n'));
      const [there, back] = [comparePlays(whole, less), comparePlays(less, whole)];
      const read = (changes: typeof there, was: 'before' | 'after', is: 'before' | 'after') => changes.map((change) => row(change, was, is)).sort();
      expect(read(there, 'before', 'after'), `without line ${at + 1}`).toEqual(read(back, 'after', 'before'));
      if (/^\s*(#.*)?$/.test(rows[at]!)) expect(there).toEqual([]);
    }
  });

  test.each(names)('%s: under another name a play takes as long, and nothing else of it is told', (name) => {
    const text = readFileSync(`examples/${name}`, 'utf8');
    const renamed = text.replaceAll(/^(play "[^"]*)"/gm, '$1, once more"').replaceAll(/\b(mirrors|continues) "([^"]*)"/g, '$1 "$2, once more"');
    const changes = comparePlays(compileText(text, beside).plays, compileText(renamed, beside).plays);
    expect(changes.length).toBe(text.match(/^play "/gm)!.length);
    for (const change of changes) {
      expect(change).toMatchObject({ kind: 'changed', renamed: true, parts: [], looks: [], findings: { came: [], went: [], otherwise: [] } });
      expect(change).not.toHaveProperty('firstLook');
      expect(change).not.toHaveProperty('allLooks');
    }
  });

  /** What a change says, from the one version to the other. */
  function row(change: PlayChange<Compiled>, was: 'before' | 'after', is: 'before' | 'after'): string {
    const { before, after } = { before: undefined, after: undefined, ...change };
    const names = { before: before?.play.name, after: after?.play.name };
    if (change.kind !== 'changed') return JSON.stringify([names[was], names[is]]);
    const { looks, firstLook, allLooks, findings } = change;
    const wrong = { before: findings.went.length, after: findings.came.length };
    return JSON.stringify([names[was], names[is], looks.map((look) => [look.name, look[was]?.late, look[is]?.late].join()).sort(), firstLook?.[was], firstLook?.[is], allLooks?.[was], allLooks?.[is], wrong[was], wrong[is]]);
  }
});

test('of any two lists what went and what came make the one of the other', () => {
  const list = fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 8 });
  fc.assert(
    fc.property(list, list, (one, other) => {
      const changes = changedLines(one, other);
      const took = changes.filter(({ kind }) => kind === 'went').map(({ text }) => text);
      const gave = changes.filter(({ kind }) => kind === 'came').map(({ text }) => text);
      expect(one.length - took.length).toBe(other.length - gave.length);
      expect([...one].sort().join()).toBe([...rest(other, gave), ...took].sort().join());
      expect(changedLines(one, one)).toEqual([]);
    }),
  );
});

function rest(all: readonly string[], without: readonly string[]): string[] {
  const left = [...all];
  for (const one of without) left.splice(left.indexOf(one), 1);
  return left;
}
