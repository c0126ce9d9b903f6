// A look told to a player: it is his, or he brings the ball to whom it is for.
import { message } from '../message/message.ts';
import type { Action, BodyId, Look } from '../play/play.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { JobWords } from './job.ts';
import { eventOf } from './job-times.ts';
import { sayPin } from './say-wait.ts';
import { isTo, tellHim, tellOf } from './to-a-man.ts';
import { readsADefender } from './way-name.ts';

/** `Your look (1 of 3) “pull-up”: shoot a jumper.`; of the passer `Look for 4 (2 of 3) on the roll: pass to 4, who lays it up.`; none of who has no part in it. */
export function lookJob(look: Look, nth: number, count: number, you: BodyId, { times, runs }: Timeline): JobWords | undefined {
  const isHis = look.who.some((who) => `${who}` === you);
  const tail = isHis ? look.tail.map((action) => ofHim(action, `${look.who[0]!}` as BodyId, you)) : look.tail;
  const own = tail.find((action) => action.who === you);
  if (!isHis && own === undefined) return undefined;
  const who = look.who.join(' or ');
  const number = nth + 1;
  const whose = count === 1 ? (isHis ? message('Your look') : message('Look for {who}', { who })) : isHis ? message('Your look ({number} of {count})', { number, count }) : message('Look for {who} ({number} of {count})', { who, number, count });
  const { label, pin } = look;
  const name = [...(label === undefined ? [] : [readsADefender(label) ? label : `“${label}”`]), ...(pin === undefined ? [] : [sayPin(pin, isHis ? you : undefined)])].map((words) => ` ${words}`).join('');
  const what = tellTail(tail, look, you);
  const text = message('{whose}{name}.', { whose, name: what === '' ? name : `${name}: ${what}` });
  const run = runs.find((one) => one.look === look.id);
  const time = times.looks.find((one) => one.look === look.id);
  const at = isHis ? (time?.typical ?? run?.releaseAt) : run && own && eventOf(run, own, you);
  return { text, part: look.id, ...(run !== undefined && at !== undefined && { at, run: run.id }) };
}

/** `look 2 or 3`: what is told of the first man goes for the other as well. */
function ofHim(action: Action, first: BodyId, you: BodyId): Action {
  const who = action.who === first ? you : action.who;
  return 'to' in action && (action.kind === 'pass' || action.kind === 'hand-off') && action.to === first ? { ...action, who, to: you } : { ...action, who };
}

/** `3 passes to you: lay it up`, `drive to rim, then lay it up`, `pass to 4, who lays it up`. */
function tellTail(tail: readonly Action[], look: Look, you: BodyId): string {
  const lookers = look.who.join(' or ');
  return tail
    .map((action, at) => {
      const before = tail[at - 1];
      const said = action.who === you ? tellHim(action) : tellOf(action, you);
      const named = !look.who.some((who) => `${who}` === you) && isTo(action, `${look.who[0]!}` as BodyId) ? said.replace(` to ${look.who[0]!}`, ` to ${lookers}`) : said;
      if (before === undefined) return named;
      if (action.who === you) return isTo(before, you) ? `, ${named}` : `, then ${named}`;
      const deed = named.slice(action.who.length + 1);
      if (before.who === action.who) return `, then ${deed}`;
      return isTo(before, action.who) ? `, who ${deed}` : `, ${named}`;
    })
    .join('');
}
