import { message } from '../message/message.ts';
import { check } from './check.ts';
import type { Fix } from './finding.ts';
import { otherWords } from './fixes.ts';
import { wordsOf, type Subject, type Way } from './subject.ts';
import type { Shot, ShotKind } from '../play/play.ts';

export const leftOutToo = check({
  code: 'step-not-reached',
  severity: 'warning',
  needs: 'steps',
  source: 'the words of the notation',
  message: 'Nothing leads to “{step}”: what it follows cannot be played. Mend that step first.',
  manual: {
    title: 'A step that nothing leads to',
    why: 'A step hangs on the one it follows. When that one is left out, because its own parent does not exist or comes round to itself, everything behind it is left out too.',
    wrong: 'from 5-out\nstep "A"\n1 passes to 2\nlook 2: three\nstep "B" after "Nope"\n2 passes to 3\nlook 3: three\nstep "C" after "B"\n3 passes to 1\nlook 1: three',
    right: 'from 5-out\nstep "A"\n1 passes to 2\nlook 2: three\nstep "B" after "A"\n2 passes to 3\nlook 3: three\nstep "C" after "B"\n3 passes to 1\nlook 1: three',
  },
  *find(subject) {
    const told = new Set(subject.problems.map(({ part }) => part));
    for (const { key, name } of subject.leftOut) if (!told.has(key)) yield { part: key, params: { step: name } };
  },
});

export const afterTheShot = check({
  code: 'step-after-shot',
  severity: 'warning',
  needs: 'way',
  source: 'what can happen on a floor',
  message: '“{step}” comes after {who}’s shot, so no way leads on to it. Make the shot a look: look {who}: {shot}',
  manual: {
    title: 'A step behind a shot',
    why: 'A shot ends its way through the play. Written as a look it is a chance that may be passed up, and the play goes on.',
    wrong: 'from 5-out\n1 passes to 2\n2 shoots a three\nstep "More"\n3 cuts to rim\nlook 3: layup',
    right: 'from 5-out\n1 passes to 2\nlook 2: three\nstep "More"\n3 cuts to rim\nlook 3: layup',
  },
  *find(subject) {
    for (const way of subject.ways) {
      const found = behindShot(way);
      if (found !== undefined) yield { part: found.key, params: { step: found.name, who: found.shot.who, shot: shotWord(found.shot.shot.value) }, run: way.run.id, related: [{ part: found.shot.id, message: message('this shot') }], fixes: asLook(subject, found.shot) };
    }
  },
});

/** `2 shoots a three`, where nothing else is said in the line. */
function asLook(subject: Subject, { id, who, shot }: Shot): readonly Fix[] {
  const look = `look ${who}: ${shotWord(shot.value)}`;
  return new RegExp(`^${who} \\w+( an? [\\w-]+)?$`, 'i').test(wordsOf(subject, id)) ? otherWords(subject, id, look, message('Make it a look: {look}', { look })) : [];
}

function shotWord(kind: ShotKind): string {
  return kind === 'shot' ? 'jumper' : kind;
}

function behindShot({ steps }: Way) {
  for (const [at, step] of steps.entries()) {
    const shot = step.actions.find((action) => action.kind === 'shot');
    const next = steps[at + 1];
    if (shot?.kind === 'shot' && next !== undefined) return { key: next.key, name: next.name, shot };
  }
  return undefined;
}
