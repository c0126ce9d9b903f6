// What a coach waits for while he types leaves before anything else is begun: an answer that is worked out stands in line for the wire
// for a turn or two, and would wait there for the whole check of the same text.
import { soon, type CallOff, type Host } from './host.ts';

/** Turns until an answer that is there has been written: one to stand in line, one to be sure. */
const turnsToWrite = 2;

export interface TypingFirst {
  /** The same answer; until it is written it counts as waited for. */
  readonly waitedFor: <Answer>(answer: Promise<Answer>) => Promise<Answer>;
  /** Does the work so many turns later, or once no answer is waited for any more. */
  readonly behind: (work: () => void, turns: number) => CallOff;
}

export function typingFirst(host: Pick<Host, 'turn'>): TypingFirst {
  let unwritten = 0;
  const held = new Set<() => void>();
  const written = () => {
    unwritten--;
    if (unwritten > 0) return;
    const waiting = [...held];
    held.clear();
    waiting.forEach((again) => again());
  };
  return {
    waitedFor(answer) {
      unwritten++;
      const done = () => void soon(host, written, turnsToWrite);
      answer.then(done, done);
      return answer;
    },
    behind(work, turns) {
      let callOff: CallOff;
      const wait = (left: number) => void (callOff = soon(host, () => (unwritten === 0 ? work() : hold()), left));
      const hold = () => {
        const again = () => wait(1);
        held.add(again);
        callOff = () => void held.delete(again);
      };
      wait(turns);
      return () => callOff();
    },
  };
}
