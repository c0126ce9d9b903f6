// What the extension takes of the editor's time. By the wall a busy machine is part of it; where it can be told, it is counted by the processor.

interface Place {
  readonly process?: {
    /** Node 23.9 or later: this thread alone. */
    readonly threadCpuUsage?: () => { readonly user: number; readonly system: number };
    readonly cpuUsage?: () => { readonly user: number; readonly system: number };
  };
}

/** Milliseconds; the difference of two is what this thread did in between. In a browser, by the wall. */
export function ownTime(): number {
  const { process } = globalThis as Place;
  const used = process?.threadCpuUsage?.() ?? process?.cpuUsage?.();
  return used === undefined ? performance.now() : (used.user + used.system) / 1000;
}

/** Before anything else of the extension was loaded: its entries name this file first. */
const loadingBegan = ownTime();
export const sinceLoadingBegan = (): number => ownTime() - loadingBegan;
