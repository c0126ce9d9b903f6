import { afterEach, expect, test } from 'vitest';
import { byHandMethod, PROTOCOL_VERSION, readByHandAnswer, type ByHand } from '../../server/lsp/protocol.ts';
import { compileText } from '../checks/compiled.ts';
import { talk, uri, type Client } from './talking.ts';

const text = `play "Pier"
  from 5-out
  step "Zip"
    2 clears to right corner # a remark
    1 screens for 3
    3 cuts off 1 to top
    look 3: three
    look 2: jumper

play "Pier left" mirrors "Pier"
`;

let client: Client | undefined;
afterEach(() => client?.close());

async function ask(what: ByHand['what'], more: Partial<ByHand> = {}, source = text) {
  client = await talk();
  await client.open(uri, source, 4);
  const answer: unknown = await client.connection.sendRequest(byHandMethod, { version: PROTOCOL_VERSION, uri, documentVersion: 4, playKey: 'play:pier', what, ...more });
  return readByHandAnswer(answer);
}

const finding = compileText(text).plays[0]!.findings.findIndex(({ code }) => code === 'screen-with-ball');
const drag = { kind: 'intent', intent: { kind: 'move-end', action: 'zip/2.1', to: { x: 5.75, y: 4.2 } } } as const;

test('the end of a cut drawn to the wing is one edit of its words', async () => {
  const answer = await ask(drag);
  expect(answer).toMatchObject({ words: 'right wing', edits: [{ range: { start: { line: 3, character: 16 }, end: { line: 3, character: 28 } }, newText: 'right wing' }], changes: 'both run-throughs' });
});

test('a new line stands below its step in the file’s own line ends', async () => {
  const answer = await ask({ kind: 'intent', intent: { kind: 'add-cut', player: 4, step: 'zip', to: { x: 0, y: 0.4 } } }, {}, text.replaceAll('\n', '\r\n'));
  expect(answer).toMatchObject({ edits: [{ range: { start: { line: 6, character: 0 }, end: { line: 6, character: 0 } }, newText: expect.stringMatching(/^ {4}4 cuts to .*\r\n$/) }] });
});

test('a fix of a finding is its edits', async () => {
  const answer = await ask({ kind: 'fix', code: 'screen-with-ball', finding, fix: 0 });
  expect(answer).toMatchObject({ words: expect.stringContaining('1 passes to 3'), edits: [{ newText: '    1 passes to 3\n' }] });
});

test.each<[string, ByHand['what'], Partial<ByHand>, RegExp]>([
  ['an older text', drag, { documentVersion: 3 }, /changed meanwhile/],
  ['a play that is gone', drag, { playKey: 'play:jetty' }, /no longer in the text/],
  ['a mirrored play', drag, { playKey: 'play:pier-left' }, /copied from another play/],
  ['a fix of another finding', { kind: 'fix', code: 'no-such', finding, fix: 0 }, {}, /changed meanwhile/],
  ['a fix that is not there', { kind: 'fix', code: 'screen-with-ball', finding, fix: 99 }, {}, /changed meanwhile/],
])('%s is refused', async (_, what, more, reason) => {
  expect(await ask(what, more)).toEqual({ refused: expect.stringMatching(reason) });
});

test('a line that cannot be read is refused, its neighbours are not', async () => {
  const torn = text.replace('off 1 to top', 'of 1 to top');
  const of = (action: string) => ask({ kind: 'intent', intent: { kind: 'move-end', action, to: { x: 5.75, y: 4.2 } } }, {}, torn);
  expect(await of('zip/3.1')).toHaveProperty('refused');
  client?.close();
  expect(await of('zip/2.1')).toMatchObject({ words: 'right wing' });
});

test('what is not an intent is not answered', async () => {
  expect(await ask({ kind: 'intent', intent: { kind: 'rewrite', text: 'x' } } as never)).toBeUndefined();
});
