// A Chromium and a VS Code server for all tests of a worker, one after the other: what they have loaded, compiled and installed for
// one window they have for the next. The environment of the e2e project begins and ends it (environment.ts); in a script or a bench,
// which has no such environment, everybody opens and closes his own.

interface Closing {
  close(): Promise<void>;
}

// On the global object: an environment does not share its modules with the tests.
const worker = globalThis as { setwrightKept?: Map<string, Promise<Closing>> };

export function beginKeeping(): void {
  worker.setwrightKept = new Map();
}

export async function endKeeping(): Promise<void> {
  await closeKept();
  delete worker.setwrightKept;
}

/** The next one who asks has everything new. */
export async function closeKept(): Promise<void> {
  const all = [...(worker.setwrightKept?.values() ?? [])];
  worker.setwrightKept?.clear();
  await Promise.all(all.map(async (one) => (await one.catch(() => undefined))?.close()));
}

/** What is kept under this name, opened if nothing is. To be closed by who asks for it: that ends only what is not kept. */
export async function keep<T extends Closing>(name: string, open: () => Promise<T>): Promise<T> {
  const kept = worker.setwrightKept;
  if (kept === undefined) return open();
  const before = kept.get(name) as Promise<T> | undefined;
  const opening = before ?? open();
  kept.set(name, opening);
  try {
    return { ...(await opening), close: async () => undefined };
  } catch (reason) {
    kept.delete(name);
    throw reason;
  }
}
