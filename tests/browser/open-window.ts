// A second window of the app.
import type { Page } from 'playwright-core';
import type { OpenedApp } from './open-app';

/** Another window of the same app: the same profile, so the same rack. */
export async function openWindow(app: OpenedApp, route: string): Promise<Page> {
  const page = await app.context.newPage();
  await page.goto(`${app.address}${route}`);
  await page.locator('main').waitFor();
  return page;
}

/** Saves what was typed about the pan. */
export const save = (page: Page) => page.getByRole('button', { name: 'Save', exact: true }).click();
