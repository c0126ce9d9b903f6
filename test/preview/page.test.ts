import { createHash } from 'node:crypto';
import { deflateSync, inflateSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { pageHtml } from '../../client/preview/page.ts';
import { buildPlayer } from '../../scripts/build.ts';
import { hostile, lighthouse } from '../support/playback-fixture.ts';

const deflate = (text: string): string => deflateSync(text).toString('base64');
const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('base64');

describe('the page', () => {
  let player: { script: string; style: string };
  let html: string;
  beforeAll(async () => {
    player = await buildPlayer();
    html = pageHtml([lighthouse], player.script, player.style, { sha256, deflate });
  });

  it('is one file of at most 250 kB', () => {
    expect(Buffer.byteLength(html)).toBeLessThan(250_000);
  });

  it('asks the network for nothing and holds no other address than SVG’s name', () => {
    const addresses = new Set(html.match(/\b(?:https?|wss?|ftp):\/\/[^\s"'`)\\]+/g) ?? []);
    expect([...addresses]).toEqual(['http://www.w3.org/2000/svg']);
    expect(html).not.toMatch(/<(?:link|img|iframe|object|embed)\b|@import|url\(\s*['"]?(?!#)/);
    expect(player.script).not.toMatch(/\bfetch\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts/);
  });

  it('evaluates no text and writes no markup', () => {
    expect(player.script).not.toMatch(/\beval\(|new Function\(|innerHTML|outerHTML|insertAdjacentHTML|document\.write/);
    expect(html).not.toMatch(/ style="| on\w+="/);
  });

  it('names the hashes of its own script and style in its policy', () => {
    const policy = /Content-Security-Policy" content="([^"]+)"/.exec(html)![1]!;
    expect(policy).toContain("default-src 'none'");
    for (const [tag, directive] of [['script', 'script-src'], ['style', 'style-src']] as const) {
      const text = [...html.matchAll(new RegExp(`<${tag}>([\\s\\S]*?)</${tag}>`, 'g'))].at(-1)![1]!;
      expect(policy).toContain(`${directive} 'sha256-${sha256(text)}'`);
    }
  });

  it('no text of a play ends its data', () => {
    const page = pageHtml([hostile()], player.script, player.style, { sha256, deflate });
    expect(page).not.toMatch(/<img|<script>window/);
    expect(/id="setwright-plays">([^<]*)</.exec(page)![1]).toMatch(/^[\w+/]+=*$/);
  });

  it('carries its plays whole', () => {
    const two = pageHtml([lighthouse, hostile()], player.script, player.style, { sha256, deflate, title: 'Playbook' });
    const data = JSON.parse(inflateSync(Buffer.from(/id="setwright-plays">([^<]*)</.exec(two)![1]!, 'base64')).toString()) as unknown;
    expect(data).toEqual(JSON.parse(JSON.stringify({ v: 2, title: 'Playbook', plays: [lighthouse, hostile()], autoplay: true })));
    expect(two).toContain('<title>Playbook</title>');
  });

  it('can be read where scripts are off', () => {
    expect(html).toMatch(/<noscript><h1>Lighthouse<\/h1><ol><li>Lighthouse starts from a stack/);
  });
});
