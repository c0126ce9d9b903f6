import { message } from '../message/message.ts';
import { read } from '../court/sources.ts';
import { check } from './check.ts';
import type { Fix } from './finding.ts';
import { wordsOf, type Subject } from './subject.ts';
import { metresBehindThree } from '../court/court.ts';
import type { PartId } from '../play/play.ts';
import type { BallState, Run } from '../timeline/timeline.ts';

// The model's feet are no better than this.
const toleranceMetres = 0.1;

export const threeInsideLine = check({
  code: 'three-inside-line',
  severity: 'warning',
  needs: 'before',
  source: read('where the line lies: FIBA 2.4.4, NBA 1-I, NCAA 1-7.1, NFHS 1-4.1; that both feet have to be behind it is from memory'),
  byRules: true,
  message: '{who} stands {inside} m inside the three-point line when he shoots this three, so it counts two. Send him {inside} m further out, or write “jumper”.',
  manual: {
    title: 'A three from inside the line',
    why: 'Both feet must be behind the line when the shooter jumps; the line itself counts two. The line is another one in each rule set.',
    wrong: 'from 5-out\n1 dribbles to left elbow\nlook 1: three',
    right: 'from 5-out\n1 dribbles to left elbow\nlook 1: jumper',
  },
  *find(subject) {
    if (subject.court.three === undefined) return;
    for (const { run, shot } of threes(subject)) {
      const behind = metresBehindThree(subject.court, shot.from) ?? 0;
      if (behind >= -toleranceMetres) continue;
      yield { part: shot.action, params: { who: shot.by, inside: (-behind).toFixed(1) }, run: run.id, moment: shot.t0, spot: shot.from, fixes: asJumper(subject, shot.action), source: subject.rules.court.threeRadius?.source };
    }
  },
});

export const noThreeLine = check({
  code: 'no-three-line',
  severity: 'warning',
  needs: 'line',
  byRules: true,
  message: 'The {rules} rules have no three-point line: this shot counts two. Write “jumper”.',
  manual: {
    title: 'A three where there is no line',
    why: 'Mini-basketball has neither a three-point line nor three points for a goal (FIBA Mini 2005, Art. 3).',
    wrong: 'rules mini\nfrom 5-out\n1 dribbles to left slot\nlook 1: three',
    right: 'rules mini\nfrom 5-out\n1 dribbles to left slot\nlook 1: jumper',
  },
  source: { text: 'FIBA Mini 2005, Art. 3', how: 'read' },
  *find(subject) {
    if (subject.court.three !== undefined) return;
    for (const { run, shot } of threes(subject)) yield { part: shot.action, params: { rules: subject.rules.name }, run: run.id, moment: shot.t0, spot: shot.from, fixes: asJumper(subject, shot.action) };
  },
});

function* threes(subject: Subject): Iterable<{ readonly run: Run; readonly shot: BallState & { readonly kind: 'shot' } }> {
  for (const { run } of subject.ways) for (const state of run.ball) if (state.kind === 'shot' && state.shot === 'three') yield { run, shot: state };
}

function asJumper(subject: Subject, part: PartId): readonly Fix[] {
  const place = subject.places.get(part);
  const at = wordsOf(subject, part).search(/\bthree\b/i);
  const line = place === undefined ? undefined : subject.lines[place.line];
  if (place === undefined || line === undefined || at < 0) return [];
  const from = line.slice(place.at).search(/\bthree\b/i) + place.at;
  return [{ title: message('Write “jumper”'), edits: [{ line: place.line, at: from, to: from + 'three'.length, text: 'jumper' }] }];
}
