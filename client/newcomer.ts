// A coach who has not written a play of his own yet finds the way to it at the foot of the side bar, and the first minutes by a command.
import { commands, window, type Disposable, type Memento } from 'vscode';

export interface Newcomer {
  readonly disposables: readonly Disposable[];
  /** He has: the way is not shown any more. */
  readonly hasWritten: () => Promise<void>;
}

const wayView = 'setwright.start';
const written = 'setwright.hasWritten';
const walkthrough = 'setwright.setwright#firstMinutes';

export function registerNewcomer(memory: Memento): Newcomer {
  const tell = () => commands.executeCommand('setContext', 'setwright.newcomer', memory.get(written) !== true);
  void tell();
  return {
    disposables: [
      // Holds nothing: what the manifest says where it is empty is all there is.
      window.registerTreeDataProvider(wayView, { getChildren: () => [], getTreeItem: (row: never) => row }),
      commands.registerCommand('setwright.firstMinutes', () => commands.executeCommand('workbench.action.openWalkthrough', walkthrough, false)),
    ],
    async hasWritten() {
      await memory.update(written, true);
      await tell();
    },
  };
}
