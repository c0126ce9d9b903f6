// The changed plays as pictures: a strip before and one after of each, and a page that shows them beside each other with what has changed.
import { join } from 'node:path';
import { fileNameOf } from '../../language/book/slug.ts';
import type { Finding } from '../../language/checks/finding.ts';
import type { Compiled } from '../../language/compile.ts';
import { escapeText } from '../../language/picture/nodes.ts';
import { drawPlay } from '../../language/picture/strip.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Change, Comparison } from './comparison.ts';
import { freeName } from './free-name.ts';
import { lastVersion, lookCells, sayCall, sayKind, sayPart, summary } from './say-change.ts';
import { makeFolder, writeFile } from './write-result.ts';
import { remark } from './terminal.ts';

/** Of a play that looks as it did there is one picture, `after`. */
export interface PictureNames {
  readonly before?: string;
  readonly after?: string;
}

/** Writes `tide-before.svg`, `tide-after.svg` … and `index.html`; returns what the files of each play are called. */
export function writePictures(comparison: Comparison, folder: string): ReadonlyMap<Change, PictureNames> {
  makeFolder(folder);
  const used = new Set<string>();
  const drawn = comparison.changes.map((change) => ({ change, name: freeName(fileNameOf(lastVersion(change).play.name), used), ...pictures(change) }));
  const names = new Map<Change, PictureNames>();
  for (const { change, name, before, after } of drawn) {
    const files = { ...(before !== undefined && { before: `${name}-before.svg` }), ...(after !== undefined && { after: `${name}-after.svg` }) };
    names.set(change, files);
    if (before !== undefined) writeFile(join(folder, files.before!), before);
    if (after !== undefined) writeFile(join(folder, files.after!), after);
  }
  const page = join(folder, 'index.html');
  writeFile(page, pageOf(comparison, drawn));
  remark(`Wrote ${page}, and each picture beside it.`);
  return names;
}

interface Drawn {
  readonly change: Change;
  readonly before?: string | undefined;
  readonly after?: string | undefined;
}

function pictures(change: Change): Omit<Drawn, 'change'> {
  const draw = (version: Compiled) => drawPlay(playbackOf(version));
  const [before, after] = [change.kind === 'came' ? undefined : draw(change.before), change.kind === 'went' ? undefined : draw(change.after)];
  return before === after ? { after } : { before, after };
}

const style = `:root{color-scheme:light dark}body{margin:0 auto;padding:1rem;max-width:110rem;font:1rem/1.5 system-ui,sans-serif}
h2{margin:2.5rem 0 0}h2 small{font-weight:400}ul{margin:.5rem 0;padding-inline-start:1.2rem}ul ul{margin:0;list-style:none;padding:0}
.two{display:grid;grid-template-columns:repeat(auto-fill,minmax(max(min(30rem,100%),50% - 1rem),1fr));gap:1rem;align-items:start}
figure{margin:0}figcaption{font-weight:600}img{display:block;width:100%;height:auto;border:1px solid #8888}
del,ins{text-decoration:none}del::before{content:"− "}ins::before{content:"+ "}
@media print{section{break-inside:avoid}}`;

function pageOf(comparison: Comparison, drawn: readonly Drawn[]): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>What has changed in the plays</title>
<style>${style}</style>
</head>
<body>
<h1>What has changed in the plays</h1>
<p>${escapeText(summary(comparison))}</p>
${drawn.map(sectionOf).join('\n')}
</body>
</html>
`;
}

function sectionOf({ change, before, after }: Drawn): string {
  const name = escapeText(lastVersion(change).play.name);
  const lines = change.kind !== 'changed' ? [] : change.parts.map((part) => `<li>${escapeText(sayPart(part))}<ul>${part.lines.map(({ kind, text }) => `<li>${kind === 'came' ? `<ins>${escapeText(text)}</ins>` : `<del>${escapeText(text)}</del>`}</li>`).join('')}</ul></li>`);
  const told = toldOf(change).map((words) => `<li>${escapeText(words)}</li>`);
  const figure = (what: string, svg: string | undefined) => (svg === undefined ? '' : `<figure><figcaption>${what}</figcaption><img alt="${name}, ${what.toLowerCase()}" src="data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}"></figure>`);
  const same = change.kind === 'changed' && before === undefined;
  return `<section><h2>${name} <small>${escapeText(sayKind(change))}</small></h2>
${lines.length + told.length === 0 ? '' : `<ul>${[...lines, ...told].join('')}</ul>`}
<div class="two">${figure('Before', before)}${figure(same ? 'Before and after: the picture is the same' : 'After', after)}</div></section>`;
}

/** What it costs in seconds, and what is wrong since: whoever has only the page has it too. */
function toldOf(change: Change): readonly string[] {
  const finding = (what: string, { message }: Finding) => `${what}: ${message}`;
  if (change.kind === 'came') return change.after.findings.map((one) => finding(one.severity, one));
  if (change.kind === 'went') return [];
  return [
    ...change.looks.map((look) => lookCells(look)).map(([look, typical, late]) => `${look}: typically ${typical}, late ${late}`),
    ...sayCall('the first look', change.firstLook), ...sayCall('every look', change.allLooks),
    ...change.findings.came.map((one) => finding(`new ${one.severity}`, one)), ...change.findings.went.map((one) => finding(`${one.severity} gone`, one)),
  ];
}
