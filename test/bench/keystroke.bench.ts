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

/** Two frames from the letter to its picture, at the 95th percentile. */
const twoFrames = 33;
const missed = 'Where the extension runs on Node, a websocket to the window and a process for the server: see what the echo alone takes. "Picture behind the echo" is what is ours.';

/** The aim is a picture two frames after the letter on a machine that does nothing else. The echo is what VS Code itself takes there, with nothing to compute and nothing to draw. */
function rowsOf(where: string, { letter, picture, least }: TypingSpeed): readonly Measure[] {
  const row = (what: string, valueAt: (of: number) => number, held: Partial<Measure> = {}) => [50, 95].map((of) => ({ name: `${what} (p${of}), ${where}`, value: valueAt(of), unit: 'ms', ...(of === 95 && held) }));
  return [
    ...row('key to letter shown', (of) => percentile(letter, of)),
    ...row('letter to echo: the least VS Code takes', (of) => percentile(least, of)),
    ...row('letter to picture', (of) => percentile(picture, of), { budget: twoFrames, missed }),
    ...row('picture behind the echo', (of) => percentile(picture, of) - percentile(least, of), { budget: twoFrames }),
  ];
}
