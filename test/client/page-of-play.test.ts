import { createHash } from 'node:crypto';
import { deflateSync, inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { pageOf } from '../../client/page-of-play.ts';
import { DATA_ID } from '../../client/preview/page-data.ts';
import { pageHtml } from '../../client/preview/page.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { compileText } from '../checks/compiled.ts';

const playback = playbackOf(compileText('play "Größe 🏀"\n  from horns\n\n  step "Go"\n    1 passes to 2\n    look 2: jumper\n').plays[0]!);
const player = { script: 'console.log("</script>é")', style: 'body{color:red}' };
const packedIn = (page: string): unknown => JSON.parse(inflateSync(Buffer.from(new RegExp(`id="${DATA_ID}">([^<]+)<`).exec(page)![1]!, 'base64')).toString('utf8'));

test('a page made in the editor holds the play and may run its own script, as one made on the command line', async () => {
  const made = await pageOf([playback], player, { language: 'en' });
  const known = pageHtml([playback], player.script, player.style, { sha256: (text) => createHash('sha256').update(text, 'utf8').digest('base64'), deflate: (text) => deflateSync(text).toString('base64'), language: 'en' });
  const policy = (page: string) => /Content-Security-Policy" content="([^"]+)"/.exec(page)![1];
  expect(policy(made)).toBe(policy(known));
  expect(policy(made)).toMatch(/script-src 'sha256-[\w+/]{43}='/);
  expect(packedIn(made)).toEqual(packedIn(known));
  expect(packedIn(made)).toMatchObject({ title: 'Größe 🏀' });
});

test('a page of a playbook holds its plays in order, each with the section of its book', async () => {
  const made = await pageOf([playback, playback], player, { language: 'en' }, { title: 'Ours', sections: ['Last shot', undefined] });
  expect(packedIn(made)).toMatchObject({ title: 'Ours', plays: [{ play: { name: 'Größe 🏀' } }, {}], sections: ['Last shot', null] });
  expect(made).toContain('<title>Ours</title>');
});
