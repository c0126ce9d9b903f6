import { expect, test } from 'vitest';
import { check } from '../../language/checks/check.ts';
import { fillTemplate } from '../../language/message/template.ts';
import { toldByTimeline } from '../../language/checks/told-by-timeline.ts';

test('a message holds its numbers with their units', () => {
  expect(fillTemplate('{who} is {late:seconds} late', { who: '3', late: 1.26 })).toBe('3 is 1.3 s late');
  expect(fillTemplate('{late:seconds}', { late: 16 })).toBe('16 s');
});

test('a parameter that is not there never breaks a message', () => {
  expect(fillTemplate('{who} waits', {})).toBe('(?) waits');
});

test('the compiler refuses a message that asks for what its check does not give', () => {
  check({
    code: 'x', severity: 'hint', needs: 'line', message: '{who} waits', manual: { title: '', why: '' },
    // @ts-expect-error the parameter `who` is missing
    *find() {
      yield { part: 'start/1.1', params: {} };
    },
  });
  const incomplete = { 'bodies-overlap': toldByTimeline['bodies-overlap'] };
  // @ts-expect-error a code without words
  const all: typeof toldByTimeline = incomplete;
  expect(all).toBeDefined();
});
