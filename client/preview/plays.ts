// Several plays on one page: a list to choose from, the one before and the next. The address names the play, so that a link leads to it and
// the browser's own way back goes from play to play.
import type { Playback } from '../../language/playback/playback.ts';
import { createBench } from './bench.ts';
import { inSections } from './calls.ts';
import { element, iconButton } from './elements.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface PlaysView {
  readonly root: HTMLElement;
  /** In the order they are given; plays of one section that follow each other stand under its name. */
  readonly load: (plays: readonly Playback[], sections: readonly (string | undefined)[]) => void;
  readonly step: (by: 1 | -1) => void;
  /** The call sheet; opened only where there are several plays. */
  readonly bench: HTMLDialogElement;
  readonly openBench: () => void;
}

const BACK = 'M15.4 5.3 8.7 12l6.7 6.7 1.4-1.4-5.3-5.3 5.3-5.3z';
const SHEET = 'M4 5h2.2v2.2H4zM8.4 5H20v2.2H8.4zM4 10.9h2.2v2.2H4zM8.4 10.9H20v2.2H8.4zM4 16.8h2.2V19H4zM8.4 16.8H20V19H8.4z';
const NEXT = 'M8.6 5.3 15.3 12l-6.7 6.7-1.4-1.4 5.3-5.3-5.3-5.3z';

/** Hidden where there is one play only. */
export function createPlays(chosen: (playback: Playback) => void): PlaysView {
  const back = iconButton(tell(message('Play before')), BACK, 'small', () => step(-1));
  const next = iconButton(tell(message('Next play')), NEXT, 'small', () => step(1));
  const list = element('select', { 'aria-label': tell(message('Play')) });
  const bench = createBench(go);
  const sheet = iconButton(tell(message('Call sheet: what each play needs, and what still fits')), SHEET, 'small', openBench);
  const root = element('nav', { class: 'plays', 'aria-label': tell(message('Plays')) }, back, list, next, sheet);
  root.hidden = true;
  let plays: readonly Playback[] = [];
  let names: readonly string[] = [];
  let at = -1;

  list.addEventListener('change', () => go(Number(list.value)));

  function load(all: readonly Playback[], sections: readonly (string | undefined)[]): void {
    plays = all;
    names = namesInAddress(all);
    root.hidden = all.length < 2;
    bench.load(all, sections);
    const listed = inSections(all.map(({ play }, i) => ({ section: sections[i], option: element('option', { value: i }, `${i + 1}  ${play.name}`) })));
    list.replaceChildren(...listed.flatMap(({ head, plays: some }) => (head === undefined ? some.map(({ option }) => option) : [element('optgroup', { label: head }, ...some.map(({ option }) => option))])));
    // With one play the address is left as it is.
    if (all.length > 1) addEventListener('hashchange', fromAddress);
    fromAddress();
  }

  function fromAddress(): void {
    show(Math.max(0, names.indexOf(decoded(location.hash.slice(1)))));
  }

  function show(index: number): void {
    if (index === at) return;
    at = index;
    list.value = String(index);
    back.disabled = index === 0;
    next.disabled = index === plays.length - 1;
    chosen(plays[index]!);
  }

  function go(index: number): void {
    if (names[index] !== undefined) location.hash = encodeURIComponent(names[index]);
  }

  function step(by: 1 | -1): void {
    if (plays.length > 1) go(at + by);
  }

  function openBench(): void {
    if (plays.length > 1) bench.open();
  }

  return { root, load, step, bench: bench.dialog, openBench };
}

/** `lighthouse`; of two plays of one name the later is `lighthouse-2`. */
function namesInAddress(plays: readonly Playback[]): readonly string[] {
  const used = new Set<string>();
  return plays.map(({ play }) => {
    const plain = play.key.replace(/^play:/, '');
    let name = plain;
    for (let number = 2; used.has(name); number++) name = `${plain}-${number}`;
    used.add(name);
    return name;
  });
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
