import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { root } from '../../scripts/build.ts';

const uri = 'file:///a.play';
const folder = join(root, 'examples');
const text = `${readFileSync(join(folder, 'lighthouse.play'), 'utf8')}\nplay "Wrong"\n  from horns, ball with 1\n  step "A"\n    1 screens for 2\n    2 cuts off 1 to nail\n    look 2: jumper\n`;

test('are those of the whole file that belong to its play', () => {
  const book = openFile(emptyBook, uri, text);
  const whole = createKeeper().findingsOf(book, uri);
  expect(whole.length).toBeGreaterThan(0);
  const lines = text.split('\n');
  for (const block of book.files.get(uri)!.blocks) {
    const at = lines.findIndex((line) => line === block.lines[0]?.parsed.text);
    expect(createKeeper().findingsOf(book, uri, at)).toEqual(whole.filter((finding) => finding.block === block.key));
  }
});
