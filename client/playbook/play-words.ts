// What a list says of a play: its times and what is wrong with it, in words. A name is put nowhere that reads markup or icons.
import { l10n, ThemeColor, ThemeIcon, TreeItem, Uri } from 'vscode';
import type { PlayEntry } from '../../server/lsp/playbook-protocol.ts';

/** `16 s, all looks 19 s`. */
export function sayNeeds(first: number, all: number): string {
  return first === all ? l10n.t('{0} s', first) : l10n.t('{0} s, all looks {1} s', first, all);
}

export function sayProblems({ errors, warnings }: Pick<PlayEntry, 'errors' | 'warnings'>): string {
  const count = errors + warnings;
  if (count === 0) return '';
  return count === 1 ? l10n.t('1 problem') : l10n.t('{0} problems', count);
}

export function sayAgainst(against: string): string {
  if (against === 'man press') return l10n.t('against a man press');
  const zone = /^(\S+) press$/.exec(against)?.[1];
  if (zone !== undefined) return l10n.t('against a {zone} press', { zone });
  return against === 'man' ? l10n.t('against man') : l10n.t('against {0}', against);
}

/** The lines of a tooltip, which is shown as it is written. */
export function tellPlay(play: PlayEntry): string {
  const { first, all, call } = play;
  const throwIn = { sideline: l10n.t('throw-in from the sideline'), baseline: l10n.t('throw-in from the baseline') };
  const lines = [
    play.name,
    first === null || all === null
      ? l10n.t('No look, so nothing to time.')
      : first.fromCall === all.fromCall
        ? l10n.t('Call with {0} s or more.', first.fromCall)
        : l10n.t('Call with {0} s or more for the first look, with {1} s for every look.', first.fromCall, all.fromCall),
    ...(first !== null && first.alreadySet !== first.fromCall ? [l10n.t('{0} s are enough when everybody stands in his place.', first.alreadySet)] : []),
    ...(call === null ? [] : [call.from === call.to ? l10n.t('You call it with {0} on the clock.', call.to) : l10n.t('You call it with {0} to {1} on the clock.', call.from, call.to)]),
    [play.from, play.against === null ? null : sayAgainst(play.against), play.throwIn === null ? null : throwIn[play.throwIn]].filter((word) => word !== null).join(', '),
    play.tags.join(', '),
    sayProblems(play),
  ];
  return lines.filter((line) => line !== '').join('\n');
}

export function playItem(play: PlayEntry, description: string): TreeItem {
  const item = new TreeItem(play.name);
  item.description = description;
  item.tooltip = tellPlay(play);
  item.iconPath = play.errors > 0 ? new ThemeIcon('error', new ThemeColor('list.errorForeground')) : play.warnings > 0 ? new ThemeIcon('warning', new ThemeColor('list.warningForeground')) : new ThemeIcon('play-circle');
  item.accessibilityInformation = { label: `${play.name}, ${description}` };
  item.command = { title: l10n.t('Open the play'), command: 'setwright.openPlay', arguments: [Uri.parse(play.uri), play.line] };
  return item;
}
