import { nothingIsThere } from '../grammar/rewording/men-and-chances.ts';
import { lineNumber } from '../play/line-number.ts';
import { check } from './check.ts';
import type { Way } from './subject.ts';

/** `if nothing is there, 4 comes back up`: with no look above there is nothing that could be there. */
export const nothingToPassUp = check({
  code: 'nothing-to-pass-up',
  severity: 'hint',
  needs: 'before',
  source: 'the words of the notation',
  message: 'No look stands above “{words}”, so this happens every time. Write above it what is looked for first, as in “look 2: three”.',
  manual: {
    title: 'If nothing is there, and no look above',
    why: 'What comes next when nobody is open stands below the looks: there they have been passed up. Without a look above it a line happens every time, whatever its first words say.',
    wrong: '1 passes to 2\nif nothing is there, 2 dribbles to right slot\nlook 2: jumper',
    right: '1 passes to 2\nlook 2: three\nif nothing is there, 2 dribbles to right slot\nlook 2: jumper',
  },
  *find(subject) {
    // Few plays say so, and every play is asked at each key.
    if (!subject.lines.some((text) => /\bif\s/i.test(text))) return;
    const told = new Set<string>();
    for (const way of subject.ways) {
      for (const { id, line } of firstOfLines(way)) {
        const place = subject.places.get(id);
        const words = place === undefined ? undefined : nothingIsThere((subject.lines[place.line] ?? '').slice(0, place.at));
        if (words === undefined || told.has(id) || looksAbove(way, id, lineNumber(line))) continue;
        told.add(id);
        yield { part: id, params: { words } };
      }
    }
  },
});

function firstOfLines({ steps }: Way): readonly { readonly id: string; readonly line: string }[] {
  return steps.flatMap(({ actions }) => actions.filter(({ line }, index) => actions.findIndex((other) => other.line === line) === index));
}

/** Whether a look stands above the line on this way: in its step, or in one before it. */
function looksAbove({ steps }: Way, id: string, line: number): boolean {
  const at = steps.findIndex(({ actions }) => actions.some((action) => action.id === id));
  return steps.slice(0, at).some(({ looks }) => looks.length > 0) || steps[at]!.looks.some((look) => lineNumber(look.line) < line);
}
