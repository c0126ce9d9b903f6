// The panel keeps its play through themes, follows the coach to another play, and takes every name for a name.
import { expect, test } from 'vitest';
import { accessibilityFaults } from '../support/accessibility.ts';
import { atRest, besideItsText, chooseTheme, goTo, openFile, panel, panelFrame, runAsking, toText } from './editor.ts';
import { doUntil, pressTwo, pressUntil } from './gestures.ts';
import { inRealVsCode, screenshot } from './window.ts';
import { until } from './vscode.ts';

const nasty = '<img src=x onerror=alert(1)>';
const nastyPlay = `play "${nasty}"
  from horns
  1 passes to 2
  look 2 "](command:workbench.action.quit)": three

play "Second"
  from box
  1 dribbles to left wing
  look 1: jumper
`;

inRealVsCode(
  'the play beside the text',
  (editor) => {
    const floor = () => panel(editor());
    const time = async () => Number(await floor().locator('input.time').inputValue());
    const shows = (title: string) => until(`the panel shows ${title}`, async () => (await floor().locator('h1').first().innerText().catch(() => '')).includes(title));
    const inPanel = () => floor().locator('html').evaluate(() => document.hasFocus());
    const toPanel = () => doUntil(editor(), 'the panel has the keyboard', () => floor().locator('h1').click(), inPanel);

    test('opens by its key, and a name that looks like markup is a name', async () => {
      const wrong: string[] = [];
      editor().page.on('dialog', (dialog) => void dialog.dismiss().then(() => wrong.push('a dialog')));
      editor().page.on('console', (message) => /Content Security Policy/.test(message.text()) && /setwright|player/.test(message.text()) && wrong.push(message.text()));
      await openFile(editor(), 'nasty.play');
      const byKey = async () => {
        await toText(editor());
        await pressTwo(editor(), 'Control+k', 'v');
      };
      await doUntil(editor(), 'the panel opens', byKey, () => editor().page.locator('iframe.webview.ready').first().isVisible(), 10_000);
      await shows(nasty);
      expect(await floor().locator('img').count()).toBe(0);
      expect(wrong).toEqual([]);
      // Only the player's own script, by a number of this panel; nothing inline, no other server.
      const policy = (await floor().locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content'))!;
      expect(policy).toMatch(/default-src 'none'; script-src 'nonce-[\w+/=]{20,}'; style-src (?!.*'unsafe)/);
      expect(policy).not.toMatch(/unsafe|\*(?!\.)/);
      await screenshot(editor(), 'a name like markup');
    });

    test('goes with the cursor to another play', async () => {
      await besideItsText(editor(), 'nasty.play');
      await goTo(editor(), 8, 6);
      await shows('Second');
      await editor().page.locator('.tab', { hasText: 'Second' }).waitFor();
    });

    test('goes with the coach to another file', async () => {
      await besideItsText(editor(), 'nasty.play');
      await openFile(editor(), 'lighthouse.play');
      await shows('Lighthouse');
    });

    test('axe-core finds nothing in the panel in any theme, nor in forced colours with what can be taken hold of', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      for (const [theme, file] of [['Dark Modern', 'dark'], ['Dark High Contrast', 'high contrast'], ['Light High Contrast', 'light high contrast'], ['Light Modern', 'light']] as const) {
        await chooseTheme(editor(), theme);
        await goTo(editor(), 22, 6);
        await until('the time is that of the screen', async () => (await time()) > 1000);
        await atRest(floor());
        expect(await accessibilityFaults(await panelFrame(editor())), theme).toEqual([]);
        await screenshot(editor(), `play in the ${file}`);
      }
      await page.emulateMedia({ forcedColors: 'active' });
      await atRest(floor());
      expect(await floor().locator('.handle').count()).toBeGreaterThan(3);
      expect(await accessibilityFaults(await panelFrame(editor())), 'forced colours').toEqual([]);
      await screenshot(editor(), 'play in forced colours');
      await page.emulateMedia({ forcedColors: 'none' });
    });

    test('with less motion the panel goes from moment to moment', async () => {
      await besideItsText(editor(), 'lighthouse.play');
      await editor().page.emulateMedia({ reducedMotion: 'reduce' });
      await toPanel();
      await pressUntil(editor(), 'Home', 'the time is at the call', async () => (await time()) === 0);
      await editor().page.keyboard.press('Space');
      // What a frame shows: of a glide there would be a new place in each.
      const places = await floor().locator('html').evaluate(
        () =>
          new Promise<number>((done) => {
            const seen = new Set<string | null>();
            const start = performance.now();
            const look = () => {
              seen.add(document.querySelector('g[data-body="1"]')!.getAttribute('transform'));
              if (performance.now() - start < 1500) requestAnimationFrame(look);
              else done(seen.size);
            };
            look();
          }),
      );
      expect(places).toBeLessThanOrEqual(4);
      await editor().page.keyboard.press('Space');
      await editor().page.emulateMedia({ reducedMotion: 'no-preference' });
    });

    test('by the keyboard alone, from a new play to one that moves', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      await runAsking(editor(), 'Setwright: New play from an alignment', ['At the end', 'Night ferry', 'horns', 'against man']);
      await shows('Night ferry');
      await page.keyboard.press('Control+End');
      await pressUntil(editor(), 'Control+2', 'the panel has the keyboard', inPanel);
      await pressUntil(editor(), 'Home', 'the time is at the call', async () => (await time()) === 0);
      await page.keyboard.press('Space');
      await until('it moves', async () => (await time()) > 700);
      await pressUntil(editor(), 'Space', 'it stands', () => floor().getByRole('button', { name: 'Play', exact: true }).isVisible());
      // It may have come to its end meanwhile.
      await pressUntil(editor(), 'Home', 'the time is at the call again', async () => (await time()) === 0);
      await pressUntil(editor(), 'ArrowRight', 'the next moment', async () => (await time()) > 0);
      await toText(editor());
    });
  },
  { files: { 'nasty.play': nastyPlay } },
);
