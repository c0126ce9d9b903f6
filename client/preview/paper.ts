// The plays as they are printed: one a page, black on white, each step with its picture and its words, the looks with their times. Above several
// lies a sheet for the bench, behind them what is handed to the players.
import './paper.css';
import { courtNodes } from '../../language/picture/court-lines.ts';
import { paintOf } from '../../language/picture/draw.ts';
import { stepFrames, type Frame } from '../../language/picture/frames.ts';
import { node } from '../../language/picture/nodes.ts';
import { print } from '../../language/picture/palette.ts';
import { frameNodes } from '../../language/picture/strip.ts';
import { viewBoxOf, viewOf } from '../../language/picture/view.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { callSheet } from './call-sheet.ts';
import { createKey } from './draw.ts';
import { build, element } from './elements.ts';
import { jobSheets } from './job-sheets.ts';
import { callWith, takes } from './runs.ts';
import { factsOf } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

/** Of each play the section of its book; `title`: what they are called together. */
export interface OnPaper {
  readonly plays: readonly Playback[];
  readonly sections: readonly (string | undefined)[];
  readonly title: string;
}

/** Made only when it is printed: nobody else pays for it. `withJobs`: whether the players' sheets are wanted, asked each time. */
export function printOnPaper(page: OnPaper, withJobs: () => boolean): void {
  const paper = element('div', { class: 'paper' });
  let hasJobs: boolean | undefined;
  document.body.append(paper);
  addEventListener('beforeprint', () => {
    if (hasJobs === withJobs()) return;
    hasJobs = withJobs();
    paper.replaceChildren(...sheetsOf(page), ...(hasJobs ? jobSheets(page.plays) : []));
  });
}

/** The sheets of several plays bear the numbers by which the call sheet names them. */
function sheetsOf({ plays, sections, title }: OnPaper): readonly HTMLElement[] {
  const several = plays.length > 1;
  const sheets = plays.map((playback, i) => sheetOf(playback, [...(several ? [tell(message('Sheet {number}', { number: i + 1 }))] : []), ...(sections[i] === undefined ? [] : [sections[i]])]));
  return [...(several ? [callSheet(plays, sections, title)] : []), ...sheets];
}

function sheetOf(playback: Playback, head: readonly string[]): HTMLElement {
  const { play } = playback;
  const facts = factsOf(play, ...head);
  const { opening, steps } = toldBySteps(playback);
  const frames = new Map(stepFrames(playback).map((frame) => [frame.step, frame]));
  // A play told otherwise, by another maker, still shows its steps.
  const untold = [...frames.values()].filter(({ step }) => steps.every(({ key }) => key !== step)).map(({ step, title }) => ({ key: step, head: title, lines: [] }));
  const cells = [...steps, ...untold].map(({ key, head, lines }) => cellOf(playback, frames.get(key), head, lines));
  return element(
    'article',
    { class: `sheet${viewOf(playback).full ? ' full-court' : ''}${['', ' one', ' two', ' three'][cells.length] ?? ''}` },
    element('header', {}, element('div', {}, element('h1', {}, play.name), element('p', { class: 'facts' }, facts)), element('p', { class: 'call' }, callWith(playback))),
    element('div', { class: 'opening' }, element('div', {}, ...opening.map((text) => element('p', {}, text))), ...looksTable(playback)),
    element('ol', { class: 'frames' }, ...cells),
    element('footer', {}, createKey('paper')),
  );
}

function cellOf(playback: Playback, frame: Frame | undefined, head: string, lines: readonly string[]): HTMLElement {
  const words = element('div', { class: 'step-words' }, ...(head === '' ? [] : [element('h2', {}, head)]), ...lines.map((text) => element('p', {}, text)));
  return element('li', {}, ...(frame === undefined ? [] : [pictureOf(playback, frame)]), words);
}

function pictureOf(playback: Playback, frame: Frame): SVGElement {
  const view = viewOf(playback);
  const floor = courtNodes(playback.court, view, paintOf(print));
  return build(node('svg', { viewBox: viewBoxOf(view), role: 'img', 'aria-label': frame.title === '' ? playback.play.name : frame.title }, ...floor, ...frameNodes(frame, view, print)));
}

/** When each way ends: typical, and late. */
function looksTable(playback: Playback): readonly HTMLElement[] {
  if (playback.times.looks.length === 0) return [];
  const rows = playback.runs.map((run) => element('tr', {}, element('td', {}, run.label), element('td', {}, takes(playback, run))));
  return [element('table', {}, element('thead', {}, element('tr', {}, element('th', {}, tell(message('Run-through'))), element('th', {}, tell(message('typical, late'))))), element('tbody', {}, ...rows))];
}

interface ToldStep {
  readonly key: string;
  readonly head: string;
  readonly lines: readonly string[];
}

/** The play told in words, cut where its steps begin. */
function toldBySteps({ told, steps }: Playback): { readonly opening: readonly string[]; readonly steps: readonly ToldStep[] } {
  const keys = new Set(steps.map(({ key }) => key));
  const opening: string[] = [];
  const found: { key: string; head: string; lines: string[] }[] = [];
  for (const { text: timed, untimed, part } of told) {
    // The times stand in the table at the head.
    const text = untimed ?? timed;
    if (part !== undefined && keys.has(part)) found.push({ key: part, head: text.replace(/:$/, ''), lines: [] });
    // What belongs to no part is how much it needs on the clock: that stands at the head.
    else if (found.length > 0 || part !== undefined) (found.at(-1)?.lines ?? opening).push(text);
  }
  return { opening, steps: found };
}
