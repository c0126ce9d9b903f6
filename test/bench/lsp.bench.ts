// What the language server itself takes, over streams in this process: messages are written and read as on a wire.
import { CompletionRequest } from 'vscode-languageserver-protocol';
import { frameMethod, readFrame, showMethod } from '../../server/lsp/protocol.ts';
import { playOf } from '../support/typed-play.ts';
import { talk, uri, type Client } from '../lsp/talking.ts';
import type { Measure } from '../../scripts/bench.ts';

export async function bench(): Promise<readonly Measure[]> {
  const rows: Measure[] = [];
  for (const lines of [300, 20_000]) rows.push(...(await measure(lines)));
  const ratio = (what: string) => rows.find(({ name }) => name === `${what}, 20,000 lines`)!.value / rows.find(({ name }) => name === `${what}, 300 lines`)!.value;
  return [...rows, { name: 'edit to picture, 20,000 lines to 300', value: ratio('edit to picture'), unit: 'x' }, { name: 'edit to findings, 20,000 lines to 300', value: ratio('edit to findings'), unit: 'x' }];
}

async function measure(lines: number): Promise<readonly Measure[]> {
  const client = await talk({ options: { settings: { checks: { settle: 0 } } } });
  const text = playOf(lines);
  await client.open(uri, text);
  await client.diagnosticsOf(uri, 1);
  const line = text.split('\n').findIndex((one) => one.includes('(5.12'));
  const end = '    2 clears to (5.12'.length;
  const frames = nextFrame(client);
  await client.connection.sendNotification(showMethod, { version: 1, panel: 'bench', uri, what: { kind: 'follow', line } });
  await frames();

  const [picture, findings, completion]: [number[], number[], number[]] = [[], [], []];
  for (let version = 2; version < 150; version++) {
    // Each digit is typed over the one before: taken back, it would leave a play that is still known.
    const range = { start: { line, character: end }, end: { line, character: version === 2 ? end : end + 1 } };
    const change = { range, text: String(1 + (version % 9)) };
    const began = performance.now();
    const drawn = frames().then(() => performance.now() - began);
    const said = client.diagnosticsOf(uri, version).then(() => performance.now() - began);
    await client.change(uri, version, [change]);
    picture.push(await drawn);
    findings.push(await said);
    const asked = performance.now();
    await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position: { line, character: 6 } });
    completion.push(performance.now() - asked);
  }
  client.close();
  const where = `${lines.toLocaleString('en')} lines`;
  return [
    { name: `edit to picture, ${where}`, value: median(picture), unit: 'ms' },
    { name: `edit to findings, ${where}`, value: median(findings), unit: 'ms' },
    { name: `completion after an edit, ${where}`, value: median(completion), unit: 'ms' },
  ];
}

function nextFrame(client: Client): () => Promise<void> {
  let arrived: (() => void) | undefined;
  client.connection.onNotification(frameMethod, (value: unknown) => {
    if (readFrame(value) !== undefined) arrived?.();
  });
  return () => new Promise((resolve) => (arrived = resolve));
}

const median = (values: readonly number[]): number => values.slice(20).toSorted((a, b) => a - b)[(values.length - 20) >> 1]!;
