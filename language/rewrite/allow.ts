// A check silenced where the coach knows better, with his reason.
import { message } from '../message/message.ts';
import type { Finding } from '../checks/finding.ts';
import { linesBehind, proved, treeAt, type Here, type Offer } from './here.ts';

/** Undefined for what cannot be excused: an error, a line that cannot be read, an allowance itself. */
export function allow(here: Here, { code, severity, part }: Finding): Offer | undefined {
  if (severity === 'error' || part === undefined || code.startsWith('allow-')) return undefined;
  const step = part.split(/[/?:#]/, 1)[0]!;
  const head = here.reading.lines.findIndex((meaning) => meaning.kind === 'step' && meaning.step === step);
  const isInStep = head >= 0 && here.reading.play.steps.some(({ key }) => key === step);
  const line = isInStep ? head : lastOfHead(here);
  const write = () =>
    proved(
      here,
      [linesBehind(here, line, [`${isInStep ? '    ' : '  '}allow ${code} "say why"`])],
      ({ play }) => play.allowances.length === here.reading.play.allowances.length + 1 && play.allowances.some(({ check, within }) => check === code && within === (isInStep ? step : 'play')),
      message('I find no place for it. Write it below the line of the step yourself.'),
    );
  const title = isInStep
    ? message('Allow it in “{step}”, with a reason: add “allow {code}”', { step: here.reading.play.steps.find(({ key }) => key === step)!.name, code })
    : message('Allow it in this play, with a reason: add “allow {code}”', { code });
  return { id: `allow-${code}`, title, kind: 'rewrite', write };
}

/** The last line above the first step that says something. */
function lastOfHead(here: Here): number {
  const first = here.reading.lines.findIndex(({ kind }) => kind === 'step' || kind === 'action' || kind === 'look');
  let last = 0;
  for (let line = 0; line < (first < 0 ? here.reading.lines.length : first); line++) if (treeAt(here, line) !== undefined) last = line;
  return last;
}
