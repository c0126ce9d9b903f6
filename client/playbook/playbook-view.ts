// The view "Playbook": books, sections, plays; filters; the order by dragging or by keys.
import {
  commands, DataTransferItem, EventEmitter, l10n, QuickPickItemKind, TreeItem, TreeItemCollapsibleState, Uri, window, workspace, WorkspaceEdit, Range,
  type DataTransfer, type Disposable, type QuickPickItem, type TreeView,
} from 'vscode';
import { arrangeMethod, readArranged, type Slot } from '../../server/lsp/playbook-protocol.ts';
import { asMessage } from '../../server/lsp/as-message.ts';
import { asLabel } from '../as-label.ts';
import { choicesOf, everything, isFiltering, kinds, type Filter, type Kind } from './filter.ts';
import { playItem, sayAgainst, sayNeeds, sayProblems } from './play-words.ts';
import type { ServerLine } from '../server-line.ts';
import type { PlaybookSource } from './playbook-source.ts';
import { shelvesOf, type InSection, type Shelf } from './shelf.ts';

const playbookView = 'setwright.playbook';
const dragged = 'application/vnd.code.tree.setwright.playbook';

export function registerPlaybookView({ ask }: Pick<ServerLine, 'ask'>, source: PlaybookSource): Disposable[] {
  const changed = new EventEmitter<void>();
  let filter = everything;
  let shelves: readonly Shelf[] = [];

  const view: TreeView<Shelf> = window.createTreeView<Shelf>(playbookView, {
    showCollapseAll: true,
    treeDataProvider: {
      onDidChangeTreeData: changed.event,
      getTreeItem: itemOf,
      getChildren: (shelf) => [...(shelf === undefined ? shelves : 'inside' in shelf ? shelf.inside : [])],
    },
    dragAndDropController: {
      dragMimeTypes: [dragged],
      dropMimeTypes: [dragged],
      handleDrag([shelf]: readonly Shelf[], transfer: DataTransfer) {
        if (shelf !== undefined && 'at' in shelf && shelf.at !== undefined) transfer.set(dragged, new DataTransferItem(JSON.stringify(shelf.at)));
      },
      async handleDrop(target: Shelf | undefined, transfer: DataTransfer) {
        const from = readPlace(await transfer.get(dragged)?.asString());
        const to = from && target && slotAt(target, from);
        if (from === undefined || to === undefined) return;
        if (to === 'elsewhere') return void window.showInformationMessage(l10n.t('A play keeps to its book: drop it on a play or a section of the same one.'));
        await arrange(from, to);
      },
    },
  });

  function show() {
    const newest = source.newest();
    shelves = newest === undefined ? [] : shelvesOf(newest, filter);
    // An empty view shows its button that brings all plays back only where it has no message: what was chosen stands beside its name then.
    const none = newest !== undefined && shelves.length === 0;
    view.message = isFiltering(filter) && !none ? asMessage(l10n.t('Only: {0}', sayFilter(filter))) : undefined;
    view.description = isFiltering(filter) && none ? sayFilter(filter) : undefined;
    void commands.executeCommand('setContext', 'setwright.filtering', isFiltering(filter));
    // Before everything is read an empty list means nothing.
    const isEmpty = newest?.plays.length === 0;
    void commands.executeCommand('setContext', 'setwright.playbookRead', newest !== undefined && !(isEmpty && newest.unread === true));
    void commands.executeCommand('setContext', 'setwright.hasPlays', newest !== undefined && !isEmpty);
    changed.fire();
  }
  const filterBy = (next: Filter) => {
    filter = next;
    show();
  };

  /** One edit of the book's text, as undoable as any other. A book that nobody had open is saved. */
  async function arrange(from: InSection, to: Slot) {
    const answer = await ask(arrangeMethod, { uri: from.uri, from: { line: from.line, index: from.index }, to }, readArranged);
    if (answer === undefined || answer === null || answer.edits.length === 0) return;
    const uri = Uri.parse(from.uri);
    const wasOpen = workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());
    const edit = new WorkspaceEdit();
    for (const { range: { start, end }, newText } of answer.edits) edit.replace(uri, new Range(start.line, start.character, end.line, end.character), newText);
    const document = await workspace.openTextDocument(uri);
    if ((await workspace.applyEdit(edit)) && !wasOpen) await document.save();
    await source.refresh();
  }

  async function move(shelf: Shelf | undefined, by: -1 | 1) {
    const chosen = shelf ?? view.selection[0];
    const at = chosen !== undefined && 'at' in chosen ? chosen.at : undefined;
    if (at === undefined) return;
    const index = at.index + by;
    if (index < 0 || index >= at.of) return;
    await arrange(at, { line: at.line, index: by > 0 ? index + 1 : index });
    const moved = find(shelves, ({ kind, ...one }) => kind === 'play' && 'at' in one && one.at?.line === at.line && one.at.book === at.book && one.at.index === index);
    if (moved !== undefined) await view.reveal(moved, { select: true, focus: true }).then(undefined, () => undefined);
  }

  async function chooseFilter() {
    const chosen = await pickFilter(choicesOf(source.newest()?.plays ?? []), filter);
    if (chosen !== undefined) filterBy({ ...filter, ...chosen });
  }

  async function filterBySeconds() {
    const written = await window.showInputBox({
      title: l10n.t('Plays that still fit'),
      prompt: l10n.t('Seconds left on the clock; empty for all plays'),
      value: filter.seconds === undefined ? '' : String(filter.seconds),
      validateInput: (text) => (/^\s*(\d{1,4}([.,]\d)?)?\s*$/.test(text) ? undefined : l10n.t('A number of seconds, such as 11.')),
    });
    if (written === undefined) return;
    const { seconds: _, ...others } = filter;
    filterBy(written.trim() === '' ? others : { ...filter, seconds: Number(written.trim().replace(',', '.')) });
  }

  source.watch(() => view.visible);
  source.wake();
  return [
    view,
    changed,
    source.onDidChange(show),
    view.onDidChangeVisibility(source.wake),
    commands.registerCommand('setwright.playbook.refresh', () => source.refresh(true)),
    commands.registerCommand('setwright.playbook.filter', chooseFilter),
    commands.registerCommand('setwright.playbook.filterSeconds', filterBySeconds),
    commands.registerCommand('setwright.playbook.clearFilter', () => filterBy(everything)),
    commands.registerCommand('setwright.playbook.moveUp', (shelf?: Shelf) => move(shelf, -1)),
    commands.registerCommand('setwright.playbook.moveDown', (shelf?: Shelf) => move(shelf, 1)),
  ];
}

function find(shelves: readonly Shelf[], fits: (shelf: Shelf) => boolean): Shelf | undefined {
  for (const shelf of shelves) {
    const found = fits(shelf) ? shelf : 'inside' in shelf ? find(shelf.inside, fits) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

function itemOf(shelf: Shelf): TreeItem {
  const item = bareItem(shelf);
  item.id = shelf.id;
  return item;
}

function bareItem(shelf: Shelf): TreeItem {
  if (shelf.kind === 'play') {
    const { play, at } = shelf;
    const { first, all } = play;
    const needs = first === null || all === null ? l10n.t('no look') : sayNeeds(first.fromCall, all.fromCall);
    const item = playItem(play, [needs, sayProblems(play)].filter((words) => words !== '').join(' · '));
    item.contextValue = at === undefined ? 'play' : 'play inSection';
    return item;
  }
  if (shelf.kind === 'missing') {
    const item = new TreeItem(shelf.name);
    item.description = l10n.t('no play has this name');
    item.tooltip = l10n.t('The section names a play that is in none of the files the book uses.');
    item.contextValue = 'missing inSection';
    item.command = { title: l10n.t('Open the book'), command: 'setwright.openPlay', arguments: [Uri.parse(shelf.at.uri), shelf.at.line] };
    return item;
  }
  const item = new TreeItem(shelf.kind === 'file' ? workspace.asRelativePath(Uri.parse(shelf.uri)) : shelf.name, TreeItemCollapsibleState.Expanded);
  item.contextValue = shelf.kind;
  if (shelf.kind !== 'book') item.description = String(shelf.inside.length);
  item.tooltip = shelf.kind === 'file' ? l10n.t('Plays that stand in no book') : shelf.name;
  return item;
}

function slotAt(target: Shelf, from: InSection): Slot | 'elsewhere' {
  if (target.kind === 'section') return target.book === from.book ? { line: target.line, index: target.of } : 'elsewhere';
  const at = 'at' in target ? target.at : undefined;
  if (at === undefined || at.book !== from.book) return 'elsewhere';
  // Down the list a play takes the place of the one it is dropped on, which makes room upwards.
  const below = at.line === from.line && at.index > from.index;
  return { line: at.line, index: below ? at.index + 1 : at.index };
}

/** What this view has put into a drag. */
function readPlace(text: string | undefined): InSection | undefined {
  try {
    const place = JSON.parse(text ?? '') as InSection;
    return typeof place.uri === 'string' && Number.isInteger(place.line) && Number.isInteger(place.index) && Number.isInteger(place.book) ? place : undefined;
  } catch {
    return undefined;
  }
}

interface Choice extends QuickPickItem {
  readonly chooses?: readonly [Kind, string];
}

async function pickFilter(choices: Readonly<Record<Kind, readonly string[]>>, filter: Filter): Promise<Pick<Filter, Kind> | undefined> {
  const titles: Readonly<Record<Kind, string>> = { against: l10n.t('Against'), from: l10n.t('From'), tags: l10n.t('Tags') };
  const items = kinds.flatMap((kind): Choice[] => [
    { label: titles[kind], kind: QuickPickItemKind.Separator },
    ...choices[kind].map((word): Choice => ({ label: asLabel(kind === 'against' ? sayAgainst(word) : word), picked: filter[kind].includes(word), chooses: [kind, word] })),
  ]);
  const chosen = await window.showQuickPick(items, { title: l10n.t('Show only plays …'), placeHolder: l10n.t('Choose any number; none shows all'), canPickMany: true, matchOnDescription: true });
  if (chosen === undefined) return undefined;
  const of = (kind: Kind) => chosen.flatMap(({ chooses }) => (chooses?.[0] === kind ? [chooses[1]] : []));
  return { against: of('against'), from: of('from'), tags: of('tags') };
}

function sayFilter({ against, from, tags, seconds }: Filter): string {
  return [...against.map(sayAgainst), ...from.map((one) => l10n.t('from {0}', one)), ...tags, ...(seconds === undefined ? [] : [l10n.t('{0} s left', seconds)])].join(', ');
}
