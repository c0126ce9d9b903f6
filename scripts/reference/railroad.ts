// Railroad diagrams of the grammar: read from left to right, every way along the rails is a line that can be written.
import type { GrammarAST } from 'langium';
import rr, { type Item } from 'railroad-diagrams';
import { loadGrammar } from '../../language/grammar/reading/load-grammar.ts';
import { otherNumber, verbOf } from '../../language/grammar/verbs.ts';
import { escapeText } from '../../language/picture/nodes.ts';
import { stacked } from './stacked-rails.ts';

export interface Diagram {
  readonly svg: string;
  /** Words too many for rails: a box's name and what may stand for it. */
  readonly lists: ReadonlyMap<string, readonly string[]>;
}

export type Names = Readonly<Record<string, string>>;

const grammar = loadGrammar();
const rules = new Map(grammar.rules.map((rule) => [rule.name, rule]));
/** More words than these for one box are listed below the diagram. */
const mostWords = 7;

/** Rules that are a line of their own, in the order of the grammar. */
export function lineRules(): readonly string[] {
  const kindsOf = (name: string): readonly string[] => {
    const definition = parserRule(name)?.definition;
    const calls = definition?.$type === 'Alternatives' ? childrenOf(definition) : definition === undefined ? [] : [definition];
    const names = calls.map((call) => (isRuleCall(call) && call.cardinality === undefined ? calledBy(call) : undefined));
    return names.includes(undefined) ? [name] : (names as string[]).flatMap(kindsOf);
  };
  return kindsOf('Line');
}

/** Every rule a rule uses, itself included. */
export function rulesUnder(names: readonly string[]): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (element: GrammarAST.AbstractElement): void => {
    if (isRuleCall(element)) enter(calledBy(element));
    else if (element.$type === 'Assignment') visit((element as GrammarAST.Assignment).terminal);
    else for (const child of childrenOf(element)) visit(child);
  };
  const enter = (name: string): void => {
    if (found.has(name)) return;
    found.add(name);
    const rule = parserRule(name);
    if (rule !== undefined) visit(rule.definition);
  };
  names.forEach(enter);
  return found;
}

/**
 * The diagram of a rule.
 * @param boxes rules that are drawn as a box with this name, having a diagram or a list of their own; all others are drawn out
 */
export function diagramOf(rule: string, title: string, boxes: Names): Diagram {
  const lists = new Map<string, readonly string[]>();
  const item = itemOf(parserRule(rule)!.definition, { boxes, lists, inside: [rule], property: rule, depth: 0 });
  const drawn = new rr.Diagram([item ?? new rr.Skip()]);
  drawn.format(14, 14, 14, 14);
  return { svg: asFile(drawn, title), lists };
}

interface Drawing {
  readonly boxes: Names;
  readonly lists: Map<string, readonly string[]>;
  readonly inside: readonly string[];
  /** What the grammar calls the value being drawn: the name of a box for a long list of words. */
  readonly property: string;
  /** How many ways round or beside this one enclose it. */
  readonly depth: number;
}

function itemOf(element: GrammarAST.AbstractElement, drawing: Drawing): Item | undefined {
  const once = bareItem(element, element.cardinality === undefined ? drawing : { ...drawing, depth: drawing.depth + 1 });
  if (once === undefined) return undefined;
  switch (element.cardinality) {
    case '?': return rr.Optional(once);
    case '*': return rr.ZeroOrMore(once);
    case '+': return new rr.OneOrMore(once);
    default: return once;
  }
}

function bareItem(element: GrammarAST.AbstractElement, drawing: Drawing): Item | undefined {
  if (element.$type === 'Keyword') return new rr.Terminal((element as GrammarAST.Keyword).value);
  if (isRuleCall(element)) return ruleItem(calledBy(element), drawing);
  if (element.$type === 'Assignment') {
    const { terminal, feature } = element as GrammarAST.Assignment;
    return itemOf(terminal, { ...drawing, property: feature });
  }
  if (element.$type === 'Group') return groupItem((element as GrammarAST.Group).elements, drawing);
  if (element.$type === 'Alternatives') return choiceItem((element as GrammarAST.Alternatives).elements, drawing);
  return undefined;
}

function ruleItem(name: string, drawing: Drawing): Item | undefined {
  const box = drawing.boxes[name];
  if (box !== undefined) return new rr.NonTerminal(box);
  const rule = parserRule(name);
  if (rule === undefined || drawing.inside.includes(name)) return new rr.NonTerminal(name.toLowerCase());
  return itemOf(rule.definition, { ...drawing, inside: [...drawing.inside, name], property: boxName(name) });
}

function groupItem(elements: readonly GrammarAST.AbstractElement[], drawing: Drawing): Item | undefined {
  const items: Item[] = [];
  for (let at = 0; at < elements.length; at++) {
    const separator = separatorBehind(elements, at);
    const item = itemOf(elements[at]!, drawing);
    if (item === undefined) continue;
    if (separator === undefined) items.push(item);
    else {
      items.push(new rr.OneOrMore(item, groupItem(separator, drawing)));
      at++;
    }
  }
  return items.length <= 1 ? items[0] : stacked(items, drawing.depth);
}

/** `x (',' x)*` is drawn as one x and a way back: the separator, where the next element repeats this one. */
function separatorBehind(elements: readonly GrammarAST.AbstractElement[], at: number): readonly GrammarAST.AbstractElement[] | undefined {
  const [here, next] = [elements[at]!, elements[at + 1]];
  if (next?.$type !== 'Group' || next.cardinality !== '*' || here.cardinality !== undefined) return undefined;
  const inner = (next as GrammarAST.Group).elements;
  return inner.length > 1 && signature(inner.at(-1)!) === signature(here) ? inner.slice(0, -1) : undefined;
}

function signature(element: GrammarAST.AbstractElement): string {
  if (element.$type === 'Keyword') return `'${(element as GrammarAST.Keyword).value}'`;
  if (isRuleCall(element)) return calledBy(element);
  if (element.$type === 'Assignment') return signature((element as GrammarAST.Assignment).terminal);
  return `${element.$type}(${childrenOf(element).map(signature).join(' ')})${element.cardinality ?? ''}`;
}

function choiceItem(elements: readonly GrammarAST.AbstractElement[], drawing: Drawing): Item | undefined {
  const words = elements.map(wordOf);
  const plurals = new Set(words.filter((word) => word !== undefined && words.includes(otherNumber.get(word)) && verbOf(word)?.number === 'plural'));
  const kept = elements.filter((_, at) => !plurals.has(words[at]));
  if (kept.length > mostWords && kept.every((element) => wordOf(element) !== undefined)) {
    drawing.lists.set(drawing.property, kept.map((element) => wordOf(element)!));
    return new rr.NonTerminal(drawing.property);
  }
  const items = kept.map((element) => itemOf(element, { ...drawing, depth: drawing.depth + 1 })).filter((item) => item !== undefined);
  if (items.length <= 1) return items[0];
  return new rr.Choice(0, items);
}

const wordOf = (element: GrammarAST.AbstractElement): string | undefined => (element.$type === 'Keyword' && element.cardinality === undefined ? (element as GrammarAST.Keyword).value : undefined);

/** The words a rule of words alone allows, plurals of verbs left out. */
export function wordsOf(rule: string): readonly string[] {
  const found: string[] = [];
  const visit = (element: GrammarAST.AbstractElement): void => {
    if (element.$type === 'Keyword') found.push((element as GrammarAST.Keyword).value);
    else childrenOf(element).forEach(visit);
  };
  const definition = parserRule(rule)?.definition;
  if (definition !== undefined) visit(definition);
  return found.filter((word) => verbOf(word)?.number !== 'plural' || !found.includes(otherNumber.get(word) ?? ''));
}

/** `MoveVerb` → `verb`, `ShotKindName` → `shot kind`. */
function boxName(rule: string): string {
  return rule.replace(/Name$/, '').replace(/.+Verb$/, 'verb').replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter}`).toLowerCase();
}

function parserRule(name: string): GrammarAST.ParserRule | undefined {
  const rule = rules.get(name);
  return rule?.$type === 'ParserRule' ? (rule as GrammarAST.ParserRule) : undefined;
}

/** The name of the rule a call means; the loaded grammar knows rules by reference. */
const calledBy = (call: GrammarAST.RuleCall): string => call.rule.ref!.name;
const isRuleCall = (element: GrammarAST.AbstractElement): element is GrammarAST.RuleCall => element.$type === 'RuleCall';

function childrenOf(element: GrammarAST.AbstractElement): readonly GrammarAST.AbstractElement[] {
  return 'elements' in element ? (element.elements as GrammarAST.AbstractElement[]) : [];
}

// Rounded: a word to be typed. Square: something with a diagram or a list of its own.
const light = { ground: '#fbfcfe', rail: '#8296aa', word: '#e3f1ea', edge: '#0a6e53', box: '#e4edf9', side: '#17366b', ink: '#16212c' };
const dark = { ground: '#10161d', rail: '#5f7891', word: '#163b30', edge: '#66d6b0', box: '#1b2f4d', side: '#aecbff', ink: '#e8eef4' };

function style(colours: typeof light): string {
  return `.ground{fill:${colours.ground}}path{stroke:${colours.rail}}rect{fill:${colours.box};stroke:${colours.side}}rect[rx]{fill:${colours.word};stroke:${colours.edge}}text{fill:${colours.ink}}`;
}

function asFile(drawn: Item, title: string): string {
  const { width, height, viewBox } = drawn.attrs;
  const all = drawn.toString();
  const rails = all.slice(all.indexOf('>') + 1, all.lastIndexOf('</svg>')).replace(/\n/g, '').replace(/ class=""/g, '');
  const css = `path{fill:none;stroke-width:2}rect{stroke-width:1.5}text{font:13px ui-monospace,Menlo,Consolas,monospace;text-anchor:middle}.ground{stroke:none}${style(light)}@media (prefers-color-scheme:dark){${style(dark)}}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBox}" width="${width}" height="${height}" role="img"><title>${escapeText(title)}</title><style>${css}</style><path class="ground" d="M0 0H${width}V${height}H0Z"/>${rails}</svg>\n`;
}

/** Pixels on the page: as drawn, so that the letters of all diagrams have one size. */
export const pictureWidth = (svg: string): number => Math.round(Number(/ width="([\d.]+)"/.exec(svg)?.[1] ?? 0));
