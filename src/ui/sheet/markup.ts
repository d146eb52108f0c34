// A piece of a page as data: the screen and the saved file are made of the same one.

export type Markup = string | MarkupElement;

export interface MarkupElement {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Markup[];
}

/** An element; children that are null or empty texts are left out. */
export const element = (
  tag: string,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly (Markup | null)[]
): MarkupElement => ({
  tag,
  attributes,
  children: children.filter((child): child is Markup => child !== null && child !== ''),
});

/** Elements without content and without an end tag (HTML Standard, "Void elements"). */
const voidTags: ReadonlySet<string> = new Set(['br', 'hr', 'img', 'meta', 'link', 'input']);

/**
 * The text of a piece as HTML. Nothing in a text or in the value of an attribute can end it: `&`, `<`, `>` and both
 * quotes are escaped (HTML Standard, "Character references"). Names of tags and attributes come from code only.
 */
export function markupText(markup: Markup): string {
  if (typeof markup === 'string') return escaped(markup);
  const { tag, attributes, children } = markup;
  const inside = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escaped(value)}"`)
    .join('');
  if (voidTags.has(tag)) return `<${tag}${inside}>`;
  return `<${tag}${inside}>${children.map(markupText).join('')}</${tag}>`;
}

const references: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => references[sign] ?? '');
