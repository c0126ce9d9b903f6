// Elements made by hand: text always as text, never as markup.
import type { SvgNode } from '../../language/picture/nodes.ts';

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;
type Child = Node | string;

export function element<K extends keyof HTMLElementTagNameMap>(tag: K, attributes: Attributes = {}, ...children: readonly Child[]): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  setAttributes(made, attributes);
  made.append(...children);
  return made;
}

const SVG = 'http://www.w3.org/2000/svg';

/** The picture's nodes as elements. */
export function build({ tag, attrs, children, text }: SvgNode): SVGElement {
  const made = document.createElementNS(SVG, tag);
  setAttributes(made, attrs);
  if (text !== undefined) made.textContent = text;
  for (const child of children) made.append(build(child));
  return made;
}

export function group(className: string): SVGGElement {
  const made = document.createElementNS(SVG, 'g');
  made.setAttribute('class', className);
  return made;
}

function setAttributes(made: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    made.setAttribute(name, value === true ? '' : String(value));
  }
}

/** Sets a text only where it differs: an unchanged text costs no layout. */
export function setText(target: Element, text: string): void {
  const only = target.firstChild;
  if (only !== null && only.nodeType === Node.TEXT_NODE && only === target.lastChild) {
    if ((only as Text).data !== text) (only as Text).data = text;
  } else if (target.textContent !== text) target.textContent = text;
}

/** Sets an attribute only where it differs: the browser works out anew what is set again. */
export function setAttribute(target: Element, name: string, value: string): void {
  if (target.getAttribute(name) !== value) target.setAttribute(name, value);
}

/** Hides an element, or shows it again. */
export function setHidden(target: HTMLElement, hidden: boolean): void {
  if (target.hidden !== hidden) target.hidden = hidden;
}

/** Makes elements built before those of `nodes`: of the same kind and number they stay, and only what differs is set. */
export function rebuild(parent: Element, nodes: readonly SvgNode[]): void {
  const made = [...parent.children] as SVGElement[];
  if (made.length === nodes.length && nodes.every((one, i) => isLike(made[i]!, one))) nodes.forEach(({ attrs }, i) => Object.entries(attrs).forEach(([name, value]) => value !== undefined && setAttribute(made[i]!, name, String(value))));
  else parent.replaceChildren(...nodes.map(build));
}

const isLike = (made: SVGElement, { tag, attrs, children, text }: SvgNode): boolean =>
  made.localName === tag && children.length === 0 && text === undefined && made.attributes.length === Object.values(attrs).filter((value) => value !== undefined).length && Object.keys(attrs).every((name) => made.hasAttribute(name));

/** Sets a style of its own only where it differs: the browser lays out anew for one that is set again, where it is computed. */
export function styleOf(target: ElementCSSInlineStyle): (name: 'left' | 'width' | 'marginInlineStart' | 'marginInlineEnd', value: string) => void {
  const set: Record<string, string> = {};
  return (name, value) => {
    if (set[name] === value) return;
    set[name] = value;
    target.style[name] = value;
  };
}

/** An icon of the player's own, drawn on a grid of 24. */
export function icon(d: string): SVGElement {
  const svg = document.createElementNS(SVG, 'svg');
  setAttributes(svg, { viewBox: '0 0 24 24', class: 'icon', 'aria-hidden': 'true', focusable: 'false' });
  const path = document.createElementNS(SVG, 'path');
  path.setAttribute('d', d);
  svg.append(path);
  return svg;
}

/** A button with an icon; its words are its name and its tooltip. */
export function iconButton(words: string, d: string, className: string, pressed: () => void): HTMLButtonElement {
  const button = element('button', { type: 'button', class: className, title: words, 'aria-label': words }, icon(d));
  button.addEventListener('click', pressed);
  return button;
}
