// Closing the app and opening it again.
import type { OpenedApp } from './open-app';

/** Goes on with `route` in a fresh page, as after closing the app and opening it. */
export async function reopen({ page, address }: OpenedApp, route: string): Promise<void> {
  await page.goto(`${address}${route}`);
  await page.reload();
  await page.locator('main').waitFor();
}
