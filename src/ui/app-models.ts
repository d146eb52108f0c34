// The models and the small services that the screens use.
import type { ReadonlySignal } from '@preact/signals';
import type { FileHandout } from '../domain/ports/file-handout';
import type { Headset } from '../domain/ports/headset-port';
import type { Photos } from '../domain/ports/pan-store';
import type { OfflineState, Printer } from '../domain/ports/phone-ports';
import type { Announcer, PracticeSource } from '../domain/ports/sound-ports';
import type { Durability } from '../domain/ports/storage-health';
import type { Instant } from '../domain/tuning/units';
import type { ArrivalModel } from '../state/arrival-model';
import type { BackupModel } from '../state/backup-model';
import type { BenchModel } from '../state/bench-model';
import type { BlendModel } from '../state/blend-model';
import type { KnockModel } from '../state/knock-model';
import type { ListenModel } from '../state/listen-model';
import type { NoteModel } from '../state/note-model';
import type { PanModel } from '../state/pan-model';
import type { PracticeBenchModel } from '../state/practice-bench-model';
import type { RackModel } from '../state/rack-model';
import type { ResultsModel } from '../state/results-model';
import type { RoundModel } from '../state/round-model';
import type { SettingsModel } from '../state/settings-model';
import type { SoundPlayer } from '../state/sound-player';

export interface AppModels {
  readonly listen: ListenModel;
  readonly settings: SettingsModel;
  readonly rack: RackModel;
  readonly arrival: ArrivalModel;
  readonly offline: ReadonlySignal<OfflineState>;
  readonly applyUpdate: () => void;
  readonly announcer: Announcer;
  readonly headset: Headset;
  readonly photos: Photos;
  readonly fileHandout: FileHandout;
  readonly printer: Printer;
  /** Whether the browser promises to keep the rack. */
  readonly durability: ReadonlySignal<Durability>;
  readonly now: () => Instant;
  /** The practice pan comes when it is first wanted. */
  readonly practicePan: () => Promise<PracticeSource>;
  /** So do the models of single pans, and only once. */
  readonly pans: () => Promise<PanModels>;
}

export interface PanModels {
  readonly pan: PanModel;
  readonly round: RoundModel;
  readonly bench: BenchModel;
  readonly practiceBench: PracticeBenchModel;
  readonly results: ResultsModel;
  readonly note: NoteModel;
  readonly backup: BackupModel;
  readonly knock: KnockModel;
  readonly blend: BlendModel;
  readonly player: SoundPlayer;
}

/** What the screens of one pan use. */
export interface PanScreenModels extends AppModels, PanModels {}
