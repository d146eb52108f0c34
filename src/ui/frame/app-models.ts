// The models and the small services that the screens use.
import type { ReadonlySignal } from '@preact/signals';
import type { FileHandout } from '../../domain/ports/file-handout';
import type { Headset } from '../../domain/ports/headset-port';
import type { Photos } from '../../domain/ports/pan-store';
import type { OfflineState, Printer } from '../../domain/ports/phone-ports';
import type { Announcer, PracticeSource } from '../../domain/ports/sound-ports';
import type { Durability } from '../../domain/ports/storage-health';
import type { Instant } from '../../domain/tuning/units';
import type { BenchModel } from '../../state/bench/bench-model';
import type { PracticeBenchModel } from '../../state/bench/practice-bench-model';
import type { ListenModel } from '../../state/listening/listen-model';
import type { SoundPlayer } from '../../state/listening/sound-player';
import type { NoteModel } from '../../state/pan/note-model';
import type { PanModel } from '../../state/pan/pan-model';
import type { ResultsModel } from '../../state/pan/results-model';
import type { ArrivalModel } from '../../state/rack/arrival-model';
import type { BackupModel } from '../../state/rack/backup-model';
import type { BlendModel } from '../../state/rack/blend-model';
import type { RackModel } from '../../state/rack/rack-model';
import type { KnockModel } from '../../state/round/knock-model';
import type { RoundModel } from '../../state/round/round-model';
import type { SettingsModel } from '../../state/settings/settings-model';

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
