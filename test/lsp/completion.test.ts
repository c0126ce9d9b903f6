import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CompletionRequest, CompletionResolveRequest, InsertTextFormat, type CompletionItem, type CompletionList } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { root } from '../../scripts/build.ts';
import { atMark, talk, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8').split('\n');
const firstOfMiddle = lighthouse.findIndex((line) => line.includes('"Middle"')) + 1;

let client: Client;
let files = 0;
beforeAll(async () => void (client = await talk({ capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } } } })));
afterAll(() => client.close());

/** What is offered where the mark stands on a line put into Lighthouse before line `at` (from 0). */
async function offered(line: string, at = firstOfMiddle): Promise<CompletionItem[]> {
  const { text, position } = atMark([...lighthouse.slice(0, at), line, ...lighthouse.slice(at)].join('\n'));
  const uri = `file:///plays/${files++}.play`;
  await client.open(uri, text);
  const answer = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
  return answer.items;
}

const labels = async (line: string, at?: number) => (await offered(line, at)).map(({ label }) => label);

describe('a throw-in that nobody has told of yet', () => {
  const inPlay = async (...lines: readonly string[]) => {
    const { text, position } = atMark(['play "Side"', ...lines].join('\n'));
    const uri = `file:///plays/${files++}.play`;
    await client.open(uri, text);
    return ((await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList).items.map(({ label }) => label);
  };

  test.each([
    ['the side first', ['  situation sideline throw-in, down 1', '  from box', '  3 in|'], 'inbounds from the left sideline'],
    ['the baseline first', ['  situation baseline throw-in', '  from box', '  3 |'], 'inbounds from the left baseline'],
    ['also in the first step', ['  situation sideline throw-in', '  step "Get"', '    3 i|'], 'inbounds from the left sideline'],
    ['also without a situation', ['  from box', '  3 inb|'], 'inbounds from the left sideline'],
    ['where from', ['  3 inbounds from |'], 'left sideline'],
    ['where from, with its article', ['  3 inbounds from the left b|'], 'left baseline'],
  ] as const)('%s', async (_, lines, first) => {
    expect((await inPlay(...lines))[0]).toBe(first);
  });

  test('where somebody does something already there is no other thrower, and without a throw-in it does not come before a cut', async () => {
    expect((await inPlay('  situation sideline throw-in', '  3 inbounds from the right sideline', '  step "Get"', '    2 |')).filter((label) => label.startsWith('inbounds from'))).toEqual([]);
    expect((await inPlay('  from box', '  3 |'))[0]).toBe('cuts');
  });
});

test('who stands where no few words lead is told from the spot he is near', async () => {
  const { text, position } = atMark('play "A"\n  from 5-out, 3 at 2 ft above and 4 ft left of left elbow\n  step "Go"\n    1 passes to |');
  const uri = `file:///plays/${files++}.play`;
  await client.open(uri, text);
  const { items } = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
  const three = items.find(({ label }) => label === '3')!;
  expect(three.labelDetails?.description ?? three.detail).toBe('near left elbow');
});

describe('what is offered first', () => {
  test.each([
    ['    |', ['1', '2', '3', '4', '5', 'look'], 'who acts, the man with the ball first'],
    ['    1 |', ['passes to', 'dribbles', 'drives'], 'he has the ball'],
    ['    3 |', ['cuts', 'screens for', 'ball-screens for'], 'he has not'],
    ['    5 |', ['rolls', 'pops', 'slips'], 'he has just set a screen'],
    ['    4 and 5 |', ['cut', 'screen for'], 'two of them'],
    ['    1 passes to 3, 3 |', ['passes to', 'dribbles', 'drives'], 'he has caught it on this line'],
    ['    1 passes to 3 and |', ['cuts', 'screens for'], 'the passer goes on without it'],
    ['    4 ball-screens for |', ['1'], 'the man with the ball'],
    ['    4 screens for 3, then |', ['rolls', 'pops', 'slips'], 'his screen is set'],
    ['    3 cuts off |', ['5'], 'the man who has set a screen'],
    ['    3 cuts to left w|', ['left wing'], 'a place half typed'],
    ['    3 cuts to the left w|', ['left wing'], 'a place half typed, with its article'],
    ['    5 posts |', ['posts up'], 'a verb of two words half typed'],
    ['    look 3 "pull-up": |', ['jumper', 'layup', 'three', 'dunk'], 'shots'],
    ['    look 5: |', ['layup', 'jumper'], 'who stands near the ring lays it in'],
    ['  step "Other" instead of |', ['"Zip"', '"Middle"', '"Slip"'], 'steps, the nearest above first'],
    ['  step "Other" instead of "Zip" when |', ['X1', 'X2', 'X3', 'X4', 'X5'], 'what a defender does'],
    ['  step "Other" instead of "Zip" when X4 |', ['switches', 'shows', 'denies'], 'what a defender does'],
    ['    1 passes to |', ['3'], 'the man who has just come open, at a distance one passes'],
    ['    look |', ['1: three', '2: three', '3: three', '4: jumper', '5: layup'], 'the chances there are'],
    ['    look 3 |', ['on', 'off', 'as'], 'what a look is pinned to'],
    ['  step "Other" |', ['instead of', 'after', 'when'], 'where a step stands'],
    ['    as 5 |', ['catches'], 'what can be waited for'],
  ] as const)('%s', async (line, first, _why) => {
    const at = line.startsWith('  step') ? firstOfMiddle - 1 : firstOfMiddle;
    expect((await labels(line, at)).slice(0, first.length)).toEqual(first);
  });

  test.each([
    ['  from |', ['horns', 'box', 'stack']],
    ['  shot |', ['within', 'between']],
    ['  against |', ['man', '2-3', '3-2', '1-3-1', '2-2-1 press']],
    ['  against 2|', ['2-3', '2-2-1 press']],
    ['  call |', ['with']],
  ] as const)('in the head of a play: %s', async (line, first) => {
    expect((await labels(line, 5)).slice(0, first.length)).toEqual(first);
  });

  test.each(['    3 and |', '    2, 3 and |', '    3, |'])('nobody acts with himself: %s', async (line) => {
    const others = await labels(line);
    expect(others).toEqual(expect.arrayContaining(['1', '4', '5']));
    expect(others).not.toContain('3');
  });

  test('in the head of a file: what may open, and nobody who acts', async () => {
    const items = await labels('|', 0);
    expect(items).toEqual(expect.arrayContaining(['level', 'rules', 'play', 'alignment']));
    expect(items).not.toContain('1');
  });
});

describe('wherever the cursor stands', () => {
  const after = async (line: string, label: string, at = firstOfMiddle): Promise<string> => {
    const item = (await offered(line, at)).find((one) => one.label === label);
    expect(item, `${label} is offered in ${line}`).toBeDefined();
    const { range, newText } = item!.textEdit as { range: { start: { character: number }; end: { character: number } }; newText: string };
    const plain = line.replace('|', '');
    return plain.slice(0, range.start.character) + newText + plain.slice(range.end.character);
  };

  test.each([
    ['in the middle of a word it takes the rest of the word along', '    3 cu|rls to top', 'cuts', '    3 cuts to top'],
    ['in front of the word that it ends with it does not say that twice', '    1 |to 3', 'passes to', '    1 passes to 3'],
    ['in a place of two words it replaces both that are typed', '    3 cuts to left w|', 'left wing', '    3 cuts to left wing'],
    ['before a comma', '    1 passes to |, 3 drives to rim', '3', '    1 passes to 3, 3 drives to rim'],
    ['in front of a remark', '    3 cuts to t|  # hard', 'top', '    3 cuts to top  # hard'],
    ['behind a screen in the same line', '    4 ball-screens for 3, then ro|', 'rolls', '    4 ball-screens for 3, then rolls'],
  ] as const)('%s', async (_, line, label, whole) => {
    expect(await after(line, label)).toBe(whole);
  });

  test.each(['\n', '\r\n'])('below lines that cannot be read, and with remarks of any letters above (line ends %j)', async (eol) => {
    const lines = [...lighthouse.slice(0, firstOfMiddle), '    1 pases too 3  # é 🏀 “so”', '    @@@@', '    3 |', ...lighthouse.slice(firstOfMiddle)];
    const { text, position } = atMark(lines.join('\n'));
    const uri = `file:///plays/${files++}.play`;
    await client.open(uri, text.replaceAll('\n', eol));
    const { items } = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
    expect(items.slice(0, 2).map(({ label }) => label)).toEqual(['cuts', 'screens for']);
  });
});

describe('a word that is typed to its end', () => {
  test.each([
    ['    1 passes to 3|', []],
    ['    3 cuts to right wing|', []],
    ['    3 cuts to the right wing|', []],
    ['    3 cuts|', []],
    ['    look 3 "pull-up": jumper|', []],
    ['    5 flare-screens|', []],
    ['    4 ball-screens for|', []],
  ] as const)('is not offered once more, only what begins with it where it cannot stand alone: %s', async (line, left) => {
    expect(await labels(line)).toEqual(left);
  });

  test('closes the list while it is being typed: the editor asks again with each letter', async () => {
    const { text, position } = atMark('play "Pier"\n  from horns, ball with 1\n  step "One"\n    1 passes to |\n');
    await client.open('file:///plays/asks-again.play', text);
    const list = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri: 'file:///plays/asks-again.play' }, position })) as CompletionList;
    expect(list.isIncomplete).toBe(true);
  });
});

describe('what is not offered, because it cannot be', () => {
  test.each([
    ['    3 |', ['passes to', 'dribbles', 'drives', 'shoots', 'hands off to'], 'no pass without the ball'],
    ['    1 |', ['screens for', 'ball-screens for', 'cuts', 'rolls'], 'no screen and no cut while holding it'],
    ['    1 passes to |', ['1', 'X1'], 'nobody passes to himself or to the defence'],
    ['    1 picks up his dribble, 1 |', ['dribbles', 'drives'], 'no second dribble'],
    ['    4 screens for |', ['4', 'X4'], 'nobody screens for himself'],
    ['    4 |', ['switches', 'shows'], 'the offence does not defend'],
    ['    1 passes to |', ['him', 'them', 'look … : …', 'step …'], 'a number is meant, and no line begins here'],
    ['    4 screens for |', ['him', 'them'], 'a number is meant'],
    ['    3 cuts |', ['look … : …', '1 passes to …'], 'a line has begun'],
    ['    X4 |', ['cuts', 'passes to'], 'a defender does not attack'],
  ] as const)('%s', async (line, never, _why) => {
    const items = await labels(line);
    expect(items).not.toEqual([]);
    for (const label of never) expect(items).not.toContain(label);
  });
});

describe('whole lines with stops', () => {
  const whole = async (line: string, at?: number) => (await offered(line, at)).filter(({ insertTextFormat }) => insertTextFormat === InsertTextFormat.Snippet);

  test.each([
    ['    |', firstOfMiddle, ['look … : …', 'step …', '1 passes to …', '… ball-screens for …, then rolls'], []],
    ['  |', 5, ['step …'], ['look … : …', '1 passes to …', 'call …, shot …, leave …', 'rebound …']],
    ['|', 0, ['play …', 'play … from a throw-in'], ['step …', 'look … : …']],
    ['    1|', firstOfMiddle, ['1 passes to …', '1 dribbles to …'], ['look … : …']],
  ] as const)('at the start of %j', async (line, at, there, never) => {
    const found = (await whole(line, at)).map(({ label }) => label);
    expect(found).toEqual(expect.arrayContaining([...there]));
    for (const label of never) expect(found).not.toContain(label);
  });

  test('the numbers in them are likely ones, and what they write can be read', async () => {
    for (const item of await whole('    |')) {
      const { newText } = item.textEdit as { newText: string };
      const lines = newText.replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, '$1').replace(/\$\{\d+:([^}]*)\}/g, '$1').replaceAll('$0', '').split('\n');
      for (const line of lines) expect(parseLine(line).fault, `${item.label}: ${line}`).toBeUndefined();
    }
    const [pass] = (await whole('    |')).filter(({ label }) => label === '1 passes to …');
    expect((pass!.textEdit as { newText: string }).newText).toMatch(/^1 passes to \$\{1\|3,/);
  });

  test('a step goes back to the depth of steps', async () => {
    const [step] = (await whole('    |')).filter(({ label }) => label === 'step …');
    expect(step!.additionalTextEdits).toEqual([{ range: { start: { line: firstOfMiddle, character: 2 }, end: { line: firstOfMiddle, character: 4 } }, newText: '' }]);
    expect((step!.textEdit as { newText: string }).newText).toBe('step "${1:Name}"\n    $0');
  });

  test('not for an editor that does not know them', async () => {
    const plain = await talk();
    await plain.open('file:///plays/plain.play', lighthouse.join('\n'));
    const list = (await plain.connection.sendRequest(CompletionRequest.type, { textDocument: { uri: 'file:///plays/plain.play' }, position: { line: firstOfMiddle, character: 4 } })) as CompletionList;
    expect(list.items.length).toBeGreaterThan(0);
    expect(list.items.filter(({ insertTextFormat }) => insertTextFormat === InsertTextFormat.Snippet)).toEqual([]);
    plain.close();
  });
});

test('a place says how far it is and who stands there', async () => {
  const items = await offered('    3 cuts to |');
  expect(items.find(({ label }) => label === 'right elbow')?.labelDetails?.description).toMatch(/^\d\.\d m$/);
  expect(items.find(({ label }) => label === 'left wing')?.labelDetails?.description).toMatch(/1 is there/);
  expect(items.findIndex(({ label }) => label === 'right wing')).toBeLessThan(items.findIndex(({ label }) => label === 'left wing'));
});

test.each([
  ['    4 | for 1, then rolls', 'screens for', 'screens'],
  ['    1 | to 3', 'passes to', 'passes'],
  ['    1 | 3', 'passes to', 'passes to'],
])('what stands behind the cursor is not written a second time: %s', async (line, label, written) => {
  expect((await offered(line)).find((item) => item.label === label)?.textEdit?.newText).toBe(written);
});

test('a name between quotes takes the closing quote with it', async () => {
  const [item] = await offered('  step "Other" instead of "Mi|"', firstOfMiddle - 1);
  const line = '  step "Other" instead of "Mi"';
  const edit = item!.textEdit as { range: { start: { character: number }; end: { character: number } }; newText: string };
  expect(line.slice(0, edit.range.start.character) + '"Middle"' + line.slice(edit.range.end.character)).toBe('  step "Other" instead of "Middle"');
});

test('nothing is offered in a comment', async () => {
  expect(await labels('    1 passes to 3 # then |')).toEqual([]);
});

test('no entry takes the Enter key or any sign for itself', async () => {
  for (const item of await offered('    1 |')) expect(item.commitCharacters).toBeUndefined();
});

test('what is written in the list stands there only when it is asked for', async () => {
  const [item] = await offered('    1 |');
  expect(item!.documentation).toBeUndefined();
  const resolved = await client.connection.sendRequest(CompletionResolveRequest.type, item!);
  expect(JSON.stringify(resolved.documentation)).toMatch(/man at rest/);
});

test('names of files in use are offered, and files by the way to them', async () => {
  const own = 'notation 1\nspot "dock" is 1 m below left wing\n\nalignment "Kite"\n  1 top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n';
  const file = (marked: string) => {
    const { text, position } = atMark(`notation 1\nuse "parts/own.play"\n${marked}`);
    return { text, position, uri: `file:///club/${files++}.play` };
  };
  await client.open('file:///club/parts/own.play', own);
  await client.open('file:///else/far.play', '');
  const found = async (marked: string) => {
    const { text, position, uri } = file(marked);
    await client.open(uri, text);
    const { items } = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
    return items.map(({ label }) => label);
  };
  expect(await found('play "A"\n  from "|"')).toContain('"Kite"');
  expect(await found('play "A"\n  from "Kite"\n  1 dribbles to "|"')).toContain('"dock"');
  const uses = await found('use "|"');
  expect(uses).toContain('"../else/far.play"');
  expect(uses).not.toContain('"parts/own.play"');
});

test('a line of the head that is there is not offered again', async () => {
  const items = await labels('  |', 6);
  expect(items).not.toContain('from');
  expect(items).not.toContain('call');
});

describe('what stands beside the list', () => {
  const beside = async (client: Client, line: string, label: string, at = firstOfMiddle) => {
    const { text, position } = atMark([...lighthouse.slice(0, at), line, ...lighthouse.slice(at)].join('\n'));
    const uri = `file:///plays/${files++}.play`;
    await client.open(uri, text);
    const { items } = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
    const resolved = await client.connection.sendRequest(CompletionResolveRequest.type, items.find((item) => item.label === label)!);
    return (resolved.documentation as { value: string } | undefined)?.value;
  };

  test.each([
    ['    2 cuts to |', 'left corner', /^2 from right block to left corner: \d+\.\d m\.$/, firstOfMiddle - 3],
    ['    2 cuts to left c|', 'left corner', /^2 from right block to left corner: \d+\.\d m\.$/, firstOfMiddle - 3],
    ['  from |', 'horns', /^Everybody’s place in `horns`/, 6],
  ] as const)('of %s %s', async (line, label, words, at) => {
    const plain = await beside(client, line, label, at);
    expect(plain).toMatch(words);
    const drawing = await talk({ options: { pictures: 'light' } });
    const value = await beside(drawing, line, label, at);
    expect(value!.startsWith(plain!)).toBe(true);
    const svg = Buffer.from(/base64,([^|]+)/.exec(value!)![1]!, 'base64').toString('utf8');
    expect([1, 2, 3, 4, 5].filter((number) => svg.includes(`>${number}</text>`))).toHaveLength(5);
    drawing.close();
  });
});
