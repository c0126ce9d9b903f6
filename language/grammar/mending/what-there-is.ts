// Where no word is near: what there is of the kind that could stand there, and what can be written in its place.
import { message, type Message } from '../../message/message.ts';
import { alignmentNames } from '../../court/alignments.ts';
import { endOf, said, tried, written, type Broken } from './broken-line.ts';
import { isPlayer } from '../line-token.ts';
import { verbOf } from '../verbs.ts';
import type { LineFix } from '../line-fault.ts';
import { fromThere, rewriting, unquoted } from './saying.ts';

export interface WhatThereIs {
  readonly message: Message;
  readonly fixes: readonly (LineFix | undefined)[];
}

/** A kind of word, told by the rules of the grammar on the way to it. */
const KINDS: readonly (readonly [isMeant: (path: readonly string[]) => boolean, tell: (broken: Broken, word: string) => WhatThereIs | undefined])[] = [
  [(path) => path.some((part) => part.endsWith('>AlignmentRef')), alignments],
  [(path) => path.at(-1)?.endsWith('Verb') === true && path.some((part) => part.endsWith('>Clause')), verbs],
  [(path) => path.some((part) => /(ShotKindName|PassKindName)$/.test(part)), finishes],
  [(path) => path.some((part) => /(>|^)(Place|PointRef)$|SpotName$/.test(part)), spots],
];

/** Nothing for a word that the grammar has: it stands in the wrong place, and no list helps. */
export function whatThereIs(broken: Broken): WhatThereIs | undefined {
  const { token, index, wanted } = broken;
  if (token?.tokenType.name !== 'UNKNOWN' || token.startOffset === broken.lexed.openQuote) return undefined;
  const word = said(written(broken, index));
  for (const [isMeant, tell] of KINDS) {
    if (!wanted.some(({ path }) => isMeant(path))) continue;
    const told = tell(broken, word);
    if (told) return told;
  }
  return undefined;
}

function alignments(_broken: Broken, word: string): WhatThereIs {
  return { message: message('{word} is no alignment I know. There are {words}; or say where each stands: from 1 top, 2 and 3 wings, 4 and 5 blocks.', { word, words: alignmentNames.join(', ') }), fixes: [] };
}

/** Where a man's verb is unknown: what does not move him is a coaching point. */
function verbs(broken: Broken, word: string): WhatThereIs | undefined {
  const { tokens, index } = broken;
  const who = tokens[index - 1];
  if (index > 1 || !who || (!isPlayer(who) && who.image !== 'everyone' && who.image !== 'everybody')) return { message: message('{word} is no verb I know. Say it with one of those in the reference under Actions (cuts, passes, screens …); what moves nobody is a note: note "…".', { word }), fixes: [] };
  const words = unquoted(fromThere(broken, index));
  const isDefender = who.image.startsWith('x');
  const note = isPlayer(who) && !isDefender ? `note ${who.image} "${words}"` : `note "${isPlayer(who) ? `${written(broken, 0)} ` : ''}${words}"`;
  const some = isDefender ? 'switches, denies, helps …' : 'cuts, passes, screens …';
  if (!isDefender && namesAnAction(broken, index + 1)) return { message: message('{word} is no verb I know. Say it with one of those in the reference under Actions ({some}). A note ({note}) moves nobody.', { word, some, note: 'note "…"' }), fixes: [] };
  return { message: message('{word} is no verb I know. Say it with one of those in the reference under Actions ({some}), or as a coaching point: {note}.', { word, some, note }), fixes: isDefender ? [] : [rewriting(broken, note)] };
}

/** Another verb, or somewhere to go: as a note it would be lost. */
function namesAnAction({ tokens }: Broken, from: number): boolean {
  return tokens.slice(from).some(({ image, tokenType }, at) => tokenType.name !== 'STRING' && ((verbOf(image)?.number === 'singular' && at > 0) || ['to', 'into', 'toward', 'up top', 'off', 'via'].includes(image)));
}

/** Words for the floor, or for a space in it, which no spot is called: a name of his own would be no help. */
const NOT_A_SPOT: ReadonlySet<string> = new Set(['court', 'floor', 'gap', 'gaps', 'seam', 'space', 'area', 'hole', 'line', 'spot', 'place', 'open']);

function finishes(_broken: Broken, word: string): WhatThereIs {
  return { message: message('{word} is no shot and no pass I know. Shots are layup, dunk, jumper, three, hook and tip-in; before one may stand how he gets the ball: lob, bounce pass, skip.', { word }), fixes: [] };
}

const SPOTS_WITH_A_SIDE = 'block, elbow, mid-post, short corner, corner, wing, slot, hash';
const SPOTS_IN_THE_MIDDLE = 'rim, lane, nail, high post, top, half court';

function spots(broken: Broken, word: string): WhatThereIs | undefined {
  const { tokens, index } = broken;
  const side = ['left', 'right', 'near', 'far', 'ball-side', 'weak-side', 'strong-side', 'opposite', 'same'].includes(tokens[index - 1]?.image ?? '');
  const from = side ? index - 1 : index;
  const at = tokens[from]!.startOffset;
  const to = endOf(tokens[index]!);
  const name = broken.text.slice(at, to);
  if (NOT_A_SPOT.has(written(broken, index).toLowerCase())) return { message: message('{word} can be many places. Say which: "{example}".', { word, example: 'to the nail' }), fixes: [] };
  const quoted = tried(broken, message('Put "{name}" in quotes, and say where it is: spot "{name}" is …', { name }), [{ at, to, text: `"${name}"` }]);
  const metres = tried(broken, message('Say it in metres'), [{ at, to, text: '(4.2, 3) m' }]);
  if (!quoted && !metres) return undefined;
  const told = side
    ? message('{word} is no spot I know. With a side there are {sided}. All are drawn in the reference under Spots. Or say it in metres from the ring, (4.2, 3) m: to the right, and towards half court.', { word, sided: SPOTS_WITH_A_SIDE })
    : message('{word} is no spot I know. In the middle there are {middle}; with left or right {sided}. All are drawn in the reference under Spots. Or say it in metres from the ring, (4.2, 3) m: to the right, and towards half court.', { word, middle: SPOTS_IN_THE_MIDDLE, sided: SPOTS_WITH_A_SIDE });
  return { message: told, fixes: [quoted, metres] };
}
