// Opens the app on a rack that holds given records, written into its database before the app reads it.
import type { RackRecord } from '../../src/domain/records/rack-records';
import type { Settings } from '../../src/domain/settings/settings';
import {
  databaseName,
  databaseVersion,
  storeOf,
} from '../../src/storage/database/database-structure';
import { type AppOptions, type OpenedApp, openApp } from './open-app';

export interface Seed {
  readonly records: readonly RackRecord[];
  readonly settings?: Settings;
}

/** Runs in the page before the app: the offline copy is on its way, and does not come. */
function holdOfflineCopy(): void {
  // An address that is not secure has none.
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register = () => new Promise(() => undefined);
}

export interface SeededOptions extends AppOptions {
  /**
   * The app keeps its offline copy, as everywhere else. Not here unless told, because the copy is half of what such a
   * test costs the processor: 0.6 s, measured with Chromium 156.
   */
  readonly withOfflineCopy?: boolean;
}

/** The app at `route`, as if the records had been kept by it. Close it in the same test. */
export async function openWithRecords(
  route: string,
  seed: Seed,
  { withOfflineCopy = false, ...options }: SeededOptions = {},
): Promise<OpenedApp> {
  const held = withOfflineCopy ? [] : [holdOfflineCopy];
  const beforeApp = [...held, ...[options.beforeApp ?? []].flat()];
  const app = await openApp('#/', { ...options, beforeApp });
  // The rack has been read once, so its database is there.
  await app.page.getByText('No pans are kept here yet.').waitFor();
  await app.page.evaluate(write, {
    name: databaseName,
    version: databaseVersion,
    rows: [
      ...seed.records.map((record) => ({ store: storeOf[record.kind] as string, record })),
      ...[...new Set(seed.records.map(({ pan }) => pan))].map((pan) => ({
        store: 'cards',
        record: { pan, changes: 1, card: null },
      })),
    ],
    settings: seed.settings ?? null,
  });
  // Without an event, or the page that goes would still draw the screen.
  await app.page.evaluate((to) => history.replaceState(null, '', to), route);
  await app.page.reload();
  await app.page.locator('main').waitFor();
  return app;
}

interface Rows {
  readonly name: string;
  readonly version: number;
  readonly rows: readonly { readonly store: string; readonly record: unknown }[];
  readonly settings: unknown;
}

/** In the page: all rows in one transaction. */
function write({ name, version, rows, settings }: Rows): Promise<void> {
  return new Promise((done, failed) => {
    const opening = indexedDB.open(name, version);
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const transaction = database.transaction([...database.objectStoreNames], 'readwrite');
      for (const { store, record } of rows) transaction.objectStore(store).put(record);
      if (settings !== null) transaction.objectStore('settings').put(settings, 'settings');
      transaction.oncomplete = () => {
        database.close();
        done();
      };
      transaction.onerror = () => failed(transaction.error);
    };
  });
}
