// The later half of the composition root: the models of single pans, made when the first late screen opens.
import type { FileHandout } from './domain/ports/file-handout';
import type { PanStore } from './domain/ports/pan-store';
import type { Clock, Identities } from './domain/ports/phone-ports';
import type { Announcer, SoundFiles, Speaker } from './domain/ports/sound-ports';
import { createBenchModel } from './state/bench/bench-model';
import { createPracticeBenchModel } from './state/bench/practice-bench-model';
import type { ListenModel } from './state/listening/listen-model';
import { createSoundPlayer } from './state/listening/sound-player';
import { createNoteModel } from './state/pan/note-model';
import { createPanModel } from './state/pan/pan-model';
import { createResultsModel } from './state/pan/results-model';
import { createBackupModel } from './state/rack/backup-model';
import { createBlendModel } from './state/rack/blend-model';
import { createKnockModel } from './state/round/knock-model';
import { createRoundModel } from './state/round/round-model';
import type { SettingsModel } from './state/settings/settings-model';
import { IndexedDbBackupFiles } from './storage/backup/indexed-db-backup-files';
import type { Database } from './storage/database/database';
import type { RackChanges } from './storage/rack/rack-changes';
import type { PanModels } from './ui/frame/app-models';
import { newsWords } from './ui/words/pan-words';

export interface PanModelParts {
  readonly database: Database;
  readonly changes: RackChanges;
  readonly store: PanStore;
  readonly settings: SettingsModel;
  readonly listen: ListenModel;
  readonly announcer: Announcer;
  readonly soundFiles: SoundFiles;
  readonly speaker: Speaker;
  readonly fileHandout: FileHandout;
  readonly clock: Clock;
  readonly identities: Identities;
  readonly appVersion: string;
}

/** Connects them; call it once. */
export function makePanModels(parts: PanModelParts): PanModels {
  const { store, settings, listen } = parts;
  const round = createRoundModel({ ...parts, newsWords });
  return {
    pan: createPanModel(parts),
    note: createNoteModel({ store }),
    results: createResultsModel({ store, judging: settings.judging }),
    round,
    knock: createKnockModel({ ...parts, round }),
    bench: createBenchModel(parts),
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
    player: createSoundPlayer(parts),
    backup: createBackupModel({
      ...parts,
      files: new IndexedDbBackupFiles(parts),
      handout: parts.fileHandout,
    }),
  };
}
