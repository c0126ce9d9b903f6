import { describe, expect, it } from 'vitest';
import { prune } from '../../language/grammar/reading/plain.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { notationLines } from './notation-lines.ts';

const lines = notationLines.filter(([, kind]) => kind !== '!');

describe('every line of the notation is read as what it is', () => {
  it.each(lines)('%s', (line, kind) => {
    const read = parseLine(line);
    expect(read.fault?.message).toBeUndefined();
    expect(read.tree?.$type).toBe(kind);
  });

  it.each(lines)('in capitals, with wide gaps and a carriage return: %s', (line) => {
    const [before, ...comment] = line.split(/(?=\s#)/);
    // Names in quotes keep their letters.
    const loud = before!.replaceAll(/"[^"]*"|[^"]+/g, (part) => (part.startsWith('"') ? part : part.toUpperCase().replaceAll(' ', ' \t')));
    const read = parseLine(`${loud}${comment.join('')}\r`);
    expect(read.fault?.message).toBeUndefined();
    expect(shape(read.tree)).toEqual(shape(parseLine(line).tree));
  });

  it.each(lines)('is plain data and whole: %s', (line) => {
    const { tree } = parseLine(line);
    expect(JSON.parse(JSON.stringify(tree))).toEqual(tree);
    expect(prune(tree)).toEqual(tree);
  });
});

/** The tree without columns, for lines that differ only in how they are written. */
function shape(tree: unknown): unknown {
  return JSON.parse(JSON.stringify(tree, (key, value: unknown) => (key === 'at' || key === 'to' || key === 'spans' || value === undefined ? undefined : value)));
}

describe('articles may stand or not', () => {
  it.each([
    ['3 cuts to the left wing', '3 cuts to left wing'],
    ['1 keeps the dribble', '1 keeps his dribble'],
    ['call with 22 on clock', 'call with 22 on the clock'],
    ['look 4 on a roll', 'look 4 on the roll'],
    ['the 4 screens for the 2', '4 screens for 2'],
    ['4 back screens for 2', '4 back-screens for 2'],
    ['3 cuts to the weak side', '3 cuts to weak-side'],
    ['1 hands-off to 2', '1 hands off to 2'],
  ])('%s is %s', (one, other) => {
    expect(shape(parseLine(one).tree)).toEqual(shape(parseLine(other).tree));
    expect(parseLine(one).fault).toBeUndefined();
  });
});

describe('what a comma and "and" mean', () => {
  const clauses = (line: string): string[] => {
    const { tree } = parseLine(line);
    if (tree?.$type !== 'Statement') throw new Error(`${line} is no action`);
    return [tree.first, ...tree.links.map((link) => link.clause)].map((clause) => {
      const who = clause.subject?.$type === 'Players' ? clause.subject.players.map((player) => `${player.defence ? 'X' : ''}${player.number!}`).join('+') : (clause.subject?.$type ?? '-');
      const parts = 'parts' in clause.action ? clause.action.parts : [];
      const whom = parts.flatMap((part) => ('players' in part ? part.players : 'player' in part && part.player ? [part.player] : [])).map((player) => player.number ?? player.pronoun);
      return `${who} ${'verb' in clause.action ? clause.action.verb : clause.action.$type}${whom.length ? ` ${whom.join('+')}` : ''}`;
    });
  };
  it.each([
    ['4 screens for 1 and 2 cuts', ['4 screens 1', '2 cuts']],
    ['4 screens for 1 and 2', ['4 screens 1+2']],
    ['4 screens for 1 and 2, 3 cuts', ['4 screens 1+2', '3 cuts']],
    ['1 passes to 2, 3 and 4 cut', ['1 passes 2', '3+4 cut']],
    ['4 screens for 2, 3 and 5 cut', ['4 screens 2', '3+5 cut']],
    ['4 screens for 2, 3 cuts', ['4 screens 2', '3 cuts']],
    ['1 passes to 2 and cuts to rim', ['1 passes 2', '- cuts']],
    ['5 screens for 1, then rolls', ['5 screens 1', '- rolls']],
    ['4 screens for 5, then for 2', ['4 screens 5', '- SameAgain 2']],
    ['1 passes to 2 to 3', ['1 passes 2+3']],
    ['3 cuts off 5 then 4 to top', ['3 cuts 5+4']],
    ['3 and 2 cut off 4 and 5', ['3+2 cut 4+5']],
    ['3 lobs to 5, 5 dunks', ['3 lobs 5', '5 dunks']],
    ['X1 and X5 trap 1', ['X1+X5 trap 1']],
    ['1, 2 and 3 clear, 4 ball-screens for 5', ['1+2+3 clear', '4 ball-screens 5']],
    ['4 and 5 close behind him', ['4+5 close behind']],
    ['everyone else holds', ['Everyone holds']],
  ])('%s', (line, expected) => {
    expect(clauses(line)).toEqual(expected);
  });
});

describe('measures are metres and seconds', () => {
  it('feet, inches and centimetres become metres', () => {
    const metres = (length: string): unknown => {
      const { tree } = parseLine(`3 cuts to ${length} above left elbow`);
      const part = tree?.$type === 'Statement' && tree.first.action.$type === 'Move' ? tree.first.action.parts[0] : undefined;
      const spot = part?.$type === 'To' ? part.spots[0] : undefined;
      return spot?.$type === 'Offset' ? spot.by.metres : undefined;
    };
    expect(metres('2 ft')).toBeCloseTo(0.6096, 10);
    expect(metres('10 inches')).toBeCloseTo(0.254, 10);
    expect(metres('30 cm')).toBeCloseTo(0.3, 10);
    expect(metres('1.5 metres')).toBe(1.5);
  });
  it('a time may have its unit or not where a clock is meant', () => {
    for (const line of ['call with 22 on the clock', 'call with 22 seconds on the clock', 'call with 22 s on the clock']) {
      const { tree } = parseLine(line);
      expect(tree?.$type === 'Call' && tree.time.seconds).toBe(22);
    }
  });
  it('a sprint of a roster is a length and a time', () => {
    expect(parseLine('4 "Mia", 20 m in 3.4 s').tree).toMatchObject({ number: 4, name: 'Mia', pace: { $type: 'SprintTime', distance: { metres: 20 }, time: { seconds: 3.4 } } });
  });
});

describe('quotes and comments', () => {
  it('a # in quotes is part of the text', () => {
    expect(parseLine('note "number #1" # really')).toMatchObject({ tree: { text: 'number #1' }, comment: { at: 17, to: 25 } });
  });
  it('curly quotes of a word processor are quotes', () => {
    expect(parseLine('step “Zip”').tree).toMatchObject({ $type: 'StepHead', name: 'Zip' });
  });
  it('accents and emoji in names are kept and do not shift the columns', () => {
    const line = 'play "Überzahl 🏀" mirrors "Élan"';
    const { tree } = parseLine(line);
    if (tree?.$type !== 'PlayHead') throw new Error('no play');
    expect(tree.name).toBe('Überzahl 🏀');
    expect(line.slice(...tree.spans['mirrors']! as [number, number])).toBe('"Élan"');
  });
  it('a blank line and a comment have neither tree nor fault', () => {
    for (const line of ['', '   ', '\t\r', '# only this', '   # "open']) {
      const read = parseLine(line);
      expect(read.tree).toBeUndefined();
      expect(read.fault).toBeUndefined();
    }
  });
  it('a full stop closes a sentence', () => {
    expect(parseLine('3 cuts to rim.').fault).toBeUndefined();
  });
});

describe('an opening word opens its block even if the rest is broken', () => {
  it.each([
    ['step', 'step', undefined],
    ['step "Zip" afer "A"', 'step', 'Zip'],
    ['step Zip', 'step', undefined],
    ['play "Lighthouse" mirors', 'play', 'Lighthouse'],
    ['alignment', 'alignment', undefined],
    ['roster 12', 'roster', undefined],
    ['book "Season" "two"', 'book', 'Season'],
    ['STEP "Zip" "Zap"', 'step', 'Zip'],
    ['stap "Zip"', undefined, undefined],
  ])('%s', (line, opens, name) => {
    const read = parseLine(line);
    expect(read.opens).toBe(opens);
    expect(read.openName).toBe(name);
  });
});
