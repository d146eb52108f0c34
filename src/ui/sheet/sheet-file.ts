// The sheet as a file of its own: no network and no script, readable on any computer.
import type { Sheet } from '../../domain/sheet/sheet';
import { element, type MarkupElement, markupText } from './markup';
import { sheetPage } from './sheet-page';

/**
 * The whole file as text. `style` is our own style sheet, `photo` a `data:` address or null. Even if something in it
 * could become a script, the page's own policy runs none and loads nothing.
 */
export const sheetFile = (sheet: Sheet, style: string, photo: string | null): string =>
  pageFile(sheet.pan.name, sheetPage(sheet, photo), style);

/** A page with this title and content as a file. */
export function pageFile(title: string, content: MarkupElement, style: string): string {
  const head = [
    element('meta', { charset: 'utf-8' }),
    element('meta', {
      'http-equiv': 'Content-Security-Policy',
      content: "default-src 'none'; style-src 'unsafe-inline'; img-src data:",
    }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, title),
  ];
  return [
    '<!doctype html>',
    '<html lang="en">',
    `<head>${head.map(markupText).join('')}<style>${style}</style></head>`,
    `<body class="sheet-body">${markupText(content)}</body>`,
    '</html>',
    '',
  ].join('\n');
}
