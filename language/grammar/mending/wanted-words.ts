import { message, oneOf, type Message, type Words } from '../../message/message.ts';
import type { Wanted } from '../reading/follow.ts';

const CLASSES: readonly (readonly [words: Message, belongs: (wanted: Wanted) => boolean])[] = [
  [message('a verb (cuts, passes, screens …)'), ({ path }) => /Verb$/.test(path.at(-1) ?? '')],
  [message('a player (1 to 5)'), ({ token }) => token === 'PLAYER' || token === 'SUBJECT' || token === 'XPLAYER'],
  [message('a place (left wing, top, rim …)'), ({ path }) => path.some((part) => /Place$|Spot$|PointRef$/.test(part))],
  [message('a name in quotes'), ({ token }) => token === 'STRING'],
  [message('a time (5 seconds)'), ({ token }) => token === 'SECONDS'],
  [message('a distance (2 ft)'), ({ token }) => token === 'LENGTH'],
  [message('a speed (5 m/s)'), ({ token }) => token === 'SPEED'],
  [message('a formation (2-3)'), ({ token }) => token === 'FORM'],
  [message('a number'), ({ token }) => token === 'NUMBER' || token === 'NEGATIVE'],
  [message('what of his (’s drive, ’s screen …)'), ({ token }) => token === '\'s'],
  [message('a word of your own'), ({ token }) => token === 'LABEL'],
];

/** Right there, and no help to somebody who looks for a word. */
const UNHELPFUL: ReadonlySet<string> = new Set(['him', 'them', 'has the ball', 'starts with the ball']);

/** What may come next, in a coach's words: `a player (1 to 5) or "the ball"`. */
export function describeWanted(wanted: readonly Wanted[]): Words {
  const found = new Set<Message>();
  const words = new Set<string>();
  // Lines of a roster or an alignment begin as an action does, and are no help to someone who writes one.
  const inAction = wanted.filter(({ path }) => path[0] !== 'Entry' && path[0] !== 'Placing');
  const all = inAction.length ? inAction : wanted;
  // What an action waits for may follow nearly everything, and is seldom what is missing.
  const waits = all.filter(({ path }) => path.some((part) => part.endsWith('>ClauseTrigger')));
  for (const want of [...all.filter((each) => !waits.includes(each)), ...waits]) {
    const known = CLASSES.find(([, belongs]) => belongs(want));
    if (known) found.add(known[0]);
    else if (!UNHELPFUL.has(want.token)) words.add(`"${want.token}"`);
  }
  const said = CLASSES.map(([name]) => name).filter((name) => found.has(name));
  // A comma, `and` or `then` may follow nearly everything: named only where nothing better can be said.
  const joints = ['","', '"and"', '"then"'];
  const better = [...words].filter((word) => !joints.includes(word));
  const listed: readonly Words[] = [...said, ...(better.length || said.length ? better : words)];
  const named = listed.length > 5 ? [...listed.slice(0, 4), message('another word')] : listed;
  return named.length === 0 ? message('nothing more') : oneOf(named);
}
