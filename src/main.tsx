// Composition root: the only place that makes adapters and connects them.
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
import { createArrivalModel } from './state/arrival-model';
import { createListenModel } from './state/listen-model';
import { createRackModel } from './state/rack-model';
import { createSettingsModel } from './state/settings-model';
import { createSoundPlayer } from './state/sound-player';
import { BrowserFileHandout } from './storage/browser-file-handout';
import { BrowserPhotos } from './storage/browser-photos';
import { BrowserPrinter } from './storage/browser-printer';
import { BrowserStorageHealth } from './storage/browser-storage-health';
import { BrowserTraceStore } from './storage/browser-trace-store';
import { Database } from './storage/database';
import { IndexedDbSettings } from './storage/indexed-db-settings';
import { latePanStore } from './storage/late-pan-store';
import { RackChanges } from './storage/rack-changes';
import { App } from './ui/app';
import type { PanModels } from './ui/app-models';
import { followRoute, goTo } from './ui/route';
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
  const { IndexedDbPanStore } = await import('./storage/indexed-db-pan-store');
  return new IndexedDbPanStore(database, changes);
});
const announcer = new BrowserAnnouncer();
const fileHandout = new BrowserFileHandout();
const clock = { now: () => instant(Date.now()) };
const identities = { next: () => crypto.randomUUID() };
const rack = createRackModel({
  store,
  trace: new BrowserTraceStore(),
  clock,
  judging: settings.judging,
  lastBackup: settings.lastBackup,
  makeCard: async (pan) => {
    const { renewCard } = await import('./state/renew-card');
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
const makePanModels = async (): Promise<PanModels> => {
  const [
    { createPanModel },
    { createResultsModel },
    { createNoteModel },
    { createRoundModel },
    { createKnockModel },
    { createBenchModel },
    { createPracticeBenchModel },
    { createBlendModel },
    { newsWords },
    { createBackupModel },
    { IndexedDbBackupFiles },
  ] = await Promise.all([
    import('./state/pan-model'),
    import('./state/results-model'),
    import('./state/note-model'),
    import('./state/round-model'),
    import('./state/knock-model'),
    import('./state/bench-model'),
    import('./state/practice-bench-model'),
    import('./state/blend-model'),
    import('./ui/words/pan-words'),
    import('./state/backup-model'),
    import('./storage/indexed-db-backup-files'),
  ]);
  const round = createRoundModel({
    store,
    listen,
    settings,
    announcer,
    clock,
    identities,
    appVersion: ringwrightVersion,
    newsWords,
  });
  return {
    pan: createPanModel({ store, clock, identities }),
    note: createNoteModel({ store }),
    results: createResultsModel({ store, judging: settings.judging }),
    round,
    knock: createKnockModel({ store, round, clock, identities }),
    bench: createBenchModel({
      store,
      listen,
      settings,
      clock,
      identities,
      appVersion: ringwrightVersion,
    }),
    practiceBench: createPracticeBenchModel({
      pans: async (level, a4) => {
        const { createHammeredSource } = await import('./practice-pan/hammered-source');
        const [seed = 1] = crypto.getRandomValues(new Uint32Array(1));
        return createHammeredSource(seed, { level, a4 });
      },
      listen,
      settings,
      rest: () => new Promise((resume) => setTimeout(resume, 0)),
    }),
    blend: createBlendModel({ store, judging: settings.judging }),
    player: createSoundPlayer({ store, soundFiles, speaker }),
    backup: createBackupModel({
      files: new IndexedDbBackupFiles({
        database,
        changes,
        clock,
        appVersion: ringwrightVersion,
      }),
      handout: fileHandout,
      store,
      settings,
      clock,
    }),
  };
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
        panModels ??= makePanModels().catch((error: unknown) => {
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
