// Composition root: makes adapters and connects them. What only the late screens need is in `make-pan-models.ts`.
import { signal } from '@preact/signals';
import { render } from 'preact';
import { WorkerEar } from './analysis/worker-ear';
import { BrowserAnnouncer } from './audio/browser-announcer';
import { BrowserHeadset } from './audio/browser-headset';
import { BrowserMicrophone } from './audio/browser-microphone';
import { BrowserMicrophoneTurn } from './audio/browser-microphone-turn';
import { BrowserScreenLight } from './audio/browser-screen-light';
import { BrowserSoundFiles } from './audio/browser-sound-files';
import { BrowserSpeaker } from './audio/browser-speaker';
import type { OfflineState } from './domain/ports/phone-ports';
import type { Durability } from './domain/ports/storage-health';
import { instant } from './domain/tuning/units';
import { ServiceWorkerUpdates } from './offline/service-worker-updates';
import { createListenModel } from './state/listening/listen-model';
import { createArrivalModel } from './state/rack/arrival-model';
import { createRackModel } from './state/rack/rack-model';
import { createSettingsModel } from './state/settings/settings-model';
import { BrowserCardCopy } from './storage/browser/browser-card-copy';
import { BrowserFileHandout } from './storage/browser/browser-file-handout';
import { BrowserPhotos } from './storage/browser/browser-photos';
import { BrowserPrinter } from './storage/browser/browser-printer';
import { BrowserStorageHealth } from './storage/browser/browser-storage-health';
import { BrowserTraceStore } from './storage/browser/browser-trace-store';
import { Database } from './storage/database/database';
import { latePanStore } from './storage/rack/late-pan-store';
import { RackChanges } from './storage/rack/rack-changes';
import { IndexedDbSettings } from './storage/settings/indexed-db-settings';
import { App } from './ui/app';
import type { PanModels } from './ui/frame/app-models';
import { followRoute, goTo } from './ui/frame/route';
import './ui/theme.css';

/** The version in package.json, put in by the build. */
declare const ringwrightVersion: string;

/** The practice pan is the same one at every start, so that what was learnt on it stays true. */
const practiceSeed = 29;

const database = new Database();
const ear = new WorkerEar();
const microphone = new BrowserMicrophone((port, sampleRate) => ear.attach(port, sampleRate));
const settings = createSettingsModel(new IndexedDbSettings(database));
const soundFiles = new BrowserSoundFiles();
const speaker = new BrowserSpeaker();
const listen = createListenModel({
  microphone,
  microphoneTurn: new BrowserMicrophoneTurn(),
  ear,
  soundFiles,
  speaker,
  light: new BrowserScreenLight(),
  a4: settings.a4,
  pause: (seconds) => new Promise((resume) => setTimeout(resume, 1000 * seconds)),
});
const changes = new RackChanges();
const store = latePanStore(async () => {
  const { IndexedDbPanStore } = await import('./storage/rack/indexed-db-pan-store');
  return new IndexedDbPanStore(database, changes);
});
const announcer = new BrowserAnnouncer();
const fileHandout = new BrowserFileHandout();
const clock = { now: () => instant(Date.now()) };
const identities = { next: () => crypto.randomUUID() };
const rack = createRackModel({
  store,
  trace: new BrowserTraceStore(),
  copy: new BrowserCardCopy(),
  clock,
  judging: settings.judging,
  lastBackup: settings.lastBackup,
  makeCard: async (pan) => {
    const { renewCard } = await import('./state/rack/renew-card');
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
const loadPanModels = async (): Promise<PanModels> => {
  const { makePanModels } = await import('./make-pan-models');
  return makePanModels({
    database,
    changes,
    store,
    settings,
    listen,
    announcer,
    soundFiles,
    speaker,
    fileHandout,
    clock,
    identities,
    appVersion: ringwrightVersion,
  });
};
let panModels: Promise<PanModels> | null = null;
const updates = new ServiceWorkerUpdates();
const offline = signal<OfflineState>({ kind: 'not-ready' });
updates.onState((state) => {
  offline.value = state;
});

const health = new BrowserStorageHealth();
const durability = signal<Durability>('unknown');
void health.look().then((state) => {
  durability.value = state.durability;
});
/** Asked once there is something to lose. */
const stopAsking = store.onChange(() => {
  stopAsking();
  void health.askToKeep().then((answer) => {
    durability.value = answer;
  });
});

const root = document.getElementById('app');
if (!root) throw new Error('index.html has lost its #app element');
render(
  <App
    route={route}
    models={{
      listen,
      settings,
      rack,
      arrival,
      announcer,
      headset: new BrowserHeadset(),
      photos: new BrowserPhotos(),
      fileHandout,
      printer: new BrowserPrinter(),
      now: clock.now,
      durability,
      pans: () => {
        panModels ??= loadPanModels().catch((error: unknown) => {
          // Without a network and without its offline copy; the next tap tries again.
          panModels = null;
          throw error;
        });
        return panModels;
      },
      offline,
      applyUpdate: () => updates.apply(),
      practicePan: () =>
        import('./practice-pan/practice-pan').then((module) =>
          module.createPracticePan(practiceSeed),
        ),
    }}
  />,
  root,
);
void settings.load().then(() => listen.retune());
void updates.begin();
void arrival.look();
