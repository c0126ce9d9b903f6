// The whole reference, made anew from the source: no dates, no places on a machine, the same bytes everywhere.
import { actionsPage } from './actions-page.ts';
import type { Files } from './files.ts';
import { notationPage } from './notation-page.ts';

export function reference(): ReadonlyMap<string, string> {
  const files: Files = [...notationPage(), ...actionsPage()];
  return new Map(files);
}
