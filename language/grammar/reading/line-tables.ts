// What lexer and shapes need to know of the grammar, as plain data. Without it a start would read the whole grammar, and build Langium's
// parser for lines that every playbook has; so the build works it out (scripts/line-tables.ts) and puts it where `built-tables.ts` stands.
import type { GrammarAST } from 'langium';
import type { WrittenShapes } from './line-shapes.ts';

export interface LineWords {
  readonly keywords: readonly string[];
  /** Those that are verbs of a player. */
  readonly verbs: readonly string[];
  /** Names of what is no keyword: a player, a length, words in quotes. */
  readonly terminals: readonly string[];
}

export interface LineTables extends LineWords {
  /** Of each keyword and terminal: words of one kind can stand for each other. */
  readonly kinds: readonly (readonly [name: string, kind: string])[];
  /** Of lines that are written often; only a build has any. */
  readonly usual?: WrittenShapes;
}

export function tablesOf(grammar: GrammarAST.Grammar): LineTables {
  const verbs = new Set<string>();
  const keywords = new Set<string>();
  for (const rule of grammar.rules) {
    if (rule.$type !== 'ParserRule') continue;
    collectKeywords(rule.definition, keywords);
    if (rule.name.endsWith('Verb')) collectKeywords(rule.definition, verbs);
  }
  const terminals = grammar.rules.filter((rule): rule is GrammarAST.TerminalRule => rule.$type === 'TerminalRule' && !rule.hidden);
  return { keywords: [...keywords], verbs: [...verbs], terminals: terminals.map(({ name }) => name), kinds: wordKinds(grammar) };
}

function collectKeywords(node: unknown, into: Set<string>): void {
  if (typeof node !== 'object' || node === null) return;
  if ((node as { $type?: string }).$type === 'Keyword') into.add((node as { value: string }).value);
  for (const [key, value] of Object.entries(node)) {
    if (key.startsWith('$')) continue;
    if (Array.isArray(value)) for (const item of value) collectKeywords(item, into);
    else collectKeywords(value, into);
  }
}

/**
 * One sign for the keywords that can stand for each other everywhere in the grammar: those found only as bare words of the very same lists
 * of words, such as all of `MoveVerb`. Any other keyword, and each terminal, is a kind of its own.
 */
function wordKinds(grammar: GrammarAST.Grammar): readonly (readonly [string, string])[] {
  const placesOf = new Map<string, string[]>();
  let count = 0;
  const visit = (node: unknown, list: string | undefined): void => {
    if (typeof node !== 'object' || node === null) return;
    const { $type: type, value, cardinality, elements } = node as { $type?: string; value?: string; cardinality?: string; elements?: readonly unknown[] };
    if (type === 'Keyword') {
      const place = list !== undefined && cardinality === undefined ? list : `alone ${count++}`;
      placesOf.set(value!, [...(placesOf.get(value!) ?? []), place]);
      return;
    }
    if (type === 'Alternatives') {
      const own = `list ${count++}`;
      for (const element of elements!) visit(element, own);
      return;
    }
    for (const [key, child] of Object.entries(node)) {
      if (key.startsWith('$')) continue;
      if (Array.isArray(child)) for (const item of child) visit(item, undefined);
      else visit(child, undefined);
    }
  };
  for (const rule of grammar.rules) if (rule.$type === 'ParserRule') visit(rule.definition, undefined);
  const signs = new Map<string, string>();
  const kinds = new Map<string, string>();
  const signOf = (places: string): string => {
    let sign = signs.get(places);
    // Private use: no word of a coach's.
    if (sign === undefined) signs.set(places, (sign = String.fromCharCode(0xe000 + signs.size)));
    return sign;
  };
  for (const [keyword, places] of placesOf) kinds.set(keyword, signOf(places.sort().join()));
  for (const rule of grammar.rules) if (rule.$type === 'TerminalRule') kinds.set(rule.name, signOf(rule.name));
  return [...kinds];
}
