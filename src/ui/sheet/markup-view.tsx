// Shows a piece of a page that is given as data.
import { h, type VNode } from 'preact';
import type { Markup } from './markup';

export const MarkupView = ({ markup }: { readonly markup: Markup }) => <>{viewOf(markup)}</>;

const viewOf = (markup: Markup): VNode | string =>
  typeof markup === 'string'
    ? markup
    : h(markup.tag, markup.attributes, ...markup.children.map(viewOf));
