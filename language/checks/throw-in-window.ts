import { check } from './check.ts';
import { latest } from './clock.ts';
import { throwInOf } from './moments.ts';

export const throwInWindow = check({
  code: 'throw-in-window',
  severity: 'warning',
  needs: 'before',
  source: 'what the play itself asks for',
  message: '{who} throws in {release:seconds} after he is handed the ball, and it is to be away within {asked:seconds}. Let the receiver come sooner.',
  manual: {
    title: 'A throw-in after the time you gave it',
    why: '`inbound within 4 seconds` is your own window, up to the release. What the rule set counts is told by itself.',
    wrong: '3 inbounds from the left baseline\nfrom 5-out\ninbound within 2 seconds\n1 cuts to half court, then cuts to top\n3 inbounds to 1\nlook 1: three',
    right: '3 inbounds from the left baseline\nfrom 5-out\ninbound within 2 seconds\n3 inbounds to 1\nlook 1: three',
  },
  *find(subject) {
    const { inboundWithin } = subject.play.clock;
    if (inboundWithin === undefined) return;
    const limit = subject.rules.counts.throwIn.value;
    for (const { run, actions } of subject.ways) {
      const out = throwInOf(run);
      const pass = actions.find((action) => action.kind === 'pass' && action.throwIn);
      // After the rule set's own count its check speaks.
      if (out === undefined || pass === undefined || out.t1 <= inboundWithin * 1000 || out.t1 > limit * 1000) continue;
      yield { part: pass.id, params: { who: out.by, release: latest(out.t1), asked: inboundWithin }, run: run.id, moment: out.t1 };
    }
  },
});
