import { describe, expect, it } from 'vitest';
import { element, markupText } from '../../../src/ui/sheet/markup';
import * as fc from '../../properties';

/** What a browser makes of the references that are used here (HTML Standard, "Named character references"). */
const readBack = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

describe('a piece of a page as HTML', () => {
  it('is written with its attributes and children, and without those that are null or empty', () => {
    const markup = element('p', { class: 'a' }, 'one ', null, '', element('b', {}, 'two'));
    expect(markupText(markup)).toBe('<p class="a">one <b>two</b></p>');
  });

  it('has no end tag where HTML has none', () => {
    expect(markupText(element('img', { src: 'x', alt: '' }))).toBe('<img src="x" alt="">');
  });

  it('escapes the example of OWASP’s rules for HTML text and attributes', () => {
    // OWASP, Cross Site Scripting Prevention Cheat Sheet: & < > " ' become references.
    expect(markupText(`& < > " '`)).toBe('&amp; &lt; &gt; &quot; &#39;');
  });

  it('can be ended by no text and by no value of an attribute, and loses nothing of them', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary' }),
        fc.constantFrom('', '"><script>', "' onload='"),
        (any, trick) => {
          const text = any + trick;
          const html = markupText(element('p', { title: text }, text));
          const found = /^<p title="([^"<>]*)">([^<>]*)<\/p>$/.exec(html);
          expect(found).not.toBeNull();
          expect(readBack(found?.[1] ?? '')).toBe(text);
          expect(readBack(found?.[2] ?? '')).toBe(text);
        },
      ),
    );
  });
});
