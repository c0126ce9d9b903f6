// Laws of changes by hand over the plays of the example playbook: what is written reads back as it was meant, and nothing else moves.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineText, openFile, emptyBook } from '../../language/book/book.ts';
import { intentOn, type Compiled } from '../../language/compile.ts';
import { createKeeper } from '../../language/keeper.ts';
import { distance } from '../../language/court/point.ts';
import { applyBlockEdits } from '../../language/edit/apply-edits.ts';
import type { Intent } from '../../language/edit/intent.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { resolvePlace } from '../../language/play/places.ts';
import type { Action, Play, PlayerNumber } from '../../language/play/play.ts';
import { inEnglish } from '../../language/message/message.ts';

const files = ['lighthouse', 'harbour', 'quick', 'last-shot', 'baseline', 'sideline', 'press-and-zone', 'beginners'];
const uri = (name: string) => `file:///${name}.play`;
const keeper = createKeeper();
const book = ['alignments', ...files].reduce((read, name) => openFile(read, uri(name), readFileSync(`examples/${name}.play`, 'utf8')), emptyBook);
const all = files.flatMap((name) => keeper.playsOf(book, uri(name)).map((compiled) => ({ name, compiled })));

const point = fc.record({ x: fc.double({ min: -7, max: 7, noNaN: true }), y: fc.double({ min: -1, max: 10, noNaN: true }) });
const number = fc.constantFrom<PlayerNumber>(1, 2, 3, 4, 5);
const actionsOf = (play: Play): readonly Action[] => play.steps.flatMap((step) => [...step.actions, ...step.looks.flatMap(({ tail }) => tail)]);
const intentFor = ({ play }: Compiled): fc.Arbitrary<Intent> => {
  const action = fc.constantFrom(...actionsOf(play).map(({ id }) => id));
  const step = fc.constantFrom(...play.steps.map(({ key }) => key));
  return fc.oneof(
    fc.record({ kind: fc.constant('move-start' as const), player: number, to: point }),
    fc.record({ kind: fc.constantFrom('move-end' as const, 'move-screen' as const, 'add-via' as const), action, to: point }),
    fc.record({ kind: fc.constant('move-via' as const), action, via: fc.nat(1), to: point }),
    fc.record({ kind: fc.constant('set-wait' as const), action, seconds: fc.double({ min: 0, max: 6, noNaN: true }) }),
    fc.record({ kind: fc.constant('add-cut' as const), player: number, step, to: point }),
    fc.record({ kind: fc.constant('add-pass' as const), from: number, to: number, step }),
    fc.record({ kind: fc.constant('swap' as const), a: number, b: number }),
  );
};
const change = fc.nat(all.length - 1).chain((which) => intentFor(all[which]!.compiled).map((intent) => ({ which, intent })));

function after(name: string, compiled: Compiled, lines: readonly string[]): Compiled {
  const source = book.files.get(uri(name))!.blocks.map((block) => (block.key === compiled.key ? `${lines.join('\n')}\n` : block.lines.map((line) => lineText(line) + line.eol).join(''))).join('');
  const again = openFile(book, uri(name), source);
  return createKeeper().playsOf(again, uri(name)).find(({ key }) => key === compiled.key)!;
}

/** What a player's line says, without where it stands. */
const said = ({ line: _line, link: _link, origin: _origin, ...rest }: Action): unknown => rest;

function aims({ play, court }: Compiled, intent: Intent): readonly { readonly x: number; readonly y: number }[] {
  const there = (place: Parameters<typeof resolvePlace>[0], who: Action['who']) => resolvePlace(place, { court, positions: {}, who, spots: play.spots });
  switch (intent.kind) {
    case 'move-start':
      return [there(play.start.places[intent.player].value, `${intent.player}`)];
    case 'move-end':
    case 'move-screen':
    case 'move-via':
    case 'add-via':
      return actionsOf(play).filter(({ id }) => id === intent.action).flatMap((action) => {
        if ((intent.kind === 'move-via' || intent.kind === 'add-via') && (action.kind === 'move' || action.kind === 'dribble')) return action.via.map((via) => there(via, action.who));
        const end = action.kind === 'screen' ? action.at : action.kind === 'move' || action.kind === 'dribble' || action.kind === 'defend' ? action.to : undefined;
        return end === undefined ? [] : [there(end.value, action.who)];
      });
    default:
      return [];
  }
}

describe('a change by hand in any play of the book', () => {
  test('is refused in a sentence, or its words read back to where the hand was, and all other players do as before', () => {
    let made = 0;
    fc.assert(
      fc.property(change, ({ which, intent }) => {
        const { name, compiled } = all[which]!;
        const outcome = intentOn(compiled, createLookup(book, uri(name)), intent);
        if ('refused' in outcome) {
          expect(inEnglish(outcome.refused)).toMatch(/^[^\n]{10,}\.$/);
          return;
        }
        if (outcome.edits.length === 0) return;
        made++;
        const now = after(name, compiled, applyBlockEdits(compiled.block.lines.map(lineText), outcome.edits));
        if ('to' in intent && typeof intent.to === 'object' && intent.kind !== 'add-cut') {
          const nearest = Math.min(...aims(now, intent).map((aim) => distance(aim, intent.to as { x: number; y: number })));
          expect(nearest, JSON.stringify(outcome)).toBeLessThanOrEqual(0.21);
        }
        const touched = 'action' in intent ? intent.action : '';
        const others = ({ play }: Compiled) => play.steps.flatMap((step) => step.actions).filter(({ id, origin }) => id !== touched && origin !== 'copied').map(said);
        const before = others(compiled);
        const rest = others(now);
        if (intent.kind === 'add-cut' || intent.kind === 'add-pass') {
          expect(rest).toHaveLength(before.length + 1);
          expect(rest).toEqual(expect.arrayContaining([...before]));
        } else expect(rest).toEqual(before);
        expect(now.reading.problems.length).toBeLessThanOrEqual(compiled.reading.problems.length);
      }),
      { numRuns: 250 },
    );
    // A law that is never put to the test would hold.
    expect(made).toBeGreaterThan(60);
  });

  test('no more lines change than the hand has touched', () => {
    fc.assert(
      fc.property(change, ({ which, intent }) => {
        const { name, compiled } = all[which]!;
        const outcome = intentOn(compiled, createLookup(book, uri(name)), intent);
        if (!('refused' in outcome)) expect(new Set(outcome.edits.map(({ line }) => line)).size).toBeLessThanOrEqual(1);
      }),
      { numRuns: 150 },
    );
  });

  test('to the other side and back again is the same play, with every remark', () => {
    const turned = (name: string, compiled: Compiled): readonly string[] | undefined => {
      const outcome = intentOn(compiled, createLookup(book, uri(name)), { kind: 'mirror' });
      return 'refused' in outcome ? undefined : applyBlockEdits(compiled.block.lines.map(lineText), outcome.edits);
    };
    const remarks = (lines: readonly string[]) => lines.flatMap((line) => /#.*$/.exec(line)?.[0] ?? []);
    let made = 0;
    for (const { name, compiled } of all) {
      const once = turned(name, compiled);
      if (once === undefined) continue;
      const there = after(name, compiled, once);
      const twice = turned(name, there);
      expect(twice, compiled.play.name).toBeDefined();
      const back = after(name, compiled, twice!);
      expect(remarks(once), compiled.play.name).toEqual(remarks(compiled.block.lines.map(lineText)));
      expect(there.timeline.times, `${compiled.play.name} takes the same time`).toEqual(compiled.timeline.times);
      expect(JSON.stringify(back.play), compiled.play.name).toBe(JSON.stringify(compiled.play));
      made++;
    }
    expect(made).toBeGreaterThan(10);
  });

  test('on a line that cannot be read is refused', () => {
    for (const { name, compiled } of all.slice(0, 12)) {
      const [action] = compiled.play.steps[0]!.actions;
      const place = action && compiled.places.get(action.id);
      if (action === undefined || place === undefined || action.origin !== 'written') continue;
      const lines = compiled.block.lines.map(lineText);
      const torn = after(name, compiled, lines.with(place.line, `${lines[place.line]} unless 5`));
      for (const intent of [{ kind: 'move-end', action: action.id, to: { x: 0, y: 5 } }, { kind: 'set-wait', action: action.id, seconds: 1 }] as const) {
        const outcome = intentOn(torn, createLookup(book, uri(name)), intent);
        const same = torn.play.steps[0]!.actions.some(({ id }) => id === action.id && torn.places.get(id)?.line === place.line);
        if (same) expect(outcome).toEqual({ refused: expect.objectContaining({ template: expect.stringMatching(/cannot be read/) }) });
      }
    }
  });
});
