// As much of VS Code as the extension's lists and messages need; it keeps what it was given to show.
interface Shown {
  readonly messages: string[];
  readonly choices: string[];
  readonly statusBar: { text: string; tooltip: unknown }[];
  readonly views: { id: string; message: string | undefined; description: string | undefined; rows: () => Promise<readonly { label: unknown; description: unknown; tooltip: unknown }[]> }[];
}

export const shown: Shown = { messages: [], choices: [], statusBar: [], views: [] };
/** What a coach picks in the next lists, of each all rows. */
type Row = { readonly label?: string; readonly detail?: string; readonly kind?: number };

const registered = new Map<string, (...args: unknown[]) => unknown>();
export const run = async (command: string, ...args: unknown[]): Promise<unknown> => registered.get(command)!(...args);

export class EventEmitter<What> {
  readonly heard: ((what: What) => void)[] = [];
  readonly event = (listener: (what: What) => void) => (this.heard.push(listener), { dispose: () => undefined });
  fire(what: What) {
    for (const listener of this.heard) listener(what);
  }
}

export class TreeItem {
  label: unknown;
  description: unknown;
  tooltip: unknown;
  constructor(label: unknown) {
    this.label = label;
  }
}

export class Uri {
  readonly path: string;
  readonly scheme = 'file';
  constructor(path: string) {
    this.path = path;
  }
  static parse = (text: string) => new Uri(text.replace(/^file:\/\//, ''));
  static joinPath = ({ path }: Uri, ...more: string[]) => new Uri([path, ...more].join('/'));
  toString = () => `file://${this.path}`;
}

export class ThemeIcon {}
export class ThemeColor {}
export class Range {}
export class Position {}
export class WorkspaceEdit {
  insert = () => undefined;
}
export class DataTransferItem {}
export const TreeItemCollapsibleState = { None: 0, Collapsed: 1, Expanded: 2 };
export const QuickPickItemKind = { Separator: -1, Default: 0 };
export const StatusBarAlignment = { Left: 1, Right: 2 };
export const ViewColumn = { One: 1, Beside: -2 };

export const l10n = { t: (template: string, ...gaps: unknown[]) => template.replace(/\{(\d)\}/g, (_, at: string) => String(gaps[Number(at)])) };
export const env = { openExternal: () => undefined };
export const commands = {
  registerCommand: (id: string, work: (...args: unknown[]) => unknown) => (registered.set(id, work), { dispose: () => registered.delete(id) }),
  executeCommand: () => Promise.resolve(),
};

const nothing = () => ({ dispose: () => undefined });
const say = (text: string) => (shown.messages.push(text), Promise.resolve(undefined));
const document = { uri: new Uri('/plays/a.play'), languageId: 'setwright', version: 1, lineCount: 1 };
export const window = {
  activeTextEditor: { document, selection: { active: { line: 0 } } },
  visibleTextEditors: [] as unknown[],
  showInformationMessage: say,
  showWarningMessage: say,
  showErrorMessage: say,
  setStatusBarMessage: say,
  showInputBox: ({ prompt = '', value = '' }: { prompt?: string; value?: string }) => (shown.choices.push(prompt, value), Promise.resolve('11')),
  showQuickPick: (rows: readonly Row[]) => {
    for (const { label = '', detail = '' } of rows) shown.choices.push(label, detail);
    const chosen = rows.filter(({ kind }) => kind !== QuickPickItemKind.Separator);
    return Promise.resolve(chosen.some((row) => 'chooses' in row) ? chosen : chosen[0]);
  },
  showSaveDialog: () => Promise.resolve(new Uri('/plays/[x](command:workbench.action.quit).svg')),
  createStatusBarItem: () => {
    const item = { text: '', tooltip: '' as unknown, show: () => shown.statusBar.push({ text: item.text, tooltip: item.tooltip }), hide: () => undefined };
    return item;
  },
  createTreeView: (id: string, { treeDataProvider }: { treeDataProvider: { getChildren: (row?: unknown) => readonly unknown[]; getTreeItem: (row: unknown) => TreeItem } }) => {
    const below = (row?: unknown): TreeItem[] => treeDataProvider.getChildren(row).flatMap((one) => [treeDataProvider.getTreeItem(one), ...below(one)]);
    const view = { id, message: undefined as string | undefined, description: undefined as string | undefined, visible: true, selection: [], rows: () => Promise.resolve(below()), onDidChangeVisibility: nothing, reveal: () => Promise.resolve(), dispose: () => undefined };
    shown.views.push(view);
    return view;
  },
  onDidChangeActiveTextEditor: nothing,
  onDidChangeTextEditorSelection: nothing,
  onDidChangeVisibleTextEditors: nothing,
};
export const workspace = {
  textDocuments: [document],
  workspaceFolders: [{ uri: new Uri('/plays') }],
  asRelativePath: ({ path }: Uri) => path.slice('/plays/'.length),
  fs: { writeFile: () => Promise.resolve(), readFile: () => Promise.resolve(new Uint8Array()), stat: () => Promise.reject(new Error('none')) },
  openTextDocument: () => Promise.resolve(document),
  onDidChangeTextDocument: nothing,
};
