// Everything by keyboard: each control can be reached with Tab, and the main job can be done with Enter.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openApp } from './open-app';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

/** In the page: the controls that Tab must reach, one for a group of radio buttons, and those that it has reached. */
function controls(): { readonly name: string; readonly reached: boolean }[] {
  const all = document.querySelectorAll<HTMLElement | SVGElement>(
    'a[href], button:not([disabled]), input:not([disabled]), select, summary, [role="button"]',
  );
  const groups = new Map<string, { name: string; reached: boolean }>();
  for (const [n, element] of [...all].entries()) {
    if (!element.checkVisibility()) continue;
    const radio = element instanceof HTMLInputElement && element.type === 'radio';
    const group = radio ? `radio ${element.name}` : String(n);
    const name = radio
      ? group
      : `${element.tagName} ${element.getAttribute('aria-label') ?? element.textContent}`;
    const reached = element.hasAttribute('data-reached') || groups.get(group)?.reached === true;
    groups.set(group, { name, reached });
  }
  return [...groups.values()];
}

/** Presses Tab; resolves to `marked`, or to the control that does not show its focus. */
async function nextFocus(page: Page): Promise<string> {
  await page.keyboard.press('Tab');
  return page.evaluate(() => {
    const active = document.activeElement;
    const focusable = active instanceof HTMLElement || active instanceof SVGElement;
    if (!focusable || active === document.body) return 'marked';
    active.setAttribute('data-reached', '');
    // A hidden input is drawn by its label, a note of the pan by its shape.
    const look = () =>
      [active, ...active.children, active.closest('label')]
        .map((element) => {
          if (!element) return '';
          const { outlineStyle, outlineWidth, stroke, strokeWidth } = getComputedStyle(element);
          return [outlineStyle, outlineWidth, stroke, strokeWidth].join();
        })
        .join(';');
    const focused = look();
    active.blur();
    const blurred = look();
    active.focus();
    return focused === blurred ? active.outerHTML.slice(0, 120) : 'marked';
  });
}

/** What marks the note that has the focus: the browser's frame, the oval around it (a colour or none). */
const focusOf = (page: Page) =>
  page.evaluate(() => {
    const active = document.activeElement;
    const oval = active?.querySelector('.oval-focus');
    if (!active || !oval) throw new Error('no note has the focus');
    const stroke = getComputedStyle(oval).stroke;
    return {
      name: active.getAttribute('aria-label'),
      frame: getComputedStyle(active).outlineStyle,
      oval: stroke,
      ...(stroke === 'none' ? {} : { ground: getComputedStyle(document.body).backgroundColor }),
    };
  });

describe('by keyboard alone', () => {
  for (const route of ['#/', '#/listen', '#/practice', '#/settings']) {
    it(`every control of ${route} is reached with Tab and shows the focus`, async () => {
      const app = await openApp(route);
      try {
        const unmarked: string[] = [];
        let found = await app.page.evaluate(controls);
        // More than one round: a control may appear or change while the focus travels.
        for (let n = 0; n < 3 * found.length && found.some(({ reached }) => !reached); n++) {
          const focus = await nextFocus(app.page);
          if (focus !== 'marked') unmarked.push(focus);
          found = await app.page.evaluate(controls);
        }
        expect(found.length).toBeGreaterThan(1);
        expect(found.filter(({ reached }) => !reached)).toEqual([]);
        expect(unmarked).toEqual([]);
      } finally {
        await app.close();
      }
    });
  }

  for (const forcedColors of ['none', 'active'] as const) {
    it(`a note shows an oval, no frame, and not after a tap (forced colours: ${forcedColors})`, async () => {
      const app = await openApp('#/practice');
      try {
        await app.page.emulateMedia({ forcedColors });
        const d5 = app.page.getByRole('button', { name: 'Strike D5' });
        await d5.click();
        expect(await focusOf(app.page)).toEqual({ name: 'Strike D5', frame: 'none', oval: 'none' });
        await app.page.keyboard.press('Tab');
        const { name, frame, oval, ground } = await focusOf(app.page);
        expect(name).toMatch(/^Strike /);
        expect(name).not.toBe('Strike D5');
        expect(frame).toBe('none');
        expect(oval).toMatch(/^rgb\(/);
        expect(oval).not.toBe(ground);
      } finally {
        await app.close();
      }
    });
  }

  it('from the rack to a settled verdict, and back', async () => {
    const app = await openApp('#/', { beforeApp: standInEar });
    try {
      await app.page.getByRole('link', { name: 'Listen' }).press('Enter');
      await untilListening(app.page);
      await tellStrikes(app.page, 3);
      await app.page.locator('#readout[data-state="settled"]').waitFor();
      await app.page.getByRole('button', { name: 'Stop' }).press('Enter');
      await app.page.locator('[data-microphone="idle"]').waitFor();
      await app.page.getByRole('link', { name: 'Back' }).press('Enter');
      await app.page.getByRole('link', { name: 'Listen' }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
