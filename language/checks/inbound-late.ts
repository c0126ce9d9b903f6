import { read } from '../court/sources.ts';
import { check } from './check.ts';
import { latest } from './clock.ts';

export const inboundLate = check({
  code: 'inbound-late',
  severity: 'error',
  needs: 'before',
  source: read('FIBA 17.3.1, NBA 8-III, NCAA 7-6.6, NFHS 7-6-2'),
  byRules: true,
  message: '{who} throws in {release:seconds} after he is handed the ball; the count is {count:seconds}. Let the receiver come sooner, or throw to a man who stands free.',
  manual: {
    title: 'A throw-in after the five seconds',
    why: 'The thrower has five seconds from the hand-over to the release (FIBA 17.3.1, NBA 8-III, NCAA 7-6.6, NFHS 7-6-2). A pass to a man who still has cuts to do waits for the last of them.',
    wrong: '3 inbounds from the left baseline\nfrom 5-out\n1 holds for 6 seconds, then cuts to top\n3 inbounds to 1\nlook 1: three',
    right: '3 inbounds from the left baseline\nfrom 5-out\n1 cuts to top\n3 inbounds to 1\nlook 1: three',
  },
  *find(subject) {
    const { throwIn } = subject.rules.counts;
    for (const { code, part, params, run, moment } of subject.timeline.problems) {
      if (code !== 'throw-in-late') continue;
      yield { part, params: { who: params.who ?? '', release: latest(Number(params.seconds) * 1000), count: params.limit ?? throwIn.value }, run, moment, source: throwIn.source };
    }
  },
});
