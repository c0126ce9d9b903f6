// The defence as coaches say them, and the plain words that stand in their place (the signs: phrase-pattern.ts). Common usage, no source.
import type { Rows } from './phrase-pattern.ts';

export const ofDefence: Rows = [
  // defenders
  [', so (DEFENDER VERB)', 'and'],
  ['(OF_DEFENDER) ~run|fly|rush|sprint|race|hurry|charge|scramble|come|get back|out|over|across+ at (HIM)', 'closes_out~ on'],
  ['(OF_DEFENDER) ~jump|get|slide|cheat over A_SCREEN|it early|late? (END)', 'goes_over~'],
  ['(goes_under|goes_over|goes_through|go_under|go_over|go_through) screens', 'screen'],
  ['(OF_DEFENDER) ~dig|dig_down down|in|at|hard* (on|at)', 'helps~'],
  ['(OF_DEFENDER) ~cheat|slide|squeeze|get|jump|fight over_the_top_of A_SCREEN|it (END)', 'goes_over~'],
  ['(OF_DEFENDER) ~cheat|slide|squeeze|get|jump|fight over_the_top (END)', 'goes_over~'],
  ['(OF_DEFENDER) ~chase|trail|follow HIM over|over_the_top|around (END)', 'chases_over~'],
  ['(OF_DEFENDER) ~chase_over top (END)', 'chases_over~'],
  ['(OF_DEFENDER) ~drop back|off|down|deep (END)', 'drops~'],
  ['(~chase|follow|trail HIM) down|out|up|over|back (to|into)', ''],
  ['(OF_DEFENDER) top of (ATTACKER|A_SCREEN)', ''],
  ['little|small|smaller|big|bigger|shorter guy|man|defender', 'man'],
  ['(OF_DEFENDER) and|then gets_there|arrives late (END)', ''],
  ['(OF_DEFENDER) ~sag|cheat|sink and|then gets_there|arrives late (END)', 'sags'],
  ['(OF_DEFENDER) ~cheat|sag|sink|anticipate and|then (VERB)', ''],
  ['(OF_DEFENDER) ~leave|drop off? ATTACKER and|to (VERB)', ''],
  ['(OF_DEFENDER) ~run|fly|rush|sprint|race|hurry|charge|scramble|come|step|get|go out up? at|to|on|toward (ATTACKER)', 'closes_out~ on'],
  ['(OF_DEFENDER) ~run|fly|rush|sprint|race|charge at (ATTACKER)', 'closes_out~ on'],
  ['(OF_DEFENDER) ~jump out at|to|on|toward (ATTACKER)', 'shows~ on'],
  ['(OF_DEFENDER) ~cheat|slide|dip|duck|cut|squeeze|get|slip under', 'goes_under~'],
  ['(OF_DEFENDER) ~cheat|slide|squeeze|get over', 'goes_over~'],
  ['(OF_DEFENDER) ~squeeze|slide|get through', 'goes_through~'],
];
