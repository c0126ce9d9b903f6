// A sentence about a word, for the list's side window.
import { message, type Message } from '../../../language/message/message.ts';
import { verbOf, type VerbClass } from '../../../language/grammar/verbs.ts';
import type { ChoiceKind } from './choice.ts';

const actions: Partial<Readonly<Record<VerbClass, Message>>> = {
  move: message('A way without the ball. Say where with `to`, round whom with `off`; without it he goes where this move usually ends.'),
  seal: message('He keeps his man behind him and asks for the ball.'),
  rebound: message('What he does once the shot is up.'),
  dribble: message('A way with the ball. A drive that goes on is one dribble.'),
  pass: message('To a man at rest it goes at once; to a man on his way it meets him where he ends, unless you write `early`.'),
  'hand-off': message('The taker comes to the ball: both meet at the holder’s place.'),
  screen: message('Where he stands follows from what his man does next. Say `at` or `on` for another place; he is free when his man has passed.'),
  close: message('He closes the gap behind the one who goes through.'),
  shot: message('The shot itself.'),
  hold: message('He stays where he is; `until` ends it.'),
  'throw-in': message('Brings the ball in from out of bounds. Five seconds from the hand-over.'),
  role: message('His part in the throw-in.'),
  defend: message('What this defender does instead of just guarding his man.'),
  event: message('What is waited for.'),
};

const words: Readonly<Record<string, Message>> = {
  as: message('At the moment the other starts.'),
  once: message('When the other is done, plus a reaction.'),
  when: message('When the other is done, plus a reaction.'),
  until: message('Ends what he does when the other is done.'),
  look: message('A chance to score. What stands behind the colon happens only if it is taken: `look 3 "pull-up": jumper`.'),
  step: message('The next part of the play: `step "Middle"`, `step "Slip" instead of "Middle" when X4 shows on 3`.'),
  from: message('Where everybody stands at the call: `from horns, ball with 1`.'),
  against: message('The defence on the floor: `against man`.'),
  call: message('The clock it is called with: `call with 22 to 26 on the clock`.'),
  shot: message('By when the shot has to go: `shot within 16 seconds of the start`.'),
  leave: message('What a miss has to leave: `leave 4 seconds after a miss`.'),
  rebound: message('Who goes to the boards and who gets back: `rebound 2, 4, 5 crash, 1, 3 get back`.'),
  note: message('A coaching point for the play, a step or a player: `note 3 "keep low"`.'),
  'instead of': message('A counter: this step in the place of another, when the defence takes that away.'),
  after: message('This step follows another than the one above it.'),
  then: message('His next action, when he is free.'),
  and: message('His next action, at once.'),
  off: message('Round a screener: he leaves so as to reach him a beat after the screen is set.'),
  via: message('Through a place on the way, without stopping.'),
  early: message('The pass goes at the first place where ball and man can meet.'),
};

export function about(kind: ChoiceKind, text: string): Message | undefined {
  if (kind === 'action') {
    const verb = verbOf(text) ?? verbOf(text.replace(/ (to|for)$/, ''));
    return verb && actions[verb.class];
  }
  if (kind === 'word') return words[text];
  if (kind === 'alignment') return message('Everybody’s place in `{alignment}`. Changes stand behind a comma: `from {alignment}, 2 and 3 swapped`.', { alignment: text });
  return undefined;
}
