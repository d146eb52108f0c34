// Composition root: makes adapters and connects them. What only the late screens need is in `make-late-models.ts`.
import { signal } from '@preact/signals';
import { render } from 'preact';
import { WorkerEar } from './analysis/worker-ear';
import { BrowserMicrophone } from './audio/browser-microphone';
import { BrowserMicrophoneTurn } from './audio/browser-microphone-turn';
import { BrowserScreenLight } from './audio/browser-screen-light';
import { BrowserSoundFiles } from './audio/browser-sound-files';
import { BrowserSpeaker } from './audio/browser-speaker';
import { instant } from './domain/tuning/units';
import { loadOnce } from './state/asking/load-once';
import { createListenModel } from './state/listening/listen-model';
import { createArrivalModel } from './state/rack/arrival-model';
import { createOfflineModel } from './state/rack/offline-model';
import { createRackModel } from './state/rack/rack-model';
import { createSettingsModel } from './state/settings/settings-model';
import { BrowserCardCopy } from './storage/browser/browser-card-copy';
import { BrowserTraceStore } from './storage/browser/browser-trace-store';
import { Database } from './storage/database/database';
import { RackChanges } from './storage/rack/rack-changes';
import { IndexedDbSettings } from './storage/settings/indexed-db-settings';
import { App } from './ui/app';
import { followRoute, goTo } from './ui/frame/route';
import { FramedNotice, isFramed } from './ui/framed-notice';
import './ui/theme.css';

/** The version in package.json, put in by the build. */
declare const ringwrightVersion: string;
/** The day of the build, ms since 1970, put in by the build. */
declare const ringwrightBuiltAt: number;

const database = new Database();
const ear = new WorkerEar();
const microphone = new BrowserMicrophone((port, sampleRate) => ear.attach(port, sampleRate));
const settings = createSettingsModel(new IndexedDbSettings(database));
const soundFiles = new BrowserSoundFiles();
const speaker = new BrowserSpeaker();
const microphoneTurn = new BrowserMicrophoneTurn();
const listen = createListenModel({
  microphone,
  microphoneTurn,
  ear,
  soundFiles,
  speaker,
  light: new BrowserScreenLight(),
  a4: settings.a4,
  pause: (seconds) => new Promise((resume) => setTimeout(resume, 1000 * seconds)),
});
const changes = new RackChanges();
const clock = { now: () => instant(Date.now()) };
const panStore = loadOnce(async () => {
  const { IndexedDbPanStore } = await import('./storage/rack/indexed-db-pan-store');
  return new IndexedDbPanStore(database, changes);
});
const rack = createRackModel({
  store: panStore,
  changes,
  trace: new BrowserTraceStore(),
  copy: new BrowserCardCopy(),
  clock,
  builtAt: instant(ringwrightBuiltAt),
  judging: settings.judging,
  lastBackup: settings.lastBackup,
  makeCard: async (pan) => {
    const [{ renewCard }, store] = await Promise.all([
      import('./state/rack/renew-card'),
      panStore(),
    ]);
    return renewCard(store, pan, settings.judging.value);
  },
});
const route = followRoute(window);
const arrival = createArrivalModel({
  arrivals: async () => {
    const { BrowserArrivals } = await import('./offline/browser-arrivals');
    return new BrowserArrivals();
  },
  // Nobody is led away from a measurement or a half-filled form: the rack says that a file waits.
  onArrival: () => {
    if (route.value.screen === 'rack' && !listen.isBusy.value) goTo('receive');
  },
});
const offline = createOfflineModel(async () => {
  const { ServiceWorkerUpdates } = await import('./offline/service-worker-updates');
  const updates = new ServiceWorkerUpdates(() => microphoneTurn.isTaken());
  void updates.begin();
  return updates;
});
const isUnsaved = signal(false);
const lateModels = loadOnce(async () => {
  const [{ makeLateModels }, store] = await Promise.all([import('./make-late-models'), panStore()]);
  return makeLateModels({
    isUnsaved,
    database,
    changes,
    store,
    settings,
    listen,
    soundFiles,
    speaker,
    clock,
    appVersion: ringwrightVersion,
  });
});

const root = document.getElementById('app');
if (!root) throw new Error('index.html has lost its #app element');
root.replaceChildren();
const app = (
  <App
    route={route}
    models={{ listen, settings, rack, arrival, offline, isUnsaved, now: clock.now }}
    late={lateModels}
  />
);
render(isFramed(window) ? <FramedNotice /> : app, root);
void settings.load().then(() => listen.retune());
void offline.begin();
void arrival.look();
void import('./begin-late').then((file) => file.beginLate({ listen, settings, route, lateModels }));
