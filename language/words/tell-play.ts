// The play told in sentences: what a screen reader hears, and what a player who was not at practice reads.
import type { Action, Look, Play, PlayerNumber, Start, Step } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import type { LookTime, Timeline } from '../timeline/timeline.ts';
import { sayList } from './say-list.ts';
import { sayAction, sayDeed } from './say-action.ts';
import { latest, saySeconds } from './say-seconds.ts';
import { sayWrittenPlace } from './say-written-place.ts';

export interface Sentence {
  readonly text: string;
  /** The action, look, step or header it speaks of. */
  readonly part?: string;
}

/** In text order: how it stands, when it is called, each step with its lines and looks. */
export function tellPlay(play: Play, timeline: Timeline): readonly Sentence[] {
  return [...tellStart(play.start), ...tellClock(play, timeline), ...play.steps.flatMap((step) => tellStep(play, step, timeline))];
}

function tellStart(start: Start): readonly Sentence[] {
  const where = OFFENCE.map((who) => `${who} ${sayStanding(sayWrittenPlace(start.places[Number(who) as PlayerNumber].value))}`);
  const form = start.alignment.value === undefined ? '' : `${capital(start.alignment.value)}: `;
  const ball = start.throwIn === undefined
    ? `${start.ball.value} has the ball.`
    : `${start.throwIn.by.value} throws in from the ${start.throwIn.side}.`;
  return [{ text: `${form}${sayList(where)}. ${ball}`, part: 'from' }];
}

function sayStanding(place: string): string {
  return /^\(|^between|^beside|^behind/.test(place) ? place : `at ${place}`;
}

function tellClock({ clock }: Play, { times }: Timeline): readonly Sentence[] {
  const sentences: Sentence[] = [];
  if (clock.call !== undefined) {
    const { from, to } = clock.call;
    sentences.push({ text: `Call it with ${from === to ? to : `${from} to ${to}`} on the clock.`, part: 'call' });
  }
  if (times.firstLook !== undefined && times.allLooks !== undefined) {
    sentences.push({ text: `The first look needs ${times.firstLook.fromCall} or more on the clock at the call, all looks ${times.allLooks.fromCall} or more.` });
  }
  return sentences;
}

function tellStep(play: Play, step: Step, timeline: Timeline): readonly Sentence[] {
  const looks = step.looks.map((look) => ({ look, line: lineNumber(look.line), text: tellLook(look, timeline.times.looks.find((time) => time.look === look.id), play.start.throwIn === undefined ? 'the call' : 'the hand-over'), part: look.id }));
  const lines = chains(step.actions).map((chain) => ({ line: lineNumber(chain[0]!.line), text: tellChain(chain), part: chain[0]!.id }));
  const body = [...lines, ...looks].sort((a, b) => a.line - b.line).map(({ text, part }) => ({ text, part }));
  const end = step.end === undefined ? [] : [{ text: sentence(step.end.text), part: step.end.part }];
  return [{ text: openStep(play, step), part: step.key }, ...body, ...end];
}

function openStep(play: Play, step: Step): string {
  const nameOf = (key: string | null | undefined) => play.steps.find((one) => one.key === key)?.name ?? key ?? '';
  const how =
    step.how === 'instead' ? `, instead of ${nameOf(step.insteadOf)}` : step.how === 'after' ? `, after ${nameOf(step.parent)}` : step.how === 'first' ? ', from the start' : '';
  const when = step.condition === undefined ? '' : step.condition.kind !== 'remark' ? `, when ${step.condition.text}` : `, ${step.condition.text}`;
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

function tellChain(chain: readonly Action[]): string {
  const told = chain.map((action, at) => {
    const before = chain[at - 1];
    if (before === undefined) return sayAction(action);
    if (before.link === action.link) return `, ${sayAction(action)}`;
    return before.who === action.who ? `, then ${sayDeed(action)}` : `, then ${sayAction(action)}`;
  });
  return sentence(told.join(''));
}

function tellLook(look: Look, time: LookTime | undefined, zero: string): string {
  const label = look.label === undefined ? '' : ` “${look.label}”`;
  const tail = look.tail.map((action) => (action.who === String(look.who[0]) ? sayDeed(action) : sayAction(action))).join(', ');
  const when = time === undefined ? '' : ` (typically ${saySeconds(latest(time.typical))} after ${zero}, ${saySeconds(latest(time.late))} when it goes slowly)`;
  return `Look for ${look.who.join(' or ')}${label}${tail === '' ? '' : `: ${tail}`}${when}.`;
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
