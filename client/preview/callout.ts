// What a finding says, at its spot on the floor, with the buttons that mend it.
import type { ToldFinding } from '../../language/checks/tell-finding.ts';
import { element, setHidden } from './elements.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

const severities = { error: message('Cannot work'), warning: message('Take care'), hint: message('Hint') } as const;
export const severityWords = (severity: keyof typeof severities): string => tell(severities[severity]);

/** Tells which fix of a finding was chosen; absent where nothing can be written (a page has no editor). */
export type FixChosen = ((finding: number, fix: number) => void) | undefined;

export function fixButtons({ fixes }: ToldFinding, index: number, chosen: FixChosen): HTMLElement | undefined {
  if (chosen === undefined || fixes.length === 0) return undefined;
  const order = fixes.map((fix, i) => ({ fix, i })).toSorted((a, b) => Number(b.fix.preferred === true) - Number(a.fix.preferred === true));
  const buttons = order.map(({ fix, i }) => {
    const button = element('button', { type: 'button', class: `fix${fix.preferred === true ? ' preferred' : ''}` }, fix.title);
    button.addEventListener('click', () => chosen(index, i));
    return button;
  });
  return element('div', { class: 'fixes' }, ...buttons);
}

export interface Callout {
  readonly root: HTMLElement;
  /** `spot`: where it stands in the picture, pixels; without one it stands at the foot. */
  readonly show: (finding: ToldFinding, index: number, spot: { readonly x: number; readonly y: number } | undefined) => void;
  readonly hide: () => void;
}

export function createCallout(chosen: FixChosen): Callout {
  const root = element('div', { class: 'callout', role: 'note', 'aria-label': tell(message('What is wrong here')) });
  setHidden(root, true);
  const close = element('button', { type: 'button', class: 'close', 'aria-label': tell(message('Close')), title: tell(message('Close')) }, '×');
  close.addEventListener('click', hide);

  function hide(): void {
    setHidden(root, true);
  }

  return {
    root,
    show(finding, index, spot) {
      root.className = `callout ${finding.severity}`;
      const fixes = fixButtons(finding, index, chosen);
      root.replaceChildren(close, element('strong', {}, `${severityWords(finding.severity)}. `), finding.message, ...(fixes === undefined ? [] : [fixes]));
      setHidden(root, false);
      const box = root.parentElement!.getBoundingClientRect();
      const { width, height } = root.getBoundingClientRect();
      const x = spot === undefined ? 8 : Math.min(Math.max(spot.x - width / 2, 8), Math.max(8, box.width - width - 8));
      const below = spot === undefined ? box.height - height - 8 : spot.y + 30;
      // Below its spot, or above it where there is no room.
      const y = below + height > box.height && spot !== undefined && spot.y - height - 30 > 0 ? spot.y - height - 30 : Math.min(below, box.height - height - 8);
      root.style.left = `${x.toFixed(0)}px`;
      root.style.top = `${Math.max(0, y).toFixed(0)}px`;
    },
    hide,
  };
}
