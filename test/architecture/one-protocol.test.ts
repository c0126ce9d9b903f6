// Two copies of the protocol's library compare error classes by identity and miss each other's: a cancelled request then
// answers "internal error".
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { globSync } from 'tinyglobby';
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

// Sent as one piece: in two, a quick server may rightly have answered before it reads that nobody wants the answer.
test.each(['completion', 'hover'])('a %s called off in the same breath is answered as cancelled, over real stdio', async (question) => {
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
    framed({ id: 2, method: `textDocument/${question}`, params: { textDocument: { uri }, position: { line: 1, character: 2 } } }),
    framed({ method: '$/cancelRequest', params: { id: 2 } }),
  ].join(''));
  try {
    expect(await answered).toContain('-32800');
  } finally {
    child.kill();
  }
});
