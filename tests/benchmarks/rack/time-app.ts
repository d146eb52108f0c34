// How long the app itself takes from the beginning of its page to all pans of the rack on the screen.
import type { Page } from 'playwright-core';
import { startOwnBrowser } from '../../browser/own-browser';

declare global {
  interface Window {
    /** Milliseconds since the beginning of the page, once the pans were painted. */
    rackPainted?: number;
  }
}

/** In the page, before the app: looks for the pans whenever something is drawn. */
function watchRack(pans: number): void {
  const watcher = new MutationObserver(() => {
    if (document.querySelectorAll('.pan-row').length < pans) return;
    watcher.disconnect();
    // The frame is painted between its callback and the next message.
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        window.rackPainted = performance.now();
      };
      port2.postMessage(null);
    });
  });
  watcher.observe(document, { childList: true, subtree: true });
}

/**
 * Starts a browser with `profile`, opens the app at `address` and resolves to the milliseconds until all its pans
 * were painted; then stays for as long as `stay` takes.
 */
export async function timeApp(
  profile: string,
  address: string,
  pans: number,
  stay: (page: Page) => Promise<unknown> = async () => undefined,
): Promise<number> {
  const browser = await startOwnBrowser(profile);
  try {
    const page = browser.context.pages()[0];
    if (!page) throw new Error('The browser opened no page.');
    await page.addInitScript(watchRack, pans);
    await page.goto(`${address}#/`);
    const painted = await page.waitForFunction(() => window.rackPainted);
    const milliseconds = await painted.jsonValue();
    await stay(page);
    await browser.close();
    return milliseconds ?? Number.NaN;
  } finally {
    await browser.kill();
  }
}
