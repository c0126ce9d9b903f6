// What coaches say, and the plain words that stand in its place: the rows, of which the first that fits a place is taken, and their lists of words.
import { phrase, type Lists, type Phrase, type Rows } from './phrase-pattern.ts';
import { ofTheClipboard } from './phrases-clipboard.ts';
import { ofDefence } from './phrases-defence.ts';
import { ofElsewhere } from './phrases-elsewhere.ts';
import { ofHeads } from './phrases-heads.ts';
import { ofLooks } from './phrases-looks.ts';
import { ofMoves } from './phrases-moves.ts';
import { ofPlaces } from './phrases-places.ts';
import { ofScreensAndBall } from './phrases-screens-and-ball.ts';
import { ofTheTrade } from './phrases-trade.ts';
import { ofWaits } from './phrases-waits.ts';

const LISTS: Lists = {
  BALL: 'it ball',
  TO: 'to into toward up_to',
  WAY: 'out back up down over across away around wide low high in inside deep straight off through',
  BACK: 'out back up down over across away around wide low high deep straight',
  WHERE: 'to into toward up_to at on in via behind baseline along_the_baseline down_the_lane across_the_lane through_the_lane',
  AHEAD: 'up down through across out between past up_the_middle down_the_middle through_the_middle up_the_lane down_the_lane through_the_lane across_the_lane along_the_baseline',
  OTHER_PLACE: 'opposite other paint key middle dunker_spot left_side right_side open_spot ball',
  RING: 'rim basket hoop ring',
  NET: 'net bucket basket hoop rim ring',
  UNDER_THE_RING: 'under_the_rim under_the_basket under_the_hoop under_the_ring',
  GATE: 'gate gates door doors elevator elevators',
  ONE_PLACE: 'free-throw_line nail top top_of_the_key high_post rim basket lane elbow block wing slot corner half_court',
  A_SIDE: 'left right ball-side weak-side strong-side near far',
  AN_OUTLET: 'safety outlet valve release safety_valve safety-valve bail-out',
  RUNS_DOWN: 'run tick wind go bleed drain',
  TURNS_ROUND: 'turn turns face_up faces_up square_up squares_up pivot spin',
  ONE_SIDED: 'corner wing slot elbow block short_corner low_post mid-post dunker_spot lane_line',
  A_SCREEN: 'it screen pick ball-screen back-screen flare-screen cross-screen down-screen pin-screen pin_down pindown stagger stagger-screen double-screen flare drag screens picks',
  DONE: 'curl cut roll pop slip dive fade flash seal lift drift fill catch duck_in post_up back-cut basket-cut v-cut l-cut step_out short_roll',
  HAS_IT_OUT: 'takes_it_out take_it_out takes_the_ball_out take_the_ball_out gets_it get_it gets_the_ball get_the_ball takes_it take_it takes_the_ball take_the_ball',
  GETS_IT: 'gets_it get_it gets_the_ball get_the_ball',
  BROUGHT_UP: 'brings_it_up bring_it_up brings_the_ball_up bring_the_ball_up takes_the_ball_up take_the_ball_up pushes_the_ball_up push_the_ball_up pushes_it_up push_it_up',
  HAND_OFF: 'hand_off handoff dribble_hand_off dho',
  COUNTED: 'one two three couple couple_of few of hard quick long big more last extra power single escape retreat attack rhythm strong another',
  WHERE_TO: 'to into baseline middle off at',
  PASS_KIND: 'hard quick good crisp long short simple sharp nice little soft high easy return direct straight perfect',
  PASS_WAY: 'to into back back_out ahead inside over over_the_top across across_the_lane along_the_baseline in in_stride',
  OF_A_BODY: 'tail hips butt back_side backside body outside_shoulder inside_shoulder shoulders elbow',
  FREE: 'off around away out free loose past by of man him defender back inside open',
  KEEPS: 'keeps_it keep_it keeps_the_ball keep_the_ball keeps_his_dribble keep_his_dribble keeps_their_dribble keep_their_dribble',
  SCREEN_NOUN: 'flare pindown staggered_screen staggered_screens drag double_drag pin wall',
  SO_THEN: 'and then ,',
  OF_A_DEED: 'his her pass skip feed entry swing hand_off handoff screen drive cut catch',
  A_HAPPENING: 'drive dribble pass catch cut roll screen pick ball-screen back-screen cross-screen down-screen flare-screen pin_down stagger hand_off handoff flash',
  A_HIP: 'shoulder hip tail low_side high_side top_side bottom_side',
  SIDE_OF_A_SCREEN: 'middle baseline high low top sideline hand',
  ENDS: 'once when after as_soon_as',
  CRASHES: 'crashes crash crashes_the_boards crash_the_boards hits_the_boards hit_the_boards hits_the_glass hit_the_glass goes_to_the_boards go_to_the_boards goes_to_the_glass go_to_the_glass gets_back get_back gets_back_on_defence gets_back_on_defense',
  AT_HOME: 'spaced glued parked planted pinned anchored wide home put ready deep low high',
  ORDINAL: '1st 2nd 3rd 4th 5th first second third fourth fifth last next main best final other',
  A_PASS: 'skip skip_pass feed post_feed entry entry_pass swing reversal kick_out kick-out lob inbounds outlet outlet_pass return_pass',
};

const ROWS: Rows = [...ofTheTrade, ...ofHeads, ...ofLooks, ...ofWaits, ...ofMoves, ...ofPlaces, ...ofScreensAndBall, ...ofDefence, ...ofTheClipboard, ...ofElsewhere];

export const phrases: readonly Phrase[] = ROWS.map(([said, written]) => phrase(said, written, LISTS));
