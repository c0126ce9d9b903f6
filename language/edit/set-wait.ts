import { message, type Words } from '../message/message.ts';
import { lineText } from '../book/book.ts';
import type { Action, Play } from '../play/play.ts';
import { saySeconds } from '../words/say-seconds.ts';
import { actionOf, firstThatMeans, refuse, whyRepeated, writtenAction, type Editable } from './editable.ts';
import type { Intent, Outcome } from './intent.ts';

/** `1.5 seconds later, 2 cuts`: a wait written, changed or taken out. */
export function setWait(editable: Editable, { action: id, seconds }: Extract<Intent, { kind: 'set-wait' }>): Outcome {
  const found = writtenAction(editable, id);
  if ('refused' in found) return found;
  const { action } = found;
  const { places } = editable.reading;
  if (!(seconds >= 0)) return refuse(message('He cannot start before he is free.'));
  const rounded = Math.round(seconds * 10) / 10;
  const written = action.waits.find((wait) => wait.kind === 'later');
  const means = (after: Play) => laterOf(actionOf(after, id)) === rounded;
  const text = `${saySeconds(rounded)} later`;
  const words = written === undefined ? undefined : places.get(written.part);
  const one = (edit: { readonly line: number; readonly at: number; readonly to: number; readonly text: string }, said: Words = text) => ({ edits: [edit], words: said });
  if (words !== undefined) {
    const line = lineText(editable.block.lines[words.line]!);
    if (rounded > 0) return firstThatMeans(editable, [one({ ...words, text }), one({ ...words, text: saySeconds(rounded) })], { action: id }, means) ?? refuse(message('I cannot write this wait here.'));
    // With its comma or its blank.
    const behind = /^\s*,?\s*/.exec(line.slice(words.to))![0].length;
    const before = /\s*$/.exec(line.slice(0, words.at))![0].length;
    const whole = [{ line: words.line, at: words.at, to: words.to + behind, text: '' }, { line: words.line, at: words.at - before, to: words.to, text: '' }];
    return firstThatMeans(editable, whole.map((edit) => one(edit, message('no wait'))), { action: id }, means) ?? refuse(message('I cannot take this wait out here.'));
  }
  if (rounded === 0) return { edits: [], words: message('no wait') };
  const place = places.get(id);
  if (place === undefined) return refuse(message('I cannot find this action in the text.'));
  const head = action.link === 0 ? [one({ line: place.line, at: place.at, to: place.at, text: `${text}, ` })] : [];
  const candidates = [...head, one({ line: place.line, at: place.to, to: place.to, text: ` ${text}` })];
  return firstThatMeans(editable, candidates, { action: id }, means) ?? refuse(whyRepeated(editable, id) ?? message('There is a wait in this line already, or several players share it. Change its words.'));
}

/** The same, counted from the wait as it is now. */
export function shiftWait(editable: Editable, { action: id, by }: Extract<Intent, { kind: 'shift-wait' }>): Outcome {
  const now = laterOf(actionOf(editable.reading.play, id));
  if (now === 0 && by < 0) return refuse(message('He starts as soon as he is free: there is no wait to take away.'));
  return setWait(editable, { kind: 'set-wait', action: id, seconds: Math.max(0, now + by) });
}

function laterOf(action: Action | undefined): number {
  const later = action?.waits.find((wait) => wait.kind === 'later');
  return later?.kind === 'later' ? later.seconds : 0;
}
