// The play told in sentences: what a screen reader hears, and what a player who was not at practice reads.
import { courtOf } from '../court/court.ts';
import { ruleSet } from '../court/rule-sets.ts';
import type { Action, Look, Place, Play, PlayerNumber, Step } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import type { LookTime, Timeline } from '../timeline/timeline.ts';
import { sayList } from './say-list.ts';
import { sayAction, sayDeed, sayOfSeveral } from './say-action.ts';
import { wordsFor } from './say-place.ts';
import { sayPin, sayWait } from './say-wait.ts';
import { latest, saySeconds } from './say-seconds.ts';
import { sayWrittenPlace } from './say-written-place.ts';

export interface Sentence {
  readonly text: string;
  /** The action, look, step or header it speaks of. */
  readonly part?: string;
}

/** In text order: how it stands, when it is called, each step with its lines and looks. */
export function tellPlay(play: Play, timeline: Timeline): readonly Sentence[] {
  const told = [...tellStart(play), ...tellClock(play, timeline), ...play.steps.flatMap((step) => tellStep(play, step, timeline))];
  return told.map(({ text, ...rest }) => ({ text: aloud(text), ...rest }));
}

/** Places of which there is one have their article where they are read out: `to the rim`, `at the top`. The notation passes over it. */
function aloud(text: string): string {
  return text.replaceAll(/\b(to|at|via|and|or|of|above|below|inside|outside|between|reaches|leaves) (top|nail|rim|lane|high post|free-throw line|far free-throw line|baseline|far baseline|backcourt)\b(?! extended)/g, '$1 the $2');
}

function tellStart(play: Play): readonly Sentence[] {
  const { start } = play;
  const court = courtOf(ruleSet(play.rules.value));
  // A man in a line or a stack was given a place in metres; said aloud it is so far from a spot.
  const place = (value: Place) => (value.kind === 'point' ? wordsFor(court, value.point).text : sayWrittenPlace(value));
  const where = OFFENCE.map((who) => `${who} ${sayStanding(place(start.places[Number(who) as PlayerNumber].value))}`);
  const form = start.alignment.value === undefined ? '' : `${capital(start.alignment.value)}: `;
  const ball = start.throwIn === undefined
    ? `${start.ball.value} has the ball.`
    : `${start.throwIn.by.value} throws in from the ${start.throwIn.side}.`;
  return [{ text: `${form}${sayList(where)}. ${ball}`, part: 'from' }];
}

function sayStanding(place: string): string {
  if (/^[\d(]/.test(place)) return `is ${place.startsWith('(') ? 'at ' : ''}${place}`;
  return /^between|^beside|^behind/.test(place) ? place : `at ${place}`;
}

function tellClock({ clock, start }: Play, { times }: Timeline): readonly Sentence[] {
  const sentences: Sentence[] = [];
  if (clock.call !== undefined) {
    const { from, to } = clock.call;
    sentences.push({ text: `Call it with ${from === to ? to : `${from} to ${to}`} on the clock.`, part: 'call' });
  }
  if (times.firstLook !== undefined && times.allLooks !== undefined) {
    const { firstLook: { fromCall: first }, allLooks: { fromCall: all } } = times;
    const moment = `on the clock at the ${start.throwIn === undefined ? 'call' : 'hand-over'}`;
    sentences.push({ text: first === all ? `Every look has time with ${all} or more ${moment}.` : `The first look needs ${first} or more ${moment}, all looks ${all} or more.` });
  }
  return sentences;
}

function tellStep(play: Play, step: Step, timeline: Timeline): readonly Sentence[] {
  const looks = step.looks.map((look) => ({ look, line: lineNumber(look.line), text: tellLook(look, timeline.times.looks.find((time) => time.look === look.id), play.start.throwIn === undefined ? 'the call' : 'the hand-over'), part: look.id }));
  const lines = chains(step.actions).map((chain) => ({ line: lineNumber(chain[0]!.line), text: tellChain(chain), part: chain[0]!.id }));
  const body = [...lines, ...looks].sort((a, b) => a.line - b.line).map(({ text, part }) => ({ text, part }));
  const end = step.end === undefined ? [] : [{ text: sentence(step.end.text.startsWith('ends') ? `The play ${step.end.text}` : capital(step.end.text)), part: step.end.part }];
  return [{ text: openStep(play, step), part: step.key }, ...body, ...end];
}

function openStep(play: Play, step: Step): string {
  const nameOf = (key: string | null | undefined) => play.steps.find((one) => one.key === key)?.name ?? key ?? '';
  const how =
    step.how === 'instead' ? `, instead of ${nameOf(step.insteadOf)}` : step.how === 'after' ? `, after ${nameOf(step.parent)}` : step.how === 'first' ? ', from the start' : '';
  const said = step.condition?.text;
  const when = said === undefined ? '' : said === 'otherwise' ? ', otherwise' : `, when ${said}`;
  return `${step.name}${how}${when}:`;
}

/** The links of one line stay one sentence. */
function chains(actions: readonly Action[]): readonly (readonly Action[])[] {
  const lines = new Map<string, Action[]>();
  for (const action of actions) {
    const chain = lines.get(action.line);
    if (chain === undefined) lines.set(action.line, [action]);
    else chain.push(action);
  }
  return [...lines.values()];
}

/** `As 4 rolls, 5 lifts to left slot.` */
function tellChain(chain: readonly Action[]): string {
  const links = [...new Set(chain.map(({ link }) => link))].map((link) => chain.filter((action) => action.link === link));
  const told = links.map((actions, at) => {
    const said = tellLink(actions);
    if (at === 0) return said;
    const alone = actions.length === 1 && links[at - 1]!.length === 1 && actions[0]!.who === links[at - 1]![0]!.who && actions[0]!.waits.length === 0;
    return `, then ${alone ? sayDeed(actions[0]!) : said}`;
  });
  return sentence(capital(told.join('')));
}

/** What happens side by side: those who do the same together. */
function tellLink(actions: readonly Action[]): string {
  const groups = new Map<string, Action[]>();
  for (const action of actions) {
    const key = [...sayWaits(action), sayDeed(action)].join();
    groups.set(key, [...(groups.get(key) ?? []), action]);
  }
  return [...groups.values()]
    .map((group) => {
      const [action] = group as [Action, ...Action[]];
      const waits = sayWaits(action);
      const said = group.length === 1 ? sayAction(action) : sayOfSeveral(group.map(({ who }) => who), action);
      const until = waits.filter((wait) => wait.startsWith('until '));
      const first = waits.filter((wait) => !wait.startsWith('until '));
      return `${first.map((wait) => `${wait}, `).join('')}${[said, ...until].join(' ')}`;
    })
    .join(', ');
}

function sayWaits(action: Action): readonly string[] {
  // The gate that closes behind a man says by itself whom it waits for.
  if (action.kind === 'move' && action.verb === 'close-behind') return [];
  return action.waits.flatMap((wait) => sayWait(wait) ?? []);
}

function tellLook(look: Look, time: LookTime | undefined, zero: string): string {
  const label = look.label === undefined ? '' : ` “${look.label}”`;
  const pin = look.pin === undefined ? '' : ` ${sayPin(look.pin)}`;
  const tail = tellTail(look);
  const when = time === undefined ? '' : ` (typically ${saySeconds(latest(time.typical))} after ${zero}, ${saySeconds(latest(time.late))} when it goes slowly)`;
  return `Look for ${look.who.join(' or ')}${label}${pin}${tail === '' ? '' : `: ${tail}`}${when}.`;
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

function lineNumber(line: string): number {
  return Number(line.slice(line.lastIndexOf(':') + 1));
}

function sentence(text: string): string {
  return text.endsWith('.') ? text : `${text}.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
