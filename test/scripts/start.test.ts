import { spawnSync } from 'node:child_process';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { editorAddress } from '../../scripts/host.ts';

function start(env: Readonly<Record<string, string>>, ...args: readonly string[]) {
  const { status, stderr } = spawnSync(process.execPath, [join(root, 'scripts/start.ts'), ...args], { encoding: 'utf8', env: { ...process.env, ...env } });
  return { status, stderr };
}

describe('a coach whose start cannot work is told why and what to do', () => {
  test('the port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const { port } = other.address() as AddressInfo;
    try {
      const { status, stderr } = start({ PORT: String(port) });
      expect(status).toBe(1);
      expect(stderr).toContain(`Port ${port} is taken`);
      expect(stderr).toContain(`PORT=${port + 1}`);
    } finally {
      other.close();
    }
  });

  test.each(['eighty', '0', '70000', '80.5'])('the port is %s', (port) => {
    const { status, stderr } = start({ PORT: port });
    expect(status).toBe(1);
    expect(stderr).toContain(`not "${port}"`);
  });

  test('there is no VS Code on the desktop', () => {
    const { status, stderr } = start({ PATH: '' }, '--desktop');
    expect(status).toBe(1);
    expect(stderr).toContain('There is no "code" command');
    expect(stderr).toContain('npm start');
  });
});

test('the address survives blanks and accents in the folder and the file', () => {
  const address = new URL(editorAddress(8080, '/gym/été plays', '/gym/été plays/1 & 2.play'));
  expect(address.searchParams.get('folder')).toBe('/gym/été plays');
  expect(JSON.parse(address.searchParams.get('payload')!)).toEqual([['openFile', 'vscode-remote://127.0.0.1:8080/gym/été plays/1 & 2.play']]);
});
