// The later half of the composition root: what the first two screens do not need, made when the first other one opens.
import { effect, type Signal, signal } from '@preact/signals';
import { WorkerAdviser } from './advising/worker-adviser';
import { BrowserAnnouncer } from './audio/browser-announcer';
import { BrowserHeadset } from './audio/browser-headset';
import { BrowserTonePlayer } from './audio/browser-tone-player';
import type { PanStore } from './domain/ports/pan-store';
import type { Clock } from './domain/ports/phone-ports';
import type { SoundFiles, Speaker } from './domain/ports/sound-ports';
import type { Durability } from './domain/ports/storage-health';
import { createBenchModel } from './state/bench/bench-model';
import { createPracticeBenchModel } from './state/bench/practice-bench-model';
import { isAnyUnsaved } from './state/keeping/record-keeper';
import { createRecordTurns, turnedStore } from './state/keeping/record-turns';
import { createUndoModel } from './state/keeping/undo-model';
import { createDeafPlayer } from './state/listening/deaf-player';
import { createInsideModel } from './state/listening/inside-model';
import type { ListenModel } from './state/listening/listen-model';
import { createSoundPlayer } from './state/listening/sound-player';
import { createTargetTone } from './state/listening/target-tone';
import { createAnswersModel } from './state/pan/answers-model';
import { createNoteModel } from './state/pan/note-model';
import { createPanModel } from './state/pan/pan-model';
import { createResultsModel } from './state/pan/results-model';
import { createBackupModel } from './state/rack/backup-model';
import { createBlendModel } from './state/rack/blend-model';
import { createSeveralModel } from './state/rack/several-model';
import { createKnockModel } from './state/round/knock-model';
import { createRoundModel } from './state/round/round-model';
import type { SettingsModel } from './state/settings/settings-model';
import { backupFiles } from './storage/backup/backup-files';
import { BrowserFileHandout } from './storage/browser/browser-file-handout';
import { browserIdentities } from './storage/browser/browser-identities';
import { BrowserPhotos } from './storage/browser/browser-photos';
import { BrowserPrinter } from './storage/browser/browser-printer';
import { BrowserStorageHealth } from './storage/browser/browser-storage-health';
import { warnOnLeaving } from './storage/browser/warn-on-leaving';
import type { Database } from './storage/database/database';
import type { RackChanges } from './storage/rack/rack-changes';
import type { LateModels } from './ui/frame/app-models';
import { showUndoBar } from './ui/parts/controls/undo-bar';
import { newsWords } from './ui/words/pan-words';

/** The practice pan is the same one at every start, so that what was learnt on it stays true. */
const practiceSeed = 29;

export interface LateParts {
  /** Told whether anything could not be saved. */
  readonly isUnsaved: Signal<boolean>;
  readonly database: Database;
  readonly changes: RackChanges;
  readonly store: PanStore;
  readonly settings: SettingsModel;
  readonly listen: ListenModel;
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
  readonly clock: Clock;
  readonly appVersion: string;
}

/** Connects them; call it once. */
export function makeLateModels(early: LateParts): LateModels {
  const { settings, listen } = early;
  const turns = createRecordTurns();
  const store = turnedStore(early.store, turns);
  const announcer = new BrowserAnnouncer();
  const fileHandout = new BrowserFileHandout();
  const pause = (seconds: number): Promise<void> =>
    new Promise((resume) => setTimeout(resume, 1000 * seconds));
  const undo = createUndoModel(pause);
  const tonePlayer = createDeafPlayer({ listen, player: new BrowserTonePlayer(), pause });
  showUndoBar(undo, document);
  const parts = { ...early, store, turns, undo, announcer, identities: browserIdentities() };
  const round = createRoundModel({ ...parts, newsWords });
  const pan = createPanModel(parts);
  const knock = createKnockModel({ ...parts, round });
  const bench = createBenchModel({ ...parts, adviser: new WorkerAdviser() });
  const several = createSeveralModel(parts);
  const unsaved = isAnyUnsaved([pan, round, knock, bench, several]);
  warnOnLeaving(window, () => unsaved.value);
  effect(() => {
    early.isUnsaved.value = unsaved.value;
  });
  return {
    pan,
    note: createNoteModel({ store }),
    answers: createAnswersModel({ store }),
    results: createResultsModel({ store, judging: settings.judging }),
    round,
    knock,
    bench,
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
    targetTone: createTargetTone({ listen, player: tonePlayer }),
    inside: createInsideModel({
      listen,
      player: tonePlayer,
      takeApart: async () => (await import('./dsp/partial-sound/take-apart')).takeApart,
    }),
    blend: createBlendModel({ store, judging: settings.judging }),
    several,
    player: createSoundPlayer(parts),
    backup: createBackupModel({ ...parts, files: backupFiles(parts), handout: fileHandout }),
    announcer,
    headset: new BrowserHeadset(),
    photos: new BrowserPhotos(),
    fileHandout,
    printer: new BrowserPrinter(),
    durability: followDurability(early.changes),
    practicePan: async () => {
      const { createPracticePan } = await import('./practice-pan/practice-pan');
      return createPracticePan(practiceSeed);
    },
  };
}

/** The browser is asked to keep the rack once there is something to lose: nothing is written before these models are there. */
function followDurability(changes: RackChanges) {
  const health = new BrowserStorageHealth();
  const durability = signal<Durability>('unknown');
  void health.look().then((state) => {
    durability.value = state.durability;
  });
  const stopAsking = changes.onChange(() => {
    stopAsking();
    void health.askToKeep().then((answer) => {
      durability.value = answer;
    });
  });
  return durability;
}
