import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { globSync } from 'tinyglobby';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { expectedAfter } from '../../language/grammar/expected.ts';
import { buildParser, lineParser } from '../../language/grammar/reading/line-parser.ts';
import type { LineTables } from '../../language/grammar/reading/line-tables.ts';
import { parseLine, LONGEST_LINE } from '../../language/grammar/parse-line.ts';
import { prune } from '../../language/grammar/reading/plain.ts';
import { lineTables } from '../../scripts/line-tables.ts';
import { inEnglish } from '../../language/message/message.ts';
import { untilOneHolds } from '../support/rounds.ts';
import { notationLines } from './notation-lines.ts';
import { drawSentence, pick, random } from './sentences.ts';

const written = { seed: 20261, numRuns: 1500 };
/** The least of up to three readings, while they are not below the limit: processor time, for the machine may be busy with something else. */
async function leastTime(limit: number, work: () => void): Promise<number> {
  const measure = () => {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  };
  return Math.min(...(await untilOneHolds(measure, (ms) => ms < limit, { most: 3 })));
}
const seeds = fc.integer({ min: 0, max: 0x7fffffff });

describe('the network and the parser know the same language', () => {
  it.each([undefined, 'Statement', 'Look', 'StepHead', 'Header'])('whatever the network draws, the parser reads (%s)', (kind) => {
    let joined = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const line = drawSentence(seed, kind === undefined ? {} : { kind });
        const { lexer, follow, parse } = lineParser();
        const lexed = lexer.lex(line);
        // Two words drawn one by one may be one word in the text: `throws` + `in the corner`.
        if (!follow.walk(lexed.tokens).whole) joined++;
        else {
          const { whole, tree } = parse(lexed);
          expect(whole, line).toBe(true);
          expect(prune(tree), line).toEqual(tree);
        }
      }),
      written,
    );
    expect(joined).toBeLessThan(written.numRuns / 200);
  });

  it('whatever the parser reads, the network reads', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const line = mutated(seed);
        const { lexer, follow, parse } = lineParser();
        const lexed = lexer.lex(line);
        if (lexed.tokens.length && parse(lexed).whole) expect(follow.walk(lexer.lex(line).tokens).whole, line).toBe(true);
      }),
      written,
    );
  });
});

/** The same line with other words of the same kinds. */
function reworded(line: string): string {
  const others: { readonly [word: string]: string } = { left: 'right', right: 'left', wing: 'elbow', elbow: 'wing', corner: 'slot', cuts: 'rolls', cut: 'roll', rolls: 'dives', screens: 'back-screens', passes: 'lobs', drives: 'dribbles', denies: 'traps', 1: '5', 2: '3', 4: '2', x4: 'X1', three: 'jumper', seconds: 's' };
  return line.replaceAll(/"[^"]*"|[\w-]+/g, (word) => (word.startsWith('"') ? '"Other"' : (others[word] ?? word)));
}

describe.each([
  ['from source', lineParser],
  ['as it is shipped, with tables made beforehand', () => buildParser({ tables: JSON.parse(JSON.stringify(lineTables())) as LineTables })],
])('a line like one read before, %s', (_, make) => {
  const filling = make();
  const parsing = buildParser({ keepsShapes: false });
  const same = (line: string): void => {
    const expected = parsing.parse(parsing.lexer.lex(line));
    const lexed = filling.lexer.lex(line);
    expect(filling.parse(lexed), line).toEqual(expected);
    expect(filling.parse(lexed), line).toEqual(expected);
  };
  it('has the tree that the parser would make of it', () => {
    for (const [line] of notationLines) for (const each of [line, reworded(line)]) same(each);
    fc.assert(fc.property(seeds, (seed) => [drawSentence(seed), reworded(drawSentence(seed))].forEach(same)), written);
  });
  it('keeps no words of the other', () => {
    const [one, other] = ['3 cuts off 5 to left wing, then 4 rolls', '2 dives off 4 to right elbow, then 5 pops'].map((line) => JSON.stringify(parsing.parse(parsing.lexer.lex(line))));
    filling.parse(filling.lexer.lex('3 cuts off 5 to left wing, then 4 rolls'));
    expect(JSON.stringify(filling.parse(filling.lexer.lex('2 dives off 4 to right elbow, then 5 pops')))).toBe(other);
    expect(JSON.stringify(filling.parse(filling.lexer.lex('3 cuts off 5 to left wing, then 4 rolls')))).toBe(one);
  });
});

it('a shipped program reads every line of the examples without building the parser', () => {
  const { lexer, shapes } = buildParser({ tables: lineTables() });
  const lines = globSync('examples/*.play').flatMap((file) => readFileSync(file, 'utf8').split('\n'));
  const tokens = lines.map((line) => lexer.lex(line).tokens).filter(({ length }) => length > 0);
  expect(tokens.length).toBeGreaterThan(500);
  expect(tokens.filter((words) => shapes!.treeOf(words) === undefined)).toEqual([]);
});

/** A line of the notation, or a drawn one, with one to three keystrokes gone wrong. */
function mutated(seed: number): string {
  const next = random(seed);
  let line = next() < 0.5 ? pick(notationLines, next)[0] : drawSentence(seed);
  for (let times = Math.ceil(next() * 3); times > 0; times--) {
    const at = Math.floor(next() * (line.length + 1));
    const sort = next();
    if (sort < 0.3) line = line.slice(0, at) + line.slice(at + 1);
    else if (sort < 0.5) line = line.slice(0, at) + pick(['"', ',', ' ', 'é', '🏀', '3', 'x', '#', '\0', '(', '\r'], next) + line.slice(at);
    else if (sort < 0.7) line = line.slice(0, at) + (line[at + 1] ?? '') + (line[at] ?? '') + line.slice(at + 2);
    else if (sort < 0.85) line = line.slice(0, at);
    else {
      const words = line.split(' ');
      words.splice(Math.floor(next() * words.length), 1);
      line = words.join(' ');
    }
  }
  return line;
}

function checkRead(line: string): void {
  const read = parseLine(line);
  if (read.tree) expect(prune(read.tree), line).toEqual(read.tree);
  const { fault } = read;
  if (!fault) return;
  expect(inEnglish(fault.message).length).toBeGreaterThan(10);
  expect(fault.at <= fault.to && fault.at >= 0 && fault.to <= Math.max(line.length, 1), `${line}: ${fault.at}–${fault.to}`).toBe(true);
  for (const fix of fault.fixes) {
    const after = parseLine(applyEdits(line, fix.edits));
    // A line with two faults is mended one by one.
    if (after.fault) expect(after.fault.at, `${line} → ${applyEdits(line, fix.edits)}`).toBeGreaterThan(fault.at);
  }
}

describe('broken lines', () => {
  it.each([['look', undefined], ['3 cuts to', 'Move with 0 parts'], ['rebound 2, 4', undefined], ['from', undefined], ['1 passes to', 'Pass with 0 parts'], ['4 screens for 2 and', 'Screen with 1 parts'], ['3 cuts off to rim', 'Move with 0 parts'], ['4 screens for 2 then flies', 'Screen with 1 parts']])(
    'of "%s" only what is whole is kept',
    (line, kept) => {
      const { tree } = parseLine(line);
      const action = tree?.$type === 'Statement' ? tree.first.action : undefined;
      expect(action && 'parts' in action ? `${action.$type} with ${action.parts.length} parts` : undefined).toBe(kept);
      if (kept === undefined) expect(tree).toBeUndefined();
    },
  );

  it('never throw, keep only whole nodes, say where, and their mends help', () => {
    fc.assert(fc.property(seeds, (seed) => checkRead(mutated(seed))), { ...written, numRuns: 3000 });
  });
  it('any text at all never throws, nor does asking what comes next', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        checkRead(text);
        expectedAfter(text);
      }),
      { ...written, numRuns: 500 },
    );
  });
  it.each(['constructor', '__proto__', 'toString', 'hasOwnProperty', 'valueOf'])('the word %s is a word like any other', (word) => {
    for (const line of [word, `4 ${word} for 2`, `3 cuts to ${word}`, `step ${word}`, `tags ${word}`, `level ${word}`, `from ${word}`, `look 3: ${word}`]) {
      checkRead(line);
      expectedAfter(line);
    }
  });
  it('a line is read the same after any other line', () => {
    fc.assert(
      fc.property(seeds, seeds, (one, other) => {
        const line = mutated(one);
        const before = JSON.stringify(parseLine(line));
        parseLine(mutated(other));
        expectedAfter(mutated(other));
        expect(JSON.stringify(parseLine(line))).toBe(before);
      }),
      { ...written, numRuns: 500 },
    );
  });
});

describe('bounded time', () => {
  const million = 1_000_000;
  it.each([
    ['a megabyte of letters', 'a'.repeat(million)],
    ['a megabyte of digits', '1'.repeat(million)],
    ['a megabyte of open quotes', '"a '.repeat(million / 3)],
    ['a hundred thousand NULs', '\0'.repeat(100_000)],
    ['a hundred thousand emoji', '🏀'.repeat(50_000)],
    ['a megabyte of blanks', ' '.repeat(million)],
    ['a play that never ends', '1 passes to 2 and '.repeat(million / 18)],
  ])('%s is refused at once', async (_, text) => {
    const work = () => {
      parseLine(text);
      expectedAfter(text);
    };
    expect(await leastTime(200, work)).toBeLessThan(200);
    expect(parseLine(text).fault?.code ?? 'blank').toMatch(/^(line-too-long|blank)$/);
  });
  it.each([
    ['letters', 'a'.repeat(LONGEST_LINE)],
    ['digits', '1'.repeat(LONGEST_LINE)],
    ['hyphens', 'a-'.repeat(LONGEST_LINE / 2)],
    ['quotes', '"'.repeat(LONGEST_LINE - 1)],
    ['quoted words', 'note ' + '"a" '.repeat(400)],
    ['players', '1, '.repeat(600)],
    ['players with and', '1 and '.repeat(300) + 'cut'],
    ['links', '1 passes to 2, 2 passes to 1, '.repeat(60)],
    ['links and a wrong word', '1 passes to 2, 2 passes to 1, '.repeat(60) + '3 flies'],
    ['a wrong word and links', '3 flies, ' + '1 passes to 2, 2 passes to 1, '.repeat(60)],
    ['keywords', 'the left right '.repeat(130)],
    ['brackets', '('.repeat(LONGEST_LINE)],
    ['words in brackets', '(1) '.repeat(LONGEST_LINE / 4)],
    ['strokes', '2 -> 3 '.repeat(LONGEST_LINE / 7)],
    ['one word', '3 cuts ' + 'cuts '.repeat(390)],
    ['signs', 'look ' + '#1 '.repeat(600)],
  ])('the longest line of %s takes less than half a second', async (_, text) => {
    const line = text.slice(0, LONGEST_LINE);
    parseLine('4 scrrens');
    const work = () => {
      parseLine(line);
      expectedAfter(line);
    };
    expect(await leastTime(500, work)).toBeLessThan(500);
  });
});
