import { EarlyExitException, NoViableAltException, type IToken } from 'chevrotain';
import { createLangiumParser, type GrammarAST, type LangiumCoreServices, type LangiumParser } from 'langium';
import { builtTables } from './built-tables.ts';
import { reflection } from '../generated/ast.ts';
import { buildFollow, type Follow } from './follow.ts';
import { LazyLookahead } from './lazy-lookahead.ts';
import { buildLexer, type LexedLine, type LineLexer } from './lexer.ts';
import { loadGrammar } from './load-grammar.ts';
import { lineShapes, type LineShapes } from './line-shapes.ts';
import { tablesOf, type LineTables } from './line-tables.ts';
import { prune, toPlain } from './plain.ts';
import { SpanBuilder } from './span-builder.ts';
import type { LineTree, StatementTree } from '../tree.ts';

export type DeepPartial<T> = T extends readonly (infer U)[] ? readonly DeepPartial<U>[] : T extends object ? { readonly [K in keyof T]?: DeepPartial<T[K]> } : T;

export interface LineParser {
  readonly lexer: LineLexer;
  /** Built when first asked for. */
  readonly follow: Follow;
  /** The tree of the tokens up to the first that does not fit, and whether all of them fitted. */
  readonly parse: (lexed: LexedLine) => { readonly tree?: LineTree; readonly whole: boolean };
  /** What has been learned of lines so far; nothing where none is kept. */
  readonly shapes: LineShapes | undefined;
  /** The tokens as the beginning of an action line. Parts that are not there yet are missing, whatever the type says. */
  readonly parseBeginning: (tokens: LexedLine['tokens']) => DeepPartial<StatementTree>;
}

const valueConverter = {
  convert(input: string, node: { grammarSource?: unknown }): unknown {
    const source = node.grammarSource as { $type?: string; rule?: { ref?: { name: string; dataType?: string; type?: { name?: string } } } } | undefined;
    if (source?.$type !== 'RuleCall') return input;
    const rule = source.rule!.ref!;
    if (rule.name === 'STRING') return input.slice(1, -1);
    return rule.dataType === 'number' || rule.type?.name === 'number' ? Number(input) : input;
  },
};

/**
 * Langium's parser over the grammar of a line, wired by hand: no documents, no linker, no protocol libraries.
 * Recovery is off: on a single line it saves nothing, and the tree before the fault is kept without it.
 * `keepsShapes`: whether a line like one read before is filled in instead of parsed (line-shapes.ts); the tree is the same.
 * `tables`: what is known of the grammar beforehand. The grammar itself is then read for the first line that needs the parser.
 */
export function buildParser({ keepsShapes = true, tables = builtTables() }: { readonly keepsShapes?: boolean; readonly tables?: LineTables } = {}): LineParser {
  let grammar: GrammarAST.Grammar | undefined;
  const grammarNow = () => (grammar ??= loadGrammar());
  const known = tables ?? tablesOf(grammarNow());
  const lexer = buildLexer(known);
  let lexed: LexedLine = { tokens: [] };
  const services = () => ({
    Grammar: grammarNow(),
    LanguageMetaData: { mode: 'production', languageId: 'setwright', fileExtensions: ['.play'], caseInsensitive: true },
    shared: { AstReflection: reflection, profilers: {} },
    references: { Linker: {} },
    parser: {
      ParserConfig: { recoveryEnabled: false, lookaheadStrategy: new LazyLookahead() },
      ValueConverter: valueConverter,
      ParserErrorMessageProvider: { buildMismatchTokenMessage: noMessage, buildNotAllInputParsedMessage: noMessage, buildNoViableAltMessage: noMessage, buildEarlyExitMessage: noMessage },
      Lexer: { definition: lexer.definition, tokenize: () => ({ tokens: lexed.tokens, errors: [], hidden: [] }) },
    },
  });
  let parser: LangiumParser | undefined;
  let follow: Follow | undefined;
  const shapes = keepsShapes ? lineShapes(new Map(known.kinds), known.usual) : undefined;
  return {
    lexer, shapes,
    get follow() {
      return (follow ??= buildFollow(grammarNow()));
    },
    parse(next) {
      const filled = shapes?.treeOf(next.tokens);
      if (filled) return { tree: filled, whole: true };
      lexed = next;
      parser ??= createParser(services());
      const result = parser.parse('');
      const value = result.value as unknown as { [property: string]: unknown };
      if (!next.tokens.length || value['$type'] === 'Line') return { whole: false };
      const tree = toPlain(value) as unknown as LineTree;
      if (result.parserErrors.length === 0) {
        shapes?.keep(next.tokens, value);
        return { tree, whole: true };
      }
      const kept = prune(tree);
      return kept ? { tree: kept, whole: false } : { whole: false };
    },
    parseBeginning(tokens) {
      lexed = { tokens };
      parser ??= createParser(services());
      return toPlain(parser.parse('', { rule: 'Statement' }).value as never) as DeepPartial<StatementTree>;
    },
  };
}

/** The parts of Langium's parser and of chevrotain's that are not public (langium 4.4.0, chevrotain 13.2.0, both pinned). */
interface Inner {
  nodeBuilder: SpanBuilder;
  readonly wrapper: {
    LA(howMuch: number): IToken;
    SAVE_ERROR(error: Error): Error;
    raiseNoAltException: () => never;
    raiseEarlyExitException: () => never;
  };
}

function createParser(services: unknown): LangiumParser {
  const parser = createLangiumParser(services as LangiumCoreServices);
  const inner = parser as unknown as Inner;
  inner.nodeBuilder = new SpanBuilder();
  // By default every such error lists all ways on from that rule, 30 ms for a line's first word, for a message that nobody reads.
  const { wrapper } = inner;
  wrapper.raiseNoAltException = () => {
    throw wrapper.SAVE_ERROR(new NoViableAltException('', wrapper.LA(1), wrapper.LA(0)));
  };
  wrapper.raiseEarlyExitException = () => {
    throw wrapper.SAVE_ERROR(new EarlyExitException('', wrapper.LA(1), wrapper.LA(0)));
  };
  return parser;
}

// The words of an error come from messages.ts.
function noMessage(): string {
  return '';
}

let shared: LineParser | undefined;
/** The parser, built at the first line. */
export function lineParser(): LineParser {
  return (shared ??= buildParser());
}
