// Changes of a whole play by command: two players swapped, left and right swapped. One step in the text, as by hand in the panel.
import { commands, l10n, window, workspace, type Disposable, type QuickPickItem } from 'vscode';
import type { PlayerNumber } from '../language/play/play.ts';
import type { Intent } from '../language/edit/intent.ts';
import { asMessage } from '../server/lsp/as-message.ts';
import { changeByHand } from './panel/change-by-hand.ts';
import { placeFromCommand } from './open-play.ts';
import type { PlayInText } from './panel/panel.ts';
import type { PlayPanels } from './panel/panels.ts';
import type { PlaybookSource } from './playbook/playbook-source.ts';
import type { ServerLine } from './server-line.ts';

interface Pair extends QuickPickItem {
  readonly pair: readonly [PlayerNumber, PlayerNumber];
}

const players = [1, 2, 3, 4, 5] as const;
const pairs = players.flatMap((a) => players.filter((b) => b > a).map((b) => [a, b] as const));

export function registerChangePlay({ ask }: Pick<ServerLine, 'ask'>, playbook: Pick<PlaybookSource, 'playsOf'>, inHand: PlayPanels['inHand']): Disposable[] {
  /** The one the panel shows that has the keyboard, else the one of a list's row, else that of the cursor. */
  async function playMeant(place: unknown, line: unknown): Promise<PlayInText | undefined> {
    const shown = inHand();
    if (shown !== undefined) return shown;
    const at = await placeFromCommand(place, line);
    const plays = at === undefined ? [] : await playbook.playsOf(at.uri);
    const play = plays.findLast((one) => one.line <= at!.line) ?? plays[0];
    return at === undefined || play === undefined ? undefined : { uri: at.uri, playKey: play.key };
  }

  async function change(place: unknown, line: unknown, intent: Intent, done: string) {
    const play = await playMeant(place, line);
    const document = workspace.textDocuments.find(({ uri }) => uri.toString() === play?.uri.toString());
    if (play === undefined || document === undefined) return void window.showInformationMessage(l10n.t('There is no play here yet.'));
    const outcome = await changeByHand(ask, { uri: play.uri, documentVersion: document.version }, { kind: 'intent', play: play.playKey, dry: false, intent });
    if (outcome.refused !== undefined) return void window.showInformationMessage(asMessage(outcome.refused));
    window.setStatusBarMessage(done, 4000);
  }

  async function swap(place: unknown, line: unknown) {
    const chosen = await window.showQuickPick(pairs.map((pair): Pair => ({ label: l10n.t('{0} and {1}', ...pair), pair })), { title: l10n.t('Swap two players'), placeHolder: l10n.t('Each starts where the other does') });
    if (chosen === undefined) return;
    const [a, b] = chosen.pair;
    await change(place, line, { kind: 'swap', a, b }, l10n.t('{0} and {1} have swapped places', a, b));
  }

  return [
    commands.registerCommand('setwright.swapPlayers', swap),
    commands.registerCommand('setwright.mirrorPlay', (place: unknown, line: unknown) => change(place, line, { kind: 'mirror' }, l10n.t('Left and right are swapped'))),
  ];
}
