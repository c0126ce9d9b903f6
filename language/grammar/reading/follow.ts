import type { GrammarAST } from 'langium';
import type { LineToken } from '../line-token.ts';

/**
 * The grammar as a recursive transition network: which tokens may come next, exactly. Langium's parser says only that a line is wrong,
 * at a place that its lookahead happened to choose; this says where, and what was wanted. It recognises and builds no tree.
 */
export interface Follow {
  readonly start: readonly Config[];
  /** Where the tokens stop making sense, and every way of reading them up to there. */
  readonly walk: (tokens: readonly LineToken[], from?: readonly Config[]) => Walk;
  /** One token on; empty if it does not fit. */
  readonly step: (configs: readonly Config[], token: string) => readonly Config[];
  readonly canEnd: (configs: readonly Config[]) => boolean;
  readonly expected: (configs: readonly Config[]) => readonly Wanted[];
}

export interface Config {
  readonly state: number;
  readonly stack: Frame;
}

interface Frame {
  readonly id: number;
  readonly parent: Frame | undefined;
  readonly returnTo: number;
  /** `property>Rule`, or `Rule` where the call is not assigned; of this frame and of all below it, and the same as one word. */
  readonly path: readonly string[];
  readonly label: string;
  readonly pushed: Map<string, Frame>;
}

export interface Walk {
  /** Index of the first token that does not fit; the number of tokens if all fit. */
  readonly at: number;
  /** The readings just before that token. */
  readonly configs: readonly Config[];
  /** All tokens fit and the line may end here. */
  readonly whole: boolean;
  /** A subject was taken for an object: the line is not whole, however it goes on. */
  readonly asObject: boolean;
}

export interface Wanted {
  /** A keyword as the grammar spells it, or the name of a terminal. */
  readonly token: string;
  readonly isKeyword: boolean;
  /** Rules and properties from the line down to the word: `Statement`, `first>Clause`, `action>Action`, `Pass`, `verb>PassVerb`,
   * and the property last where the word itself is assigned. */
  readonly path: readonly string[];
}

interface Edge {
  readonly to: number;
  readonly token?: string;
  readonly isKeyword?: boolean;
  /** The property that the token itself is assigned to. */
  readonly property?: string;
  readonly call?: string;
  readonly as?: string;
}

const NOWHERE: readonly Config[] = [];
/** So many different readings are kept; all lines of the examples have some 300. */
const MOST_KEPT = 3000;

type Element = GrammarAST.AbstractElement & { readonly cardinality?: '?' | '*' | '+' };

export function buildFollow(grammar: GrammarAST.Grammar): Follow {
  const edges: Edge[][] = [];
  const entries = new Map<string, { readonly from: number; readonly to: number }>();
  const ends = new Set<number>();
  const newState = (): number => edges.push([]) - 1;
  const rules = grammar.rules.filter((rule): rule is GrammarAST.ParserRule => rule.$type === 'ParserRule');
  for (const rule of rules) {
    const entry = { from: newState(), to: newState() };
    entries.set(rule.name, entry);
    ends.add(entry.to);
  }
  for (const rule of rules) {
    const { from, to } = entries.get(rule.name)!;
    build(rule.definition as Element, from, to, undefined);
  }

  function build(element: Element, from: number, to: number, property: string | undefined): void {
    const { cardinality } = element;
    if (!cardinality) return body(element, from, to, property);
    const inner = newState();
    const outer = newState();
    edges[from]!.push({ to: inner });
    edges[outer]!.push({ to });
    if (cardinality !== '+') edges[from]!.push({ to });
    if (cardinality !== '?') edges[outer]!.push({ to: inner });
    body(element, inner, outer, property);
  }

  function body(element: Element, from: number, to: number, property: string | undefined): void {
    switch (element.$type) {
      case 'Group': {
        const parts = (element as GrammarAST.Group).elements;
        let at = from;
        parts.forEach((part, index) => {
          const next = index === parts.length - 1 ? to : newState();
          build(part as Element, at, next, property);
          at = next;
        });
        return;
      }
      case 'Alternatives':
        for (const part of (element as GrammarAST.Alternatives).elements) build(part as Element, from, to, property);
        return;
      case 'Assignment': {
        const assignment = element as GrammarAST.Assignment;
        return build(assignment.terminal as Element, from, to, assignment.feature);
      }
      case 'Action':
        edges[from]!.push({ to });
        return;
      case 'Keyword':
        edges[from]!.push({ to, token: (element as GrammarAST.Keyword).value, isKeyword: true, ...(property === undefined ? {} : { property }) });
        return;
      case 'RuleCall': {
        const rule = (element as GrammarAST.RuleCall).rule.ref!;
        if (rule.$type === 'TerminalRule') edges[from]!.push({ to, token: rule.name, ...(property === undefined ? {} : { property }) });
        else edges[from]!.push({ to, call: rule.name, as: property === undefined ? rule.name : `${property}>${rule.name}` });
        return;
      }
      default:
        throw new Error(`the grammar uses ${element.$type}, which the network does not know`);
    }
  }

  let frames = 0;
  const root: Frame = { id: frames, parent: undefined, returnTo: -1, path: [], label: '', pushed: new Map() };
  // Equal stacks are one object. The label counts: alternatives share the state they return to.
  function push(stack: Frame, edge: Edge): Frame {
    const key = `${edge.to}:${edge.as}`;
    let frame = stack.pushed.get(key);
    if (!frame) stack.pushed.set(key, (frame = { id: ++frames, parent: stack, returnTo: edge.to, path: [...stack.path, edge.as!], label: `${stack.label}\n${edge.as}`, pushed: new Map() }));
    return frame;
  }

  function close(configs: readonly Config[]): Config[] {
    const found: Config[] = [];
    const seen = new Map<Frame, Set<number>>();
    const work = [...configs];
    for (let config = work.pop(); config; config = work.pop()) {
      const { state, stack } = config;
      let states = seen.get(stack);
      if (!states) seen.set(stack, (states = new Set()));
      if (states.has(state)) continue;
      states.add(state);
      if (ends.has(state) && stack.parent) work.push({ state: stack.returnTo, stack: stack.parent });
      let stops = ends.has(state) && !stack.parent;
      for (const edge of edges[state]!) {
        if (edge.token !== undefined) stops = true;
        else if (edge.call !== undefined) work.push({ state: entries.get(edge.call)!.from, stack: push(stack, edge) });
        else work.push({ state: edge.to, stack });
      }
      if (stops) found.push(config);
    }
    return found;
  }

  // The searches for a better line go the same ways again and again: equal readings are one object, and what a token leads to from there is kept.
  let known = new Map<string, readonly Config[]>();
  let ways = new WeakMap<readonly Config[], Map<string, readonly Config[]>>();

  function step(configs: readonly Config[], token: string): readonly Config[] {
    let from = ways.get(configs);
    if (from === undefined) ways.set(configs, (from = new Map()));
    let to = from.get(token);
    if (to === undefined) from.set(token, (to = oneOfAKind(stepOnce(configs, token))));
    return to;
  }

  function stepOnce(configs: readonly Config[], token: string): readonly Config[] {
    const next: Config[] = [];
    for (const { state, stack } of configs) for (const edge of edges[state]!) if (edge.token === token) next.push({ state: edge.to, stack });
    return next.length ? close(next) : NOWHERE;
  }

  function oneOfAKind(configs: readonly Config[]): readonly Config[] {
    if (configs.length === 0) return configs;
    const key = configs.map(({ state, stack }) => `${state}.${stack.id}`).join();
    const kept = known.get(key);
    if (kept !== undefined) return kept;
    if (known.size >= MOST_KEPT) [known, ways] = [new Map(), new WeakMap()];
    known.set(key, configs);
    return configs;
  }

  const canEnd = (configs: readonly Config[]): boolean => configs.some(({ state, stack }) => !stack.parent && ends.has(state));

  const entryRule = rules.find((rule) => rule.entry)!;
  const start = close([{ state: entries.get(entryRule.name)!.from, stack: root }]);

  function walk(tokens: readonly LineToken[], from: readonly Config[] = start): Walk {
    let configs = from;
    let asObject = false;
    for (let at = 0; at < tokens.length; at++) {
      const { tokenType, image } = tokens[at]!;
      let next = step(configs, tokenType.name);
      // A subject where only an object fits: the fault is the verb behind it (`passes to 2 cuts`).
      if (!next.length && tokenType.name === 'SUBJECT') {
        next = step(configs, image.startsWith('x') ? 'XPLAYER' : 'PLAYER');
        asObject = true;
      }
      if (!next.length) return { at, configs, whole: false, asObject };
      configs = next;
    }
    return { at: tokens.length, configs, whole: !asObject && canEnd(configs), asObject };
  }

  function expected(configs: readonly Config[]): readonly Wanted[] {
    const wanted: Wanted[] = [];
    // By label first: a label and a token made into one word would be spelt out for each of hundreds of tokens.
    const known = new Map<string, Set<string>>();
    for (const { state, stack } of configs) {
      let tokens = known.get(stack.label);
      if (tokens === undefined) known.set(stack.label, (tokens = new Set()));
      for (const { token, property, isKeyword } of edges[state]!) {
        if (token === undefined) continue;
        const key = property === undefined ? token : `${token}\n${property}`;
        if (tokens.has(key)) continue;
        tokens.add(key);
        wanted.push({ token, isKeyword: isKeyword === true, path: property === undefined ? stack.path : [...stack.path, property] });
      }
    }
    return wanted;
  }

  return { start, walk, step, canEnd, expected };
}
