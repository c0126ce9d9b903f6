// The play told in sentences: what a screen reader hears, and what a player who was not at practice reads.
import { allOf, inEnglish, message, type Message, type Say, type Words } from '../message/message.ts';
import { courtOf } from '../court/court.ts';
import { ruleSet } from '../court/rule-sets.ts';
import { lineNumber } from '../play/line-number.ts';
import type { Action, Look, Note, Play, PlayerNumber, Step } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import type { LookTime, Timeline } from '../timeline/timeline.ts';
import { sayAction, sayDeed, sayOfSeveral } from './say-action.ts';
import { aloud } from './say-aloud.ts';
import { latest } from './say-seconds.ts';
import { sayStepHead } from './say-step.ts';
import { sayPin, sayWaitsOf } from './say-wait.ts';
import { capital, chains, placeInWords, sayStanding, sentence } from './sentences.ts';
import { readsADefender } from './way-name.ts';

export interface Sentence {
  readonly text: string;
  /** The action, look, step or header it speaks of. */
  readonly part?: string;
  /** The same without its times, where it has some: for whoever shows them beside it. */
  readonly untimed?: string;
}

/** How it stands, when it is called, what the coach notes; then in text order each step with its lines, looks and notes. */
export function tellPlay(play: Play, timeline: Timeline, say: Say = inEnglish): readonly Sentence[] {
  const told = [...tellStart(play), ...tellClock(play, timeline), ...tellNotes(play, 'play'), ...play.steps.flatMap((step) => tellStep(play, step, timeline))];
  return told.map(({ text, untimed, written, part }) => ({
    text: written === true ? say(text) : aloud(say(text)),
    ...(part !== undefined && { part }),
    ...(untimed !== undefined && { untimed: aloud(say(untimed)) }),
  }));
}

interface Told {
  readonly text: Words;
  readonly part?: string;
  readonly untimed?: Words;
  /** The coach's own sentence: nothing is added to it. */
  readonly written?: true;
}

function tellNotes({ notes }: Play, within: Note['within']): readonly Told[] {
  return notes
    .filter((note) => note.within === within)
    .map(({ text, who, part }) => ({ text: who === undefined ? message('Note: {text}', { text }) : message('Note for {who}: {text}', { who: `${who}`, text }), part, written: true }));
}

/** Where everybody stands at the call, and who has the ball. */
export function tellStanding(play: Play, say: Say): string {
  return tellStart(play).map(({ text }) => aloud(say(text))).join(' ');
}

function tellStart(play: Play): readonly Told[] {
  const { start } = play;
  const court = courtOf(ruleSet(play.rules.value));
  const where = OFFENCE.map((who) => `${who} ${sayStanding(placeInWords(court, start.places[Number(who) as PlayerNumber].value))}`);
  const ball = tellBall(play);
  const places = allOf(where);
  const form = start.alignment.value;
  return [{ text: form === undefined ? message('{places}. {ball}', { places, ball }) : message('{alignment}: {places}. {ball}', { alignment: capital(form), places, ball }), part: 'from' }];
}

function tellBall({ start: { ball, throwIn } }: Play): Message {
  // Where from is told with the places.
  return throwIn === undefined ? message('{who} has the ball.', { who: `${ball.value}` }) : message('{who} throws in.', { who: `${throwIn.by.value}` });
}

function tellClock({ clock, start }: Play, { times }: Timeline): readonly Told[] {
  const sentences: Told[] = [];
  if (clock.call !== undefined) {
    const { from, to } = clock.call;
    sentences.push({ text: from === to ? message('Call it with {seconds} on the clock.', { seconds: to }) : message('Call it with {from} to {to} on the clock.', { from, to }), part: 'call' });
  }
  if (times.firstLook !== undefined && times.allLooks !== undefined) {
    const { firstLook: { fromCall: first }, allLooks: { fromCall: all } } = times;
    const moment = start.throwIn === undefined ? message('on the clock at the call') : message('on the clock at the hand-over');
    sentences.push({ text: first === all ? message('Every look has time with {all} or more {moment}.', { all, moment }) : message('The first look needs {first} or more {moment}, all looks {all} or more.', { first, all, moment }) });
  }
  return sentences;
}

function tellStep(play: Play, step: Step, timeline: Timeline): readonly Told[] {
  const after = play.start.throwIn === undefined ? message('after the call') : message('after the hand-over');
  const looks = step.looks.map((look) => ({ line: lineNumber(look.line), ...tellLook(look, timeline.times.looks.find((time) => time.look === look.id), after), part: look.id }));
  const lines = chains(step.actions).map((chain) => ({ line: lineNumber(chain[0]!.line), text: tellChain(chain), part: chain[0]!.id }));
  const body = [...lines, ...looks].sort((a, b) => a.line - b.line).map(({ line: _line, ...told }): Told => told);
  const end = step.end === undefined ? [] : [{ text: step.end.text.startsWith('ends') ? message('The play {ends}.', { ends: step.end.text.replace(/\.$/, '') }) : sentence(capital(step.end.text)), part: step.end.part }];
  return [{ text: sayStepHead(play, step), part: step.key }, ...body, ...tellNotes(play, step.key), ...end];
}

/** `As 4 rolls, 5 lifts to left slot.` */
function tellChain(chain: readonly Action[]): string {
  const links = [...new Set(chain.map(({ link }) => link))].map((link) => chain.filter((action) => action.link === link));
  const told = links.map((actions, at) => {
    const said = tellLink(actions);
    if (at === 0) return said;
    const alone = actions.length === 1 && links[at - 1]!.length === 1 && actions[0]!.who === links[at - 1]![0]!.who && actions[0]!.waits.length === 0;
    const goesWithIt = actions.every(({ waits }) => waits.some(({ kind }) => kind === 'as' || kind === 'after'));
    return `, ${goesWithIt ? 'and' : 'then'} ${alone ? sayDeed(actions[0]!) : said}`;
  });
  return sentence(capital(told.join('')));
}

/** What happens side by side: those who do the same together. */
function tellLink(actions: readonly Action[]): string {
  const groups = new Map<string, Action[]>();
  for (const action of actions) {
    const key = [...sayWaitsOf(action), sayDeed(action)].join();
    groups.set(key, [...(groups.get(key) ?? []), action]);
  }
  return [...groups.values()]
    .map((group) => {
      const [action] = group as [Action, ...Action[]];
      const waits = sayWaitsOf(action);
      const said = group.length === 1 ? sayAction(action) : sayOfSeveral(group.map(({ who }) => who), action);
      const until = waits.filter((wait) => wait.startsWith('until '));
      const first = waits.filter((wait) => !wait.startsWith('until '));
      return `${first.map((wait) => `${wait}, `).join('')}${[said, ...until].join(' ')}`;
    })
    .join(', ');
}

function tellLook(look: Look, time: LookTime | undefined, after: Message): Pick<Told, 'text' | 'untimed'> {
  const tail = tellTail(look);
  const name = [...(look.label === undefined ? [] : [readsADefender(look.label) ? look.label : `“${look.label}”`]), ...(look.pin === undefined ? [] : [sayPin(look.pin)])].join(' ');
  const what = `${look.who.join(' or ')}${name === '' ? '' : ` ${name}`}${tail === '' ? '' : `: ${tail}`}`;
  const untimed = message('Look for {what}.', { what });
  if (time === undefined) return { text: untimed };
  return { text: message('Look for {what} (typically {typical} {after}, {late} when it goes slowly).', { what, typical: secondsAloud(time.typical), late: secondsAloud(time.late), after }), untimed };
}

function secondsAloud(milliseconds: number): Message {
  const seconds = latest(milliseconds);
  return seconds === 1 ? message('1 second') : message('{seconds} seconds', { seconds });
}

/** `3 passes to 4, who lays it up`; of the looker himself `he shoots a jumper`. */
function tellTail(look: Look): string {
  const looker = String(look.who[0]);
  return look.tail
    .map((action, at) => {
      const before = look.tail[at - 1];
      if (before === undefined) return action.who === looker ? `he ${sayDeed(action)}` : sayAction(action);
      if (before.who === action.who) return `, then ${sayDeed(action)}`;
      return 'to' in before && before.to === action.who ? `, who ${sayDeed(action)}` : `, ${sayAction(action)}`;
    })
    .join('');
}
