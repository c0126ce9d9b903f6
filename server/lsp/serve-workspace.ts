// The workspace around the open documents: its folders, its files as they come, change and go, the coach's settings.
import { DidChangeConfigurationNotification, DidChangeWatchedFilesNotification, type InitializeParams } from 'vscode-languageserver';
import type { Asking } from './asking.ts';
import { ignoreFileNames } from './ignore-files.ts';
import type { PlayFiles } from './play-files.ts';
import { picturesMethod, readPictures, readSettings, wrongSettings, type Options } from './settings.ts';

export interface Workspace {
  /** Uris of its folders, as they are now. */
  readonly folders: () => readonly string[];
  readonly begin: (params: InitializeParams) => void;
}

export interface WorkspaceChanges {
  readonly files: () => PlayFiles;
  readonly take: (options: Partial<Options>) => void;
  /** What one of these files says may be another; none named: which files there are. */
  readonly changed: (uris: readonly string[]) => void;
}

export function serveWorkspace({ connection, client, options }: Pick<Asking, 'connection' | 'client' | 'options'>, { files, take, changed }: WorkspaceChanges): Workspace {
  let folders: readonly string[] = [];

  connection.onInitialized(() => {
    if (client().workspace?.workspaceFolders === true) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => uri));
        folders = [...new Set([...folders.filter((uri) => !gone.has(uri)), ...added.map(({ uri }) => uri)])];
        void files().lookAgain().then(() => changed([]));
      });
    }
    // A client that reads the files for the server watches them too.
    if (options().files !== true && client().workspace?.didChangeWatchedFiles?.dynamicRegistration === true) {
      const watchers = ['*.play', ...ignoreFileNames].map((name) => ({ globPattern: `**/${name}` }));
      void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(() => undefined);
    }
    if (!hasSettings()) return;
    if (client().workspace?.didChangeConfiguration?.dynamicRegistration === true) void connection.client.register(DidChangeConfigurationNotification.type, { section: 'setwright' }).catch(() => undefined);
    void fetchSettings();
  });

  connection.onDidChangeWatchedFiles(({ changes }) => filesChanged(changes.map(({ uri }) => uri)));
  connection.workspace.onDidCreateFiles((params) => filesChanged(params.files.map(({ uri }) => uri)));
  connection.workspace.onDidDeleteFiles((params) => filesChanged(params.files.map(({ uri }) => uri)));
  connection.workspace.onDidRenameFiles((params) => filesChanged(params.files.flatMap(({ oldUri, newUri }) => [oldUri, newUri])));
  function filesChanged(uris: readonly string[]) {
    for (const uri of new Set(uris)) void files().changed(uri).then((below) => changed(below));
  }

  connection.onNotification(picturesMethod, (value: unknown) => {
    const pictures = readPictures(value);
    if (pictures !== undefined) take({ pictures });
  });
  connection.onDidChangeConfiguration(({ settings }) => {
    if (hasSettings()) return void fetchSettings();
    takeSettings((settings as { setwright?: unknown } | null)?.setwright);
  });
  const hasSettings = () => client().workspace?.configuration === true;
  async function fetchSettings() {
    takeSettings(await connection.workspace.getConfiguration('setwright').catch(() => undefined));
  }
  function takeSettings(value: unknown) {
    for (const wrong of wrongSettings(value)) connection.console.warn(wrong);
    const before = options().settings;
    const settings = readSettings(value);
    take({ settings });
    if (JSON.stringify(before.hints) !== JSON.stringify(settings.hints) && client().workspace?.inlayHint?.refreshSupport === true) void connection.languages.inlayHint.refresh().catch(() => undefined);
    if (JSON.stringify(before.leaveOut) !== JSON.stringify(settings.leaveOut)) void files().lookAgain().then(() => changed([]));
  }

  return {
    folders: () => folders,
    begin({ workspaceFolders, rootUri }) {
      folders = workspaceFolders?.map(({ uri }) => uri) ?? (rootUri === null ? [] : [rootUri]);
    },
  };
}
