// How words of the notation sound when they are read out.

/** Places of which there is one have their article where they are read out: `to the rim`, `at the top`. The notation passes over it. */
export function aloud(text: string): string {
  return text.replaceAll(/\b(to|at|via|and|or|of|above|below|inside|outside|between|reaches|leaves) (top|nail|rim|lane|high post|free-throw line|far free-throw line|baseline|far baseline|backcourt)\b(?! extended)/g, '$1 the $2');
}
