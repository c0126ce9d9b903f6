// `node test/preview/long-play.ts [minutes]`: plays the example in the panel's player for so long (usually ten minutes) and tells each minute what it
// holds in memory. The suite has a short version (test/preview/player.e2e.test.ts).
import { heldBy, sayHeld } from '../support/memory.ts';
import { openStage, show } from './player-in-browser.ts';

const minutes = Number(process.argv[2] ?? 10);
const stage = await openStage();
try {
  const { page } = stage;
  await stage.openPanel();
  await stage.tell(show(1));
  await page.locator('html[data-seq="1"]').waitFor();
  // It starts again whenever it has come to its end, as a coach would who shows it to everybody; what the panel tells is not kept here.
  await page.evaluate(() => {
    const { heard } = window as unknown as { heard: unknown[] };
    setInterval(() => {
      heard.length = 0;
      document.querySelector<HTMLButtonElement>('button[aria-label="Play"]')?.click();
    }, 500);
  });
  const cdp = await page.context().newCDPSession(page);
  for (let minute = 0; minute <= minutes; minute++) {
    if (minute > 0) await page.waitForTimeout(60_000);
    console.log(sayHeld(minute, await heldBy(cdp), await page.locator('input.time').inputValue()));
  }
} finally {
  await stage.close();
}
