// What is handed to the players on paper: strips to be cut out, each with one player's jobs in one play and his own lines on the floor. Of many
// plays each player has sheets of his own; of a few the strips run on, so that no paper is wasted.
import { courtNodes } from '../../language/picture/court-lines.ts';
import { paintOf } from '../../language/picture/draw.ts';
import { node } from '../../language/picture/nodes.ts';
import { ownWays } from '../../language/picture/own-ways.ts';
import { print } from '../../language/picture/palette.ts';
import { viewBoxOf, viewOf } from '../../language/picture/view.ts';
import { OFFENCE } from '../../language/play/play.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { build, element } from './elements.ts';
import { jobsHead, playerName, type Job, type JobsOfPlayer } from './jobs.ts';
import { tenths } from './words.ts';
import { message, oneOf } from '../../language/message/message.ts';
import { tell } from './tell.ts';

interface Strip {
  readonly playback: Playback;
  readonly player: JobsOfPlayer;
}

/** So many strips fill a sheet, or nearly: from here on a player's own sheets waste none. */
const fillASheet = 5;

/** Of many plays they are as many sheets again as the plays have: those are printed for the asking. */
export const areFew = (plays: readonly Playback[]): boolean => plays.length < fillASheet;

export function jobSheets(plays: readonly Playback[]): readonly HTMLElement[] {
  const strips = plays.flatMap((playback) => (playback.jobs ?? []).map((player): Strip => ({ playback, player })));
  const byPlayer = OFFENCE.map((who) => strips.filter(({ player }) => player.who === who)).filter((own) => own.length > 0);
  if (byPlayer.every((own) => own.length < fillASheet)) return strips.length === 0 ? [] : [sheetOf(jobsHead(), byPlayer.flat())];
  return byPlayer.map((own) => sheetOf(tell(message('Jobs of {who}', { who: playerName((own.find(({ player }) => player.name !== undefined) ?? own[0]!).player) })), own));
}

function sheetOf(head: string, strips: readonly Strip[]): HTMLElement {
  const throwIns = new Set(strips.map(({ playback }) => playback.play.throwIn));
  const after = oneOf([...(throwIns.has(false) ? [message('after the call')] : []), ...(throwIns.has(true) ? [message('after the hand-over')] : [])]);
  const times = tell(message('Typical seconds {after}. A model’s figures, not a promise: time your own team.', { after }));
  return element('article', { class: 'sheet jobs' }, element('header', {}, element('h1', {}, head), element('p', { class: 'call' }, times)), ...strips.map(stripOf));
}

function stripOf({ playback, player }: Strip): HTMLElement {
  const view = viewOf(playback);
  const picture = build(node('svg', { viewBox: viewBoxOf(view), role: 'img', 'aria-label': tell(message('Jobs of {who}', { who: playerName(player) })) }, ...courtNodes(playback.court, view, paintOf(print)), ...ownWays(playback, player.who, print)));
  return element('section', { class: view.full ? 'strip full-court' : 'strip' }, picture, element('div', {}, element('h2', {}, element('span', {}, playerName(player)), element('span', {}, playback.play.name)), element('div', { class: 'own-jobs' }, ...player.jobs.map(rowOf))));
}

function rowOf({ text, at, head }: Job): HTMLElement {
  return head === true ? element('h3', {}, text.replace(/:$/, '')) : element('p', {}, element('span', { class: 'when' }, at === undefined ? '' : tenths(at)), element('span', {}, text));
}
