// What the rack of the open page holds, read past the app.
import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { canonicalText } from '../../src/domain/records/canonical-text';
import { databaseName, storeOf } from '../../src/storage/database/database-structure';

/** All records and attachments, a line each: store, id, and a hash of all of it that does not ask for the order of fields. */
export async function keptRecords(page: Page): Promise<readonly string[]> {
  const stores = [...new Set(Object.values(storeOf)), 'attachments'];
  const kept = await page.evaluate(readAll, { name: databaseName, stores });
  return kept.map(({ store, text }) => {
    const record = JSON.parse(text);
    const hash = createHash('sha256').update(canonicalText(record)).digest('hex');
    return `${store} ${record.id} ${hash.slice(0, 16)}`;
  });
}

/** All records that are on the disk now, as one text. */
export async function keptText(page: Page): Promise<string> {
  const stores = [...new Set(Object.values(storeOf))];
  const kept = await page.evaluate(readAll, { name: databaseName, stores });
  return kept.map(({ text }) => text).join('\n');
}

function readAll({ name, stores }: { name: string; stores: readonly string[] }) {
  return new Promise<{ store: string; text: string }[]>((done, failed) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const kept: { store: string; text: string }[] = [];
      const transaction = database.transaction([...stores], 'readonly');
      for (const store of stores) {
        const reading = transaction.objectStore(store).getAll();
        reading.onsuccess = () => {
          kept.push(...reading.result.map((each) => ({ store, text: JSON.stringify(each) })));
        };
      }
      transaction.oncomplete = () => {
        database.close();
        done(kept);
      };
      transaction.onerror = () => failed(transaction.error);
    };
  });
}

/** The settings as they are on the disk now, read past the app; undefined before the first was kept. */
export const keptSettings = (page: Page): Promise<unknown> =>
  page.evaluate(
    (name) =>
      new Promise<unknown>((done, failed) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const reading = opening.result
            .transaction('settings', 'readonly')
            .objectStore('settings')
            .get('settings');
          reading.onerror = () => failed(reading.error);
          reading.onsuccess = () => {
            opening.result.close();
            done(reading.result);
          };
        };
      }),
    databaseName,
  );
