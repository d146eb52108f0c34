// How long the app itself takes from the beginning of its page to the first pans of the rack, and to all of them.
import type { Page } from 'playwright-core';
import { startOwnBrowser } from '../../browser/own-browser';

/** Milliseconds since the beginning of the page. */
export interface AppTimes {
  readonly first: number;
  readonly all: number;
}

declare global {
  interface Window {
    rackPainted: Partial<AppTimes>;
  }
}

/** In the page, before the app: looks for the pans whenever something is drawn. */
function watchRack(pans: number): void {
  const painted: { first?: number; all?: number } = {};
  window.rackPainted = painted;
  // A frame is painted between its callback and the next message.
  const afterPaint = (then: () => void) => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = then;
      port2.postMessage(null);
    });
  };
  let seen = 0;
  const watcher = new MutationObserver(() => {
    const rows = document.querySelectorAll('.pan-row').length;
    if (seen === 0 && rows > 0) {
      afterPaint(() => {
        painted.first = performance.now();
      });
    }
    seen = rows;
    if (rows < pans) return;
    watcher.disconnect();
    afterPaint(() => {
      painted.all = performance.now();
    });
  });
  watcher.observe(document, { childList: true, subtree: true });
}

/**
 * Starts a browser with `profile`, opens the app at `address` and resolves to the times at which its pans were
 * painted; before that it stays for as long as `stay` takes.
 */
export async function timeApp(
  profile: string,
  address: string,
  pans: number,
  stay: (page: Page) => Promise<unknown> = async () => undefined,
): Promise<AppTimes> {
  const browser = await startOwnBrowser(profile);
  try {
    const page = browser.context.pages()[0];
    if (!page) throw new Error('The browser opened no page.');
    await page.addInitScript(watchRack, pans);
    await page.goto(`${address}#/`);
    const painted = await page.waitForFunction(() => {
      const { first, all } = window.rackPainted;
      return first !== undefined && all !== undefined && { first, all };
    });
    const times = await painted.jsonValue();
    await stay(page);
    await browser.close();
    return times || { first: Number.NaN, all: Number.NaN };
  } finally {
    await browser.kill();
  }
}
