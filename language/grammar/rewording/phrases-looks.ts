// How a look ends, and who passes, as coaches say it behind the colon, and the plain words that stand in its place (the signs: phrase-pattern.ts). Common usage, no source.
import type { Rows } from './phrase-pattern.ts';

export const ofLooks: Rows = [
  ['(IN_LOOK :|,|and|then|ATTACKER) 3ball|triple|trey (END)', 'three'],
  ['(IN_TAIL :|,|and|then) shoot|shoot_it (END)', 'shoots'],
  ['(IN_TAIL :|,|and|then) shoot (jumper|three|hook|floater|runner|3)', 'shoots'],
  ['(IN_TAIL :|,|and|then) let|lets BALL go|fly|rip (END)', 'shoots'],
  ['(IN_TAIL :|,|and|then) finish|finishes|finishes_it BALL? up|off|strong|inside? (END)', 'finish'],
  ['(IN_TAIL :|,|and|then) he? finish|finishes|score|scores near|around|close_to|by|under circle|RING (END)', 'finish'],
  ['(IN_TAIL PASSING BALL) right (back)', ''],
  ['(IN_TAIL PASSING BALL) over|across|out (,|LAST)', ''],
  ['(IN_TAIL :|,|and|then) power|powers BALL? up (END)', 'finish'],
  ['(IN_TAIL :|,|and|then) scores|score BALL? inside|strong? (END)', 'score'],
  ['(IN_TAIL) and (shoots|finish|score END)', ','],
  ['(IN_TAIL :|,|and|then) all_the_way (END)', 'drives to rim'],
  ['(IN_TAIL drives|drive|goes) all_the_way (END)', 'to rim'],
  ['(IN_TAIL :|,|and|then) dribble|dribbles in (END)', 'drives'],
  ['(IN_TAIL :|,|and|then) rip|rips baseline|middle (END)', 'drives $2'],
  ['(IN_TAIL :|,|and|then) slip|slips A_SCREEN (END)', 'slips'],
  ['(IN_TAIL pass|bounce-pass|lob|skip|skip-pass|feed|kick_out|hand_off|handoff|swing|dish|dump_off|drop-off) of|by (ATTACKER END)', 'from'],
  ['(IN_TAIL throwback|throw_back|skip|skip-pass|lob|swing|reversal|dish|dump_off|drop-off|pocket_pass|bounce-pass) three|jumper|layup|lay-up|dunk|hook|floater (END)', ', $1'],
  ['(IN_TAIL :|,) nobody|no_one comes|come|helps|help|closes|there|home|out|up+ , (jumper|three|layup|shoots|shot|floater|hook|dunk|drives|drive)', ''],
  ['(IN_PIN) in short_roll (:|END)', 'on $2'],
];
