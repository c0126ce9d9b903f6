// SVG as plain data: written as text for a file, or built as elements by the player. Nothing else makes markup.

export interface SvgNode {
  readonly tag: string;
  readonly attrs: Readonly<Record<string, string | number | undefined>>;
  readonly children: readonly SvgNode[];
  readonly text?: string;
}

export function node(tag: string, attrs: SvgNode['attrs'], ...children: readonly SvgNode[]): SvgNode {
  return { tag, attrs, children };
}

export function textNode(text: string, attrs: SvgNode['attrs']): SvgNode {
  return { tag: 'text', attrs, children: [], text };
}

export function writeSvg({ tag, attrs, children, text }: SvgNode): string {
  let out = `<${tag}`;
  for (const name in attrs) {
    const value = attrs[name];
    if (value !== undefined) out += ` ${name}="${typeof value === 'number' ? value : escapeText(value)}"`;
  }
  if (children.length === 0 && text === undefined) return out + '/>';
  out += '>';
  if (text !== undefined) out += escapeText(text);
  for (const child of children) out += writeSvg(child);
  return `${out}</${tag}>`;
}

const SPECIAL = /[&<>"'\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/;
const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it may stand in markup and in quoted attributes; characters that XML forbids become U+FFFD. */
export function escapeText(text: string): string {
  if (!SPECIAL.test(text)) return text;
  return text.replace(new RegExp(SPECIAL, 'g'), (character) => ENTITIES[character] ?? '\ufffd');
}

/** A length in the picture: centimetres to a tenth, so that the same play gives the same bytes. */
export function round(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}
