import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Frame, Page } from 'playwright-core';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface Answer {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[] }[];
}

/** What axe-core finds wrong in a page or one of its frames, one line each: WCAG 2.2 A and AA and its own best practices. */
export async function accessibilityFaults(page: Page | Frame): Promise<readonly string[]> {
  // As a text of the driver's own, past the page's policy, which lets no foreign script in.
  await page.evaluate(readFileSync(axePath, 'utf8'));
  const { violations } = await page.evaluate<Answer>(`axe.run(document, { runOnly: ${JSON.stringify(rules)} })`);
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`));
}
