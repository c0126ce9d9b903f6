// The mends that several checks offer.
import { message, type Message } from '../message/message.ts';
import { parseLine } from '../grammar/parse-line.ts';
import type { PartId } from '../play/play.ts';
import type { Fix } from './finding.ts';
import type { Subject } from './subject.ts';

/** A line of its own above the part's line, indented as it is: `Pass to 3 first: add "1 passes to 3" above`. */
export function lineBefore(subject: Subject, part: PartId, text: string, title: Message): readonly Fix[] {
  const place = subject.places.get(part);
  if (place === undefined) return [];
  const indent = /^\s*/.exec(subject.lines[place.line] ?? '')![0];
  return [{ title: message('{title}: add "{text}" above', { title, text }), preferred: true, edits: [{ line: place.line, at: 0, to: 0, text: indent + text, newLine: true }] }];
}

/** Other words in the place of a part's words. */
export function otherWords(subject: Subject, part: PartId, text: string, title: Message): readonly Fix[] {
  const place = subject.places.get(part);
  return place === undefined ? [] : [{ title, edits: [{ line: place.line, at: place.at, to: place.to, text }] }];
}

/** The part's whole line taken out; a remark behind it stays, on a line of its own. */
export function lineRemoved(subject: Subject, part: PartId, title: Message): readonly Fix[] {
  const place = subject.places.get(part);
  if (place === undefined) return [];
  const text = subject.lines[place.line] ?? '';
  const remark = parseLine(text).comment?.at;
  if (remark !== undefined) return [{ title, edits: [{ line: place.line, at: /^\s*/.exec(text)![0].length, to: remark, text: '' }] }];
  return [{ title, edits: [{ line: place.line, at: 0, to: text.length, text: '', wholeLine: true }] }];
}
