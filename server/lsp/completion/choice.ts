// One thing that can be written at the cursor, before it is an item of the protocol.
import type { Words } from '../../../language/message/message.ts';

export type ChoiceKind = 'player' | 'defender' | 'action' | 'place' | 'name' | 'alignment' | 'shot' | 'word' | 'value' | 'statement';

export interface Choice {
  /** As it is written. */
  readonly text: string;
  readonly kind: ChoiceKind;
  /** Smaller stands first; equal ones stay in the order they were made. */
  readonly rank: number;
  /** A few words beside it: who stands there, how far it is. */
  readonly detail?: Words;
  /** Column it replaces from, where that is not where the word being typed begins. */
  readonly from?: number;
  /** Something has to follow: a blank is written behind it, and the next choice may open. */
  readonly more?: boolean;
  /** A whole line with stops, written instead of the text; its further lines are indented from the first. */
  readonly snippet?: string;
  /** How deep the line is to stand, where that is not where it is. */
  readonly indent?: number;
  /** A sentence about it, where the word itself is not known. */
  readonly about?: Words;
}

/** The first choice of each text, in order of rank. */
export function inOrder(choices: readonly Choice[]): readonly Choice[] {
  const best = new Map<string, Choice>();
  for (const choice of choices.toSorted((a, b) => a.rank - b.rank)) if (!best.has(choice.text)) best.set(choice.text, choice);
  return [...best.values()];
}
