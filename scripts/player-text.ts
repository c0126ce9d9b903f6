// The built player as a module, `virtual:player`, so that the command line can put it into a page that needs no other file.
import type { Plugin as EsbuildPlugin } from 'esbuild';

export interface PlayerText {
  readonly script: string;
  readonly style: string;
}

const name = 'virtual:player';
const source = ({ script, style }: PlayerText) =>
  `export const script = ${JSON.stringify(script)};\nexport const style = ${JSON.stringify(style)};\n`;

export function playerForEsbuild(player: PlayerText): EsbuildPlugin {
  return {
    name,
    setup(build) {
      build.onResolve({ filter: /^virtual:player$/ }, () => ({ path: name, namespace: 'player' }));
      build.onLoad({ filter: /.*/, namespace: 'player' }, () => ({ contents: source(player), loader: 'js' }));
    },
  };
}

/** The same for tests: the player is built the first time a test asks for it. */
export function playerForVitest(buildPlayer: () => Promise<PlayerText>) {
  return {
    name,
    resolveId: (id: string) => (id === name ? `\0${name}` : undefined),
    load: async (id: string) => (id === `\0${name}` ? source(await buildPlayer()) : undefined),
  };
}
