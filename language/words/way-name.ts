// A run-through by what it ends in, as a coach names it.
import { inEnglish, message, oneOf, type Words } from '../message/message.ts';
import type { Action, EventRef, Look, Play, Step } from '../play/play.ts';
import { sayDeed } from './say-action.ts';
import { sayAs } from './say-wait.ts';
import { sayWrittenPlace } from './say-written-place.ts';
import { saySeconds } from './say-seconds.ts';
import { thirdPerson } from './verbs.ts';

/** For a list: `“pull-up” for 3`, `4 on the roll`, `1: jumper`, `the end of Zip`; with its step only where two would read the same. */
export function wayName(play: Play, run: string): Words {
  const found = lookOf(play, run);
  if (found === undefined) return endName(play, run);
  const name = lookName(found.look);
  const said = inEnglish(name);
  const others = play.steps.flatMap(({ looks }) => looks).filter(({ id }) => id !== run);
  return others.some((other) => inEnglish(lookName(other)) === said) ? message('{look}, in {step}', { look: name, step: found.step.name }) : name;
}

/** Within a sentence: `“pull-up” for 3`, `the look for 4 on the roll`, `1’s jumper`, `the end of Zip`. */
export function sayWay(play: Play, run: string): Words {
  const found = lookOf(play, run);
  if (found === undefined) return endName(play, run);
  const name = wayName(play, run);
  const { look } = found;
  if (look.label !== undefined && !readsADefender(look.label)) return name;
  if (look.label !== undefined || look.pin !== undefined) return message('the look for {look}', { look: name });
  // Behind `3 or 4: `.
  const shot = inEnglish(name).slice(look.who.join(' or ').length + 2);
  return message('{who}’s {shot}', { who: oneOf(look.who), shot });
}

function lookOf(play: Play, run: string): { readonly step: Step; readonly look: Look } | undefined {
  for (const step of play.steps) {
    const look = step.looks.find(({ id }) => id === run);
    if (look !== undefined) return { step, look };
  }
  return undefined;
}

function endName(play: Play, run: string): Words {
  return message('the end of {step}', { step: play.steps.find(({ key }) => key === run)?.name ?? run });
}

/** `when X2 helps`, `if his man helps`: nobody shouts it. */
export const readsADefender = (label: string): boolean => /^(?:when|if)\s/i.test(label);

function lookName(look: Look): Words {
  const who = look.who.join(' or ');
  if (look.label !== undefined && !readsADefender(look.label)) return message('“{label}” for {who}', { label: look.label, who: oneOf(look.who) });
  return `${who}${look.pin === undefined && look.label === undefined ? ':' : ''} ${lookWords(look)}`;
}

/** A look by its label, else by its moment, else by what it ends in: `pull-up`, `on the roll`, `lob, layup`. */
export function lookWords({ label, pin, tail }: Look): string {
  return label ?? (pin === undefined ? tailWords(tail) : pinWords(pin));
}

function pinWords(pin: NonNullable<Look['pin']>): string {
  switch (pin.kind) {
    case 'on':
      return `on the ${pin.style}`;
    case 'off':
      return `off ${pin.screener}`;
    case 'at':
      return pin.of === 'period' || pin.of === 'shot' ? `at ${pin.seconds} on the ${pin.of === 'shot' ? 'shot clock' : 'clock'}` : `at about ${saySeconds(pin.seconds)}`;
    case 'later':
      return `${saySeconds(pin.seconds)} later`;
    case 'place':
      return `at ${sayWrittenPlace(pin.place)}`;
    case 'as':
      return `${sayAs(pin.after)} ${eventWords(pin.event)}`;
  }
}

function eventWords({ who, does, place, other }: EventRef): string {
  const verb = does === 'set' ? 'is set' : thirdPerson(does);
  return [who, verb, other, place && sayWrittenPlace(place)].filter((word) => word !== undefined).join(' ');
}

/** What is written behind the colon: `lob, layup`. */
function tailWords(tail: readonly Action[]): string {
  const links = tail.filter(({ origin }) => origin !== 'derived').map(linkWords);
  return links.length === 0 ? 'shot' : links.join(', ');
}

function linkWords(action: Action): string {
  switch (action.kind) {
    case 'shot':
      return [action.shot.value, ...action.or].join(' or ');
    case 'pass':
      return action.pass.value;
    case 'hand-off':
      return 'hand-off';
    default:
      return sayDeed(action);
  }
}
