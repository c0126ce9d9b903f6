// `play "Left" mirrors "Right"`, `play "Counter" continues "Right" after "Zip"`.
import { mirrorPoint } from '../court/mirror.ts';
import type { Change } from './change-places.ts';
import { changeAction, changeEvent, changeLook, changePlace } from './change-places.ts';
import { mirrorPlace } from './mirror-place.ts';
import type { BodyId, Place, Play, PlayerNumber, Start, Step, Value } from './play.ts';
import { nameKey } from '../names/name-key.ts';
import type { Reading } from './reading.ts';
import { stateAfterStep } from './state.ts';

const leftForRight: Change = { place: mirrorPlace, body: body => body, step: key => key };

const numbers: readonly PlayerNumber[] = [1, 2, 3, 4, 5];

/** What a mirrored play takes over: steps, start and spots, left and right exchanged. */
export function mirroredPlay(source: Play): Pick<Play, 'steps' | 'start' | 'spots'> & { readonly whole: Play } {
  return {
    steps: source.steps.map(mirroredStep),
    start: mirroredStart(source.start),
    spots: Object.fromEntries(Object.entries(source.spots).map(([name, point]) => [name, mirrorPoint(point)])),
    whole: source,
  };
}

function mirroredStep(step: Step): Step {
  const { end } = step;
  return {
    ...step,
    actions: step.actions.map(action => changeAction(action, leftForRight)),
    kept: step.kept.map(action => changeAction(action, leftForRight)),
    looks: step.looks.map(look => changeLook(look, leftForRight)),
    ...(end?.event === undefined ? {} : { end: { ...end, event: changeEvent(end.event, leftForRight) } }),
  };
}

function mirroredStart(start: Start): Start {
  const { throwIn } = start;
  const mirrored = (value: Value<Place>): Value<Place> => ({ value: changePlace(value.value, leftForRight), origin: 'copied' });
  return {
    ...start,
    alignment: { ...start.alignment, origin: 'copied' },
    places: Object.fromEntries(numbers.map(number => [number, mirrored(start.places[number])])) as Start['places'],
    ball: { ...start.ball, origin: 'copied' },
    ...(throwIn === undefined ? {} : { throwIn: { ...throwIn, by: { ...throwIn.by, origin: 'copied' as const }, from: mirrored(throwIn.from) } }),
  };
}

/** What stands above the steps of the source counts for its mirror too, where the mirror has no line of its own. */
export function withHeadersOf(play: Play, source: Play): Play {
  const listOf = <T>(own: readonly T[], theirs: readonly T[]): readonly T[] => (own.length > 0 ? own : theirs);
  return {
    ...play,
    level: play.level.origin === 'written' ? play.level : copied(source.level),
    rules: play.rules.origin === 'written' ? play.rules : copied(source.rules),
    alsoRules: listOf(play.alsoRules, source.alsoRules),
    tags: listOf(play.tags, source.tags),
    situation: listOf(play.situation, source.situation),
    defence: play.defence.origin === 'written' ? play.defence : copied(source.defence),
    clock: { ...source.clock, ...play.clock },
    rebounds: listOf(play.rebounds, source.rebounds),
    notes: listOf(play.notes, source.notes),
    demands: listOf(play.demands, source.demands),
    allowances: listOf(play.allowances, source.allowances),
  };
}

function copied<T>(value: Value<T>): Value<T> {
  return value.origin === 'default' ? value : { ...value, origin: 'copied' };
}

/**
 * The start of a play that continues another: everyone where the named step (or the last plain one) leaves him, the ball with its holder,
 * and no time to get into places. `undefined` where the other has no such step.
 */
export function continuedStart(source: Reading, after: string | undefined): Start | undefined {
  const { steps } = source.play;
  const step = after === undefined ? steps.filter(({ how }) => how === 'plain').at(-1) : steps.find(({ name }) => nameKey(name) === nameKey(after));
  if (step === undefined) return undefined;
  const state = stateAfterStep(source, step.key);
  const { start } = source.play;
  const place = (number: PlayerNumber): Value<Place> => {
    const point = state.places[`${number}` as BodyId];
    return point === undefined ? start.places[number] : { value: { kind: 'point', point }, origin: 'copied' };
  };
  return {
    alignment: { value: undefined, origin: 'copied' },
    places: { 1: place(1), 2: place(2), 3: place(3), 4: place(4), 5: place(5) },
    ball: { value: state.holder === undefined ? start.ball.value : (Number(state.holder.slice(-1)) as PlayerNumber), origin: 'copied' },
    alreadySet: true,
    dead: false,
  };
}
