import { message } from '../message/message.ts';
import { commonPractice } from '../court/sources.ts';
import { check } from './check.ts';
import { heldAt, howHeGotIt, howItCame, walkBall } from './ball.ts';
import type { Action } from '../play/play.ts';
import type { Fix } from './finding.ts';
import { lineBefore } from './fixes.ts';
import type { Subject, Way } from './subject.ts';
import type { SetScreen } from '../timeline/timeline.ts';

export const screenWithBall = check({
  code: 'screen-with-ball',
  severity: 'error',
  needs: 'before',
  source: commonPractice('common practice, no source; the books let a man with the ball be a screener (NCAA 4-35.1)'),
  message: '{who} sets a screen while he has the ball ({how}). Let him pass first, or let another man screen.',
  manual: {
    title: 'A screen by the man with the ball',
    why: 'A man who holds the ball can be guarded as a ball handler, and nobody is left to use his screen with the ball. What is meant is nearly always a pass before it, or another screener.',
    wrong: '1 dribbles to left slot\n1 ball-screens for 3\n3 cuts off 1 to top\nlook 1: jumper',
    right: '1 dribbles to left slot\n1 passes to 3\n1 ball-screens for 3\n3 drives off 1 to rim\nlook 3: layup',
  },
  *find(subject) {
    for (const way of subject.ways) {
      const moments = walkBall(subject, way);
      for (const screen of way.run.screens) {
        if (heldAt(way.run, screen.from)?.by !== screen.by) continue;
        const at = moments.findIndex(({ action }) => action.id === screen.action);
        const possession = moments[at]?.before;
        const written = moments[at]?.action;
        // Nobody may come off it yet: the step is still being written.
        const meant = screen.users[0] ?? (written?.kind === 'screen' ? written.users[0] : undefined);
        // The ball may come by a pass that is written later: then there is none yet to be passed.
        const receiver = possession?.holder !== screen.by ? undefined : nextToUseTheBall(moments.slice(at + 1).map(({ action }) => action), screen.by) ?? meant;
        yield {
          part: screen.action,
          params: { who: screen.by, how: possession?.holder === screen.by ? howHeGotIt(subject, possession) : howItCame(subject, way, screen.by, screen.from) },
          run: way.run.id,
          moment: screen.from,
          spot: screen.at,
          fixes: [
            ...(receiver === undefined ? [] : lineBefore(subject, screen.action, `${screen.by} passes to ${receiver}`, message('Pass to {receiver} first', { receiver }))),
            ...byAnother(subject, way, screen, written),
          ],
        };
      }
    }
  },
});

function nextToUseTheBall(actions: readonly { readonly kind: string; readonly who: string }[], holder: string): string | undefined {
  const next = actions.find(({ kind, who }) => who !== holder && (kind === 'dribble' || kind === 'pass' || kind === 'shot' || kind === 'hand-off'));
  return next?.who;
}

/** The first man, the tall ones first, who has nothing to do in that step and is not to use the screen. */
function byAnother(subject: Subject, way: Way, screen: SetScreen, written: Action | undefined): readonly Fix[] {
  const step = way.actions.find(({ id }) => id === screen.action)?.step;
  const busy = new Set<string>([screen.by, ...screen.users, ...(written?.kind === 'screen' ? written.users : []), ...way.actions.filter((action) => action.step === step).map(({ who }) => who)]);
  const free = ['5', '4', '3', '2', '1'].find((who) => !busy.has(who));
  const place = subject.places.get(screen.action);
  if (free === undefined || place === undefined || (subject.lines[place.line] ?? '').slice(place.at, place.at + 2) !== `${screen.by} `) return [];
  return [{ title: message('Let {free} screen', { free }), edits: [{ line: place.line, at: place.at, to: place.at + 1, text: free }] }];
}
