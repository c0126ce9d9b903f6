// `node test/e2e/long-play.ts [minutes] [Node | "web worker"]`: plays the example in the panel of a real VS Code for so long (usually ten minutes)
// and tells each minute what the panel holds in memory once the garbage is collected. Where the panel shares a process with the window, the window
// is counted with it. `test/preview/long-play.ts` is the same without VS Code.
import type { CDPSession } from 'playwright-core';
import { besideItsText, panel, panelFrame } from './editor.ts';
import prepare from './prepare.ts';
import { places, type Place } from './vscode.ts';
import { openEditor, type Editor } from './window.ts';

export interface Held {
  readonly heap: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** Whatever the panel's frame lives in, and who that is. */
export async function memoryOf(editor: Editor): Promise<{ readonly of: 'the panel' | 'the window with the panel'; readonly held: () => Promise<Held> }> {
  const context = editor.page.context();
  const own = await context.newCDPSession(await panelFrame(editor)).catch(() => undefined);
  const cdp: CDPSession = own ?? (await context.newCDPSession(editor.page));
  return {
    of: own === undefined ? 'the window with the panel' : 'the panel',
    async held() {
      await cdp.send('HeapProfiler.collectGarbage');
      const { usedSize } = await cdp.send('Runtime.getHeapUsage');
      const { nodes, jsEventListeners } = await cdp.send('Memory.getDOMCounters');
      return { heap: usedSize, nodes, listeners: jsEventListeners };
    },
  };
}

/** It starts again whenever it has come to its end, as a coach would who shows it to everybody. */
export async function playOverAndOver(editor: Editor) {
  await besideItsText(editor, 'lighthouse.play');
  const frame = await panelFrame(editor);
  await frame.evaluate(() => void setInterval(() => document.querySelector<HTMLButtonElement>('button[aria-label="Play"]')?.click(), 500));
}

if (import.meta.main) {
  const minutes = Number(process.argv[2] ?? 10);
  const wanted = places.find((place) => place === process.argv[3]) ?? ('Node' satisfies Place);
  await prepare();
  const editor = await openEditor(wanted);
  try {
    await playOverAndOver(editor);
    const { of, held } = await memoryOf(editor);
    console.log(`${of}, extension host: ${wanted}`);
    for (let minute = 0; minute <= minutes; minute++) {
      await editor.page.waitForTimeout(minute === 0 ? 10_000 : 60_000);
      const { heap, nodes, listeners } = await held();
      const time = await panel(editor).locator('input.time').inputValue();
      console.log(`${String(minute).padStart(3)} min  ${(heap / 1000).toFixed(0).padStart(7)} kB  ${nodes} nodes  ${listeners} listeners  at ${time} ms`);
    }
  } finally {
    await editor.close();
  }
}
