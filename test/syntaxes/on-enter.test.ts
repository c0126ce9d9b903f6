// What the editor itself brings along on Enter, without the language server.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';

describe('Enter', () => {
  interface Rule {
    readonly beforeText: { readonly pattern: string; readonly flags?: string };
    readonly afterText?: string;
    readonly action: { readonly indent: string; readonly appendText?: string };
  }
  const { onEnterRules } = JSON.parse(readFileSync(join(root, 'syntaxes/language-configuration.json'), 'utf8')) as { readonly onEnterRules: readonly Rule[] };
  /** What a new line starts with beside the blanks; the first rule that fits counts. */
  const enter = (before: string, after = '') => {
    const rule = onEnterRules.find(({ beforeText, afterText }) => new RegExp(beforeText.pattern, beforeText.flags).test(before) && (afterText === undefined || new RegExp(afterText).test(after)));
    return rule === undefined ? undefined : (rule.action.appendText ?? rule.action.indent);
  };

  test.each([
    ['  1 "Wren", fast', '', '2 '],
    ['  9 "Otis"', '', '10 '],
    ['  1 top', '', '2 '],
    ['  3 at left corner', '', '4 '],
    ['  4 at right block # low', '', '5 '],
    ['play "Reed"', '', 'indent'],
    ['  step "Zip"', '', 'indent'],
    ['# half a remark', ' goes on', '# '],
    ['    4 ball-screens for 1, then', '', '4 '],
    ['    3 cuts to rim then', '', '3 '],
  ])('after %j%s counts on, goes in or goes on with the same man', (before, after, brings) => {
    expect(enter(before, after)).toBe(brings);
  });

  test.each(['    1 passes to 2', '    3 cuts off 5 to top', '  5 at left block', '    2 seconds later, 3 cuts', '    look 3 "pull-up": jumper', '  note 1 "go"', '    4 and 5 close behind him', '# a whole remark', '  1 at top, 2 at left wing', '    1 passes to 2,', '    2 seconds later, then', '    1 and 2 cut, then', '    look 3, then', '    5 rolls # then'])('after %j brings nothing', (before) => {
    expect(enter(before)).toBeUndefined();
  });
});
