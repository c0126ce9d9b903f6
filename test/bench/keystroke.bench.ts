// From the key to the changed picture in a real VS Code; nothing to measure with where Chromium is missing.
import { executable } from '../e2e/chromium.ts';
import { openEditor } from '../e2e/window.ts';
import prepare from '../e2e/prepare.ts';
import { places } from '../e2e/vscode.ts';
import { echo, measureTyping, percentile, type TypingSpeed } from '../e2e/typing-speed.ts';
import { playOf } from '../support/typed-play.ts';
import type { Measure } from '../../scripts/bench.ts';

/** A turn. */
const keys = 50;

export async function bench(): Promise<readonly Measure[]> {
  if (!executable) return [];
  await prepare();
  const rows: Measure[] = [];
  for (const place of places) {
    for (const lines of [300, 5000]) {
      const editor = await openEditor(place, { files: { 'typed.play': playOf(lines) }, others: [echo] });
      try {
        rows.push(...rowsOf(`${place}, ${lines.toLocaleString('en')} lines`, await measureTyping(editor, 'typed.play', keys)));
      } finally {
        await editor.close();
      }
    }
  }
  return rows;
}

/**
 * The aim is a picture two frames (33 ms) after the letter, at the 95th percentile, on a machine that does nothing else. It is held against what is
 * ours: the echo is what VS Code itself takes from a letter to a picture, with nothing to compute and nothing to draw.
 */
function rowsOf(where: string, { letter, picture, least }: TypingSpeed): readonly Measure[] {
  const row = (what: string, values: readonly number[]) => [50, 95].map((of) => ({ name: `${what} (p${of}), ${where}`, value: percentile(values, of), unit: 'ms' }));
  return [
    ...row('key to letter shown', letter),
    ...row('letter to echo: the least VS Code takes', least),
    ...row('letter to picture', picture),
    ...[50, 95].map((of) => ({ name: `picture behind the echo (p${of}), ${where}`, value: percentile(picture, of) - percentile(least, of), unit: 'ms', ...(of === 95 && { budget: 33 }) })),
  ];
}
