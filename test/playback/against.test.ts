import { expect, test } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';

test.each([
  ['', undefined],
  ['against man', {}],
  ['against a press', { press: true }],
  ['against man press', { press: true }],
  ['against 2-3', { zone: '2-3' }],
  ['against 2-2-1 press', { zone: '2-2-1', press: true }],
])('a play written “%s” says so in its playback', (line, against) => {
  const text = `notation 1\nlevel u14\nplay "One"\n  from horns, ball with 1\n  ${line}\n  step "S"\n    1 passes to 2\n    look 2: three\n`;
  const [compiled] = createKeeper().playsOf(openFile(emptyBook, 'file:///a.play', text), 'file:///a.play');
  expect(playbackOf(compiled!).play.against).toEqual(against);
});
