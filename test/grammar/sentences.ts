import type { Wanted } from '../../language/grammar/reading/follow.ts';
import { lineParser } from '../../language/grammar/reading/line-parser.ts';

/** mulberry32: a small random generator with a written seed, values in [0, 1). */
export function random(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function pick<T>(from: readonly T[], next: () => number): T {
  return from[Math.floor(next() * from.length)]!;
}

const SAMPLES: { readonly [terminal: string]: readonly string[] } = {
  STRING: ['"Zip"', '"Big Middle"', '"Überzahl 🏀"', '“curly”', '"with # inside"'],
  SECONDS: ['2 s', '4 seconds', '1.5 sec', '1 second'],
  SPEED: ['5 m/s', '18 ft/s'],
  LENGTH: ['2 ft', '1 m', '30 cm', '6 inches', '1.5 metres'],
  FORM: ['2-3', '3-2', '1-3-1', '2-2-1'],
  XPLAYER: ['X1', 'X4', 'x5'],
  PLAYER: ['1', '2', '3', '4', '5'],
  SUBJECT: ['1', '2', '3', '4', '5', 'X2'],
  NUMBER: ['6', '22', '4.5'],
  NEGATIVE: ['-3.5', '-1'],
  LABEL: ['crowding', 'late-screen', 'last shot'],
};

/** One of the words wanted; every way through the grammar has the same chance, however many words it offers. */
function choose(wanted: readonly Wanted[], next: () => number): Wanted {
  let left = wanted;
  for (let depth = 0; left.length > 1; depth++) {
    const ways = new Map<string, Wanted[]>();
    for (const want of left) {
      const step = want.path[depth] ?? '';
      ways.set(step, [...(ways.get(step) ?? []), want]);
    }
    if (ways.size === 1 && ways.has('')) break;
    left = pick([...ways.values()], next);
  }
  return pick(left, next);
}

/** `longest` in characters; `kind`: only lines of this kind, such as Statement. A sentence drawn from the network over the grammar: right by construction, if rarely good basketball. */
export function drawSentence(seed: number, { longest = 120, kind }: { readonly longest?: number; readonly kind?: string } = {}): string {
  const { follow, lexer } = lineParser();
  const next = random(seed);
  for (;;) {
    let configs = follow.start;
    let line = '';
    let afterSubject = false;
    for (;;) {
      if (!afterSubject && follow.canEnd(configs) && next() < 0.3) break;
      const wanted = follow.expected(configs).filter(({ token, path }) => (!afterSubject || lexer.verbs.has(token)) && (line !== '' || kind === undefined || path[0] === kind));
      if (!wanted.length) break;
      const word = choose(wanted, next);
      const text = word.isKeyword ? word.token : pick(SAMPLES[word.token]!, next);
      line += word.token === ',' || word.token === ':' || line === '' ? text : ` ${text}`;
      afterSubject = word.token === 'SUBJECT';
      configs = follow.step(configs, word.token);
      if (line.length > longest) break;
    }
    if (line.length <= longest && !afterSubject && follow.canEnd(configs)) return line;
  }
}
