// Busy hands: keys that were bound by pressing them, and buttons of a headset.
import { describe, expect, it } from 'vitest';
import { keptSettings } from './kept-records';
import { openApp } from './open-app';

/** In the page, before the app: remembers what the app wants of a headset, which a test machine does not have. */
function standInHeadset(): void {
  const handlers = new Map<string, (() => void) | null>();
  Object.assign(window, { pressHeadset: (action: string) => handlers.get(action)?.() });
  navigator.mediaSession.setActionHandler = (action, handler) => {
    handlers.set(action, handler as (() => void) | null);
  };
}

describe('busy hands', () => {
  it('bind keys by pressing them, and keep them over a restart', async () => {
    const app = await openApp('#/settings', { beforeApp: standInHeadset });
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Choose a key: Keep the reading' }).click();
      await page.getByText('Press the key').waitFor();
      await page.keyboard.press('Shift');
      await page.getByText('This key is needed').waitFor();
      await page.keyboard.press('PageDown');
      await page.getByText('Keep the reading: Page Down').waitFor();
      await page.getByRole('button', { name: 'Choose a key: Next note' }).click();
      await page.getByText('Press the key').waitFor();
      await page.evaluate(() =>
        (window as unknown as { pressHeadset(action: string): void }).pressHeadset('nexttrack'),
      );
      const next = page.locator('[data-key-for="next"]');
      await page.getByText('Next note: forward button of the headset').waitFor();
      const kept = async () => JSON.stringify((await keptSettings(page)) ?? null);
      await expect.poll(kept).toContain('forward');
      await page.reload();
      await page.getByText('Keep the reading: Page Down').waitFor();
      expect(await next.textContent()).toContain('forward button');
      // The same key for something else: it does one thing only.
      await page.getByRole('button', { name: 'Choose a key: Next note' }).click();
      await page.getByText('Press the key').waitFor();
      await page.keyboard.press('PageDown');
      await page.getByText('Next note: Page Down').waitFor();
      await page.getByText('Keep the reading: no key').waitFor();
      // On the bench of a note without a pan, moving on leads back to listening, whatever button has the focus.
      await page.goto(`${app.address}#/bench/74`);
      await page.locator('main.bench').waitFor();
      await page.getByRole('button', { name: 'Listen', exact: true }).focus();
      await page.keyboard.press('PageUp');
      expect(new URL(page.url()).hash).toBe('#/bench/74');
      await page.keyboard.press('PageDown');
      await page.waitForURL(/#\/listen$/);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
