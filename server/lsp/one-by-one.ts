// Long work in pieces: a keystroke or a question that arrives meanwhile comes before the next piece.
import type { Asking } from './asking.ts';

/** Milliseconds of work between two looks at what has arrived; half a picture's time. */
const piece = 8;

/** For work that nobody waits for: a failure goes where those of all work in the background go. */
export function inBackground(host: Asking['host'], work: Promise<unknown>): void {
  void work.catch((error: unknown) =>
    host.turn(() => {
      throw error;
    }),
  );
}

/** Compiles the plays of a file that are not known yet. True once all are; false where `stop` said so in between. */
export async function compileOneByOne({ behindTyping, documents, keeper }: Pick<Asking, 'behindTyping' | 'documents' | 'keeper'>, uri: string, stop: () => boolean = () => false): Promise<boolean> {
  let began = performance.now();
  for (const block of keeper.unknownIn(documents.book(), uri)) {
    keeper.compile(documents.book(), uri, block);
    if (performance.now() - began < piece) continue;
    await new Promise<void>((resolve) => void behindTyping(resolve, 1));
    if (stop()) return false;
    began = performance.now();
  }
  return true;
}
