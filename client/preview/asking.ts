// The talk with the editor about changes by hand: one question at a time, the newest only, and what was written in the end.
import type { Intent } from '../../language/edit/intent.ts';
import { MESSAGES_VERSION, type FromPlayer, type Outcome } from './messages.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface Asking {
  /** Asks for the words of a change; while an answer is under way only the newest change waits. */
  readonly wouldBe: (intent: Intent) => void;
  /** Has it written. */
  readonly write: (intent: Intent, done: (outcome: Outcome) => void) => void;
  readonly fix: (code: string, finding: number, fix: number, done: (outcome: Outcome) => void) => void;
  /** The hand has let go without a change: no answer counts any more. */
  readonly drop: () => void;
  readonly hear: (outcome: Outcome) => void;
}

// An editor that does not answer is asked again.
const PATIENCE = 1500;
const LONGEST = 5000;

export function startAsking(post: (message: FromPlayer) => void, shown: () => { readonly play: string; readonly seq: number } | undefined, answered: (outcome: Outcome) => void): Asking {
  let made = 0;
  let dry: { readonly id: number; readonly since: number } | undefined;
  let waiting: Intent | undefined;
  let wanted: { readonly id: number; readonly done: (outcome: Outcome) => void } | undefined;

  function askDry(intent: Intent): void {
    const on = shown();
    if (on === undefined) return;
    waiting = undefined;
    dry = { id: ++made, since: performance.now() };
    post({ v: MESSAGES_VERSION, kind: 'intent', id: made, ...on, dry: true, intent });
  }

  function askReal(question: (asked: { readonly id: number; readonly play: string; readonly seq: number }) => FromPlayer, done: (outcome: Outcome) => void): void {
    const on = shown();
    if (on === undefined) return;
    drop();
    const id = ++made;
    wanted = { id, done };
    setTimeout(() => wanted?.id === id && hear({ v: MESSAGES_VERSION, kind: 'outcome', id, refused: tell(message('The editor does not answer. Try again.')) }), LONGEST);
    post(question({ id, ...on }));
  }

  function drop(): void {
    dry = undefined;
    waiting = undefined;
  }

  function hear(outcome: Outcome): void {
    if (outcome.id === wanted?.id) {
      const { done } = wanted;
      wanted = undefined;
      done(outcome);
    } else if (outcome.id === dry?.id) {
      dry = undefined;
      answered(outcome);
      if (waiting !== undefined) askDry(waiting);
    }
  }

  return {
    wouldBe(intent) {
      if (dry !== undefined && performance.now() - dry.since < PATIENCE) waiting = intent;
      else askDry(intent);
    },
    write: (intent, done) => askReal((asked) => ({ v: MESSAGES_VERSION, kind: 'intent', ...asked, dry: false, intent }), done),
    fix: (code, finding, fix, done) => askReal((asked) => ({ v: MESSAGES_VERSION, kind: 'fix', ...asked, code, finding, fix }), done),
    drop,
    hear,
  };
}
