import type { Court } from '../court/court.ts';
import type { Finding } from '../checks/finding.ts';
import { tellFinding } from '../checks/tell-finding.ts';
import { inEnglish, type Say } from '../message/message.ts';
import { guardRuns } from '../defence/guard.ts';
import { DEFENCE, OFFENCE, type Action, type PartId, type Places, type Play, type TextPlace } from '../play/play.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { sayAction } from '../words/say-action.ts';
import { tellJobs } from '../words/tell-jobs.ts';
import { tellPlay } from '../words/tell-play.ts';
import { lookWords, wayName } from '../words/way-name.ts';
import { PLAYBACK_VERSION, type Playback } from './playback.ts';

/** A play with everything known of it. */
export interface Shown {
  readonly play: Play;
  readonly places: Places;
  readonly timeline: Timeline;
  readonly findings: readonly Finding[];
  readonly court: Court;
  /** The language it is told in; English without. */
  readonly say?: Say;
}

/** What the page, the panel and a picture show of a play: plain JSON. */
export function playbackOf({ play, places, timeline, findings, court, say = inEnglish }: Shown): Playback {
  const defended = play.defence.value.kind !== 'none';
  const defenders = guardRuns(play, timeline.runs);
  return {
    version: PLAYBACK_VERSION,
    play: {
      key: play.key,
      name: play.name,
      level: play.level.value,
      rules: play.rules.value,
      tags: play.tags,
      ...(play.clock.call && { callWith: play.clock.call.to }),
      throwIn: play.start.throwIn !== undefined,
      ...againstOf(play),
    },
    court,
    bodies: [
      ...OFFENCE.map((id) => ({ id, team: 'offence' as const, label: id })),
      ...(defended ? DEFENCE.map((id) => ({ id, team: 'defence' as const, label: id })) : []),
    ],
    steps: play.steps.map(({ key, name, parent, how, condition }) => ({ key, name, parent, how, ...(condition && { condition: condition.text }) })),
    looks: play.steps.flatMap(({ looks }) => looks).map((look) => ({ id: look.id, step: look.step, who: String(look.who[0]) as '1', label: lookWords(look) })),
    says: Object.fromEntries(actionsOf(play).map((action) => [action.id, sayAction(action)])),
    runs: timeline.runs.map((run, index) => ({ ...run, defenders: defenders[index]!, label: say(wayName(play, run.id)) })),
    times: timeline.times,
    findings: findings.map((finding) => tellFinding(finding, say)),
    told: tellPlay(play, timeline, say),
    jobs: tellJobs(play, timeline, say),
    text: textOf(places),
  };
}

/** A zone that presses is written `2-2-1 press`. */
function againstOf({ defence: { value: { kind, zone, press } } }: Play): Pick<Playback['play'], 'against'> {
  if (kind === 'none') return {};
  const presses = press === true || zone?.endsWith(' press') === true;
  return { against: { ...(zone !== undefined && { zone: zone.replace(/ press$/, '') }), ...(presses && { press: true }) } };
}

function actionsOf(play: Play): readonly Action[] {
  return play.steps.flatMap((step) => [...step.kept, ...step.actions, ...step.looks.flatMap(({ tail }) => tail)]);
}

function textOf(places: Places): Readonly<Record<PartId, TextPlace>> {
  return Object.fromEntries(places);
}
