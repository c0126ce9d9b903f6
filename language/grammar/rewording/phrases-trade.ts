// Names of the trade for a cut, a screen, a way with the ball, and the plain words that stand in their place (the signs: phrase-pattern.ts): as much as the name
// says by itself, and no more. Common usage, no source.
import type { Rows } from './phrase-pattern.ts';

export const ofTheTrade: Rows = [
  // cuts: from the wing at 45°, off the slot man's back screen
  ['(ATTACKER|JOINT) 45|45-degree|chin ~cut', '$2'],
  // a screen whose name says where it stands, or for what
  ['(ATTACKER|JOINT) ~hammer (for HIM)', 'back-screens~'],
  ['(SUBJECT|JOINT) ~pindown (for|on|DEFENDER)', 'pins_down~'],
  ['~set|give|bring step_up|step-up|ball-screen|high_screen on|for (HIM)', 'ball-screens~ for'],
  ["~ghost ATTACKER 's man|defender ,? WAY* (TO)", 'slips~'],
  ['~ghost DEFENDER ,? WAY* (TO)', 'slips~'],
  // off the screen last set for him
  ['~come_off downhill|again|straight (TO SPOT)', 'comes_off~ it'],
  ['~come_off (TO SPOT)', 'comes_off~ it'],
  ['~turn BALL down? (baseline|along_the_baseline|down_the_lane|middle)', 'drives~'],
  ['(DRIBBLING) past (ATTACKER)', 'around'],
  ['off left|right shoulder|hip (END)', '$2'],
  ['~turn downhill (to|into|toward)', 'drives~'],
  ['~bury (DEFENDER)', 'seals~'],
  ['~drop BALL in|into pocket (END)', 'passes~'],
  ['(..DRIBBLING) , toward (left|right END)', 'to'],
  ['(..DRIBBLING) toward (left|right END)', 'to'],
  // ways
  ['(MOVE) at (ball END)', 'toward'],
  ['(MOVE) WAY (as if)', ''],
  ['(MOVE) by (, SPOT)', ''],
  ['(slips|slip|cuts|cut|dives|dive|rolls|roll) behind (TO RING)', ''],
  ['~go|move|come|step|lift|slide|shift|drift to|up_to|into where ATTACKER was|is|stood|started|began|left (END)', 'fills~ for $4'],
  ['~go|move|come|step|lift|slide|shift|drift over|back|down|up|out|across to|into where ATTACKER was|is|stood|started|began|left (END)', 'fills~ for $5'],
  ['(to) middle , just? side of half_court (END)', 'LENGTH:3_ft above half_court'],
  ['(of|in) back court', 'backcourt'],
  // he goes after his pass for it
  ['(OF_ATTACKER) ~follow|chase|trail it|pass|ball ,|and+ HAND_OFF (END)', 'takes_the_hand_off~'],
  // the ball
  ['KEEPS alive? SO_THEN+ ~use|burn|kill|eat|run up|off|down? SECONDS (END)', '$1 for $6'],
  ['~back up with BALL ,? COUNTED|COUNT* dribble|dribbles? (END)', 'backs_out~'],
  ['~take COUNTED|COUNT+ dribble|dribbles backward|backwards|rearward (END|to|for|in)', 'backs_out~'],
  // what a screener is told not to do
  ['(..SCREENING) , but he? does|do not|never? ~go|roll|cut|dive all_the_way? to RING ;|,|.|and|but* he? ~stop|stay at|on|in (SPOT)', ', rolls to'],
  ['in order (to)', ''],
  // how the trigger is seen
  ["(ENDS|as|until ATTACKER) 's shoulder|shoulders|hip|hips|body has_passed|passes|clears|gets_past|goes_past|has_gone_past|is_past|has_cleared hip|shoulder (END)", 'has_gone_by'],
];
