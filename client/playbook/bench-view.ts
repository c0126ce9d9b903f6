// The view "Bench": so much is left, from there; what still fits.
import { commands, EventEmitter, l10n, ThemeIcon, TreeItem, TreeItemCollapsibleState, window, type Disposable, type Memento, type QuickPickItem } from 'vscode';
import * as v from 'valibot';
import { asLabel } from '../as-label.ts';
import { choicesOf } from './filter.ts';
import { readBenchWords, situations, whatFits, type BenchQuestion, type Fit, type Situation } from './on-the-bench.ts';
import { playItem, sayAgainst, sayNeeds, sayProblems } from './play-words.ts';
import type { PlaybookSource } from './playbook-source.ts';

const benchView = 'setwright.bench';
const kept = 'setwright.bench';
const keptSchema = v.object({ seconds: v.number(), situation: v.picklist(situations), against: v.optional(v.string()), set: v.boolean() });

type Row =
  | { readonly kind: 'input'; readonly id: string; readonly label: string; readonly hint: string; readonly icon: string; readonly command: string }
  | { readonly kind: 'group'; readonly id: string; readonly label: string; readonly open: boolean; readonly fits: readonly Fit[] }
  | { readonly kind: 'fit'; readonly id: string; readonly fit: Fit; readonly seconds: number; readonly some: boolean }
  | { readonly kind: 'nothing'; readonly id: string };

export function registerBenchView(source: PlaybookSource, memory: Memento): Disposable[] {
  const changed = new EventEmitter<void>();
  const before = v.safeParse(keptSchema, memory.get(kept));
  let question: BenchQuestion | undefined = before.success ? before.output : undefined;

  const view = window.createTreeView<Row>(benchView, {
    treeDataProvider: {
      onDidChangeTreeData: changed.event,
      getTreeItem: itemOf,
      getChildren: (row) => (row === undefined ? rowsOf(question, source) : row.kind === 'group' ? rowsIn(row, question) : []),
    },
  });

  /** What a question can be changed by is offered from then on. */
  const tellAsked = () => void commands.executeCommand('setContext', 'setwright.benchAsked', question !== undefined);

  function ask(next: BenchQuestion) {
    question = next;
    tellAsked();
    void memory.update(kept, next);
    source.wake();
    changed.fire();
  }
  const now = (): BenchQuestion => question ?? { seconds: 10, situation: 'any', set: false };

  async function askSeconds() {
    const written = await window.showInputBox({
      title: l10n.t('How much is on the clock?'),
      prompt: l10n.t('Seconds, and more if you like: "11 seconds left, side throw-in", "8 base", "14 against 2-3"'),
      value: question === undefined ? '' : String(question.seconds),
      validateInput: (text) => (readBenchWords(text) === undefined ? l10n.t('A number of seconds, such as 11.') : undefined),
    });
    const read = written === undefined ? undefined : readBenchWords(written);
    if (read === undefined) return;
    ask({ ...now(), ...read });
    // He who asked from elsewhere sees the answer.
    if (!view.visible) await commands.executeCommand(`${benchView}.focus`);
  }

  async function askSituation() {
    const chosen = await window.showQuickPick(
      situations.map((situation): QuickPickItem & { situation: Situation } => ({ label: saySituation(situation), situation })),
      { title: l10n.t('Where does the ball come from?') },
    );
    if (chosen !== undefined) ask({ ...now(), situation: chosen.situation });
  }

  async function askAgainst() {
    const any: QuickPickItem & { against?: string } = { label: l10n.t('Whatever they play') };
    const known = choicesOf(source.newest()?.plays ?? []).against.map((against) => ({ label: asLabel(sayAgainst(against)), against }));
    const chosen = await window.showQuickPick([any, ...known], { title: l10n.t('What do they play?') });
    if (chosen === undefined) return;
    const { against: _, ...others } = now();
    ask(chosen.against === undefined ? others : { ...others, against: chosen.against });
  }

  tellAsked();
  source.watch(() => view.visible);
  return [
    view,
    changed,
    source.onDidChange(() => changed.fire()),
    view.onDidChangeVisibility(source.wake),
    commands.registerCommand('setwright.bench.seconds', askSeconds),
    commands.registerCommand('setwright.bench.situation', askSituation),
    commands.registerCommand('setwright.bench.against', askAgainst),
    commands.registerCommand('setwright.bench.set', () => ask({ ...now(), set: !now().set })),
  ];
}

/** Nothing before the first question: the view then tells how to ask. */
function rowsOf(question: BenchQuestion | undefined, source: PlaybookSource): Row[] {
  if (question === undefined) return [];
  const { seconds, situation, against, set } = question;
  const newest = source.newest();
  const answer = whatFits(newest?.plays ?? [], question);
  const inputs: Row[] = [
    { kind: 'input', id: 'seconds', label: l10n.t('{0} seconds left', seconds), hint: l10n.t('change'), icon: 'watch', command: 'setwright.bench.seconds' },
    { kind: 'input', id: 'situation', label: saySituation(situation), hint: l10n.t('change'), icon: 'location', command: 'setwright.bench.situation' },
    { kind: 'input', id: 'against', label: against === undefined ? l10n.t('Whatever they play') : sayAgainst(against), hint: l10n.t('change'), icon: 'shield', command: 'setwright.bench.against' },
  ];
  const ready: Row = { kind: 'input', id: 'set', label: set ? l10n.t('In their places') : l10n.t('Not in their places yet'), hint: l10n.t('change'), icon: set ? 'check' : 'person', command: 'setwright.bench.set' };
  const groups: Row[] = [
    { kind: 'group', id: 'every', label: l10n.t('Time for every look'), open: true, fits: answer.everyLook },
    { kind: 'group', id: 'first', label: l10n.t('Time for the first looks'), open: true, fits: answer.firstLook },
    { kind: 'group', id: 'late', label: l10n.t('Too late for these'), open: false, fits: answer.tooLate },
  ];
  const some = groups.filter((group) => group.kind === 'group' && group.fits.length > 0);
  // At a throw-in the clock stands while they get there.
  const isLive = situation === 'any' || situation === 'live';
  // While plays are still being read nobody knows that there is none.
  const nothing: Row[] = newest === undefined || newest.unread === true ? [] : [{ kind: 'nothing', id: 'nothing' }];
  return [...inputs, ...(isLive ? [ready] : []), ...(some.length > 0 ? some : nothing)];
}

function rowsIn({ id, fits }: Extract<Row, { kind: 'group' }>, question: BenchQuestion | undefined): Row[] {
  return fits.map((fit, index) => ({ kind: 'fit', id: `${id} ${index} ${fit.play.uri} ${fit.play.key}`, fit, seconds: question?.seconds ?? 0, some: id === 'first' }));
}

function itemOf(row: Row): TreeItem {
  if (row.kind === 'fit') return fitItem(row);
  const item = new TreeItem(row.kind === 'nothing' ? l10n.t('No play for this') : row.label, row.kind === 'group' ? (row.open ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.Collapsed) : TreeItemCollapsibleState.None);
  item.id = row.id;
  item.tooltip = typeof item.label === 'string' ? item.label : '';
  if (row.kind === 'group') item.description = String(row.fits.length);
  if (row.kind === 'input') {
    item.description = row.hint;
    item.iconPath = new ThemeIcon(row.icon);
    item.command = { title: row.label, command: row.command };
  }
  return item;
}

function fitItem({ id, fit, seconds, some }: Extract<Row, { kind: 'fit' }>): TreeItem {
  const { play, needs, needsAll, inTime } = fit;
  const missing = Math.ceil((needs - seconds) * 10) / 10;
  const left = Math.floor((seconds - needsAll) * 10) / 10;
  const time = missing > 0 ? l10n.t('{0} s too late', missing) : some ? l10n.t('in time: {0}', inTime.join(', ')) : l10n.t('{0} s to spare', left);
  // First what differs from the row above: a narrow list shows no more.
  const words = missing > 0 || some ? [time, sayNeeds(needs, needsAll)] : [sayNeeds(needs, needsAll), time];
  const item = playItem(play, [...words, sayProblems(play)].filter((words) => words !== '').join(' · '));
  item.id = id;
  item.contextValue = 'play';
  return item;
}

function saySituation(situation: Situation): string {
  const words: Readonly<Record<Situation, string>> = {
    any: l10n.t('From anywhere'), live: l10n.t('Live ball'), sideline: l10n.t('Throw-in from the side'), baseline: l10n.t('Throw-in from the baseline'),
  };
  return words[situation];
}
