// How a play begins as coaches say it, and the plain words that stand in its place (the signs: phrase-pattern.ts). Common usage, no source.
import type { Rows } from './phrase-pattern.ts';

export const ofHeads: Rows = [
  // how they stand
  ['^ (START) start|starts|begin|begins|starting|set_up|sets_up|line_up|lines_up|lined_up|lineup|play|run out? from|in|with|of (ALIGNMENT)', 'from'],
  ['^ (START) in|out_of (ALIGNMENT)', 'from'],
  ['^ (START) formation|set|alignment|shape|setup|start|initial : (ALIGNMENT)', 'from'],
  ['^ (START) formation|set|shape|setup|start (ALIGNMENT)', 'from'],
  ['(IN_FROM ALIGNMENT) set|formation|alignment|look|series', ''],
  ['(IN_FROM from) flat (END)', '1-4_low'],
  ['(IN_FROM ,) but|except|only|with (PLAYER)', ''],
  ['(IN_FROM) but|except (PLAYER)', ','],
  // who has the ball
  ['(IN_FROM ATTACKER) with|holds|holding|starts|begins|starting|beginning with? ball|it (END)', 'has_the_ball'],
  ['(IN_FROM ATTACKER) with_the_ball|has_it|starts_with_it (END)', 'has_the_ball'],
  ["(IN_FROM) ball in ATTACKER 's hands|hand", 'ball_with $3'],
  ['(IN_FROM) ball to|at|for|by|: ATTACKER (END)', 'ball_with $3'],
  ['(IN_FROM) ball ATTACKER (END)', 'ball_with $2'],
  // when it is called
  ['(IN_CALL with|at|to TIME) remaining|to_go|to_play|or_so|on_clock', 'on_the_clock'],
  ['(IN_CALL) , shot_clock off|dead|out (LAST)', ''],
  // what a miss leaves, against whom
  ['(leave SECONDS) for|after|for_the_rebound|for_a_put-back|after_a_miss ANY+ (LAST)', ''],
  ['^ (START) versus|facing', 'vs'],
  ['(against|vs) zone (FORM)', ''],
  ['(rules) fiba mini|mini-basketball|minibasketball (LAST|,)', 'mini'],
  // where one begins
  ['(IN_HEAD TEXT) :|, (LAST)', ''],
  ['(roster|book) : (LAST)', ''],
  ['(play|step) called|named|: (TEXT)', ''],
  ['(play TEXT) is? mirror|mirrored|flip|flipped of (TEXT)', 'mirrors'],
  ['(after|instead_of|again_from) step (TEXT)', ''],
  ['^ player|players|number|no (PLAYER)', ''],
  // chances, in their order
  ['^ (START) 1st|2nd|3rd|4th|5th|fourth|fifth|finally|lastly|last|next|then ,? (look)', ''],
  ['^ (START) ORDINAL* option|read|choice|chance|opportunity|looks COUNT? : (PLAYER)', 'look'],
  ['^ (START) ORDINAL* look COUNT : (PLAYER :)', 'look'],
  ['^ (START) ORDINAL* look : (PLAYER)', 'look'],
  ['^ (START) looks|options (PLAYER)', 'look'],
  ['^ (START) read|reads|shot|option (ATTACKER : layup|jumper|three|dunk|hook|lob)', 'look'],
  ['(look ATTACKER) second|third|fourth|fifth|last|next (:|LAST)', ''],
  ['(IN_LOOK) three|3 point|points shot', 'three'],
  ['(IN_LOOK) shot of|for three|3 point|points? (END)', 'three'],
  ['(IN_LOOK) then (ATTACKER LAST|:)', 'then look'],
  ['(IN_TAIL) or|else|otherwise (ATTACKER :)', ', look'],
];
