// Puts the real adapters within reach of a test's page.evaluate.
import { BrowserMicrophoneTurn } from '../../../src/audio/browser-microphone-turn';
import type { FileOnHand } from '../../../src/domain/ports/file-handout';
import { instant } from '../../../src/domain/tuning/units';
import { backupFiles } from '../../../src/storage/backup/backup-files';
import { BrowserCardCopy } from '../../../src/storage/browser/browser-card-copy';
import { BrowserFileHandout } from '../../../src/storage/browser/browser-file-handout';
import { BrowserStorageHealth } from '../../../src/storage/browser/browser-storage-health';
import { Database } from '../../../src/storage/database/database';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import { RackChanges } from '../../../src/storage/rack/rack-changes';
import { IndexedDbSettings } from '../../../src/storage/settings/indexed-db-settings';
import * as samples from '../../storage/rack/rack-sample';
import { fillPan } from './fill-rack';
import { timeCopy, timeExport, timeImport, timeNote, timePan, timeRack } from './measure-rack';
import { checkSaved, saveForever } from './save-forever';

const database = new Database();
const changes = new RackChanges();
const store = new IndexedDbPanStore(database, changes);
const copy = new BrowserCardCopy();
const backups = backupFiles({
  database,
  changes,
  clock: { now: () => instant(Date.now()) },
  appVersion: '0.1.0',
});
let exported: FileOnHand | null = null;
const asideName = 'exported';

const storePage = {
  store,
  backups,
  settings: new IndexedDbSettings(database),
  turn: new BrowserMicrophoneTurn(),
  health: new BrowserStorageHealth(),
  handout: new BrowserFileHandout(),
  samples,
  saveForever: (cycle: number) => saveForever(store, cycle),
  checkSaved: (cycle: number, acknowledged: number) => checkSaved(store, cycle, acknowledged),
  fillPan: (pan: number, rounds: number) => fillPan(store, pan, rounds),
  timeCopy: (pans: number) => timeCopy(copy, pans),
  timeRack: (pans: number) => timeRack(store, pans),
  timePan: (pan: number, rounds: number) => timePan(store, pan, rounds),
  timeNote: (pan: number, rounds: number) => timeNote(store, pan, rounds),
  /** Keeps the file on the page, to be put aside. */
  timeExport: async () => {
    const { file, milliseconds, records } = await timeExport(backups);
    exported = file;
    return { bytes: file.size, milliseconds, records };
  },
  /** Keeps the exported file beside the database, for a page of another start. */
  putExportAside: async () => {
    if (!exported) throw new Error('Nothing was exported.');
    const folder = await navigator.storage.getDirectory();
    const writable = await (
      await folder.getFileHandle(asideName, { create: true })
    ).createWritable();
    await (exported as File).stream().pipeTo(writable);
  },
  /** Takes in the file that was put aside; the database is emptied before. */
  timeImport: async () => {
    const folder = await navigator.storage.getDirectory();
    const file = await (await folder.getFileHandle(asideName)).getFile();
    await new Promise<void>((done, fail) => {
      const request = indexedDB.deleteDatabase('ringwright');
      request.onsuccess = () => done();
      request.onerror = () => fail(request.error);
    });
    return timeImport(backups, file);
  },
};

declare global {
  interface Window {
    storePage: typeof storePage;
  }
}
window.storePage = storePage;
