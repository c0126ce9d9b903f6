// What still fits: "11 seconds left, side throw-in".
import type { PlayEntry } from '../../server/lsp/playbook-protocol.ts';

export const situations = ['any', 'live', 'sideline', 'baseline'] as const;
export type Situation = (typeof situations)[number];

export interface BenchQuestion {
  readonly seconds: number;
  readonly situation: Situation;
  /** `man` or a zone's name; absent: whatever they play. */
  readonly against?: string;
  /** The team stands in its places already, as after a time-out. */
  readonly set: boolean;
}

export interface BenchAnswer {
  /** Every look comes in time: the safest. In all three the quickest first, those with something wrong behind the others. */
  readonly everyLook: readonly Fit[];
  readonly firstLook: readonly Fit[];
  readonly tooLate: readonly Fit[];
}

export interface Fit {
  readonly play: PlayEntry;
  /** Whole seconds the first look needs, and all looks. */
  readonly needs: number;
  readonly needsAll: number;
  /** Names of the looks that come in time, where not all do. */
  readonly inTime: readonly string[];
}

export function whatFits(plays: readonly PlayEntry[], { seconds, situation, against, set }: BenchQuestion): BenchAnswer {
  const fits = plays
    .filter((play) => suits(play, situation) && (against === undefined || play.against === against || (against === 'press' && play.against?.endsWith(' press') === true)))
    .flatMap((play): Fit[] => {
      if (play.first === null) return [];
      const all = play.all ?? play.first;
      const saved = set ? play.first.fromCall - play.first.alreadySet : 0;
      return [{
        play,
        needs: play.first.fromCall - saved,
        needsAll: set ? all.alreadySet : all.fromCall,
        inTime: play.looks.filter((look) => look.needs - saved <= seconds).map(({ label }) => label),
      }];
    })
    .sort((a, b) => Number(a.play.errors > 0) - Number(b.play.errors > 0) || a.needs - b.needs || a.needsAll - b.needsAll || a.play.name.localeCompare(b.play.name));
  return {
    everyLook: fits.filter(({ needsAll }) => needsAll <= seconds),
    firstLook: fits.filter(({ needs, needsAll }) => needs <= seconds && needsAll > seconds),
    tooLate: fits.filter(({ needs }) => needs > seconds),
  };
}

function suits({ throwIn }: PlayEntry, situation: Situation): boolean {
  if (situation === 'any') return true;
  return situation === 'live' ? throwIn === null : throwIn === situation;
}

/** What is said of each, in the languages the extension speaks. */
const said: readonly (readonly [RegExp, Situation])[] = [
  [/\b(?:side|seite)/i, 'sideline'],
  [/\b(?:base|grundlinie|endlinie)|\bunder\b|\bunter/i, 'baseline'],
  [/\blive\b|\bcourt\b|\blaufend|\bim spiel\b/i, 'live'],
  [/\bany|überall/i, 'any'],
];
const man = /\bman\b|\bmann(?!schaft)/i;
const press = /\bpress\b|press(?:e|ing)\b/i;
const inPlace = /\bset\b|time-?out|auszeit|aufgestellt|\bplätzen\b/i;

/** Reads what a coach types or says: `11`, `11 side`, "11 seconds left, side throw-in". Undefined where no number stands. */
export function readBenchWords(text: string): Partial<BenchQuestion> | undefined {
  const zone = /\b\d-\d(?:-\d)?\b/.exec(text)?.[0];
  const number = /\d+(?:[.,]\d+)?/.exec(zone === undefined ? text : text.replace(zone, ' '))?.[0];
  if (number === undefined) return undefined;
  const seconds = Number(number.replace(',', '.'));
  if (seconds > 3600) return undefined;
  const against = [zone ?? (man.test(text) ? 'man' : ''), press.test(text) ? 'press' : ''].filter((word) => word !== '').join(' ');
  const situation = said.find(([words]) => words.test(text))?.[1];
  return { seconds, ...(situation !== undefined && { situation }), ...(against !== '' && { against }), ...(inPlace.test(text) && { set: true }) };
}
