// Beside the lines: the running clock; where a way ends whose place is not written; who has the ball when a step begins.
import { InlayHintKind, type InlayHint, type Range } from 'vscode-languageserver-types';
import type { Compiled } from '../../language/compile.ts';
import type { Action, ActionId } from '../../language/play/play.ts';
import { stateBefore } from '../../language/play/state.ts';
import type { EventKind, LookTime } from '../../language/timeline/timeline.ts';
import { unitWrittenIn } from '../../language/words/own-words.ts';
import { sayPlace } from '../../language/words/say-place.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';
import { blocksBetween, type Block } from '../../language/book/book.ts';
import type { OpenDocument } from './documents.ts';
import { runOf } from './moment-of-part.ts';
import { message, type Message, type Say } from '../../language/message/message.ts';
import type { HintSettings } from './settings.ts';

export function inlayHints(document: OpenDocument, compile: (block: Block) => Compiled, settings: HintSettings, { start, end }: Range, say: Say): InlayHint[] {
  if (!Object.values(settings).includes(true)) return [];
  return blocksBetween(document.file, start.line, end.line).flatMap(({ block, firstLine }) =>
    block.kind === 'play' ? hintsOf(compile(block), firstLine, settings, say).filter(({ position: { line } }) => start.line <= line && line <= end.line) : [],
  );
}

function hintsOf(compiled: Compiled, firstLine: number, settings: HintSettings, say: Say): readonly InlayHint[] {
  const called = compiled.play.start.throwIn === undefined;
  // Where they stand at first is just being written: no time of the play is what it will be.
  const startIsUnfinished = compiled.block.lines.some(({ parsed }) => parsed.fault !== undefined && /^\s*from\b/i.test(parsed.text));
  const clocks = settings.clock && !startIsUnfinished;
  return compiled.reading.lines.flatMap((meaning, line): readonly InlayHint[] => {
    const parsed = compiled.block.lines[line]!.parsed;
    const character = parsed.text.slice(0, parsed.comment?.at).trimEnd().length;
    const behind = (label: string, tooltip: string): InlayHint => ({ position: { line: firstLine + line, character }, label, tooltip, paddingLeft: true });
    switch (meaning.kind) {
      case 'action': {
        const done = clocks ? doneAt(compiled, meaning.actions) : undefined;
        const clock = done === undefined ? [] : [behind(`→ ${sayMoment(done)}`, say(called ? message('Done {at} after the call.', { at: sayMoment(done) }) : message('Done {at} after the hand-over.', { at: sayMoment(done) })))];
        return [...(settings.places ? meaning.actions.flatMap((id) => placeHint(compiled, firstLine, id, say)) : []), ...clock];
      }
      case 'look': {
        const time = clocks ? compiled.timeline.times.looks.find(({ look }) => look === meaning.look) : undefined;
        return time === undefined ? [] : [behind(`→ ${sayMoment(time.typical)}`, say(sayRelease(time, called)))];
      }
      case 'step': {
        const holder = settings.ball ? stateBefore(compiled.reading, line).holder : undefined;
        return holder === undefined ? [] : [behind(say(message('{who} has the ball', { who: holder })), say(message('Who has the ball when this step begins.')))];
      }
      default:
        return [];
    }
  });
}

function sayRelease(time: LookTime, called: boolean): Message {
  const times = { typical: sayMoment(time.typical), late: sayMoment(time.late) };
  return called ? message('Typically the ball leaves the hand {typical} after the call, late {late}.', times) : message('Typically the ball leaves the hand {typical} after the hand-over, late {late}.', times);
}

/** What the others wait for: he is there, the screen is set, the ball is caught (TIMING rule 4). */
const done: ReadonlySet<EventKind> = new Set(['arrive', 'set', 'catch', 'take', 'shot']);

/** When the last action of a line is done, ms from the call, on the first way through the play that has it. */
function doneAt(compiled: Compiled, actions: readonly ActionId[]): number | undefined {
  const times = actions.flatMap((id) => {
    const events = runOf(compiled, id)?.events.filter(({ part }) => part === id) ?? [];
    const ends = events.filter(({ kind }) => done.has(kind));
    return (ends.length > 0 ? ends : events).map(({ at }) => at);
  });
  return times.length === 0 ? undefined : Math.max(...times);
}

function placeHint(compiled: Compiled, firstLine: number, id: ActionId, say: Say): readonly InlayHint[] {
  const action = compiled.play.steps.flatMap(({ actions }) => actions).find((one): one is Extract<Action, { kind: 'move' }> => one.id === id && one.kind === 'move');
  const place = compiled.places.get(`${id}#to`);
  if (action === undefined || place === undefined || place.to > place.at || action.to !== undefined) return [];
  const last = runOf(compiled, id)?.tracks[action.who]?.segments.findLast((segment) => segment.action === id);
  const end = last?.path.at(-1);
  if (end === undefined) return [];
  return [{ position: { line: firstLine + place.line, character: place.at }, label: `to ${sayPlace(compiled.court, end, { unit: unitWrittenIn(compiled.block) })}`, kind: InlayHintKind.Parameter, tooltip: say(message('Where this way ends when nothing else is written.')), paddingLeft: true }];
}
