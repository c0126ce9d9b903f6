import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courtOf } from '../../language/court/court.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import { drawSvg, paintOf } from '../../language/picture/draw.ts';
import { escapeText } from '../../language/picture/nodes.ts';
import { palettes } from '../../language/picture/palette.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { stripFrames } from '../../language/picture/frames.ts';
import { inEnglish } from '../../language/message/message.ts';
import { sayCall } from '../../language/words/say-call.ts';
import { drawPlay, drawStrip } from '../../language/picture/strip.ts';
import { viewOf } from '../../language/picture/view.ts';
import { drawWay, waysOf, type Way } from '../../language/picture/ways.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { compileText } from '../checks/compiled.ts';
import { anyPlayback } from '../support/any-playback.ts';
import { examplePlaybacks } from '../support/examples.ts';
import { hostile, lighthouse } from '../support/playback-fixture.ts';

describe('a moment as a picture', () => {
  it('the drive off the screen, as SVG', async () => {
    await expect(drawSvg(sceneAt(lighthouse, 0, 8700))).toMatchFileSnapshot('golden/drive.svg');
  });
  it('the look taken, black on white', async () => {
    await expect(drawSvg(sceneAt(lighthouse, 'middle?4.1', 10_600), 'print')).toMatchFileSnapshot('golden/roll-print.svg');
  });
  it('the counter in the dark', async () => {
    await expect(drawSvg(sceneAt(lighthouse, 'slip?4.1', 9000), 'dark')).toMatchFileSnapshot('golden/slip-dark.svg');
  });

  it('the same moment gives the same bytes', () => {
    fc.assert(fc.property(anyPlayback, fc.nat(20_000), (playback, t) => drawSvg(sceneAt(playback, 0, t)) === drawSvg(sceneAt(structuredClone(playback), 0, t))), { numRuns: 40 });
  });

  it('nothing in it is half a number', () => {
    fc.assert(fc.property(anyPlayback, fc.nat(20_000), (playback, t) => !/NaN|Infinity|undefined|\de-?\d/.test(drawSvg(sceneAt(playback, 0, t)))), { numRuns: 60 });
  });

  it('left is left: a man on the left wing is drawn left of the basket, the basket above', () => {
    const one = sceneAt(lighthouse, 0, 6000).bodies.find(({ id }) => id === '1')!;
    expect(one.x).toBeLessThan(0);
    expect(one.y).toBeGreaterThan(0);
  });

  it('the man with the ball is the only one with a second ring', () => {
    const rings = sceneAt(lighthouse, 0, 8700).bodies.filter(({ hasBall }) => hasBall);
    expect(rings.map(({ id }) => id)).toEqual(['3']);
  });

  it('shows the step that is run, and the next one only once somebody is under way', () => {
    const steps = (t: number) => new Set(sceneAt(lighthouse, 0, t).ways.map(({ way }) => way.step));
    expect(steps(3000)).toEqual(new Set(['zip']));
    expect(steps(9000)).toEqual(new Set(['middle']));
  });

  it('says how each way is covered', () => {
    const kinds = Object.fromEntries(waysOf(lighthouse.runs[0]!).map(({ part, kind }) => [part, kind]));
    expect(kinds).toMatchObject({ 'zip/1.1': 'dribble', 'zip/3.1': 'cut', 'zip/5.1': 'screen', 'middle/1.1': 'pass', 'middle?3.1/3.1': 'shot' });
  });

  it.each(ruleSets.map((rules) => [rules.id, rules] as const))('draws the floor of %s, half and whole', (id, rules) => {
    const court = courtOf(rules);
    const half = { ...lighthouse, court };
    const start = { x: 0, y: court.halfLineY + 6 };
    const whole = { ...half, runs: [{ ...half.runs[0]!, tracks: { ...half.runs[0]!.tracks, 1: { start, segments: [] } } }] };
    expect(viewOf(half).full).toBe(false);
    expect(viewOf(whole).full).toBe(true);
    const svg = drawSvg(sceneAt(whole, 0, 0));
    expect(svg.match(/class="ring"/g)).toHaveLength(2);
    // Boards and rings at both ends, a three-point line where there is one.
    expect((svg.match(/class="line" d="M-?[\d.]+ -?[\d.]+V-?[\d.]+A/g) ?? []).length).toBe(id === 'mini' ? (court.restrictedRadius === undefined ? 0 : 2) : court.restrictedRadius === undefined ? 2 : 4);
  });

  it('every text stays text', () => {
    for (const text of ['<img src=x onerror="window.hacked=1">', `"><script>alert(1)</script>`, "' onload='x", 'a & b \u0000 c']) {
      for (const svg of [drawSvg(sceneAt(hostile(text), 0, 10_000)), drawStrip(hostile(text), 2), drawPlay(hostile(text))]) {
        expect(svg).not.toMatch(/<(img|script)/);
        expect(svg).not.toMatch(/ on\w+="/);
        expect(svg).not.toContain('\u0000');
      }
    }
    expect(escapeText('<&">\'')).toBe('&lt;&amp;&quot;&gt;&#39;');
  });
});

const textsOf = (svg: string): readonly string[] => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, words]) => words!);

/** The lines between a drawing's name and its first frame. */
const headOf = (svg: string): readonly string[] => textsOf(svg.slice(0, svg.indexOf('>1 · '))).slice(1);

describe('the printed strip', () => {
  it('one frame a step, as SVG', async () => {
    await expect(drawStrip(lighthouse, 0)).toMatchFileSnapshot('golden/strip.svg');
  });

  it('of a whole play: every step, the counter too, and when to call it', async () => {
    const svg = drawPlay(lighthouse);
    await expect(svg).toMatchFileSnapshot('golden/play.svg');
    expect(textsOf(svg)).toEqual(expect.arrayContaining(['1 · Zip', '2 · Middle', '3 · Slip', 'when X4 shows on 3', '1. pull-up', '2. on the roll', ...sayCall(lighthouse.times).map(inEnglish)]));
  });

  it('opened as a file it fits into a window, with its own proportions', () => {
    const [, left, top, wide, high, width, height] = /viewBox="(\S+) (\S+) (\S+) (\S+)" width="(\d+)" height="(\d+)"/.exec(drawPlay(lighthouse))!.map(Number);
    expect([left, top]).toEqual([0, 0]);
    expect(width).toBeLessThanOrEqual(1600);
    expect(width! / height!).toBeCloseTo(wide! / high!, 1);
  });

  it('of a play that has no step yet: how they stand, who has the ball, and no step', () => {
    const [standing] = compileText('play "Tide"\n  from horns, ball with 3\n').plays;
    const svg = drawPlay(playbackOf(standing!));
    expect(textsOf(svg)).toEqual(['Tide', '1', '2', '3', '4', '5', '1', 'has the ball']);
    expect(svg).toMatch(/<circle[^>]*\/><text[^>]*>3</);
    const way = drawStrip(playbackOf(standing!), 0);
    expect(textsOf(way)).toEqual(expect.arrayContaining(['1', '2', '3', '4', '5']));
    expect(way).toMatch(/<circle[^>]*\/><text[^>]*>3</);
  });

  it('of a whole play in one column, what is told at its head breaks into lines and loses no word', () => {
    const lines = headOf(drawPlay(lighthouse, { columns: 1 }));
    expect(lines.length).toBeGreaterThan(sayCall(lighthouse.times).length);
    expect(lines.join(' ')).toBe(sayCall(lighthouse.times).map(inEnglish).join(' '));
    for (const line of lines) expect(line).not.toMatch(/^s\b|…$/);
  });

  it('of a play with a long name has the whole of it, in as many lines as it takes', () => {
    const name = 'The very long name of a play that somebody wrote down after a tournament in the rain';
    const svg = drawPlay({ ...lighthouse, play: { ...lighthouse.play, name } }, { columns: 1 });
    const all = textsOf(svg.slice(0, svg.indexOf('>1 · ')));
    expect(all.join(' ')).toContain(name);
    expect(all.filter((line) => name.includes(line)).length).toBeGreaterThan(1);
  });

  it('of a whole play speaks the language of the editor', () => {
    expect(textsOf(drawPlay(lighthouse, { say: (words) => `«${inEnglish(words)}»` }))).toContain('«a cut»');
  });

  it('the counter with its defenders', async () => {
    await expect(drawStrip(lighthouse, 'slip?4.1', { defence: true })).toMatchFileSnapshot('golden/strip-counter.svg');
  });

  it('players stand where the step finds them, with the ball where it is then', () => {
    const [zip, middle] = stripFrames(lighthouse, 0);
    expect(zip!.bodies.find(({ id }) => id === '1')!.at).toEqual([40, 840]);
    expect(zip!.carrier).toBe('1');
    expect(middle!.bodies.find(({ id }) => id === '1')!.at.map(Math.round)).toEqual([-460, 630]);
    expect(middle!.carrier).toBe('1');
  });

  it('a counter says when it is run', () => {
    expect(stripFrames(lighthouse, 'slip?4.1')[1]).toMatchObject({ title: 'Slip', caption: 'X4 shows on 3' });
    expect(textsOf(drawStrip(lighthouse, 'slip?4.1'))).toContain('when X4 shows on 3');
  });

  it('a way out and back shows both, with its arrow beside the man', () => {
    const back: Way = { part: 'x/3.1', kind: 'cut', who: '3', step: 'x', t0: 0, t1: 1, points: [[-600, 430], [-360, 260], [-600, 430]] };
    const [shaft, head] = drawWay(back, paintOf(palettes.print), { start: 50, end: 54, bodyAtEnd: false });
    const [from, turn, to] = String(shaft!.attrs.d).slice(1).split('L').map((pair) => pair.split(' ').map(Number) as [number, number]);
    const [dx, dy] = [turn![0] - from![0], turn![1] - from![1]];
    expect(Math.abs(dx * (to![1] - from![1]) - dy * (to![0] - from![0])) / Math.hypot(dx, dy)).toBeGreaterThan(15);
    const tip = /M(-?[\d.]+) (-?[\d.]+)/.exec(String(head!.attrs.d))!.slice(1).map(Number) as [number, number];
    expect(Math.hypot(tip[0] + 600, tip[1] - 430)).toBeGreaterThan(50);
  });

  it('a short dribble swings too: a plain line would be a cut', () => {
    const step: Way = { part: 'x/3.1', kind: 'dribble', who: '3', step: 'x', t0: 0, t1: 1, points: [[0, 0], [75, 0]] };
    const [line] = drawWay(step, paintOf(palettes.print), { start: 0, end: 0, bodyAtEnd: false });
    expect(line!.attrs.d).toMatch(/ -?1\d(\.\d)?L/);
  });

  it('a finish at the ring has no arrow of its own, and the key does not speak of one', () => {
    const near: Way = { part: 'x/4.1', kind: 'shot', who: '4', step: 'x', t0: 0, t1: 1, points: [[30, 90], [0, 0]] };
    expect(drawWay(near, paintOf(palettes.print))).toEqual([]);
    expect(drawWay({ ...near, points: [[30, 400], [0, 0]] }, paintOf(palettes.print))).toHaveLength(3);
  });

  it('uses black, white and grey only', () => {
    const colours = new Set(drawStrip(lighthouse, 0).match(/#[0-9a-f]{6}/g));
    for (const colour of colours) expect(colour.slice(1, 3) === colour.slice(3, 5) && colour.slice(3, 5) === colour.slice(5, 7)).toBe(true);
  });

  it('says which play it is, and which way through it', () => {
    for (const words of [lighthouse.play.name, escapeText(lighthouse.runs[0]!.label)]) expect(drawStrip(lighthouse, 0)).toContain(`>${words}</text>`);
  });

  it('the key does not name a line that is too short to be drawn', () => {
    const skiff = examplePlaybacks().find(({ play }) => play.name === 'Skiff')!;
    // He takes the hand-off a step from where he stands.
    expect(waysOf(skiff.runs[0]!).map(({ kind }) => kind)).toContain('cut');
    expect(drawStrip(skiff, 0)).not.toContain('>a cut<');
  });

  it('the key names what the frames use', () => {
    const key = drawStrip(lighthouse, 0);
    for (const word of ['a cut', 'a dribble', 'a pass', 'a screen', 'a shot', 'has the ball']) expect(key).toContain(`>${word}<`);
    expect(key).not.toContain('>a hand-off<');
  });
});

describe('colours', () => {
  const luminance = (hex: string) => {
    const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  };
  const contrast = (a: string, b: string) => {
    const [high, low] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
    return (high! + 0.05) / (low! + 0.05);
  };
  // WCAG 2.2, 1.4.3 (text 4.5 to 1) and 1.4.11 (graphics 3 to 1).
  it.each(Object.entries(palettes))('%s: numbers and labels can be read, bodies and lines be seen', (_, palette) => {
    for (const [ink, ground] of [[palette.offenceInk, palette.offence], [palette.lookInk, palette.look], [palette.problemInk, palette.problem], [palette.defence, palette.floor], [palette.defence, palette.paint], [palette.ink, palette.out], [palette.muted, palette.out]] as const) {
      expect(contrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
    }
    for (const part of [palette.offence, palette.way, palette.look, palette.problem, palette.ring, palette.line]) expect(Math.min(contrast(part, palette.floor), contrast(part, palette.paint))).toBeGreaterThanOrEqual(3);
  });

  it('the player’s style sheet has the colours of the picture, light and dark', () => {
    const css = readFileSync('client/preview/theme.css', 'utf8');
    const [first, dim] = [css.slice(0, css.indexOf('@media')), css.slice(css.indexOf('@media'), css.indexOf('body.panel'))];
    const names = { floor: 'floor', paint: 'paint', line: 'court-line', ring: 'ring', offence: 'offence', offenceInk: 'offence-ink', defence: 'defence', ball: 'ball', ballEdge: 'ball-edge', way: 'way', look: 'look', lookInk: 'look-ink', problem: 'problem', problemInk: 'problem-ink' } as const;
    for (const [sheet, palette] of [[first, palettes.light], [dim, palettes.dark]] as const) {
      for (const [part, name] of Object.entries(names)) expect(sheet).toContain(`--${name}: ${palette[part as keyof typeof names]};`);
    }
  });
});
