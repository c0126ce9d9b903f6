// The whole reference, made anew from the source: no dates, no places on a machine, the same bytes everywhere.
import { actionsPage } from './actions-page.ts';
import { alignmentsPage } from './alignments-page.ts';
import { assumptionsPage } from './assumptions-page.ts';
import { checksPage } from './checks-page.ts';
import { commandLinePage } from './command-line-page.ts';
import { courtsPage } from './courts-page.ts';
import { firstPlayPage } from './first-play.ts';
import { notationPage } from './notation-page.ts';
import { spotsPage } from './spots-page.ts';

const pages = [firstPlayPage, notationPage, actionsPage, spotsPage, alignmentsPage, checksPage, commandLinePage, courtsPage, assumptionsPage];

/** Paths below docs/ and what stands there. */
export function reference(): ReadonlyMap<string, string> {
  return new Map(pages.flatMap((write) => write()));
}
