// `node test/e2e/long-play.ts [minutes] [Node | "web worker"]`: plays the example in the panel of a real VS Code for so long (usually ten minutes)
// and tells each minute what it holds in memory. Where the panel shares a process with the window, the window is counted with it.
// `test/preview/long-play.ts` is the same without VS Code.
import { heldBy, sayHeld } from '../support/memory.ts';
import { besideItsText, panel, panelFrame } from './editor.ts';
import prepare from './prepare.ts';
import { places } from './vscode.ts';
import { openEditor } from './window.ts';

const minutes = Number(process.argv[2] ?? 10);
const wanted = places.find((place) => place === process.argv[3]) ?? 'Node';
await prepare();
const editor = await openEditor(wanted);
try {
  await besideItsText(editor, 'lighthouse.play');
  const frame = await panelFrame(editor);
  // It starts again whenever it has come to its end, as a coach would who shows it to everybody.
  await frame.evaluate(() => void setInterval(() => document.querySelector<HTMLButtonElement>('button[aria-label="Play"]')?.click(), 500));
  const context = editor.page.context();
  const own = await context.newCDPSession(frame).catch(() => undefined);
  const cdp = own ?? (await context.newCDPSession(editor.page));
  console.log(`${own === undefined ? 'the window with the panel' : 'the panel'}, extension host: ${wanted}`);
  for (let minute = 0; minute <= minutes; minute++) {
    // What has just been opened settles first.
    await editor.page.waitForTimeout(minute === 0 ? 10_000 : 60_000);
    console.log(sayHeld(minute, await heldBy(cdp), await panel(editor).locator('input.time').inputValue()));
  }
} finally {
  await editor.close();
}
