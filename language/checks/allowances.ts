// `allow crowding "why"`: silences one named check in its play or step. One that silences nothing is itself reported.
import { inWords } from './tell-finding.ts';
import { message } from '../message/message.ts';
import type { Allowance } from '../play/play.ts';
import { catalogue, entryOf, isCode } from './catalogue.ts';
import type { Finding } from './finding.ts';
import { lineRemoved } from './fixes.ts';
import { nearestWord, theNearest } from './nearest-word.ts';
import { stepOf } from './parts.ts';
import type { Subject } from './subject.ts';
import type { Gaps } from './unreadable.ts';

/** Takes out what an allowance silences and adds what is wrong with the allowances. */
export function silence(subject: Subject, findings: readonly Finding[], gaps: Gaps): readonly Finding[] {
  const { allowances } = subject.play;
  if (allowances.length === 0) return findings;
  const used = new Set<Allowance>();
  const left = findings.filter((finding) => {
    const by = allowances.find((allowance) => allowance.check === finding.code && covers(allowance, finding));
    if (by !== undefined) used.add(by);
    return by === undefined;
  });
  const idle = allowances.filter((allowance) => !used.has(allowance));
  return [...left, ...idle.flatMap((allowance) => complaint(subject, allowance, gaps))];
}

function covers({ within }: Allowance, { part }: Finding): boolean {
  return within === 'play' || (part !== undefined && stepOf(part) === within);
}

function complaint(subject: Subject, { check, part }: Allowance, gaps: Gaps): readonly Finding[] {
  const place = subject.places.get(part);
  if (place === undefined) return [];
  const known = isCode(check);
  const code = known ? 'allow-unused' : 'allow-unknown';
  const { severity, message: template, needs } = entryOf(code)!;
  if (!gaps.allow(needs, part, place.line, undefined)) return [];
  const near = known ? undefined : nearestWord(check, Object.keys(catalogue));
  const params: Finding['params'] = known ? { check } : { check, near: near === undefined ? '' : theNearest(near) };
  return [{ code, severity, ...inWords({ template, params }), params, place, part, related: [], fixes: lineRemoved(subject, part, message('Take the line out')) }];
}
