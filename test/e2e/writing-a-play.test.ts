// A coach takes a step out of the example and writes it again, is told what cannot work, mends it, and watches the picture
// change while he types.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Locator } from 'playwright-core';
import { root } from '../../scripts/build.ts';
import { atRest, besideItsText, closeProblems, goTo, openFile, panel, problems, selection } from './editor.ts';
import { clickUntil, doUntil } from './gestures.ts';
import { inRealVsCode, screenshot, type Editor } from './window.ts';
import { until } from './vscode.ts';

const middle = ['  step "Middle"', '    1 passes to 3', '    4 ball-screens for 3, then rolls', '    3 drives off 4 to right elbow', '    look 3 "pull-up": jumper', '    look 4 on the roll: layup', '    look 2 "corner": three'];

// The example as each test finds it, in a file of its own: one may be tried again without those before it.
const whole = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8').split('\n');
const at = whole.indexOf(middle[0]!);
const inPlaceOfMiddle = (name: string, lines: readonly string[]) => [...whole.slice(0, at), ...lines, ...whole.slice(at + middle.length)].join('\n').replace('"Lighthouse"', `"${name}"`);
const files = {
  'to-take-out.play': inPlaceOfMiddle('To take out', middle),
  'taken-out.play': inPlaceOfMiddle('Taken out', []),
  'first-word.play': inPlaceOfMiddle('First word', middle),
  'with-enter.play': inPlaceOfMiddle('With Enter', [middle[0]!, '    1 passes to 3', '    1 screens for 3']),
  'left-behind.play': 'play "Left behind"\n  from horns, ball with 1\n\n  step "Open"\n    1 dribbles to left wing\n    look 1: jumper\n',
  'quick-hand.play': 'roster "Ours"\n  1 "Pip"\n\nplay "Quick"\n  from horns, ball with 1\n\n  step "Open"\n    1 dribbles to left wing\n    look 1: jumper\n',
  'half-written.play': inPlaceOfMiddle('Half written', [middle[0]!, '    1 passes to 3', '    1 screens for 3']),
};

inRealVsCode(
  'a coach writes a play',
  (editor) => {
    const keyboard = () => editor().page.keyboard;
    const floor = () => panel(editor());
    const seq = async () => Number(await floor().locator('html').getAttribute('data-seq'));
    const placeOf = async (body: string) => (await floor().locator(`g[data-body="${body}"]`).getAttribute('transform')) ?? '';
    const time = async () => Number(await floor().locator('input.time').inputValue());

    /** Types letter by letter, as a person does. */
    const type = (words: string) => keyboard().type(words, { delay: 25 });

    /** Takes an entry of the list that is open, found by its first letters. */
    async function take(label: string | RegExp) {
      const focused = editor().page.locator('.suggest-widget.visible .monaco-list-row.focused');
      await focused.filter({ hasText: label }).waitFor();
      await keyboard().press('Tab');
    }

    /** A word that is typed to its end has no list over the lines below. */
    const noList = () => editor().page.locator('.suggest-widget.visible').waitFor({ state: 'hidden' });

    test('opens it and the play stands beside the text', async () => {
      await openFile(editor(), 'lighthouse.play');
      await clickUntil(editor(), editor().page.locator('.editor-actions a[aria-label*="Show the play"]').first(), 'the panel opens', () => editor().page.locator('iframe.webview.ready').first().isVisible(), 10_000);
      await floor().locator('.figure').first().waitFor();
      await until('the picture is drawn', async () => (await seq()) > 0);
      expect(await floor().locator('g[data-body]').count()).toBeGreaterThanOrEqual(5);
      await screenshot(editor(), 'play beside the text');
    });

    test('is offered the words that can open a line with its first letter', async () => {
      await besideItsText(editor(), 'first-word.play');
      await goTo(editor(), at + middle.length, 5);
      await keyboard().press('End');
      await keyboard().press('Enter');
      await type('s');
      await editor().page.locator('.suggest-widget.visible .monaco-list-row', { hasText: /^step/ }).first().waitFor();
      await keyboard().press('Escape');
    });

    test('takes the step "Middle" out: only the line that names it is underlined', async () => {
      await besideItsText(editor(), 'to-take-out.play');
      await goTo(editor(), 20);
      for (let line = 0; line < 7; line++) await keyboard().press('Shift+ArrowDown');
      await keyboard().press('Shift+Home');
      await keyboard().press('Shift+Home');
      await keyboard().press('Delete');
      const rows = await problems(editor());
      await rows.filter({ hasText: 'Middle' }).first().waitFor();
      await screenshot(editor(), 'step taken out');
      await closeProblems(editor());
    });

    test('has 1 screen while he has the ball, is told so, and takes the mend', async () => {
      const text = await besideItsText(editor(), 'taken-out.play');
      await goTo(editor(), 20);
      await type('  step "Middle"');
      await keyboard().press('Escape');
      await keyboard().press('Enter');
      await type('1 screens for 3');
      await text.locator('.squiggly-error').first().waitFor();
      const rows = await problems(editor());
      await rows.filter({ hasText: /1 sets a screen while he has the ball/ }).first().waitFor();
      await screenshot(editor(), 'screen with the ball');
      await closeProblems(editor());
      const menu = editor().page.locator('.action-widget');
      const mended = async () => (await linesShown(text, middle[0]!, 3)).join() === [middle[0], '    1 passes to 3', '    1 screens for 3'].join();
      const mends = async () => {
        if (await mended()) return;
        await goTo(editor(), 21, 8);
        await keyboard().press('Control+.');
        await menu.getByText(/Pass to 3 first/).first().waitFor();
        await screenshot(editor(), 'the mend in the menu');
        await keyboard().press('Enter');
      };
      await doUntil(editor(), 'the pass stands above the screen', mends, mended, 8000);
      await until('that error is gone', async () => !(await problemsSay(editor(), /while he has the ball/)));
      await closeProblems(editor());
    });

    test('writes the step from nothing, mostly by choosing', async () => {
      const text = await besideItsText(editor(), 'half-written.play');
      // The list of men opens by itself, without 1: nobody passes to himself.
      const men = editor().page.locator('.suggest-widget.visible .monaco-list-row');
      const atTheTop = men.filter({ hasText: 'top' }).first();
      let written = false;
      const choosePass = async () => {
        await goTo(editor(), 21);
        if (!written) await keyboard().press('Shift+ArrowDown');
        await keyboard().press('Shift+End');
        await type('    1 pa');
        written = true;
        // A busy window still shows the list of the letter before, with whole sentences: “1 passes to …” brings men without their places.
        await take(/^passes to/);
      };
      await doUntil(editor(), 'the list of men opens', choosePass, () => atTheTop.isVisible(), 8000);
      expect((await men.allInnerTexts()).filter((row) => /^1/.test(row))).toEqual([]);
      await screenshot(editor(), 'who can catch');
      await type('3');
      await noList();
      await keyboard().press('Enter');
      await type('4 ball');
      await take('ball-screens for');
      // He with the ball stands first.
      await take('3');
      await type(', then ro');
      await take('rolls');
      await keyboard().press('Enter');
      await type('3 driv');
      await take('drives');
      await type(' off ');
      await take('4');
      await type(' to right el');
      await take('right elbow');
      await keyboard().press('Enter');
      await type('look 3 "pull-up": ju');
      await take('jumper');
      await keyboard().press('Enter');
      await type('look 4 on the roll: lay');
      await take('layup');
      await keyboard().press('Enter');
      await type('look 2 "corner": thr');
      await take('three');
      await expect.poll(() => linesShown(text, middle[0]!, middle.length)).toEqual(middle);
      await keyboard().press('Escape');
      await until('nothing is underlined', async () => (await text.locator('.squiggly-error, .squiggly-warning').count()) === 0);
      await until('the run-throughs are there again', async () => (await floor().locator('body').innerText()).includes('pull-up'));
      await text.getByText(/→\s\d+\.\d\ss/).first().waitFor();
      await screenshot(editor(), 'step written again');
    });

    test('ends the line with Enter, whatever the list has marked; the list itself tells of the Tab key', async () => {
      const text = await besideItsText(editor(), 'with-enter.play');
      await goTo(editor(), 21);
      await keyboard().press('Shift+End');
      await type('    1 pa');
      const list = editor().page.locator('.suggest-widget.visible');
      await list.locator('.monaco-list-row.focused').filter({ hasText: 'passes to' }).waitFor();
      expect(await list.locator('.suggest-status-bar').innerText()).toMatch(/Tab/);
      await screenshot(editor(), 'the list tells of the Tab key');
      await keyboard().press('Enter');
      await type('5 stays');
      await expect.poll(() => linesShown(text, '    1 pa', 2)).toEqual(['    1 pa', '    5 stays']);
    });

    test('asks for a window that is too short and is told which look is late', async () => {
      const text = await besideItsText(editor(), 'lighthouse.play');
      await goTo(editor(), 10, 15);
      await keyboard().press('Delete');
      await text.locator('.squiggly-error, .squiggly-warning').first().waitFor();
      const rows = await problems(editor());
      await rows.filter({ hasText: /6 s/ }).first().waitFor();
      await screenshot(editor(), 'window too short');
      await closeProblems(editor());
      await goTo(editor(), 10, 15);
      await keyboard().type('1');
      await until('nothing is underlined', async () => (await text.locator('.squiggly-error, .squiggly-warning').count()) === 0);
    });

    test('a line left with its last word wrong is told as the mistake it is, and a step typed below a look comes out', async () => {
      const { page } = editor();
      const text = await besideItsText(editor(), 'left-behind.play');
      await goTo(editor(), 6, 8);
      await keyboard().press('End');
      await keyboard().press('Enter');
      await type('2 cuts to corner right');
      await text.locator('.squiggly-hint').first().waitFor({ state: 'attached' });
      expect(await text.locator('.squiggly-error').count()).toBe(0);
      // Not with an arrow key: it goes to the list, which opens late on a busy machine.
      await goTo(editor(), 6, 8);
      await text.locator('.squiggly-error').first().waitFor({ state: 'attached' });
      await goTo(editor(), 7, 9);
      await keyboard().press('End');
      await keyboard().press('Enter');
      await type('step "');
      await until('the step stands in the column of steps', async () => /^ {2}step ""?$/m.test((await text.locator('.view-lines').innerText()).replaceAll('\u00a0', ' ')));
      await page.keyboard.press('Escape');
    });

    test('a quick hand writes on before a line is set: it is set as soon as it rests', async () => {
      const text = await besideItsText(editor(), 'quick-hand.play');
      await goTo(editor(), 9, 8);
      await keyboard().press('End');
      await keyboard().press('Enter');
      await type('step "Slip');
      await keyboard().press('End');
      await keyboard().press('Enter');
      await type('4 cut to rim');
      // Whether VS Code closes the quote is its own affair: on a busy machine it did not, once.
      await expect.poll(async () => (await allLinesShown(text)).join('\n')).toMatch(/^ {2}step "Slip"?\n {4,6}4 cut to rim$/m);
      await keyboard().press('Escape');
      // Twice Enter behind the last man: the number of one more is gone, however soon he goes on.
      await goTo(editor(), 2, 8);
      await keyboard().press('End');
      await keyboard().press('Enter');
      await type('"Wren"');
      await keyboard().press('Enter');
      await keyboard().press('Enter');
      await expect.poll(() => linesShown(text, 'roster "Ours"', 4)).toEqual(['roster "Ours"', '  1 "Pip"', '  2 "Wren"', '']);
    });

    test('types where they start, and the picture changes with the word', async () => {
      const text = await besideItsText(editor(), 'lighthouse.play');
      await goTo(editor(), 7, 8);
      await until('the time mark is at the call', async () => (await time()) === 0);
      const [before, at] = [await placeOf('3'), await seq()];
      await keyboard().press('Shift+Control+ArrowRight');
      await type('horn');
      // `horn` is no alignment yet: the picture stays, marked as older than the text.
      await until('the picture says that it is older than the text', async () => (await floor().locator('.stale').innerText()).includes('line 7'));
      expect(await placeOf('3')).toBe(before);
      await screenshot(editor(), 'older than the text');
      await type('s');
      await until('3 stands elsewhere', async () => (await placeOf('3')) !== before);
      expect(await seq()).toBeGreaterThan(at);
      await until('the mark is gone', async () => !(await floor().locator('.stale').isVisible()));
      const written = whole[6]!;
      // One at a time, each seen: what was done before this test is not to be undone.
      const lines = async () => (await text.locator('.view-lines').innerText()).replaceAll('\u00a0', ' ');
      for (let times = 0; times < 8 && (await linesShown(text, written, 1))[0] !== written; times++) {
        const before = await lines();
        await keyboard().press('Control+z');
        await until('a step is undone', async () => (await lines()) !== before);
      }
      await until('3 stands where he stood', async () => (await placeOf('3')) === before);
    });

    test('moves the cursor, and the time goes along', async () => {
      await besideItsText(editor(), 'lighthouse.play');
      await goTo(editor(), 15, 6);
      await until('the dribble begins', async () => (await time()) > 1000);
      const dribble = await time();
      await goTo(editor(), 23, 6);
      await until('the drive comes later', async () => (await time()) > dribble);
      await until('3 is lit', async () => (await floor().locator('.lane .who.lit').allInnerTexts()).includes('3'));
      await screenshot(editor(), 'at the drive');
    });

    test('clicks a bar and a man, and their words are selected', async () => {
      await besideItsText(editor(), 'lighthouse.play');
      await goTo(editor(), 23, 6);
      await atRest(floor());
      await clickUntil(editor(), floor().locator('.lane .mark[aria-label*="clears"]').first(), 'the words of the bar are selected', async () => /^Ln 18,.*\(24 selected\)/.test(await selection(editor())));
      await screenshot(editor(), 'words selected');
      await atRest(floor());
      const click = () => floor().locator('.handle[data-handle$=" 1"]').click({ force: true });
      await doUntil(editor(), 'the words of the man are selected', click, async () => /^Ln (?!18,)\d+,.* selected\)/.test(await selection(editor())));
    });
  },
  { files, size: { width: 1600, height: 1000 } },
);

/** The lines of the text, without the blanks that VS Code puts in. */
async function allLinesShown(text: Locator): Promise<string[]> {
  return text.locator('.view-lines .view-line').evaluateAll((lines) =>
    lines
      .map((line) => ({ top: Number.parseFloat((line as HTMLElement).style.top), words: (line.textContent ?? '').replaceAll('\u00a0', ' ').replaceAll(/[\u200b\u200c]/g, '') }))
      .sort((a, b) => a.top - b.top)
      // The running clock behind a line is no part of the text.
      .map(({ words }) => words.replace(/\s*→ \d+\.\d s$/, '').trimEnd()),
  );
}

/** Those from the one that reads `first`; all where there is none. */
async function linesShown(text: Locator, first: string, count: number): Promise<string[]> {
  const shown = await allLinesShown(text);
  const at = shown.indexOf(first);
  return at < 0 ? shown : shown.slice(at, at + count);
}

async function problemsSay(editor: Editor, words: RegExp): Promise<boolean> {
  const rows = await problems(editor);
  return (await rows.allInnerTexts()).some((line) => words.test(line));
}
