/** Every example line of the notation, with the kind of tree it gives. */
export const notationLines: readonly (readonly [line: string, kind: string])[] = [
  // a play
  ['notation 1', 'Notation'],
  ['level u14                       # whose legs: u10 u12 u14 u16 hs college pro', 'Level'],
  ['level u10', 'Level'], ['level u12', 'Level'], ['level u16', 'Level'], ['level hs', 'Level'], ['level college', 'Level'], ['level pro', 'Level'],
  ['rules fiba, also nfhs           # fiba, nba, ncaa-men, ncaa-women, nfhs, mini; a play may replace them', 'Rules'],
  ['rules nba', 'Rules'], ['rules ncaa-men', 'Rules'], ['rules ncaa-women', 'Rules'], ['rules mini', 'Rules'],
  ['play "Lighthouse"', 'PlayHead'],
  ['  tags last-shot', 'Tags'],
  ['  tags last-shot, man to man, quick', 'Tags'],
  ['  from stack, ball with 1', 'From'],
  ['  against man', 'Against'],
  ['  call with 22 to 26 on the clock       # the period clock when it is called', 'Call'],
  ["  shot within 16 seconds of the start   # the set's clock window", 'ShotWindow'],
  ['  shot within 16 seconds of the call', 'ShotWindow'],
  ['  leave 4 seconds after a miss          # for the rebound and put-back', 'Leave'],
  ['  rebound 2, 4, 5 crash, 1, 3 get back', 'Rebound'],
  ['  step "Zip"', 'StepHead'],
  ['    1 dribbles to left wing', 'Statement'],
  ['    5 screens down for 3', 'Statement'],
  ['    3 cuts off 5 to top', 'Statement'],
  ['    2 clears to right corner', 'Statement'],
  ['    1 passes to 3', 'Statement'],
  ['    4 ball-screens for 3, then rolls', 'Statement'],
  ['    3 drives off 4 to right elbow', 'Statement'],
  ['    look 3 "pull-up": jumper', 'Look'],
  ['    look 4 on the roll: layup', 'Look'],
  ['    look 2 "corner": three', 'Look'],
  ['  step "Slip" instead of "Middle" when X4 shows on 3', 'StepHead'],
  ['    4 slips', 'Statement'],
  ['    look 4: lob, layup', 'Look'],
  ['note "..."', 'Note'], ['note 3 "keep low"', 'Note'], ['note for 3 "keep low"', 'Note'], ['note 2 and 3 "stay wide"', 'Note'],
  // principles
  ['4 back-screens for 2', 'Statement'], ['3 lobs to 5, 5 dunks', 'Statement'],
  ['4 and 5 screen for 2', 'Statement'], ['2 and 3 pop to the wings', 'Statement'], ['everyone else holds', 'Statement'],
  ['1 passes to 2 and cuts to rim', 'Statement'], ['5 screens for 1, then rolls', 'Statement'],
  // alignments
  ...['box', 'horns', 'stack', 'diamond', 'line', '1-4 high', '1-4 low', '4-out 1-in', '5-out', '3-out 2-in', '1-3-1', 'spread', 'four-man box', 'four-man line'].map((name) => [`from ${name}`, 'From'] as const),
  ['from 1 top, 2 and 3 blocks, 4 and 5 elbows', 'From'],
  ['from stack on right lane line: 2, 3, 4, 5 from the baseline up', 'From'],
  ['from stack on right lane line: 2, 3, 4, 5 from the baseline up, 1 at top, ball with 1', 'From'],
  ['from horns, 2 and 3 swapped, 4 at left corner', 'From'],
  ['from "Wide box" mirrored', 'From'], ['from horns, mirrored', 'From'], ['from horns mirrored, ball with 2', 'From'],
  ['alignment "Wide box"', 'AlignmentHead'], ['ball with 2', 'BallWith'],
  ['1 top', 'Placing'], ['2 and 3 blocks', 'Placing'], ['4 at left corner', 'Placing'], ['5 at "pocket"', 'Placing'],
  // spots
  ...['rim', 'left block', 'right mid-post', 'left elbow', 'nail', 'right high post', 'top', 'left slot', 'left wing', 'left corner', 'right short corner', 'left dunker spot', 'free-throw line extended',
    'left free-throw line extended', 'half court', 'left hash', 'backcourt left', 'backcourt middle', 'backcourt right', 'left backcourt', 'far free-throw line', 'far baseline', 'right side', 'ball-side corner', 'weak-side wing',
    'weak side', 'near corner', 'far corner', '2 ft above left elbow', '1.5 m below the top', 'between left wing and left corner', 'between 4 and left corner', 'beside 5', 'behind 5', '(4.2, 3.0) m', '(-4.2, 3)',
    '"pocket"', 'left wing or elbow'].map((spot) => [`3 cuts to ${spot}`, 'Statement'] as const),
  ['2 and 3 stay at the nail, 1 m apart', 'Statement'], ['2 and 3 at the nail, 1 m apart', 'Placing'],
  ['spot "pocket" is 3 ft inside right elbow', 'OwnSpot'], ['spot "deep" is (4.2, 3.0) m', 'OwnSpot'],
  // moves
  ...['cuts', 'basket-cuts', 'back-cuts', 'curls', 'fades', 'flashes', 'v-cuts', 'l-cuts', 'shallow-cuts', 'straight-cuts', 'rolls', 'pops', 'slips', 'dives', 'seals', 'posts up', 'lifts', 'drifts', 'fills', 'steps out',
    'clears', 'spaces', 'sprints', 'jogs', 'walks', 'stays', 'picks up', 'keeps his dribble', 'shoots', 'turns the corner'].map((verb) => [`3 ${verb}`, 'Statement'] as const),
  ['3 cuts over 4 and 5 to top', 'Statement'], ['3 cuts over two screens to top', '!'], ['3 cuts between 4 and 5 to the rim', 'Statement'], ['3 fills for 1', 'Statement'], ['3 fills the open spot', 'Statement'],
  ['3 cuts via left elbow to rim', 'Statement'], ['3 cuts via nail and left elbow to left corner', 'Statement'], ['3 cuts through to left corner', 'Statement'], ['3 cuts off 5 then 4 to top', 'Statement'],
  ['3 cuts off the double of 3 and 5', 'Statement'], ['3 cuts off 4 to top', 'Statement'], ['3 cuts baseline', 'Statement'], ['1 drives middle', 'Statement'], ['5 dives up the lane', 'Statement'],
  ['2 runs along the baseline to right corner', 'Statement'], ['1 drives off 4, turns the corner', 'Statement'], ['5 seals X5 at left block', 'Statement'], ['4 slips before the screen', 'Statement'],
  // ball
  ['1 dribbles at 2', 'Statement'], ['1 keeps his dribble', 'Statement'], ['1 picks up his dribble', 'Statement'], ['1 bounce-passes to 5', 'Statement'], ['1 skips to 3', 'Statement'], ['1 throws overhead to 3', 'Statement'],
  ['1 throws a baseball pass to 3', 'Statement'], ['5 tips to 2', 'Statement'], ['1 passes along the baseline to 2', 'Statement'], ['1 passes to 2 to 3', 'Statement'], ['5 hands off to 2', 'Statement'],
  ['1 swings to 2', 'Statement'], ['1 swings the ball to 2', 'Statement'], ['1 reverses to 2', 'Statement'], ['1 passes behind the board to 2', 'Statement'], ['1 passes to 2 at left corner', 'Statement'], ['1 passes early to 2', 'Statement'],
  ['3 shoots a three', 'Statement'], ['3 shoots a three or jumper', 'Statement'], ['5 tips in', 'Statement'],
  // screens
  ['4 screens down for 2', 'Statement'], ['4 screens up for 2', 'Statement'], ['4 screens across for 5', 'Statement'], ['4 screens away for 2', 'Statement'], ['4 flare-screens for 2', 'Statement'], ['4 cross-screens for 5', 'Statement'],
  ['4 pin-screens for 2', 'Statement'], ['4 down-screens for 2', 'Statement'], ['4 and 5 stagger for 2', 'Statement'], ['4 and 5 double-screen for 2', 'Statement'], ['4 screens for 2 and 3', 'Statement'], ['4 screens on X5', 'Statement'],
  ['4 screens at left slot', 'Statement'], ['4 and 5 screen at left slot and left elbow', 'Statement'], ['4 screens for 5, then for 2', 'Statement'], ['4 re-screens for 2', 'Statement'], ['2 makes the same cut off 3', 'Statement'],
  ['3 cuts to left wing or elbow', 'Statement'], ['look 3: three or jumper', 'Look'], ['look 2 or 3', 'Look'], ['4 and 5 close behind him', 'Statement'],
  // throw-ins
  ['3 inbounds from the left sideline', 'Statement'], ['3 inbounds to 2', 'Statement'], ['clock at 8 seconds, shot clock 5', 'ClockAt'], ['inbound within 5 seconds', 'InboundWithin'], ['3 is the safety at top', 'Statement'], ['3 is the thrower', 'Statement'],
  // order
  ['as 5 rolls, 2 drifts to right corner', 'Statement'], ['2 drifts as 5 rolls', 'Statement'], ['once 4 is set, 3 cuts off 4', 'Statement'], ['when 2 catches, 5 rolls', 'Statement'], ['as 1 reaches the lane, 3 lifts', 'Statement'],
  ['once 3 clears 4, 5 flashes to nail', 'Statement'], ['2 seconds later, 4 pops', 'Statement'], ['4 pops 2 seconds later', 'Statement'], ['2 seconds after 3 cuts, 4 pops', 'Statement'], ['4 pops 2 seconds after 2 catches', 'Statement'], ['1 passes to 2, and as he catches it, 4 pops', 'Statement'], ['1 passes to 2, then once 5 is set 3 cuts off 5', 'Statement'], ['1 passes to 2 and 2 seconds later 4 pops', 'Statement'], ['at 6 on the clock, 1 drives', 'Statement'], ['2 holds until 5 rolls', 'Statement'],
  // steps
  ['step "B"', 'StepHead'], ['step "B" after "A" when X2 denies', 'StepHead'], ['step "B" after "A" otherwise', 'StepHead'], ['step "B" instead of "A" when X4 switches to 3', 'StepHead'], ['step "B" first, when X2 denies', 'StepHead'],
  ['step "B" mirrors "A"', 'StepHead'], ['step "More" again from "A" with 2 as 1, 3 as 2, 1 as 3, up to 2 times', 'StepHead'], ['step "Run" repeats "A", "B" for 15 seconds', 'StepHead'],
  ['step "B" after "A" when "they go under everything"', 'StepHead'], ['step "Late" when 5 to 8 seconds are left', 'StepHead'], ['ends once 2 has the ball over half court, within 8 seconds', 'Ends'], ['ends with no shot', 'Ends'],
  // clock
  ['call with 38 on the clock, shot clock 24', 'Call'], ['shot between 30 and 28 on the clock', 'ShotWindow'], ['shot before the horn', 'ShotWindow'], ['clock at 3 seconds', 'ClockAt'], ['already set', 'AlreadySet'],
  ['look 2 at about 3 s after the start', 'Look'], ['situation sideline throw-in, after a time-out, down 1', 'Situation'],
  // demands
  ['must have every player touch the ball', 'EveryTouch'], ['must have no screens', 'Amount'], ['must have at least 3 passes', 'Amount'], ['must not hold it 5 seconds', 'NotHold'], ['must have 3 passes', 'Amount'],
  // rebounds
  ['5 boxes out', 'Statement'], ['look 4: jumper, on a miss 2 crashes', 'Look'],
  // defence
  ['X4 switches to 2', 'Statement'], ['X2 goes under 4', 'Statement'], ['X2 trails 2', 'Statement'], ['X2 follows 2', 'Statement'], ['X5 helps at rim', 'Statement'], ['X1 denies 2', 'Statement'], ['X4 shows', 'Statement'],
  ['X1 and X5 trap 1', 'Statement'], ['against 2-3', 'Against'], ['against 3-2', 'Against'], ['against 1-3-1', 'Against'], ['against 2-2-1 press', 'Against'],
  // reuse
  ['use "alignments.play"', 'Use'], ['play "Lighthouse left" mirrors "Lighthouse"', 'PlayHead'], ['play "Counter" continues "Lighthouse" after "Zip"', 'PlayHead'], ['roster', 'RosterHead'], ['roster "U14"', 'RosterHead'],
  ['4 "Mia"', 'Entry'], ['4 "Mia", 20 m in 3.4 s', 'Entry'], ['11 "Bo", pace 5.5 m/s', 'Entry'], ['5 "Ida", slow', 'Entry'], ['book', 'BookHead'], ['book "Season"', 'BookHead'], ['section "Last shots"', 'Section'],
  ['section "Last shots": "Lighthouse", "Counter"', 'Section'],
  // exceptions
  ['allow crowding "why"', 'Allow'], ['allow late screen "he is quick"', 'Allow'],
  // how a line is told apart
  ['1 passes to 2, 3 cuts', 'Statement'], ['look 3 as he comes off 4: three', 'Look'], ['look 3: 1 lobs to 3, dunk', 'Look'], ['look 3: drives to rim, layup', 'Look'], ['2 steps out', 'Statement'], ['2 posts up', 'Statement'],
];
