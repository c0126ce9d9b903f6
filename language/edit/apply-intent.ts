// From what somebody does with his hand to the smallest change of the text that says the same.
import { addCut, addPass } from './add-lines.ts';
import type { Editable } from './editable.ts';
import type { Intent, Outcome } from './intent.ts';
import { addVia, bendWay, moveEnd, moveStart, moveVia } from './move-places.ts';
import { setWait, shiftWait } from './set-wait.ts';
import { mirrorPlay, swapPlayers } from './whole-play.ts';

export type { Editable } from './editable.ts';

/** Edits at the value's place, or a refusal with its reason. Pure; what it writes has been read back, and changes nothing else. */
export function applyIntent(editable: Editable, intent: Intent): Outcome {
  switch (intent.kind) {
    case 'move-start':
      return moveStart(editable, intent);
    case 'move-end':
    case 'move-screen':
      return moveEnd(editable, intent);
    case 'move-via':
      return moveVia(editable, intent);
    case 'add-via':
      return addVia(editable, intent);
    case 'bend':
      return bendWay(editable, intent);
    case 'set-wait':
      return setWait(editable, intent);
    case 'shift-wait':
      return shiftWait(editable, intent);
    case 'add-cut':
      return addCut(editable, intent);
    case 'add-pass':
      return addPass(editable, intent);
    case 'swap':
      return swapPlayers(editable, intent);
    case 'mirror':
      return mirrorPlay(editable);
  }
}
