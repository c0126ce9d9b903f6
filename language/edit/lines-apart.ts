// A line whose words two players share, written as a line for each: then one of them can do something else.
import { allOf, message, type Message } from '../message/message.ts';
import type { BlockEdit } from '../checks/finding.ts';
import type { Action, ActionId, BodyId } from '../play/play.ts';
import { sayAction, sayDeed } from '../words/say-action.ts';
import { actionsOf, linesOf, whyRepeated, type Editable } from './editable.ts';

/** Edits that give the two players of a line one each, with `changed` in the place of its action; none where they are more or fewer. */
export function linesApart(editable: Editable, changed: Action): readonly BlockEdit[] {
  const { reading: { places } } = editable;
  const place = places.get(changed.id);
  const sharing = playersOnLineOf(editable, changed.id);
  if (place === undefined || sharing.length !== 2) return [];
  const onLine = actionsOnLine(editable, place.line);
  const indent = /^\s*/.exec(linesOf(editable)[place.line] ?? '')![0];
  const [one, other] = sharing.map((who) => sayDeeds(onLine.filter((action) => action.who === who).map((action) => (action.id === changed.id ? changed : action))));
  const end = Math.max(...onLine.map(({ id }) => places.get(id)?.to ?? 0));
  return [
    { line: place.line, at: indent.length, to: end, text: one! },
    { line: place.line + 1, at: 0, to: 0, text: `${indent}${other}`, newLine: true },
  ];
}

/** Why the words of a line cannot be changed for one of its players. */
export function whyShared(editable: Editable, id: ActionId): Message {
  const sharing = playersOnLineOf(editable, id);
  const { who } = actionsOf(editable.reading.play).find((action) => action.id === id) ?? { who: message('him') };
  if (sharing.length < 2) return whyRepeated(editable, id) ?? message('I cannot write this into the line as it stands. Change its words yourself.');
  return message('{all} share the words of this line. Give {who} a line of his own first, then it can be moved alone.', { all: allOf(sharing), who });
}

function playersOnLineOf(editable: Editable, id: ActionId): readonly BodyId[] {
  const line = editable.reading.places.get(id)?.line;
  return line === undefined ? [] : [...new Set(actionsOnLine(editable, line).map(({ who }) => who))];
}

function actionsOnLine({ reading: { play, places } }: Editable, line: number): readonly Action[] {
  return actionsOf(play).filter(({ id, origin }) => origin !== 'copied' && origin !== 'derived' && places.get(id)?.line === line);
}

/** `4 cuts to left block, then screens for 3`. */
const sayDeeds = ([first, ...more]: readonly Action[]): string => (first === undefined ? '' : [sayAction(first), ...more.map((action) => `then ${sayDeed(action)}`)].join(', '));
