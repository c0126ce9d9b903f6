import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editFile, textOf } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import type { Action, Play } from '../../language/play/play.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { runThroughs } from '../../language/play/run-throughs.ts';
import { bookOf, lighthouse, playBlock, read, uri, wordsAt } from './reading.ts';

const lines = lighthouse.split('\n');
const firstPlayLine = lines.indexOf('play "Lighthouse"');

/** Everything a play says, without what a reading numbers anew when a line above goes: ids by the words of their place. */
function actionsById(play: Play): Map<string, Action> {
  return new Map(play.steps.flatMap(step => [...step.actions, ...step.looks.flatMap(look => look.tail)]).map(action => [action.id, action]));
}

describe('Lighthouse, the sample of the notation', () => {
  it('reads without a problem, and reads the same as ever', () => {
    const { play, problems } = read(lighthouse);
    expect(problems).toEqual([]);
    expect(play).toMatchSnapshot();
  });

  it('puts every part where its words stand', () => {
    const { places } = read(lighthouse);
    expect([...places].map(([part, { line, at, to }]) => `${part} ${line}:${at}-${to} ${lines[firstPlayLine + line]!.slice(at, to)}`)).toMatchSnapshot();
  });

  it('has a place for every part the play speaks of', () => {
    const { play, places } = read(lighthouse);
    for (const step of play.steps) {
      expect(places.has(step.key)).toBe(true);
      for (const action of [...step.actions, ...step.looks.flatMap(look => look.tail)]) {
        expect(places.has(action.id)).toBe(true);
        expect(places.has(action.line)).toBe(true);
      }
      for (const look of step.looks) expect(places.has(look.id)).toBe(true);
    }
    for (const part of ['play', 'level', 'rules', 'tags', 'from', 'ball', 'against', 'call', 'window', 'leave', 'situation', 'from#1', 'from#5', 'rebound', 'middle?4.1#pin']) expect(places.has(part)).toBe(true);
    expect(wordsAt(lighthouse, read(lighthouse), 'zip/3.1#to')).toBe('top');
    expect(wordsAt(lighthouse, read(lighthouse), 'middle/4.2#to')).toBe('');
  });

  it('is plain data that survives being sent', () => {
    const { play } = read(lighthouse);
    expect(JSON.parse(JSON.stringify(play))).toEqual(play);
  });

  it('has a run-through to each look, in the order of the text', () => {
    expect(runThroughs(read(lighthouse).play)).toEqual([
      { id: 'middle?3.1', steps: ['zip', 'middle'], look: 'middle?3.1' },
      { id: 'middle?4.1', steps: ['zip', 'middle'], look: 'middle?4.1' },
      { id: 'middle?2.1', steps: ['zip', 'middle'], look: 'middle?2.1' },
      { id: 'slip?4.1', steps: ['zip', 'slip'], look: 'slip?4.1' },
    ]);
  });

  it('is the same play in a file with other line ends, in capitals, and further down', () => {
    const { play, places } = read(lighthouse);
    expect(read(lighthouse.replaceAll('\n', '\r\n')).play).toEqual(play);
    expect(read(`# Mañana 🏀\nplay "Other"\n  1 drives\n\n${lighthouse.replace('notation 1\n', '')}`, 'Lighthouse').play.steps).toEqual(play.steps);
    expect(read(`# one\n\n# two\n${lighthouse}`).places).toEqual(places);
    const shouted = lighthouse.replace(/^ +(?!#).*$/gm, line => line.replace(/"[^"]*"|[a-z]+/g, word => (word.startsWith('"') ? word : word.toUpperCase())));
    expect(read(shouted).play.steps.map(step => step.actions)).toEqual(play.steps.map(step => step.actions));
  });

  it('keeps its ids when lines for other men are put in', () => {
    const before = actionsById(read(lighthouse).play);
    const changed = lighthouse
      .replace('    5 screens down for 3\n', '    4 lifts\n    5 screens down for 3\n')
      .replace('    1 passes to 3\n    4 ball', '    2 drifts\n    1 passes to 3\n    4 ball');
    const after = actionsById(read(changed).play);
    for (const [id, action] of before) expect({ ...after.get(id), line: '' }).toEqual({ ...action, line: '' });
  });

  it('loses only a line that is replaced by garbage', () => {
    const whole = read(lighthouse);
    const garbage = fc.oneof(fc.constantFrom('3 flies to the moon', '???', '3 cuts off', 'look', '5 screens dwon for 3', '"', '1 passes to 9'), fc.string({ minLength: 1, maxLength: 20 }));
    // Openers and headers are tried below: a lost opener takes its block along, a lost header its value.
    const inSteps = whole.lines.flatMap((line, index) => (line.kind === 'action' || line.kind === 'look' ? [index] : []));
    fc.assert(
      fc.property(fc.constantFrom(...inSteps), garbage, (index, words) => {
        const text = [...lines];
        text[firstPlayLine + index] = `    # ${words}`.includes('\n') || /[\r\n]/.test(words) ? '    ???' : `    ${words}`;
        const reading = read(text.join('\n'));
        const kind = reading.lines[index]?.kind;
        if (kind !== 'broken') return;
        const lost = new Set(whole.lines[index]!.actions);
        const here = actionsById(reading.play);
        for (const [id, action] of actionsById(whole.play)) {
          if (lost.has(id)) continue;
          // A later link of the same man in the step counts down; who passes to a looker hangs on the pass that is gone.
          const moved = action.origin === 'derived' || [...lost].some(gone => gone.split('.')[0] === id.split('.')[0]);
          if (moved || action.step === 'slip') continue;
          // Behind a look a pass to the looker may come first now.
          const link = id.includes('?') ? here.get(id)?.link : action.link;
          expect(here.get(id)).toEqual({ ...action, link });
        }
        expect(reading.play.steps.map(step => step.key)).toEqual(whole.play.steps.map(step => step.key));
        expect({ ...reading.play, steps: [] }).toEqual({ ...whole.play, steps: [] });
      }),
      { numRuns: 120 },
    );
  });

  it('keeps a step whose opening line is broken', () => {
    const { play, lines: meanings } = read(lighthouse.replace('step "Middle"', 'step "Middle" afer'));
    expect(play.steps.map(step => step.key)).toEqual(['zip', 'middle', 'slip']);
    expect(meanings.some(line => line.kind === 'broken' && line.step === 'middle')).toBe(true);
    expect(read(lighthouse.replace('step "Middle"', 'step')).play.steps.map(step => step.name)).toEqual(['Zip', 'unnamed 1']);
  });

  it('reads the same after an edit as from the start', () => {
    const book = bookOf(lighthouse);
    const edited = editFile(book, uri, [{ range: { start: { line: firstPlayLine + 11, character: 0 }, end: { line: firstPlayLine + 11, character: 99 } }, text: '    5 screens for 3 at left elbow' }]);
    const after = readPlay(playBlock(edited), createLookup(edited, uri));
    expect(after).toEqual(read(textOf(edited.files.get(uri)!)));
  });
});

describe('no text is too strange', () => {
  const anything = fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ unit: 'grapheme', maxLength: 200 }));

  it('any text gives a play', () => {
    fc.assert(
      fc.property(anything, text => {
        const { play } = read(`play ${text}`);
        expect(Object.keys(play.start.places)).toHaveLength(5);
        runThroughs(play);
      }),
      { numRuns: 150 },
    );
  });

  it('a play with words moved, doubled and lost gives a play whose parts have places', () => {
    const more = '\n  step "More" again from "Zip" with 3 as 1, 1 as 3, up to 2 times\n    2 and 3 cut to the wings, both hold\n  step "Run" repeats "Zip", "Middle" 2 times\n  once 4 is set, 3 inbounds to 2 from the left sideline\n';
    const words = (lighthouse + more).split(/(\s+)/);
    const change = fc.record({ at: fc.nat(words.length - 1), other: fc.nat(words.length - 1), how: fc.constantFrom('swap', 'lose', 'double') });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), changes => {
        const mixed = [...words];
        for (const { at, other, how } of changes) {
          if (how === 'lose') mixed[at] = '';
          if (how === 'double') mixed[at] = `${mixed[at]} ${mixed[at]}`;
          if (how === 'swap') [mixed[at], mixed[other]] = [mixed[other]!, mixed[at]!];
        }
        const text = `play "x"\n${mixed.join('').replaceAll('play', 'step')}`;
        const { play, places, problems } = read(text);
        for (const step of play.steps) for (const action of step.actions) expect(places.has(action.id)).toBe(true);
        for (const problem of problems) expect(places.has(problem.part)).toBe(true);
        const ids = play.steps.flatMap(step => [...step.actions, ...step.looks.flatMap(look => look.tail)]).map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { numRuns: 200 },
    );
  });

  it('keeps accents and emoji in names', () => {
    const { play } = read('play "Fête 🏀 n.º 1"\n  step "Señal ✋"\n    look 2 "café": three');
    expect(play.name).toBe('Fête 🏀 n.º 1');
    expect(play.key).toBe('play:fête-🏀-n-º-1');
    expect(play.steps[0]).toMatchObject({ key: 'señal-✋', name: 'Señal ✋', looks: [{ label: 'café' }] });
  });
});
