import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HoverRequest, type Hover, type MarkupContent } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { picturesMethod } from '../../server/lsp/settings.ts';
import { atMark, talk, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
let client: Client;
let files = 0;
beforeAll(async () => void (client = await talk()));
afterAll(() => client.close());

/** What is told where the mark stands; `words` of the text, with the mark, are put in the place of the same words without. */
async function told(words: string, text = lighthouse, by = client): Promise<string | undefined> {
  const plain = words.replace('|', '');
  expect(text).toContain(plain);
  const { text: whole, position } = atMark(text.replace(plain, words));
  const uri = `file:///plays/${files++}.play`;
  await by.open(uri, whole);
  const answer: Hover | null = await by.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position });
  return (answer?.contents as MarkupContent | undefined)?.value;
}

test.each([
  ['3 cuts| off 5 to top', [/\*\*3 cuts off 5 to top\*\*/, /From \d+\.\d s to \d+\.\d s after the call/, /left block → top: \d\.\d m in \d\.\d s, \d\.\d m\/s at most/, /Why then\?/]],
  ['1 dri|bbles to left wing', [/with the ball/, /get into its places/]],
  ['3 drives| off 4 to right elbow', [/the screen is set: 4 ball-screens for 3/]],
  ['look 3 "pull|-up": jumper', [/Typically \d+\.\d s after the call, late \d+\.\d s/, /a late miss leaves \d+\.\d s\. You ask for 4 s/]],
  ['call| with 22 to 26 on the clock', [/First look: call it with \d+ or more/, /not a promise/]],
  ['look 4 on| the roll: layup', [/\*\*look for 4 on the roll\*\*/]],
  ['from sta|ck, ball with 1', [/At the call/, /Stack: 1 at the top, 2 at right block.* 1 has the ball/]],
  ['again|st man', [/The defence/, /guard the man of their number\. A line of a step says/]],
  ['step "Sl|ip" instead of', [/Open from \d+\.\d s/, /one way through the play/]],
] as const)('%s', async (words, parts) => {
  const value = await told(words);
  for (const part of parts) expect(value).toMatch(part);
});

test.each([
  ['against 2-3', /X1 to X5 stand in a 2-3 zone/],
  ['against 2-2-1 press', /X1 to X5 stand in a 2-2-1 press\./],
  ['against a press', /all over the floor/],
])('%s', async (line, words) => {
  expect(await told(line.replace('against', 'again|st'), lighthouse.replace('against man', line))).toMatch(words);
});

describe('lines that hold for a file, and the boards', () => {
  test('level: how fast these legs are, and what is asked at this age', async () => {
    const value = await told('level u|14');
    expect(value).toMatch(/\*\*Under 14\*\*/);
    expect(value).toMatch(/A sprint reaches 6\.6 m\/s, an ordinary cut 5\.6 m\/s\. A pass leaves the hand 0\.42 s after the catch, a jump shot 1\.05 s\./);
    expect(value).toMatch(/your own league’s sheet decides:\*\n- /);
  });
  test('level: grown players have no notes of an age', async () => {
    expect(await told('level p|ro', lighthouse.replace('level u14', 'level pro'))).not.toContain('At this age');
  });
  test.each([
    ['rules f|iba', /\*\*FIBA\*\*  \nShot clock 24 s, 14 s after an offensive rebound\. 5 s to throw in, 3 s in the lane\. 8 s to leave the backcourt\. Three-point line 6\.75 m from the ring’s centre, 6\.6 m in the corners\./],
    ['rules m|ini', /Mini-basketball.*\nNo shot clock\..*No count in the backcourt\. No three-point line\./],
    ['rules fiba, also nf|hs', /\*\*FIBA\*\*[^]*\*\*NFHS\*\*[^]*These books change/],
  ])('%s', async (line, words) => {
    expect(await told(line, lighthouse.replace('level u14', `level u14\n${line.replace('|', '')}`))).toMatch(words);
  });
  test('rebound: who goes where, and for which looks it holds', async () => {
    const text = 'level u14\nplay "Still"\n  from horns\n  rebound 3, 4, 5 crash, 1, 2 get back\n  step "One"\n    rebound 4, 5 crash, 1, 2, 3 get back\n    1 dribbles to left slot\n    look 1: jumper\n';
    expect(await told('  reb|ound 3, 4, 5', text)).toMatch(/\*\*After a miss\*\*\n\nTo the boards: 3, 4, 5\.  \nBack on defence: 1, 2\.  \nIt holds for every look of the play without one of its own\./);
    expect(await told('    reb|ound 4, 5 crash', text)).toMatch(/It holds for the looks of One\./);
    const look = text.replace('look 1: jumper', 'look 1: jumper, on a miss 4, 5 crash, 1, 2, 3 get back');
    expect(await told('on a mi|ss 4', look)).toMatch(/After a miss.*\n\nTo the boards: 4, 5\.[^]*It holds for this look\./);
    expect(await told('lo|ok 1: jumper', look)).toMatch(/Typically/);
  });
});

// In a run-through that is over before he is there, or where nobody waits for him, his arrival is no event.
test('a way takes from its beginning to its end, in every play of the club', async () => {
  const faults: string[] = [];
  let ways = 0;
  for (const name of readdirSync(join(root, 'examples')).filter((file) => file.endsWith('.play'))) {
    const text = readFileSync(join(root, 'examples', name), 'utf8');
    const uri = `file:///plays/${files++}.play`;
    await client.open(uri, text);
    for (const [line, words] of text.split('\n').entries()) {
      for (const { index } of words.matchAll(/(?<=\s)(cuts|drives|dribbles|rolls|clears|sprints|lifts|fills|drifts|pops|flashes|dives)\b/g)) {
        const answer: Hover | null = await client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: index + 2 } });
        const value = (answer?.contents as MarkupContent | undefined)?.value ?? '';
        const [, from = '0', to = '0'] = /From (\d+\.\d) s to (\d+\.\d) s/.exec(value) ?? [];
        const [, seconds] = /m in (\d+\.\d) s/.exec(value) ?? [];
        if (seconds === undefined) continue;
        ways++;
        if (!(Number(to) - Number(from) > Number(seconds) - 0.25)) faults.push(`${name}:${line + 1} ${words.trim()}: ${from} to ${to} s, and ${seconds} s on the way`);
      }
    }
  }
  expect(ways).toBeGreaterThan(100);
  expect(faults).toEqual([]);
});

test('who stands where he is sent is told of at one moment', async () => {
  const value = await told('5 cu|ts to nail', 'notation 1\nplay "Still"\n  from 1 top, 2 and 3 wings, 4 left block, 5 nail\n  step "One"\n    5 cuts to nail\n    look 1: three\n');
  expect(value).toMatch(/At \d+\.\d s after the call\./);
});

test('a way from where no words fit is told from the nearest spot, without coordinates', async () => {
  const text = lighthouse.replace('2 clears to right corner', '2 clears to (3.9, 2.9) m');
  const value = await told('2 cle|ars to (3.9', text);
  expect(value).toMatch(/→ (near )?[a-z -]+: \d+\.\d m in/);
  expect(value).not.toMatch(/→[^:]*\(\d/);
});

test('a cause that takes no time is not told', async () => {
  expect(await told('look 2 "cor|ner": three')).not.toMatch(/takes 0\.0 s|needs 0\.0 s/);
});

test('a finding tells the rule it rests on', async () => {
  const text = lighthouse.replace('    2 clears to right corner', '    2 cuts to rim');
  const value = await told('2 cu|ts to rim', text);
  expect(value).toMatch(/\*Rule:\* FIBA .*\(`three-seconds`\)/);
});

test('a name that looks like markup stays a name', async () => {
  const text = lighthouse.replace('"pull-up"', '"<img src=x onerror=alert(1)> ](command:x) **b**"');
  const value = await told('look 3 "<img src=x onerr|or', text);
  expect(value).toContain('\\<img src=x onerror=alert(1)\\> \\](command:x) \\*\\*b\\*\\*');
});

test('an empty line tells nothing', async () => {
  expect(await told('get back\n|')).toBeUndefined();
});

describe('a drawing', () => {
  const picture = (value: string | undefined) => /!\[([^\]]*)\]\(data:image\/svg\+xml;base64,([^|]+)\|width=\d+\)/.exec(value ?? '');

  test.each([
    ['step "Sl|ip" instead of', 'The step Slip', 4],
    ['look 3 "pull|-up": jumper', /^The floor \d+\.\d s after the call$/, 5],
    ['from sta|ck', 'Where everybody stands at the call', 5],
    ['play "Light|house"', 'The step Zip', 5],
  ] as const)('of %s stands below its name, in an editor that shows images', async (words, says, men) => {
    const drawing = await talk({ options: { pictures: 'dark' } });
    const value = await told(words, lighthouse, drawing);
    const [, alt, data] = picture(value)!;
    expect(alt).toMatch(says);
    const svg = Buffer.from(data!, 'base64').toString('utf8');
    expect(svg).toMatch(/^<svg .*<\/svg>$/s);
    expect([1, 2, 3, 4, 5].filter((number) => svg.includes(`>${number}</text>`)).length).toBeGreaterThanOrEqual(men);
    // Editors cut longer ones off.
    expect(value!.length).toBeLessThan(100_000);
    drawing.close();
  });

  test('is not sent to one that shows none, and follows the editor’s colours', async () => {
    expect(picture(await told('step "Sl|ip" instead of'))).toBeNull();
    const drawing = await talk({ options: { pictures: 'light' } });
    const before = await told('step "Sl|ip" instead of', lighthouse, drawing);
    await drawing.connection.sendNotification(picturesMethod, 'dark');
    expect(picture(await told('step "Sl|ip" instead of', lighthouse, drawing))![2]).not.toBe(picture(before)![2]);
    drawing.close();
  });
});

describe('names that are given elsewhere, and men of the roster', () => {
  const opened = async (text: string) => client.open('file:///plays/sets.play', text);
  const sets = 'level u14\nroster "Under 14"\n  1 "Wren"\n\nalignment "Dock"\n  1 top\n  2 at right corner\n  3 at left corner\n  4 at right block\n  5 at left block\n\nplay "Tide"\n  from "Dock", ball with 1\n  step "Open"\n    4 ball-screens for 1, then rolls\n    1 drives off 4 to right elbow\n    look 1: jumper\n';
  beforeAll(() => opened(sets));
  const club = 'level u14\nuse "sets.play"\nroster "Under 14"\n  4 "M*x", 20 m in 3.5 s\n  5 "Kit"\n  9 "Ida", fast\n\nbook "Club"\n  section "Last": "Tide", "Nobody"\nplay "Ebb" mirrors "Tide"\nplay "Side"\n  from "Dock"\n  3 inbounds from the left sideline\n  inbound within 5 seconds\n  3 inbounds to 1\n  look 1: three\n';

  test.each([
    ['section "Last": "Ti|de"', [/^\*\*Tide\*\*\n\nFirst look: call it with \d+ or more/, /not a promise/]],
    ['mirrors "Ti|de"', [/^\*\*Tide\*\*/]],
    ['use "se|ts.play"', [/^\*\*sets\.play\*\*\n\nPlays: Tide\. {2}\nAlignments: Dock\. {2}\nRoster: Under 14\.$/]],
    ['  from "Do|ck"', [/^\*\*Dock\*\*\n\nDock: 1 at the top, 2 at right corner, 3 at left corner, 4 at right block and 5 at left block/]],
    ['  4 "M*|x", 20 m', [/^\*\*4 M\\\*x\*\*\n\nHe sprints at [78]\.\d m\/s at most \(usual under 14: 6\.6\)\. {2}\nThat counts in the plays of this file and of files that use it; a play that a book only lists keeps its times\. {2}\nHis name stands beside 4/]],
    ['  5 "K|it"', [/^\*\*5 Kit\*\*\n\nHis name stands beside 5 on sheets and in his jobs\.$/]],
    ['  9 "Ida", f|ast', [/Plays speak of 1 to 5/]],
    ['  3 inb|ounds from the left', [/^\*\*3 throws in\*\*\n\nThe ball leaves his hand \d\.\d s after the hand-over at the latest; the count is 5 s\. {2}\nYou ask for 5 s\. {2}\nThe clock runs from the touch/]],
    ['  inbound wi|thin 5', [/^\*\*3 throws in\*\*/]],
  ] as const)('%s', async (words, parts) => {
    const value = await told(words, club);
    for (const part of parts) expect(value).toMatch(part);
  });

  test('a play that is not there, and a file, tell nothing', async () => {
    expect(await told('"Nob|ody"', club)).toBeUndefined();
    expect(await told('use "far|.play"', 'use "far.play"\n')).toBeUndefined();
  });

  test('an alignment is drawn, where it is given too', async () => {
    const drawing = await talk({ options: { pictures: 'light' } });
    expect(await told('alignment "Do|ck"', sets, drawing)).toMatch(/^\*\*Dock\*\*\n\n!\[Dock\]\(data:image\/svg\+xml;base64,/);
    drawing.close();
  });
});
