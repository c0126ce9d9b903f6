import type { Source } from '../../language/court/point.ts';

const words: Readonly<Record<Source['how'], string>> = {
  read: 'text or data seen', 'second-hand': 'a page that quotes it seen', computed: 'worked out', 'from memory': 'from memory, not looked up', 'common practice, no source': 'common practice, no source',
};

/** How we know it, for a reader. */
export const sayHow = ({ how }: Source): string => words[how];

export const howWords = Object.values(words);
