// The lines of a play's head that a coach may have forgotten: what a miss must leave, when it is called, who goes to the boards.
import { message, type Message } from '../message/message.ts';
import type { LineTree } from '../grammar/tree.ts';
import type { Play } from '../play/play.ts';
import { linesBehind, proved, treeAt, type Here, type Offer } from './here.ts';

/** The order in which the examples write a play's head. */
const order: readonly LineTree['$type'][] = ['PlayHead', 'Tags', 'Situation', 'Level', 'Rules', 'From', 'BallWith', 'Against', 'Call', 'AlreadySet', 'ClockAt', 'ShotWindow', 'Leave', 'InboundWithin', 'Rebound', 'Note'];

interface Missing {
  readonly id: string;
  readonly type: LineTree['$type'];
  readonly asks: Message;
  readonly isThere: (play: Play) => boolean;
  /** Undefined where nothing sensible can be written yet. */
  readonly line: (here: Here) => string | undefined;
}

const missing: readonly Missing[] = [
  {
    id: 'add-call', type: 'Call', asks: message('Say when you call it'),
    isThere: ({ clock }) => clock.call !== undefined,
    line: ({ timeline: { times } }) => times.allLooks && `call with ${times.allLooks.fromCall} on the clock`,
  },
  {
    // About five seconds are kept for the rebound and the put-back, less the flight of the ball. Common practice, no source.
    id: 'add-leave', type: 'Leave', asks: message('Say what a miss must leave'),
    isThere: ({ clock }) => clock.leave !== undefined,
    line: ({ timeline: { times } }) => (times.looks.length > 0 ? 'leave 4 seconds after a miss' : undefined),
  },
  {
    // Three to the boards, two back. Common practice, no source.
    id: 'add-rebound', type: 'Rebound', asks: message('Say who goes to the boards'),
    isThere: ({ rebounds }) => rebounds.length > 0,
    line: ({ timeline: { times } }) => (times.looks.length > 0 ? 'rebound 2, 4, 5 crash, 1, 3 get back' : undefined),
  },
];

/** Offered in the head of the play. */
export function addLines(here: Here): readonly Offer[] {
  const first = firstStepLine(here);
  if (here.line >= first) return [];
  return missing.flatMap(({ id, type, asks, isThere, line }): Offer[] => {
    const text = isThere(here.reading.play) ? undefined : line(here);
    if (text === undefined) return [];
    const write = () => proved(here, [linesBehind(here, placeFor(here, type, first), [`  ${text}`])], ({ play }) => isThere(play), message('I find no place for it. Write “{text}” below the first line of the play.', { text }));
    return [{ id, title: message('{asks}: add “{text}”', { asks, text }), kind: 'rewrite', write }];
  });
}

function firstStepLine({ reading }: Here): number {
  const line = reading.lines.findIndex(({ kind }) => kind === 'step' || kind === 'action' || kind === 'look');
  return line < 0 ? reading.lines.length : line;
}

/** The last line of the head that stands above one of this kind in the usual order. */
function placeFor(here: Here, type: LineTree['$type'], before: number): number {
  const rank = order.indexOf(type);
  let place = 0;
  for (let line = 0; line < before; line++) {
    const tree = treeAt(here, line);
    if (tree !== undefined && order.includes(tree.$type) && order.indexOf(tree.$type) < rank) place = line;
  }
  return place;
}
