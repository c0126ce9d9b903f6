import type { Block } from './blocks.ts';

/** Asked of every block at every keystroke, and the same for as long as the block is: its lines are read once. */
export function keptByBlock<Answer>(ask: (block: Block) => Answer): (block: Block) => Answer {
  const kept = new WeakMap<Block, { readonly answer: Answer }>();
  return (block) => {
    const known = kept.get(block) ?? { answer: ask(block) };
    kept.set(block, known);
    return known.answer;
  };
}
