// What a page holds in memory once its garbage is collected.
import type { CDPSession } from 'playwright-core';

export interface Held {
  /** bytes */
  readonly heap: number;
  readonly nodes: number;
  readonly listeners: number;
}

export async function heldBy(cdp: CDPSession): Promise<Held> {
  await cdp.send('HeapProfiler.collectGarbage');
  const { usedSize } = await cdp.send('Runtime.getHeapUsage');
  const { nodes, jsEventListeners } = await cdp.send('Memory.getDOMCounters');
  return { heap: usedSize, nodes, listeners: jsEventListeners };
}

/** One line a minute: what is held, and where the play stands. */
export const sayHeld = (minute: number, { heap, nodes, listeners }: Held, time: string): string =>
  `${String(minute).padStart(3)} min  ${(heap / 1000).toFixed(0).padStart(7)} kB  ${nodes} nodes  ${listeners} listeners  at ${time} ms`;
