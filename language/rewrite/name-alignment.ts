// Places that are written out in a play become an alignment with a name, which other plays can start from.
import { message } from '../message/message.ts';
import { distance } from '../court/point.ts';
import type { NodeOf } from '../grammar/tree.ts';
import { OFFENCE, type PlayerNumber } from '../play/play.ts';
import { stateAtCall } from '../play/state.ts';
import { unitWrittenIn } from '../words/own-words.ts';
import { sayPlace } from '../words/say-place.ts';
import { sayWrittenPlace } from '../words/say-written-place.ts';
import { freshName, lastSaid, linesBehind, proved, refuse, replace, treeAt, type Here, type Offer, type Rewritten } from './here.ts';

export function nameAlignment(here: Here): Offer | undefined {
  const tree = treeAt(here, here.line);
  if (tree?.$type !== 'From' || !tree.changes.some(({ $type }) => $type === 'Placing' || $type === 'Swapped')) return undefined;
  return { id: 'name-alignment', title: message('Make these places an alignment with a name'), kind: 'extract', write: () => write(here, tree) };
}

function write(here: Here, tree: NodeOf<'From'>): Rewritten {
  const { play } = here.reading;
  if (play.start.throwIn !== undefined) return refuse(message('At a throw-in one of the five stands outside: his place is not one of an alignment.'));
  const name = freshName(here, 'alignment', `${play.name} start`);
  const ball = tree.changes.some(({ $type }) => $type === 'BallWith') ? `, ball with ${play.start.ball.value}` : '';
  const before = stateAtCall(play).places;
  const end = lastSaid(here, 0);
  const editsWith = (say: (player: PlayerNumber) => string) => [
    replace(here, here.line, tree.at, tree.to, `from "${name}"${ball}`),
    linesBehind(here, end, ['', `alignment "${name}"`, ...OFFENCE.map((body) => `  ${body} at ${say(Number(body) as PlayerNumber)}`)]),
  ];
  // In the coach's own words where they say enough, else as the floor names the point.
  const ways = [(player: PlayerNumber) => sayWrittenPlace(play.start.places[player].value), (player: PlayerNumber) => sayPlace(here.court, before[`${player}`]!, { unit: unitWrittenIn(here.block) })];
  const tried = ways.map((say) =>
    proved(
      here,
      editsWith(say),
      (after) => {
        const then = stateAtCall(after.play).places;
        return after.play.start.ball.value === play.start.ball.value && OFFENCE.every((body) => distance(before[body]!, then[body]!) < 0.005);
      },
      message('One of these places follows from the play itself, and an alignment cannot say it. Write it as a spot first.'),
    ),
  );
  return tried.find((one) => 'edits' in one) ?? tried.at(-1)!;
}
