// A play of a list, for tests; what is not said is usual.
import type { PlayEntry } from '../../server/lsp/playbook-protocol.ts';

interface Said extends Partial<Omit<PlayEntry, 'first' | 'all'>> {
  /** Seconds from the call. */
  readonly first?: number | null;
  readonly all?: number;
}

export function playEntry(name: string, { first = 10, all = first ?? 0, ...said }: Said = {}): PlayEntry {
  const saved = said.throwIn ? 0 : 2;
  const needed = (seconds: number) => ({ fromCall: seconds, alreadySet: seconds - saved });
  return {
    uri: 'file:///a.play', key: `play:${name.toLowerCase()}`, name, line: 1, lastLine: 9, tags: [], situation: [], against: 'man', from: 'horns', throwIn: null, level: 'u14', call: null,
    first: first === null ? null : needed(first), all: first === null ? null : needed(all), looks: [], errors: 0, warnings: 0, ...said,
  };
}
