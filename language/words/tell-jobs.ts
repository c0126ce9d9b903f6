// The play told to each player: his own jobs, step by step, in the order in which they come, with their times. What is handed to the players.
import { courtOf, type Court } from '../court/court.ts';
import { ruleSet } from '../court/rule-sets.ts';
import { inEnglish, message, type Message, type Say } from '../message/message.ts';
import type { Action, BodyId, Play, PlayerNumber, Rebound, Step } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import type { Run, Timeline } from '../timeline/timeline.ts';
import type { Job, JobsOfPlayer, JobWords } from './job.ts';
import { lookJob } from './look-jobs.ts';
import { momentOfAction, restingPlace } from './job-times.ts';
import { aloud } from './say-aloud.ts';
import { sayAbout } from './say-place.ts';
import { sayStepHead } from './say-step.ts';
import { sayWaitsOf } from './say-wait.ts';
import { capital, chains, placeInWords, sayStanding, sentence } from './sentences.ts';
import { isTo, tellCatch, tellHim, tellOf } from './to-a-man.ts';
import { lineNumber } from '../play/line-number.ts';

/** Of each of the five, in text order: where he starts, what he does in each step and each counter, his looks, and what comes after the shot. */
export function tellJobs(play: Play, timeline: Timeline, say: Say = inEnglish): readonly JobsOfPlayer[] {
  const court = courtOf(ruleSet(play.rules.value));
  return OFFENCE.map((who) => {
    const name = play.names[numberOf(who)];
    const jobs = [startOf(play, court, who), ...noteTo(play, 'play', who), ...play.steps.flatMap((step) => inStep(play, timeline, court, step, who)), ...afterShot(play.rebounds.filter(({ within }) => within === 'play'), who, message('After the shot')).map((job): JobWords => ({ ...job, head: true }))];
    return { who, ...(name !== undefined && { name }), jobs: jobs.map(({ text, ...job }): Job => ({ text: aloud(say(text)), ...job })) };
  });
}

const numberOf = (who: BodyId): PlayerNumber => Number(who) as PlayerNumber;

function startOf({ start }: Play, court: Court, who: BodyId): JobWords {
  const number = numberOf(who);
  const where = sayStanding(placeInWords(court, start.places[number].value)).replace(/^is /, '');
  if (start.throwIn?.by.value === number) return { text: message('Start {where}. You throw in.', { where }), part: 'from' };
  if (start.throwIn === undefined && start.ball.value === number) return { text: message('Start {where}. You have the ball.', { where }), part: 'from' };
  return { text: message('Start {where}.', { where }), part: 'from' };
}

function noteTo({ notes }: Play, within: string, who: BodyId): readonly JobWords[] {
  return notes.filter((note) => note.within === within && note.who === numberOf(who)).map(({ text, part }) => ({ text: message('Note: {text}', { text }), part }));
}

function inStep(play: Play, timeline: Timeline, court: Court, step: Step, who: BodyId): readonly JobWords[] {
  const runs = timeline.runs.filter(({ steps }) => steps.includes(step.key));
  const lines = chains([...step.kept, ...step.actions]).flatMap((chain) => lineJob(chain, who, runs));
  const looks = step.looks.flatMap((look, nth) => {
    const job = lookJob(look, nth, step.looks.length, who, timeline);
    return job === undefined ? [] : [{ line: lineNumber(look.line), jobs: [job, ...afterShot(reboundsOf(play, look), who, message('After that shot'))] }];
  });
  // What a counter keeps of the step it replaces stands above its own lines.
  const done = [...lines.map((job) => ({ line: step.kept.some(({ line }) => line === job.line) ? -1 : lineNumber(job.line), jobs: [job.job] })), ...looks].toSorted((a, b) => a.line - b.line).flatMap(({ jobs }) => jobs);
  const head: JobWords = { text: sayStepHead(play, step), part: step.key, head: true };
  return [head, ...(lines.length === 0 ? stayIn(step, court, runs[0], who) : []), ...done, ...noteTo(play, step.key, who), ...afterShot(play.rebounds.filter(({ within }) => within === step.key), who, message('After the shot'))];
}

const reboundsOf = ({ rebounds }: Play, look: Step['looks'][number]): readonly Rebound[] => (look.rebounds.length > 0 ? look.rebounds : rebounds.filter(({ within }) => within === look.id));

/** Nothing to do is a job too: his man must have somebody to mind. */
function stayIn(step: Step, court: Court, run: Run | undefined, who: BodyId): readonly JobWords[] {
  const place = run && restingPlace(run, step.key, who);
  if (place === undefined) return [];
  const where = inEnglish(sayAbout(court, place));
  return [{ text: message('Stay {where}.', { where: /^near /.test(where) ? where : sayStanding(where).replace(/^is /, '') }), part: step.key }];
}

interface LineJob {
  readonly line: string;
  readonly job: JobWords;
}

/** One line of the play as far as it is his: what he does and what comes to him. */
function lineJob(chain: readonly Action[], who: BodyId, runs: readonly Run[]): readonly LineJob[] {
  const own = chain.filter((action) => action.who === who || isTo(action, who));
  const [first] = own;
  if (first === undefined) return [];
  const told = own.map((action, at) => tellLink(action, who, own[at - 1], chain, runs)).join('');
  return [{ line: first.line, job: { text: sentence(capital(told)), part: first.id, ...momentOfAction(runs, first, who) } }];
}

function tellLink(action: Action, who: BodyId, before: Action | undefined, chain: readonly Action[], runs: readonly Run[]): string {
  const waits = waitsOf(action, who, before, chain, runs);
  const first = waits.filter((wait) => !wait.startsWith('until '));
  const until = waits.filter((wait) => wait.startsWith('until '));
  const deed = action.who === who ? tellHim(action) : tellCatch(action);
  const said = `${first.map((wait) => `${wait}, `).join('')}${[deed, ...until].join(' ')}`;
  if (before === undefined) return said;
  return `, ${action.waits.some(({ kind }) => kind === 'as' || kind === 'after') ? 'and' : 'then'} ${said}`;
}

/** What he waits for: as it is written; behind another man’s link, that; where he comes off a screen, that it is set. */
function waitsOf(action: Action, who: BodyId, before: Action | undefined, chain: readonly Action[], runs: readonly Run[]): readonly string[] {
  if (action.who !== who) return [];
  const written = sayWaitsOf(action, who);
  if (written.length > 0) return written;
  const link = chain.filter((other) => other.link === action.link - 1);
  if (before === undefined && link.length > 0) return [`once ${link.map((other) => tellOf(other, who)).join(' and ')}`];
  const screener = screenWaitedFor(action, runs);
  return screener === undefined ? [] : [`when ${screener}’s screen is set`];
}

/** The first screen he comes off, where he says so or leaves for it. */
function screenWaitedFor(action: Action, runs: readonly Run[]): BodyId | undefined {
  const off = action.kind === 'move' || action.kind === 'dribble' ? action.off : [];
  for (const { events, screens } of runs) {
    const start = events.find(({ part, kind }) => part === action.id && kind === 'start');
    if (start === undefined) continue;
    const { because } = start;
    const cause = because?.reason === 'screen' ? events.find(({ id, kind }) => id === because.from && kind === 'set') : undefined;
    return cause?.who ?? off.find((man) => screens.some(({ by, users }) => by === man && users.includes(action.who)));
  }
  return undefined;
}

function afterShot(rebounds: readonly Rebound[], who: BodyId, when: Message): readonly JobWords[] {
  const number = numberOf(who);
  return rebounds.flatMap(({ part, crash, back }) => {
    if (crash.includes(number)) return [{ text: message('{when}: crash the boards.', { when }), part }];
    return back.includes(number) ? [{ text: message('{when}: get back on defence.', { when }), part }] : [];
  });
}
