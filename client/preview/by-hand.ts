// What is changed by hand, where there is an editor to write it: on the floor, on the lanes, and the fixes of a finding.
import type { Playback } from '../../language/playback/playback.ts';
import { startAsking, type Asking } from './asking.ts';
import { createChip, type Chip } from './chip.ts';
import { createHand, type Hand } from './hand.ts';
import type { Handle } from './handles.ts';
import { createLaneHand, type LaneHand } from './lane-hand.ts';
import type { Port } from './port.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface ByHand {
  readonly chip: Chip;
  readonly floor: Hand;
  readonly lanes: LaneHand;
  readonly hear: Asking['hear'];
  /** A new picture: nothing is held any more. */
  readonly letGo: () => void;
  /** Writes a fix of a finding, both by their place in the list. */
  readonly fix: (finding: number, fix: number) => void;
}

export interface Around {
  readonly post: Port['post'];
  /** What is shown, and the number of its picture. */
  readonly shown: () => { readonly playback: Playback | null; readonly seq: number };
  readonly picked: (handle: Handle) => void;
  /** To a screen reader. */
  readonly say: (words: string) => void;
  /** A fix has been asked for and answered. */
  readonly answered: () => void;
  /** Where a refusal without a hand stands. */
  readonly place: () => DOMRect;
}

export function startByHand({ post, shown, picked, say, answered, place }: Around): ByHand {
  const chip = createChip();
  const asking = startAsking(
    post,
    () => {
      const { playback, seq } = shown();
      return playback === null ? undefined : { play: playback.play.key, seq };
    },
    (outcome) => (floor.holds() ? floor : lanes).answered(outcome),
  );
  const floor = createHand({ asking, chip, picked, say });
  const lanes = createLaneHand({ asking, chip, say });

  function fix(finding: number, nth: number): void {
    const found = shown().playback?.findings[finding];
    if (found === undefined) return;
    asking.fix(found.code, finding, nth, (outcome) => {
      answered();
      say(outcome.refused ?? tell(message('Written: {words}', { words: outcome.words ?? '' })));
      if (outcome.refused === undefined) return;
      chip.follow(place);
      chip.settle(outcome);
    });
  }

  function letGo(): void {
    floor.letGo();
    lanes.letGo();
  }

  return { chip, floor, lanes, hear: asking.hear, letGo, fix };
}
