import { message } from '../message/message.ts';
import { check } from './check.ts';
import type { Fix } from './finding.ts';
import type { Subject } from './subject.ts';
import type { Action, Step } from '../play/play.ts';

/** `1 dribbles to left wing, 2 clears to right corner`: read aloud it is at the same time, as written one after the other. */
export const commaWaits = check({
  code: 'comma-waits',
  severity: 'hint',
  needs: 'line',
  source: 'the words of the notation',
  message: 'Behind the comma {later} waits until {first} is there. If they go together write “and”, or a line for each; if he is to wait, “then” says so.',
  related: 'whom he waits for',
  manual: {
    title: 'A comma between two men',
    why: 'The links of a line run one after the other, so another man’s way behind a comma begins once the one before it is done. Joined by “and”, or in lines of their own, they go at the same time.',
    wrong: '1 dribbles to left slot, 2 clears to right short corner\nlook 1: three',
    right: '1 dribbles to left slot and 2 clears to right short corner\nlook 1: three',
  },
  *find(subject) {
    for (const step of subject.play.steps) {
      for (const { first, later } of waiting(step)) {
        const fixes = fixesOf(subject, later);
        if (fixes !== undefined) yield { part: later.id, params: { later: later.who, first: first.who }, related: [{ part: first.id }], fixes };
      }
    }
  },
});

type Way = Extract<Action, { readonly kind: 'move' | 'dribble' }>;

/** Ways of two men in links that follow each other, of which the second says nothing of the first. */
function* waiting({ actions }: Step): Iterable<{ readonly first: Way; readonly later: Way }> {
  for (const [index, later] of actions.entries()) {
    const before = actions.slice(0, index).filter(({ line }) => line === later.line);
    const first = before.at(-1);
    if (first === undefined || first.link === later.link || !isWay(first) || !isWay(later) || before.some(({ who }) => who === later.who)) continue;
    if (later.waits.length === 0 && !speaksOf(later, before.map(({ who }) => who))) yield { first, later };
  }
}

const isWay = (action: Action): action is Way => (action.kind === 'move' || action.kind === 'dribble') && action.origin === 'written';

/** He comes off one of them, takes his place, or goes where he is. */
function speaksOf({ off, to, verb, ...way }: Way, men: readonly string[]): boolean {
  if (verb === 'fill' || off.some((who) => men.includes(who)) || ('at' in way && men.includes(way.at ?? ''))) return true;
  return to !== undefined && 'who' in to.value && men.includes(to.value.who);
}

/** Only a comma stands between them. */
function fixesOf({ places, lines }: Subject, { id }: Action): readonly Fix[] | undefined {
  const place = places.get(id);
  const found = place && /,\s*$/.exec((lines[place.line] ?? '').slice(0, place.at));
  if (place === undefined || !found) return undefined;
  const edits = (text: string) => [{ line: place.line, at: found.index, to: place.at, text }];
  return [{ title: message('Write "and": they go together'), edits: edits(' and ') }, { title: message('Write "then": he waits'), edits: edits(', then ') }];
}
