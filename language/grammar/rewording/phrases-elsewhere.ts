// How coaches say it whose first language is another, and the plain words that stand in its place (the signs: phrase-pattern.ts). Common usage, no source.
import type { Rows } from './phrase-pattern.ts';

export const ofElsewhere: Rows = [
  // a noun with `makes` for the verb
  ['~make|do dribble|dribbles (TO|END|baseline|middle)', 'dribbles~'],
  ['~make|do|take throw_in|inbound|inbounds (from|at|on|to|END)', 'inbounds~'],
  ['~make|set|do|put screen|pick|block in|from|on|at back|behind to|for|of (HIM)', 'back-screens~ for'],
  ['~make|set|do not screen|pick|block SO_THEN+ he? (MOVE)', ''],
  ['(ATTACKER) does|do not set|make|screen|give screen|pick? SO_THEN+ he? (MOVE)', ''],
  ['(SCREENING) to (HIM)', 'for'],
  // the ball
  ['~pass skip|skip_pass|skip-pass (to HIM)', 'skips~'],
  ['~pass lob|lob_pass (to HIM)', 'lobs~'],
  ['~pass bounce|bounce-pass (to HIM)', 'bounce-passes~'],
  ['~pass in|inside (HIM)', 'passes~ inside to'],
  ['~return BALL back? (to HIM)', 'passes~ back'],
  // ways
  ['~remain', 'stays~'],
  ['~enter to|into|on? field|court|floor|pitch (END)', 'steps_in~'],
  ['~come|step|run|go in|into|to|on field|pitch (END)', 'steps_in~'],
  ['~open to|toward (RING)', 'rolls~ to'],
  // where somebody stands, before what he does
  ['(HEAD) from|in|at|on left|right ONE_PLACE ,? (VERB)', ''],
  ['(HEAD) from|in|at|on ONE_PLACE ,? (VERB)', ''],
  ['(HEAD) , from|in|at|on left|right? ONE_PLACE ,? (VERB)', ''],
  ['(to|at|in|into) position|place of (SPOT)', ''],
  ['(to|at|near|over|past|toward) half way|way_line|line (END)', 'half_court'],
  ['(to|at|near|over|past|toward) halfway line? (END)', 'half_court'],
];
