// A play to begin with: what it can start from, and a text that moves at once and has nothing wrong.
import type { Book, BookFile } from '../../language/book/book.ts';
import { isInSpacing } from '../../language/checks/idle-player.ts';
import { alignment, alignmentNames, alignmentPoints, type PlayerNumber } from '../../language/court/alignments.ts';
import { courtOf } from '../../language/court/court.ts';
import { distance, type Point } from '../../language/court/point.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { spotPoint, type SpotName } from '../../language/court/spots.ts';
import { levelIds } from '../../language/court/youth.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { fileSettingsOf } from '../../language/names/file-settings.ts';
import { usedUris } from '../../language/names/lookup.ts';
import { sayRoughly } from '../../language/words/say-place.ts';
import type { Choices, NewPlay } from './playbook-protocol.ts';

const usualCourt = courtOf(ruleSet('fiba'));
/** As the notation writes them behind `against`; a press is learnt from the manual. */
const defences = ['man', '2-3', '3-2', '1-3-1'] as const;

export function newPlayChoices(book: Book, uri: string | undefined): Choices {
  const file = uri === undefined ? undefined : book.files.get(uri);
  const own = file === undefined ? [] : ownAlignments(book, file);
  const known = alignmentNames.filter(isWritten).map((name) => ({ name, places: placesIn(name), own: false }));
  // 1 throws in, the four on the floor stand in a box.
  const throwIns = (['sideline', 'baseline'] as const).map((throwIn) => ({ name: 'box', places: `1 left ${throwIn}, ${placesIn('box', 1)}`, own: false, throwIn }));
  return {
    alignments: [...own.map((name) => ({ name, places: '', own: true })), ...known, ...throwIns],
    levels: usualFirst(book, file),
    defences: [...defences],
    levelSaid: fileSettingsOf(file?.blocks[0]).level !== undefined,
    taken: (file?.blocks ?? []).flatMap(({ kind, name }) => (kind === 'play' && name !== undefined ? [name] : [])),
  };
}

/** What the file says, or most files of the playbook do, stands where Enter takes it; then from the youngest on. */
function usualFirst(book: Book, file: BookFile | undefined): string[] {
  const said = [...book.files.values()].flatMap(({ blocks }) => fileSettingsOf(blocks[0]).level ?? []);
  const times = (level: string): number => said.filter((one) => one === level).length;
  const usual = fileSettingsOf(file?.blocks[0]).level ?? levelIds.toSorted((a, b) => times(b) - times(a))[0]!;
  return [usual, ...levelIds.filter((level) => level !== usual)];
}

/** `1 top, 2 right block, 3 above left elbow, …`: in one line of a list. */
function placesIn(name: string, thrower?: PlayerNumber): string {
  const points = [...(alignmentPoints(usualCourt, name, thrower && { thrower }) ?? [])];
  return points.map(([player, point]) => `${player} ${sayRoughly(usualCourt, point)}`).join(', ');
}

/** Whether the notation reads the name as it stands. */
const isWritten = (name: string): boolean => parseLine(`from ${name}`).fault === undefined;

function ownAlignments(book: Book, file: BookFile): readonly string[] {
  const reached = new Set([file]);
  for (const each of reached) {
    for (const { uri } of usedUris(each)) {
      const used = book.files.get(uri);
      if (used !== undefined) reached.add(used);
    }
  }
  const names = [...reached].flatMap(({ blocks }) => blocks.flatMap(({ kind, name }) => (kind === 'alignment' && name !== undefined ? [name] : [])));
  return [...new Set(names)];
}

/** Text with `\n` at every line's end. A play that is added to a file begins with a blank line. */
export function newPlayText({ as, name, alignment: start, throwIn, against, level, team }: NewPlay): string {
  const called = quotable(name) || 'First light';
  const withoutScreens = level === 'u10' || level === 'u12' || against !== 'man';
  const lines = [
    `play ${quoted(called)}`,
    ...(as === 'play' && level !== undefined && isLevel(level) ? [`  level ${level}`] : []),
    ...(throwIn === undefined ? startLines(start) : ['  from box', `  1 inbounds from the left ${throwIn}`]),
    `  against ${defences.find((one) => one === against) ?? 'man'}`,
    '',
    ...(throwIn !== undefined ? ['  step "Throw-in"', ...throwInLines(throwIn, withoutScreens)] : withoutScreens ? giveAndGo(start) : ballScreen(start)),
  ];
  if (as === 'play') return ['', ...lines, ''].join('\n');
  const header = ['notation 1', `level ${level !== undefined && isLevel(level) ? level : 'u14'}`];
  if (as === 'file') return [...header, '', ...lines, ''].join('\n');
  const book = [`book ${quoted(quotable(team ?? '') || 'Our playbook')}`, `  section "First plays": ${quoted(called)}`];
  return [...header, '', '# The plays in the order they lie on the bench. Write the name of a new play into a section.', ...book, '', ...lines, ''].join('\n');
}

function startLines(start: string): readonly string[] {
  return [`  from ${alignment(start) === undefined ? quoted(quotable(start) || 'box') : start}, ball with 1`, ...(atTheRing(start) === undefined ? [] : ['  already set'])];
}

/** A screen for the shooter, then its roll; without screens the thrower, whom nobody watches. */
function throwInLines(from: 'sideline' | 'baseline', withoutScreens: boolean): readonly string[] {
  const lines = {
    sideline: ['3 cuts to left corner', '2 cuts to top', '1 inbounds to 2', '5 screens for 4, then rolls', '4 cuts off 5 to right corner', '1 steps in to left wing', 'look 4 "shooter": jumper', 'look 5 on the roll: layup'],
    baseline: ['2 clears to top', '5 clears to left wing', '4 screens for 3, then rolls', '3 cuts off 4 to right corner', '1 inbounds to 3', '1 steps in to left corner', 'look 3 "shooter": jumper', 'look 4 on the roll: layup'],
  };
  const withoutAny = {
    sideline: ['5 clears to left corner', '4 clears to right corner', '3 clears to right wing', '2 cuts to top', '1 inbounds to 2'],
    baseline: ['5 clears to left corner', '4 clears to right corner', '2 clears to right wing', '3 cuts to left wing', '1 inbounds to 3'],
  };
  return (withoutScreens ? [...withoutAny[from], '1 steps in and cuts to rim', 'look 1 "thrower": bounce-pass, layup'] : lines[from]).map((line) => `    ${line}`);
}

function ballScreen(start: string): readonly string[] {
  return [
    '  step "Screen"',
    ...makeRoom(start, [1, 5]),
    '    5 ball-screens for 1, then rolls',
    `    1 drives off 5 to ${['right elbow', 'left elbow', 'nail'].find((spot) => isFree(start, spot)) ?? 'nail'}`,
    '    look 1 "pull-up": jumper',
    '    look 5 on the roll: layup',
  ];
}

/** No screens for the youngest, and none is needed against a zone. */
function giveAndGo(start: string): readonly string[] {
  return ['  step "Give and go"', ...makeRoom(start, [1, nearestTo1(start)]), ...comeNearer(start), `    1 passes to ${nearestTo1(start)}`, '    1 cuts to rim', '    look 1 "go": bounce-pass, layup'];
}

/** From further out than a wing a young player does not reach the ring with his pass back. */
function comeNearer(start: string): readonly string[] {
  const player = nearestTo1(start);
  const point = startPoints(start).get(player);
  return point === undefined || distance(point, usualCourt.ring) < 8 ? [] : [`    ${player} cuts to ${point.x < 0 ? 'left' : 'right'} wing`];
}

/** A young player does not throw far. Of an alignment of his own we do not know who is near. */
function nearestTo1(start: string): PlayerNumber {
  const points = startPoints(start);
  const from = points.get(1);
  if (from === undefined) return 2;
  const others = [...points].filter(([player]) => player !== 1 && player !== atTheRing(start));
  return others.reduce<readonly [PlayerNumber, number]>((best, [player, point]) => (distance(point, from) < best[1] ? [player, distance(point, from)] : best), [2, Infinity])[0];
}

/**
 * Who has nothing to do and stands in the way goes where he keeps a defender away from the ball. He who starts at the ring leaves it first:
 * the place is wanted, and three seconds are counted there, while the others get ready too.
 */
function makeRoom(start: string, busy: readonly PlayerNumber[]): readonly string[] {
  const points = startPoints(start);
  const ring = atTheRing(start);
  const idle = [...points].filter(([player, point]) => player !== ring && !busy.includes(player) && !isInSpacing(usualCourt, point));
  const taken = [...points.values()];
  const clears = ([player, point]: readonly [PlayerNumber, Point]): string[] => {
    const free = roomy(point.x < 0 ? ['left', 'right'] : ['right', 'left']).find((spot) => taken.every((one) => distance(one, spot.point) > tooNear));
    if (free === undefined) return [];
    taken.push(free.point);
    return [`    ${player} clears to ${free.words}`];
  };
  return [...(ring === undefined ? [] : [[ring, { x: -1, y: 0 }] as const]), ...idle].flatMap(clears);
}

const tooNear = 1.5;

const roomy = (sides: readonly ('left' | 'right')[]) =>
  (['corner', 'wing'] as const).flatMap((name) => sides.map((side) => ({ words: `${side} ${name}`, point: spotPoint(usualCourt, name, side)! })));

function atTheRing(start: string): PlayerNumber | undefined {
  return [...startPoints(start)].find(([player, point]) => player !== 5 && distance(point, usualCourt.ring) < 1)?.[0];
}

/** Nobody but the screener, who leaves, starts within a step or two. Of an alignment of his own we only know that it stands somewhere. */
function isFree(start: string, spot: string): boolean {
  const [name, side] = spot.split(' ').toReversed() as [SpotName, 'left' | 'right' | undefined];
  const wanted = spotPoint(usualCourt, name, side);
  return wanted !== undefined && [...startPoints(start)].every(([player, point]) => player === 5 || distance(point, wanted) > tooNear);
}

const startPoints = (start: string) => alignmentPoints(usualCourt, start) ?? new Map<PlayerNumber, Point>();

const isLevel = (level: string): boolean => levelIds.some((one) => one === level);
const quoted = (name: string): string => `"${name}"`;
/** A name as it can stand between quotes. */
const quotable = (name: string): string => name.replace(/["“”\r\n]/g, ' ').replace(/\s+/g, ' ').trim();
