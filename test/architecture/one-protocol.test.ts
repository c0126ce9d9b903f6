// Two copies of the protocol's library compare error classes by identity and miss each other's: a cancelled request then
// answers "internal error".
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { globSync } from 'tinyglobby';
import { CancellationTokenSource, createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver-protocol/node';
import { beforeAll, expect, test } from 'vitest';
import { buildServer, root } from '../../scripts/build.ts';

const packageFolders = (name: string, paths: readonly string[]) => paths.filter((path) => path.endsWith(`node_modules/${name}`));
const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as { packages: Record<string, { version: string }> };

test.each(['vscode-jsonrpc', 'vscode-languageserver-protocol', 'vscode-languageserver-types'])('one copy of %s is installed', (name) => {
  expect(packageFolders(name, Object.keys(lock.packages))).toEqual([`node_modules/${name}`]);
  const installed = globSync(`node_modules/**/node_modules/${name}/package.json`, { cwd: root, dot: true });
  expect(installed).toEqual([]);
});

test('a second copy would be found', () => {
  const paths = ['node_modules/vscode-jsonrpc', 'node_modules/langium/node_modules/vscode-jsonrpc', 'node_modules/my-vscode-jsonrpc'];
  expect(packageFolders('vscode-jsonrpc', paths)).toHaveLength(2);
});

let server: string;
beforeAll(async () => {
  server = await buildServer('test/out/one-protocol');
});

test('a request the editor no longer wants is answered as cancelled, over real stdio', async () => {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  connection.listen();
  try {
    await connection.sendRequest('initialize', { processId: null, rootUri: null, capabilities: {} });
    await connection.sendNotification('initialized', {});
    const uri = 'file:///gym/lighthouse.play';
    await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'setwright', version: 1, text: 'notation 1\n' } });
    const hover = (token?: unknown) => connection.sendRequest('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 0 } }, ...(token ? [token] : []));
    await expect(hover()).resolves.toBeDefined();

    const source = new CancellationTokenSource();
    const answer = hover(source.token);
    source.cancel();
    await expect(answer).rejects.toMatchObject({ code: -32800 });
    await connection.sendRequest('shutdown');
  } finally {
    connection.dispose();
    child.kill();
  }
});

test('so is a list of words called off in the same breath', async () => {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const framed = (message: object) => {
    const text = JSON.stringify({ jsonrpc: '2.0', ...message });
    return `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`;
  };
  const uri = 'file:///gym/lighthouse.play';
  const answered = new Promise<string>((resolve) => {
    let out = '';
    child.stdout.on('data', (data: Buffer) => {
      out += data.toString();
      if (/"id":2\b[^]*\}/.test(out)) resolve(out);
    });
  });
  child.stdin.write([
    framed({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } }),
    framed({ method: 'initialized', params: {} }),
    framed({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'setwright', version: 1, text: 'play "Pier"\n  ' } } }),
    framed({ id: 2, method: 'textDocument/completion', params: { textDocument: { uri }, position: { line: 1, character: 2 } } }),
    framed({ method: '$/cancelRequest', params: { id: 2 } }),
  ].join(''));
  try {
    expect(await answered).toContain('-32800');
  } finally {
    child.kill();
  }
});
