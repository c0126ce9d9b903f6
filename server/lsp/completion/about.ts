// A sentence about a word, for the list's side window.
import { verbOf, type VerbClass } from '../../../language/grammar/verbs.ts';
import type { ChoiceKind } from './choice.ts';

const actions: Partial<Readonly<Record<VerbClass, string>>> = {
  move: 'A way without the ball. Say where with `to`, round whom with `off`; without it he goes where this move usually ends.',
  seal: 'He keeps his man behind him and asks for the ball.',
  rebound: 'What he does once the shot is up.',
  dribble: 'A way with the ball. A drive that goes on is one dribble.',
  pass: 'To a man at rest it goes at once; to a man on his way it meets him where he ends, unless you write `early`.',
  'hand-off': 'The taker comes to the ball: both meet at the holder’s place.',
  screen: 'Where he stands follows from what his man does next. Say `at` or `on` for another place; he is free when his man has passed.',
  close: 'He closes the gap behind the one who goes through.',
  shot: 'The shot itself.',
  hold: 'He stays where he is; `until` ends it.',
  'throw-in': 'Brings the ball in from out of bounds. Five seconds from the hand-over.',
  role: 'His part in the throw-in.',
  defend: 'What this defender does instead of just guarding his man.',
  event: 'What is waited for.',
};

const words: Readonly<Record<string, string>> = {
  as: 'At the moment the other starts.', once: 'When the other is done, plus a reaction.', when: 'When the other is done, plus a reaction.', until: 'Ends what he does when the other is done.',
  look: 'A chance to score. What stands behind the colon happens only if it is taken: `look 3 "pull-up": jumper`.',
  step: 'The next part of the play: `step "Middle"`, `step "Slip" instead of "Middle" when X4 shows on 3`.',
  from: 'Where everybody stands at the call: `from horns, ball with 1`.',
  against: 'The defence on the floor: `against man`.',
  call: 'The clock it is called with: `call with 22 to 26 on the clock`.',
  shot: 'By when the shot has to go: `shot within 16 seconds of the start`.',
  leave: 'What a miss has to leave: `leave 4 seconds after a miss`.',
  rebound: 'Who goes to the boards and who gets back: `rebound 2, 4, 5 crash, 1, 3 get back`.',
  note: 'A coaching point for the play, a step or a player: `note 3 "keep low"`.',
  'instead of': 'A counter: this step in the place of another, when the defence takes that away.',
  after: 'This step follows another than the one above it.',
  then: 'His next action, when he is free.',
  and: 'His next action, at once.',
  off: 'Round a screener: he leaves so as to reach him a beat after the screen is set.',
  via: 'Through a place on the way, without stopping.',
  early: 'The pass goes at the first place where ball and man can meet.',
};

export function about(kind: ChoiceKind, text: string): string | undefined {
  if (kind === 'action') {
    const verb = verbOf(text) ?? verbOf(text.replace(/ (to|for)$/, ''));
    return verb && actions[verb.class];
  }
  if (kind === 'word') return words[text];
  if (kind === 'alignment') return `Everybody’s place in \`${text}\`. Changes stand behind a comma: \`from ${text}, 2 and 3 swapped\`.`;
  return undefined;
}
