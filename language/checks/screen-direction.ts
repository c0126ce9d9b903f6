import { message } from '../message/message.ts';
import { secondHand } from '../court/sources.ts';
import { check } from './check.ts';
import { otherWords } from './fixes.ts';
import { wordsOf } from './subject.ts';

// Less than a step up or down the floor says nothing. Common practice, no source.
const clearMetres = 0.8;

export const screenDirection = check({
  code: 'screen-direction',
  severity: 'warning',
  needs: 'before',
  source: secondHand('down towards the baseline, up towards half court, as coaches’ glossaries have it; that less than 0.8 m decides nothing is common practice, no source'),
  message: '{who} is to screen {written}, and his way to {user} leads {metres} m {other} the floor. Write “{other}”, or start one of them elsewhere.',
  manual: {
    title: 'Up or down against the screener’s own way',
    why: 'Down is towards the baseline, up towards half court, as the screener walks. When the word and his way disagree, one of the two players stands somewhere else than you think.',
    wrong: 'from 5-out\n5 screens down for 3\n3 cuts off 5 to rim\nlook 3: layup',
    right: 'from 5-out\n5 screens up for 3\n3 cuts off 5 to rim\nlook 3: layup',
  },
  *find(subject) {
    for (const { run, actions } of subject.ways) {
      for (const action of actions) {
        if (action.kind !== 'screen') continue;
        const wanted = action.style === 'down' || action.style === 'pin-down' ? -1 : action.style === 'up' ? 1 : 0;
        const own = run.tracks[action.who]?.segments.filter((segment) => segment.action === action.id) ?? [];
        const [from, to] = [own[0]?.path[0], own.at(-1)?.path.at(-1)];
        if (wanted === 0 || from === undefined || to === undefined) continue;
        const way = to.y - from.y;
        if (way * wanted >= -clearMetres) continue;
        const [written, other] = wanted < 0 ? ['down', 'up'] : ['up', 'down'];
        const words = wordsOf(subject, action.id);
        const fixed = words.replace(new RegExp(`\\b${written}\\b`, 'i'), other!);
        yield {
          part: action.id,
          params: { who: action.who, written: written!, other: other!, user: action.users[0] ?? action.on ?? message('his place'), metres: Math.abs(way).toFixed(1) },
          run: run.id, moment: own.at(-1)!.t1, spot: to,
          fixes: fixed === words || action.style === 'pin-down' ? [] : otherWords(subject, action.id, fixed, message('Write “{other}”', { other })),
        };
      }
    }
  },
});
