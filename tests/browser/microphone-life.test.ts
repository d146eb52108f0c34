// The microphone refused, missing, stopped and started: a sentence, a button, no exception, no dead end.
import { describe, expect, it } from 'vitest';
import { openApp } from './open-app';

/** A machine without a microphone. */
function removeMicrophone(): void {
  navigator.mediaDevices.getUserMedia = () =>
    Promise.reject(new DOMException('Requested device not found', 'NotFoundError'));
}

describe('the microphone', () => {
  it('denied: says how to allow it, and the button tries again', async () => {
    const app = await openApp('#/listen', { permission: 'denied' });
    try {
      await app.page.getByRole('button', { name: 'Listen' }).click();
      await app.page.locator('[data-microphone="denied"]').waitFor();
      await app.page.getByText('The microphone is not allowed.').waitFor();
      await app.page.getByRole('button', { name: 'Try again' }).click();
      await app.page.locator('[data-microphone="denied"]').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('absent: says so', async () => {
    const app = await openApp('#/listen', { beforeApp: removeMicrophone });
    try {
      await app.page.getByRole('button', { name: 'Listen' }).click();
      await app.page.getByText('No microphone was found.').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('can be stopped and started again', async () => {
    const app = await openApp('#/listen');
    try {
      await app.page.getByRole('button', { name: 'Listen' }).click();
      await app.page.locator('[data-microphone="listening"]').waitFor();
      await app.page.getByRole('button', { name: 'Stop' }).click();
      await app.page.locator('[data-microphone="idle"]').waitFor();
      await app.page.getByRole('button', { name: 'Listen' }).click();
      await app.page.locator('[data-microphone="listening"]').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
