// What the tests of the knock check do on its screens, and what they find wrong with them.
import type { Page } from 'playwright-core';
import { axeFaults } from './axe-faults';
import { layOut } from './lay-out';
import type { OpenedApp } from './open-app';

export const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Answers all looks with no, but for those in `yes`. */
export async function answer(page: Page, yes: readonly string[] = []): Promise<void> {
  await page.locator('.look').waitFor();
  for (let look = ''; ; ) {
    const next = await page.locator('main').getAttribute('data-step');
    if (next === 'seen' || next === null) return;
    if (next === look) throw new Error(`the check does not go on after ${look}`);
    look = next;
    if (yes.includes(look)) {
      await button(page, 'Yes').click();
      await button(page, 'Next').click();
    } else {
      await button(page, 'No').click();
    }
  }
}

/** What axe finds, targets under 44 px, and what is cut at 320 px and at 200 %. */
export async function faultsOf({ page }: OpenedApp): Promise<readonly string[]> {
  const faults = [...(await axeFaults(page))];
  for (const [width, size] of [
    [320, '100%'],
    [360, '200%'],
  ] as const) {
    await layOut(page, width, 640, size);
    const bad = await page.evaluate(() =>
      [...document.querySelectorAll('a, button, select, .choice, p, li, h1, h2')]
        .filter((element) => element.checkVisibility() && !element.closest('svg'))
        .filter((element) => {
          const { left, right, height } = element.getBoundingClientRect();
          const isTarget = element.matches('a, button, select, .choice');
          return left < -0.5 || right > window.innerWidth + 0.5 || (isTarget && height < 44);
        })
        .map((element) => element.textContent ?? ''),
    );
    faults.push(...bad.map((text) => `${width} px at ${size}: ${text}`));
  }
  await layOut(page, 360, 740);
  return faults;
}
