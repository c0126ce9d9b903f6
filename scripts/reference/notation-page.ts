// docs/notation.md: every kind of line, with its diagram and an example.
import { code, fenced, page, picture, slug, anchor } from './markdown.ts';
import { drawn, type Files } from './files.ts';
import { actionParts, chapters, lineWords, partWords, type Words } from './line-words.ts';
import { diagramOf, lineRules, pictureWidth, type Names } from './railroad.ts';

/** Rules drawn as a box, with the box's name. */
export const boxes: Names = {
  ...Object.fromEntries(Object.entries(partWords).map(([rule, { title }]) => [rule, title])),
  ...actionParts, NextClause: 'clause', Action: 'action', TailAction: 'action', SideHeading: 'left or right', Heading: 'direction', Placed: 'a man’s place',
  ShotKindName: 'kind of shot', PassKindName: 'kind of pass', AlignmentName: 'name of an alignment', SpotName: 'name of a spot', LookPin: 'moment of a look',
  MoveVerb: 'verb', DribbleVerb: 'verb', PassVerb: 'verb', FeedVerb: 'verb', ScreenVerb: 'verb', ThrowInVerb: 'verb', HoldVerb: 'verb', ShotVerb: 'verb', DefendVerb: 'verb', SwapVerb: 'swaps',
  Player: 'player', Actor: 'player', Opponent: 'X1 to X5', XPLAYER: 'X1 to X5', PLAYER: '1 to 5', STRING: '"in quotes"', Seconds: 'seconds', SECONDS: 'seconds', Length: 'length', ClockTime: 'clock time',
  Count: 'number', Signed: 'number', SPEED: 'speed', LABEL: 'word', FORM: 'form, such as 2-3',
};

export function railPicture(rule: string, title: string, names: Names = boxes): { readonly file: readonly [string, string]; readonly shown: string } {
  const { svg, lists } = diagramOf(rule, `How to write: ${title}`, Object.fromEntries(Object.entries(names).filter(([name]) => name !== rule)));
  const path = `${drawn}/lines/${slug(title)}.svg`;
  const words = [...lists].map(([name, list]) => `*${name}*: ${list.map(code).join(', ')}`);
  return { file: [path, svg], shown: [picture(path, `Diagram of ${title}`, pictureWidth(svg)), ...words].join('\n\n') };
}

export function notationPage(): Files {
  const files: (readonly [string, string])[] = [];
  const entry = (rule: string, words: Words, level: string): string => {
    const { file, shown } = railPicture(rule, words.title);
    files.push(file);
    return [`${anchor(slug(words.title))}\n\n${level} ${/^[a-z]/.test(words.title) ? code(words.title) : words.title}`, words.says, shown, fenced(words.example)].join('\n\n');
  };
  const known = new Set(chapters.flatMap(({ rules }) => rules));
  const strangers = lineRules().filter((rule) => !known.has(rule));
  const text = page(
    '# Every kind of line',
    '[Reference](README.md) · [actions](actions.md) · [spots](spots.md) · [alignments](alignments.md) · [checks](checks.md)',
    'A play is text that can be read aloud. One thought a line; a line stands or falls alone, and one that cannot be read costs nothing but itself. How far a line is indented does not matter, nor do capital letters and the little words *the* and *a*. Behind `#` stands a remark for yourself.',
    'The lines below are the plain ones. Much of what coaches say around them is understood too: `sets a flare for 2` is read as `flare-screens for 2`, `takes two dribbles to` as `dribbles to`, `takes two steps toward the ball` as `moves 1.5 m toward the ball`, `look 2 three` as `look 2: three`. Behind a full stop comes what is done then, behind a semicolon what goes on with it; `1 to 2` is a pass, and `if nothing is there` what a play does anyhow once its looks are passed up. What for and how something is done (`to keep his man busy`, `under control`) is passed over, with a hint; words that cannot be read and without which the line is whole get a warning, and the play goes on without them. What says *not*, *if* or *unless*, and what may be somebody’s action, a place or a time, is never passed over: there the line waits for your words. Of such a line only what stands before that link or that wait is carried out, or the line without the few words that cannot be read; the error says what, so that the lines below still mean what you wrote.',
    'The diagrams are read along the rails from left to right: rounded words are written as they stand, square boxes have a diagram of their own further down, or are one of:',
    [
      '- **player**: 1 to 5 for the offence, X1 to X5 for their defenders; `him` and `her` are the line’s first man, or, where he is the one who acts, the other man named last before, in the line or above it; what `he` does with the ball is done by who has it',
      '- **seconds**: `4 seconds`, `0.5 s` · **length**: `3 ft`, `1.5 m` · **clock time**: `22` or `22 seconds` · **number**: `3`',
      '- **"in quotes"**: a name or a remark of your own',
      '- **verb**: see [actions](actions.md)',
    ].join('\n'),
    chapters.map(({ title, rules }) => `- [${title}](#${slug(title)}): ${rules.map((rule) => `[${lineWords[rule]!.title}](#${slug(lineWords[rule]!.title)})`).join(', ')}`).join('\n'),
    ...chapters.map(({ title, says, rules }) => [`## ${title}`, says, ...rules.map((rule) => entry(rule, lineWords[rule]!, '###'))]),
    strangers.length === 0 ? undefined : `## Not told yet\n\n${strangers.map(code).join(', ')}`,
    ['## The parts', 'What the square boxes stand for.', ...Object.entries(partWords).map(([rule, words]) => entry(rule, words, '###'))],
    kinds(),
  );
  return [...files, ['notation.md', text]];
}

function kinds(): string {
  return ['## Kinds of pass and shot', ...(['PassKindName', 'ShotKindName'] as const).map((rule) => {
    const box = boxes[rule]!;
    const { lists } = diagramOf(rule, box, {});
    return `**${box}**: ${[...lists.values()].flat().map(code).join(', ')}`;
  })].join('\n\n');
}
