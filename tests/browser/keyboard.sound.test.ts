// The main job by keyboard alone.
import { describe, expect, it } from 'vitest';
import { openApp } from './open-app';
import { sixStrikes } from './six-strikes';

const sound = sixStrikes();

describe('by keyboard alone', () => {
  it('from the rack to a settled verdict, and back', async () => {
    const app = await openApp('#/', { sound });
    try {
      await app.page.getByRole('link', { name: 'Listen' }).press('Enter');
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
