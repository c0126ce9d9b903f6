// Where the pictures of every view go to be looked at (test/out/views, which git ignores), and the sizes and themes they are taken in.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../build.ts';

export const folder = join(root, 'test/out/views');

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A phone on the bench, half a window, a whole one. */
export const sizes: readonly Size[] = [
  { width: 360, height: 740 },
  { width: 900, height: 800 },
  { width: 1600, height: 1000 },
];

export function startViews(kind: string): (name: string) => string {
  const own = join(folder, kind);
  rmSync(own, { recursive: true, force: true });
  mkdirSync(own, { recursive: true });
  const taken: string[] = [];
  return (name) => {
    const file = `${name}.png`;
    taken.push(file);
    // All on one page, to be leafed through.
    const cells = taken.map((one) => `<figure><a href="${one}"><img src="${one}" alt="${one}"></a><figcaption>${one}</figcaption></figure>`).join('\n');
    writeFileSync(join(own, 'index.html'), `<!doctype html><meta charset="utf-8"><title>${kind}</title><style>body{background:#888;display:grid;grid-template-columns:repeat(auto-fill,minmax(300px,1fr));gap:10px;align-items:start}figure{margin:0}img{width:100%}</style>${cells}`);
    return join(own, file);
  };
}
