// What axe finds on the open page, asked in the same way by every browser test.
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axePath = createRequire(import.meta.url).resolve('axe-core');

declare global {
  interface Window {
    readonly axe?: {
      run(): Promise<{
        readonly violations: readonly {
          readonly id: string;
          readonly help: string;
          readonly nodes: readonly { readonly html: string }[];
        }[];
      }>;
    };
  }
}

/**
 * Each broken rule with its first element; none where all can use the page. The page must have been opened with
 * `bypassPolicy`, because the app's own policy lets no script of others in.
 */
export async function axeFaults(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => window.axe !== undefined))) {
    await page.addScriptTag({ path: axePath });
  }
  return page.evaluate(async () => {
    const found = await window.axe?.run();
    return found
      ? found.violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes[0]?.html}`)
      : ['axe is not in the page'];
  });
}
