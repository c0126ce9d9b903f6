// `npm run pictures`: every view as a picture to be looked at, in test/out/views; then what the README and the first minutes show. Name kinds to take
// only those: npm run pictures -- page docs
import { build } from '../build.ts';
import { ensureHost } from '../host.ts';
import { pack } from '../package.ts';
import { takeDocsViews } from './docs-views.ts';
import { takeEditorViews } from './editor-views.ts';
import { takeFirstMinutes } from './first-minutes.ts';
import { takeHandouts } from './handouts.ts';
import { takePageViews } from './page-views.ts';
import { takeReadme } from './readme.ts';

interface Kind {
  readonly take: () => Promise<void>;
  /** Taken from a real VS Code with the extension as coaches get it. */
  readonly inEditor: boolean;
}

const kinds: Readonly<Record<string, Kind>> = {
  page: { take: takePageViews, inEditor: false },
  docs: { take: takeDocsViews, inEditor: false },
  editor: { take: takeEditorViews, inEditor: true },
  handouts: { take: takeHandouts, inEditor: false },
  readme: { take: takeReadme, inEditor: true },
  'first-minutes': { take: takeFirstMinutes, inEditor: true },
};

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => kinds[name] === undefined);
if (unknown.length > 0) throw new Error(`There are no pictures called ${unknown.join(', ')}. There are: ${Object.keys(kinds).join(', ')}.`);
const chosen = Object.entries(kinds).filter(([name]) => wanted.length === 0 || wanted.includes(name));
if (chosen.some(([, { inEditor }]) => inEditor)) {
  await build();
  pack();
  ensureHost();
}
for (const [name, { take }] of chosen) {
  await take();
  console.log(`${name}: taken`);
}
