// Chromium without a window, driven by the library that drives it in the browser tests, but with the real microphone.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { quietFlags } from '../browser/browser-flags';
import type { Engine } from './engine';

const startLimit = 60_000;

declare global {
  interface Window {
    printingAsked?: boolean;
  }
}

export const chromiumEngine = (executablePath: string): Engine => ({
  name: 'Chromium',
  async start({ environment, profile, outbox }) {
    mkdirSync(profile, { recursive: true });
    const context = await chromium.launchPersistentContext(profile, {
      executablePath,
      headless: true,
      // Answers the question for the microphone; the microphone itself is the real one.
      args: ['--use-fake-ui-for-media-stream', ...quietFlags],
      env: { ...process.env, ...environment },
      viewport: { width: 420, height: 860 },
      permissions: ['microphone'],
      timeout: startLimit,
    });
    // Chromium without a window prints nothing by itself: that it was asked to is seen, and then it is told to.
    await context.addInitScript(() => {
      window.print = () => {
        window.printingAsked = true;
      };
    });
    const page = context.pages()[0] ?? (await context.newPage());
    page.on('download', (download) => {
      // A download that fails leaves no file, and that is what is waited for.
      download.saveAs(join(outbox, download.suggestedFilename())).catch(() => undefined);
    });
    return {
      version: context.browser()?.version() ?? '',
      open: async (address) => void (await page.goto(address)),
      evaluate: (expression) => page.evaluate(expression),
      clickAt: ({ x, y }) => page.mouse.click(x, y),
      typeKeys: (text) => page.keyboard.type(text),
      async giveFile(fieldExpression, path) {
        const found = await page.evaluateHandle<Element | null>(fieldExpression);
        const field = found.asElement();
        if (!field) throw new Error('there is no field for the file');
        await field.setInputFiles(path);
      },
      async printed() {
        if (!(await page.evaluate(() => window.printingAsked))) return null;
        const path = join(outbox, 'printed.pdf');
        await page.pdf({ path, preferCSSPageSize: true });
        return path;
      },
      close: () => context.close(),
    };
  },
});
