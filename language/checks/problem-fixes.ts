// Mends for what reading and scheduling note as wrong.
import type { Problem } from '../play/problem.ts';
import type { Fix } from './finding.ts';
import { lineRemoved } from './fixes.ts';
import type { Subject } from './subject.ts';

export function fixesFor(subject: Subject, problem: Problem): readonly Fix[] {
  switch (problem.code) {
    case 'screen-unused':
      return lineRemoved(subject, problem.part, 'Take the screen out');
    default:
      return [];
  }
}
