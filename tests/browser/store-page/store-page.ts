// Puts the real adapters within reach of a test's page.evaluate.
import { BrowserMicrophoneTurn } from '../../../src/audio/browser-microphone-turn';
import { BrowserStorageHealth } from '../../../src/storage/browser-storage-health';
import { Database } from '../../../src/storage/database';
import { IndexedDbPanStore } from '../../../src/storage/indexed-db-pan-store';
import { IndexedDbSettings } from '../../../src/storage/indexed-db-settings';
import * as samples from '../../storage/rack-sample';
import { checkSaved, saveForever } from './save-forever';

const database = new Database();
const store = new IndexedDbPanStore(database);

const storePage = {
  store,
  settings: new IndexedDbSettings(database),
  turn: new BrowserMicrophoneTurn(),
  health: new BrowserStorageHealth(),
  samples,
  saveForever: (cycle: number) => saveForever(store, cycle),
  checkSaved: (cycle: number, acknowledged: number) => checkSaved(store, cycle, acknowledged),
};

declare global {
  interface Window {
    storePage: typeof storePage;
  }
}
window.storePage = storePage;
