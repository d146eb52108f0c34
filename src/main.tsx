// Composition root: the only place that makes adapters and connects them.
import { signal } from '@preact/signals';
import { render } from 'preact';
import { WorkerEar } from './analysis/worker-ear';
import { BrowserMicrophone } from './audio/browser-microphone';
import { BrowserScreenLight } from './audio/browser-screen-light';
import { BrowserSoundFiles } from './audio/browser-sound-files';
import { BrowserSpeaker } from './audio/browser-speaker';
import type { OfflineState } from './domain/ports';
import { ServiceWorkerUpdates } from './offline/service-worker-updates';
import { createListenModel } from './state/listen-model';
import { createSettingsModel } from './state/settings-model';
import { Database } from './storage/database';
import { IndexedDbSettings } from './storage/indexed-db-settings';
import { App } from './ui/app';
import { followRoute } from './ui/route';
import './ui/theme.css';

/** The practice pan is the same one at every start, so that what was learnt on it stays true. */
const practiceSeed = 29;

const database = new Database();
const ear = new WorkerEar();
const microphone = new BrowserMicrophone((port, sampleRate) => ear.attach(port, sampleRate));
const settings = createSettingsModel(new IndexedDbSettings(database));
const listen = createListenModel({
  microphone,
  ear,
  soundFiles: new BrowserSoundFiles(),
  speaker: new BrowserSpeaker(),
  light: new BrowserScreenLight(),
  a4: settings.a4,
  pause: (seconds) => new Promise((resume) => setTimeout(resume, 1000 * seconds)),
});
const updates = new ServiceWorkerUpdates();
const offline = signal<OfflineState>({ kind: 'not-ready' });
updates.onState((state) => {
  offline.value = state;
});

const root = document.getElementById('app');
if (!root) throw new Error('index.html has lost its #app element');
render(
  <App
    route={followRoute(window)}
    models={{
      listen,
      settings,
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
