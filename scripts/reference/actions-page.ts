// docs/actions.md: every verb with what it means, where it ends by itself, a line and a picture.
import { guard } from '../../language/defence/guard.ts';
import { verbs } from '../../language/grammar/verbs.ts';
import type { BodyId } from '../../language/play/play.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { toPicture } from '../../language/picture/lines.ts';
import { stripFrames } from '../../language/picture/frames.ts';
import { drawFrame } from '../../language/picture/strip.ts';
import type { Way } from '../../language/picture/ways.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { sayPlace } from '../../language/words/say-place.ts';
import { compileExample, mistakesIn, playbackOfExample } from './compile-example.ts';
import { adaptive, boxRound, palette } from './drawing.ts';
import { drawn, type Files } from './files.ts';
import { anchor, code, fenced, page, picture, plain, slug } from './markdown.ts';
import { actionParts } from './line-words.ts';
import { railPicture } from './notation-page.ts';
import { rulesUnder } from './railroad.ts';
import { groups, playOf, triedFrom, verbWords, type ActionClass, type VerbWords } from './verb-words.ts';

/** Singular words of each verb by its base form, the first the usual one. */
export function wordsByBase(verbClass: ActionClass): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const [word, verb] of verbs) {
    if (verb.class !== verbClass || verb.number !== 'singular') continue;
    const words = found.get(verb.base);
    if (words === undefined) found.set(verb.base, [word]);
    else words.push(word);
  }
  return found;
}

const rulesOf: Readonly<Record<ActionClass, string>> = {
  move: 'Move', seal: 'Seal', rebound: 'Crash', dribble: 'Dribble', pass: 'Pass', 'hand-off': 'HandOff', screen: 'Screen', close: 'Close', shot: 'Shot', hold: 'Hold', 'throw-in': 'ThrowIn', role: 'Role', defend: 'Defend',
};

export function actionsPage(): Files {
  const files: (readonly [string, string])[] = [];
  const sections = groups.map(({ title, says, classes }) => {
    const own = classes.map((verbClass) => rulesOf[verbClass]);
    const parts = Object.keys(actionParts).filter((rule) => rulesUnder(own).has(rule) && (classes.includes('dribble') || rule !== 'DribblePart'));
    const rails = [...own.map((rule) => [rule, title] as const), ...parts.map((rule) => [rule, actionParts[rule]!] as const)].map(([rule, name]) => {
      const { file, shown } = railPicture(rule, own.includes(rule) && own.length > 1 ? rule.toLowerCase() : name);
      files.push(file);
      return own.includes(rule) ? shown : `*${name}*:\n\n${shown}`;
    });
    const entries = classes.flatMap((verbClass) => [...wordsByBase(verbClass)].map(([base, words]) => {
      const told = verbWords[verbClass][base];
      if (told === undefined) return `### ${code(words[0]!)}\n\n*Not told yet.*`;
      const path = `${drawn}/actions/${slug(base)}.svg`;
      files.push([path, pictureOf(told, verbClass === 'defend')]);
      return entry(base, words, told, path) + (verbClass === 'defend' && !isActedOut(told) ? '\n\nRead, but not acted out by this version: he goes on as he would without the line.' : '');
    }));
    return [`## ${title}`, says, ...entries, '**How it is written**', ...rails];
  });
  const text = page(
    '# Actions',
    '[Reference](README.md) · [every kind of line](notation.md) · [spots](spots.md) · [checks](checks.md)',
    'The verb says what kind of thing a man does. Each stands with what it means, the other words that are read as the same, a line, and that line drawn: an arrow is a man moving, a zigzag a dribble, a broken line a pass, a bar a screen, two strokes a hand-off, a double line a shot. The man with the ball is circled. What the words mean is common usage, no source.',
    groups.map(({ title, classes }) => `- [${title}](#${slug(title)}): ${classes.flatMap((verbClass) => [...wordsByBase(verbClass)].map(([base, [word]]) => `[${word}](#${slug(base)})`)).join(', ')}`).join('\n'),
    ...sections,
  );
  return [...files, ['actions.md', text]];
}

function entry(base: string, words: readonly string[], told: VerbWords, path: string): string {
  const others = words.slice(1);
  const today = [...new Set(mistakesIn(playOf(told)).map((said) => said.replace(/^line \d+, /, '')))];
  return [
    `${anchor(slug(base))}\n\n### ${code(words[0]!)}`,
    picture(path, told.example.replaceAll('\n', '; '), 260),
    told.says + (others.length === 0 ? '' : ` Also: ${others.map(code).join(', ')}.`),
    ...(told.alone === undefined ? [] : [endAlone(words[0]!, told.alone)]),
    fenced(told.example),
    ...(today.length === 0 ? [] : [`This version says of it: ${today.map(plain).join(' ')}`]),
  ].join('\n\n');
}

/** Where the model sends him if the line says no place. */
function endAlone(word: string, who: '1' | '3' | '5'): string {
  const { plays } = compileExample(playOf({ says: '', above: who === '5' ? triedFrom.inside : triedFrom.start, example: `${who} ${word}` }));
  const run = plays[0]?.timeline.runs[0];
  const last = run?.tracks[who as BodyId]?.segments.at(-1)?.path.at(-1);
  const from = triedFrom.places[who];
  return last === undefined ? `Without a place he stays where he is (tried from ${from}).` : `Without a place, from ${from}, he ends at **${sayPlace(plays[0]!.court, last)}**.`;
}

/** The men the lines speak of, and those who guard them. */
function isShown(id: string, lines: string): boolean {
  return new RegExp(`(?<![\\d.])${id}(?![\\d.-])`).test(lines);
}

function pictureOf(told: VerbWords, defended: boolean): string {
  const { play, runs, ...playback } = playbackOfExample(playOf(told));
  const run = runs[0];
  if (run === undefined) return '';
  const lines = `${told.above?.split('\n').filter((line) => !/^(from|against) /.test(line)).join('\n') ?? ''}\n${told.example}`;
  if (!defended) return adaptive(wayOf({ ...playback, play, runs }, run, lines, told.example));
  const guarded = { ...run, defenders: defendersOf(told, run) };
  return adaptive(defendedWay({ ...playback, play, runs: [guarded] }, guarded, lines, told.example));
}

/** The lines of the example as a printed frame: those who act, and their ways. */
function wayOf(playback: Playback, run: Run, lines: string, title: string): string {
  const frame = stripFrames(playback, run.id)[0]!;
  const bodies = frame.bodies.filter(({ id }) => isShown(id, lines));
  const ways = frame.ways.filter(({ who, part }) => isShown(who, lines) && !part.includes('?'));
  return drawFrame(playback, { ...frame, title, bodies, ways, labels: [] }, palette, boxRound(playback.court, [...bodies.map(({ at }) => at), ...ways.flatMap(({ points }) => points)]));
}

/** The same with the defenders of those men, and the way the model sends whoever the line speaks of. */
function defendedWay(playback: Playback, run: Run, lines: string, title: string): string {
  const frame = stripFrames(playback, run.id, { defence: true })[0]!;
  const men = new Set(lines.match(/(?<!\d)X?[1-5](?![\d.])/g)?.map((who) => who.replace('X', '')));
  const bodies = frame.bodies.filter(({ id }) => men.has(id.replace('X', '')));
  const ways = [...frame.ways.filter(({ who, part }) => men.has(who) && !part.includes('?')), ...(title.match(/X[1-5]/g) ?? []).flatMap((who) => defenderWay(run, who as BodyId))];
  return drawFrame(playback, { ...frame, title, bodies, ways, labels: [] }, palette, boxRound(playback.court, [...bodies.map(({ at }) => at), ...ways.flatMap(({ points }) => points)]));
}

/** Every third of a second a point: enough to see the bend. */
function defenderWay(run: Run, who: BodyId): readonly Way[] {
  const points = run.defenders[who]?.points ?? [];
  const kept = points.filter((_, at) => at % 3 === 0 || at === points.length - 1).map(toPicture);
  return kept.length < 2 ? [] : [{ part: '', kind: 'cut', who, step: undefined, t0: 0, t1: run.end, points: kept }];
}

/** Whether the model's defenders move otherwise than without the line. */
function isActedOut(told: VerbWords): boolean {
  const points = (words: VerbWords) => JSON.stringify(Object.values(defendersOf(words, compileExample(playOf(words)).plays[0]!.timeline.runs[0]!)).map((frames) => frames.points));
  return points(told) !== points({ ...told, example: '' });
}

function defendersOf(told: VerbWords, run: Run): Run['defenders'] {
  const { plays } = compileExample(playOf(told));
  return Object.keys(run.defenders).length > 0 ? run.defenders : guard(plays[0]!.play, run);
}
