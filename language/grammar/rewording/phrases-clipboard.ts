// How coaches write on a clipboard, where a stroke has to do for a word, and the plain words that stand in its place (the signs: phrase-pattern.ts). Common usage, no source.
import type { Rows } from './phrase-pattern.ts';

export const ofTheClipboard: Rows = [
  ['w / (!o|out)', 'with'],
  // short words
  ['bk', 'back'],
  ['frm', 'from'],
  ['(ATTACKER) n (ATTACKER|VERB)', 'and'],
  // sides
  ['r side', 'right_side'],
  ['l side', 'left_side'],
  ['r (SPOT|ONE_SIDED|sideline|baseline)', 'right'],
  ['l (SPOT|ONE_SIDED|sideline|baseline)', 'left'],
  ['(GOING|to) r (END)', 'right'],
  ['(GOING|to) l (END)', 'left'],
  ['ONE_SIDED r (END|ENDS|ATTACKER)', 'right $1'],
  ['ONE_SIDED l (END|ENDS|ATTACKER)', 'left $1'],
  // arrows: the ball goes to a man, a man to a place
  ['(..PASSING) -|=* >|→ (ATTACKER)', 'to'],
  ['(HEAD) -|=* >|→ (ATTACKER)', 'passes to'],
  ['(HEAD) -|=* >|→ (SPOT)', 'goes to'],
  // a man without his verb
  ['(HEAD) up_to (SCREENING|set)', 'comes to'],
  ['(HEAD and ATTACKER) BACK to|into (SPOT)', 'go to'],
  ['(HEAD) BACK to|into (SPOT)', 'goes to'],
  ['(HEAD) up_to (SPOT)', 'goes to'],
  ['(HEAD) out|over|across other_side|opposite_side|far_side? r', 'goes to right'],
  ['(HEAD) out|over|across other_side|opposite_side|far_side? l', 'goes to left'],
  ['(HEAD) out|over|across (left|right ONE_PLACE)', 'goes to'],
  ['(HEAD) back door (END)', 'back-cuts'],
  ['(HEAD) off (ATTACKER)', 'comes_off'],
  // two deeds, and nothing between them
  ['(MOVE back|out|over|up|in*) gets|takes|receives (HAND_OFF from ATTACKER)', 'and $1'],
  ['(..PASSING) (to|into ATTACKER) left|right (ONE_PLACE END)', 'at $1'],
  ['(off ATTACKER) screen|pick|ball-screen|back-screen|flare-screen|cross-screen|down-screen|pin-screen|pin_down|pindown|flare|drag (END|to|into)', "'s $1"],
  ['off ATTACKER ATTACKER stagger|stagger-screen|staggered_screen|double|double-screen (END|to|into)', 'off $2 and $3'],
  ['~stack up? at|on|in left|right? ONE_PLACE (END)', 'lines_up~ $3 $4 $5 LENGTH:1_m apart'],
  ['~zip|zipper up off ATTACKER A_SCREEN? (END)', 'cuts~ off $4 to top'],
  ['~zip|zipper up (off)', 'cuts~'],
  ['~zip|zipper up (END)', 'cuts~ to top'],
  ['~zip|zipper up to (SPOT)', 'cuts~ to'],
];
