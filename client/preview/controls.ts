// Play, pause, the moment before and after, time and speed.
import { stepSpans } from '../../language/playback/moments.ts';
import { element, icon, iconButton, setText } from './elements.ts';
import { currentRun, SPEEDS, type PlayerState } from './state.ts';
import { speedWords, tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

const PLAY = 'M8 5.2v13.6a.7.7 0 0 0 1.07.6l10.6-6.8a.7.7 0 0 0 0-1.2L9.07 4.6A.7.7 0 0 0 8 5.2z';
const PAUSE = 'M7 5h3.4v14H7zM13.6 5H17v14h-3.4z';
const BACK = 'M6 5h2.4v14H6zM18.6 5.9v12.2a.6.6 0 0 1-.93.5l-8.4-6.1a.6.6 0 0 1 0-1l8.4-6.1a.6.6 0 0 1 .93.5z';
const NEXT = 'M15.6 5H18v14h-2.4zM5.4 5.9v12.2a.6.6 0 0 0 .93.5l8.4-6.1a.6.6 0 0 0 0-1l-8.4-6.1a.6.6 0 0 0-.93.5z';
const HELP = 'M12 2.8a9.2 9.2 0 1 0 0 18.4 9.2 9.2 0 0 0 0-18.4zm0 1.9a7.3 7.3 0 1 1 0 14.6 7.3 7.3 0 0 1 0-14.6zM11 16h2v2h-2zM8.6 9.6a3.4 3.4 0 1 1 5.5 2.6c-.9.7-1.1 1-1.1 1.8h-2c0-1.7.7-2.4 1.7-3.2a1.5 1.5 0 1 0-2.3-1.2z';
const PEN = 'M4 20l1.2-4.9L15.9 4.4a1.6 1.6 0 0 1 2.3 0l1.4 1.4a1.6 1.6 0 0 1 0 2.3L8.9 18.8 4 20zm2.9-4l-.6 1.7 1.7-.6 7.8-7.8-1.1-1.1z';
const FLOOR = 'M4 4h6v2H6v4H4zM14 4h6v6h-2V6h-4zM4 14h2v4h4v2H4zM18 14h2v6h-6v-2h4z';

export interface Wishes {
  readonly togglePlaying: () => void;
  readonly stepMoment: (by: 1 | -1) => void;
  readonly seek: (t: number) => void;
  readonly speed: (speed: number) => void;
  readonly showTeam: () => void;
  readonly help: () => void;
  /** Drags draw new lines, or move what is written again. */
  readonly draw: () => void;
}

export interface Controls {
  readonly root: HTMLElement;
  readonly frame: (state: PlayerState) => void;
  readonly drawing: (on: boolean) => void;
}

export function createControls(wishes: Wishes): Controls {
  const play = iconButton(tell(message('Play')), PLAY, 'play', wishes.togglePlaying);
  const back = iconButton(tell(message('Moment before')), BACK, 'small', () => wishes.stepMoment(-1));
  const next = iconButton(tell(message('Next moment')), NEXT, 'small', () => wishes.stepMoment(1));
  const draw = iconButton(tell(message('Draw a new cut or pass: from a player')), PEN, 'small draw', wishes.draw);
  draw.setAttribute('aria-pressed', 'false');
  const slider = element('input', { type: 'range', class: 'time', min: 0, max: 1000, step: 10, value: 0, 'aria-label': tell(message('Time')) });
  slider.addEventListener('input', () => wishes.seek(Number(slider.value)));
  const [here, whole] = [element('span'), element('span', { class: 'whole' })];
  const reading = element('span', { class: 'reading' }, here, whole);
  const speed = element('select', { class: 'speed', 'aria-label': tell(message('Speed')) }, ...SPEEDS.map((value) => element('option', { value }, speedWords(value))));
  speed.addEventListener('change', () => wishes.speed(Number(speed.value)));
  const root = element(
    'div',
    { class: 'controls', role: 'group', 'aria-label': tell(message('Playing')) },
    element('div', { class: 'scrub' }, slider),
    element('div', { class: 'buttons' }, back, play, next, reading, element('span', { class: 'gap' }), draw, speed,
      iconButton(tell(message('Show the team: only the floor')), FLOOR, 'small', wishes.showTeam), iconButton(tell(message('Keys and lines')), HELP, 'small', wishes.help)),
  );

  const [playIcon, pauseIcon] = [icon(PLAY), icon(PAUSE)];
  let playing: boolean | undefined;
  let end = -1;
  let shownSpeed = 0;
  let shownTime = -1;
  let shownWords = '';
  let off: boolean | undefined;

  return {
    root,
    drawing: (on) => draw.setAttribute('aria-pressed', String(on)),
    frame(state) {
      const run = currentRun(state);
      if (off !== (run === undefined)) {
        off = run === undefined;
        for (const control of [play, back, next, slider, draw]) control.disabled = off;
      }
      if (playing !== state.playing) {
        playing = state.playing;
        const words = playing ? tell(message('Pause')) : tell(message('Play'));
        play.replaceChildren(playing ? pauseIcon : playIcon);
        play.title = words;
        play.setAttribute('aria-label', words);
      }
      if (shownSpeed !== state.speed) speed.value = String((shownSpeed = state.speed));
      if (run === undefined) return;
      if (end !== run.end) {
        slider.max = String((end = run.end));
        setText(whole, tell(message(' of {end} s', { end: tenths(end) })));
        shownTime = -1;
        shownWords = '';
      }
      const t = Math.round(state.t / 10) * 10;
      if (shownTime !== t) {
        shownTime = t;
        slider.value = String(t);
        slider.style.setProperty('--share', String(run.end === 0 ? 0 : t / run.end));
      }
      const words = tenths(state.t);
      if (words === shownWords) return;
      shownWords = words;
      setText(here, words);
      slider.setAttribute('aria-valuetext', tell(message('{seconds} seconds, {step}', { seconds: words, step: stepName(state, state.t) })));
    },
  };
}

function stepName({ playback, run }: PlayerState, t: number): string {
  const key = playback?.runs[run] && stepSpans(playback.runs[run]!).findLast(({ from }) => from <= t)?.key;
  return playback?.steps.find((step) => step.key === key)?.name ?? '';
}
