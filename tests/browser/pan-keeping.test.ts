// Pans taken off the rack and put back, and their photos.
import { describe, expect, it } from 'vitest';
import { databaseName } from '../../src/storage/database/database-structure';
import { keptText } from './kept-records';
import { openWithRecords } from './rack-seed';
import { asPan, panWith } from './seeded-pans';

describe('a pan that was taken off the rack', () => {
  it('is listed in a fold of its own, and can be put back', async () => {
    const app = await openWithRecords('#/pan/pan-1/details', {
      records: [...panWith({}, []), ...asPan('other', panWith({ name: 'Egret' }, []))],
    });
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Take it off the rack' }).click();
      const fold = page.locator('details', { hasText: 'Taken off the rack: 1' });
      await fold.waitFor();
      // The cards are made one after the other.
      await expect.poll(() => page.locator('section .pan-row').count()).toBe(1);
      expect(await page.getByText('Heron').isVisible()).toBe(false);
      await fold.locator('summary').click();
      await fold.getByText('Heron').click();
      await page.getByText('This pan is off the rack. Its readings are kept.').waitFor();
      await page.getByRole('button', { name: 'Put it back on the rack' }).click();
      await page.getByText('This pan is off the rack.').waitFor({ state: 'detached' });
      await page.getByRole('link', { name: 'Rack', exact: true }).click();
      await page.locator('section .pan-row').nth(1).waitFor();
      await expect.poll(() => fold.count()).toBe(0);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('a pan whose name was lost', () => {
  it('can be found on the rack, and has a heading', async () => {
    const app = await openWithRecords('#/', { records: panWith({ name: '' }, [{ day: 0 }]) });
    try {
      const { page } = app;
      await page.locator('.pan-row', { hasText: 'Pan without a name' }).click();
      await page.getByRole('heading', { level: 1, name: 'Pan without a name' }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

/** In the page: a photo as a camera gives it, as base64. */
const takePhoto = async (): Promise<string> => {
  const canvas = document.createElement('canvas');
  canvas.width = 3000;
  canvas.height = 2000;
  const drawing = canvas.getContext('2d');
  if (!drawing) return '';
  drawing.fillStyle = '#c33';
  drawing.fillRect(0, 0, 1500, 2000);
  drawing.fillStyle = '#33c';
  drawing.fillRect(1500, 0, 1500, 2000);
  return canvas.toDataURL('image/jpeg').replace(/^.*,/, '');
};

/** In the page: the pictures on disk, each with its size in pixels and bytes. */
const keptPhotos = async (name: string) => {
  const bytes = await new Promise<readonly Uint8Array<ArrayBuffer>[]>((done, failed) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      const all = opening.result.transaction('attachments').objectStore('attachments').getAll();
      all.onsuccess = () => {
        opening.result.close();
        done(all.result.map((row) => row.attachment.bytes));
      };
    };
  });
  return Promise.all(
    bytes.map(async (each) => {
      const { width, height } = await createImageBitmap(new Blob([each]));
      return { width, height, bytes: each.byteLength };
    }),
  );
};

describe('the photo of a pan', () => {
  it('is scaled down on the phone, kept and shown; a file that is no picture is refused', async () => {
    const app = await openWithRecords('#/pan/pan-1/details', { records: panWith({}, []) });
    try {
      const { page } = app;
      const file = page.locator('input[type="file"]');
      await file.setInputFiles({
        name: 'photo.jpg',
        mimeType: 'image/jpeg',
        buffer: Buffer.from('no picture at all'),
      });
      await page
        .getByText('This file is not a picture that can be read here. Choose another one.')
        .waitFor();
      await file.setInputFiles({
        name: 'photo.jpg',
        mimeType: 'image/jpeg',
        buffer: Buffer.from(await page.evaluate(takePhoto), 'base64'),
      });
      await page.getByRole('img', { name: 'Photo of Heron' }).waitFor();
      expect(await page.getByText('This file is not a picture').count()).toBe(0);
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.locator('.pan-page').waitFor();
      await expect.poll(async () => (await page.evaluate(keptPhotos, databaseName)).length).toBe(1);
      await page.reload();
      const picture = page.getByRole('img', { name: 'Photo of Heron' });
      await picture.waitFor();
      const shown = () =>
        picture.evaluate((image) => {
          const { naturalWidth, naturalHeight } = image as HTMLImageElement;
          return [naturalWidth, naturalHeight];
        });
      await expect.poll(shown).toEqual([960, 640]);
      const [kept] = await page.evaluate(keptPhotos, databaseName);
      expect(kept).toMatchObject({ width: 960, height: 640 });
      expect(kept?.bytes).toBeLessThan(100_000);

      // Saving something else does not keep the same photo once more.
      await page.getByRole('link', { name: 'Name and details' }).click();
      await page.getByLabel('Owner').fill('Ada');
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.locator('.about').getByText('Ada').waitFor();
      await expect.poll(() => keptText(page)).toContain('Ada');
      expect(await page.evaluate(keptPhotos, databaseName)).toHaveLength(1);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
