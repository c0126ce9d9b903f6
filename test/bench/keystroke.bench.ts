// From the key to the changed picture in a real VS Code; nothing to measure with where Chromium is missing.
import { executable } from '../e2e/chromium.ts';
import { openEditor } from '../e2e/window.ts';
import prepare from '../e2e/prepare.ts';
import { measureTyping, percentile, type TypingSpeed } from '../e2e/typing-speed.ts';
import { playOf } from '../support/typed-play.ts';

interface Measured {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly budget?: number;
}

const keys = 120;

export async function bench(): Promise<readonly Measured[]> {
  if (!executable) return [];
  await prepare();
  const rows: Measured[] = [];
  for (const lines of [31, 5000]) {
    const editor = await openEditor('Node', { files: { 'typed.play': playOf(lines) } });
    try {
      rows.push(...rowsOf(lines, await measureTyping(editor, 'typed.play', keys)));
    } finally {
      await editor.close();
    }
  }
  return rows;
}

/** No budget yet: the aim is a picture two frames (33 ms) after the letter, at the 95th percentile, on a machine that does nothing else. */
function rowsOf(lines: number, { letter, picture, after }: TypingSpeed): readonly Measured[] {
  const row = (what: string, values: readonly number[]) => [50, 95].map((of) => ({ name: `${what} (p${of}), ${lines.toLocaleString('en')} lines`, value: percentile(values, of), unit: 'ms' }));
  return [...row('key to letter shown', letter), ...row('key to picture drawn', picture), ...row('letter to picture', after)];
}
