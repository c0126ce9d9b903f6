// docs/actions.md: every verb with what it means, where it ends by itself, a line and a picture.
import { verbs } from '../../language/grammar/verbs.ts';
import type { BodyId } from '../../language/play/play.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { drawFrame, stripFrames } from '../../language/picture/strip.ts';
import { sayPlace } from '../../language/words/say-place.ts';
import { compileExample, mistakesIn, playbackOfExample } from './compile-example.ts';
import { adaptive, halfCourt, palette } from './drawing.ts';
import { drawn, type Files } from './files.ts';
import { anchor, code, fenced, page, picture, plain, slug } from './markdown.ts';
import { actionBoxes, boxes, railPicture } from './notation-page.ts';
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
    const rails = classes.map((verbClass) => {
      const { file, shown } = railPicture(rulesOf[verbClass], verbClass, { ...actionBoxes, ...boxes });
      files.push(file);
      return shown;
    });
    const entries = classes.flatMap((verbClass) => [...wordsByBase(verbClass)].map(([base, words]) => {
      const told = verbWords[verbClass][base];
      if (told === undefined) return `### ${code(words[0]!)}\n\n*Not told yet.*`;
      const path = `${drawn}/actions/${slug(base)}.svg`;
      files.push([path, pictureOf(told, verbClass === 'defend')]);
      return entry(base, words, told, path);
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
  const { plays } = compileExample(playOf({ says: '', above: triedFrom.start, example: `${who} ${word}` }));
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
  const playback = playbackOfExample(playOf(told));
  const [run] = playback.runs;
  const lines = `${told.above?.split('\n').filter((line) => !/^(from|against) /.test(line)).join('\n') ?? ''}\n${told.example}`;
  const box = halfCourt(playback.court, /half court|backcourt/.test(told.above ?? '') ? 14.3 : 9.6);
  if (run === undefined) return '';
  if (defended) return adaptive(defenders(playback, run.id, lines, box, told.example));
  const [frame] = stripFrames(playback, run.id);
  if (frame === undefined) return '';
  const kept = { ...frame, title: told.example, bodies: frame.bodies.filter(({ id }) => isShown(id, lines)) };
  return adaptive(drawFrame(playback, kept, palette, box));
}

/** What defenders do is a moment, not a way: the floor as they have done it. */
function defenders(playback: ReturnType<typeof playbackOfExample>, run: string, lines: string, box: string, title: string): string {
  const end = playback.runs.find(({ id }) => id === run)!.end;
  const scene = sceneAt(playback, run, end, { ways: 'none' });
  const men = new Set(lines.match(/(?<!\d)X?[1-5](?![\d.])/g)?.map((who) => who.replace('X', '')));
  const [left, top, width, height] = box.split(' ').map(Number) as [number, number, number, number];
  const view = { ...scene.view, left, top, right: left + width, bottom: top + height };
  return drawSvg({ ...scene, title, view, bodies: scene.bodies.filter(({ label }) => men.has(label.replace('X', ''))) }, palette);
}
