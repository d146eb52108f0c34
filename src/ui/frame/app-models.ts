// The models and the small services that the screens use. Each screen names the few that it needs (`Needs`).
import type { ReadonlySignal } from '@preact/signals';
import type { FileHandout } from '../../domain/ports/file-handout';
import type { Headset } from '../../domain/ports/headset-port';
import type { Photos } from '../../domain/ports/pan-store';
import type { Printer } from '../../domain/ports/phone-ports';
import type { Announcer, PracticeSource } from '../../domain/ports/sound-ports';
import type { Durability } from '../../domain/ports/storage-health';
import type { Instant } from '../../domain/tuning/units';
import type { BenchModel } from '../../state/bench/bench-model';
import type { PracticeBenchModel } from '../../state/bench/practice-bench-model';
import type { InsideModel } from '../../state/listening/inside-model';
import type { ListenModel } from '../../state/listening/listen-model';
import type { SoundPlayer } from '../../state/listening/sound-player';
import type { TargetTone } from '../../state/listening/target-tone';
import type { AnswersModel } from '../../state/pan/answers-model';
import type { NoteModel } from '../../state/pan/note-model';
import type { PanModel } from '../../state/pan/pan-model';
import type { ResultsModel } from '../../state/pan/results-model';
import type { ArrivalModel } from '../../state/rack/arrival-model';
import type { BackupModel } from '../../state/rack/backup-model';
import type { BlendModel } from '../../state/rack/blend-model';
import type { OfflineModel } from '../../state/rack/offline-model';
import type { RackModel } from '../../state/rack/rack-model';
import type { SeveralModel } from '../../state/rack/several-model';
import type { KnockModel } from '../../state/round/knock-model';
import type { RoundModel } from '../../state/round/round-model';
import type { SettingsModel } from '../../state/settings/settings-model';

/** There from the start: what the rack and the listening screen use. */
export interface FirstModels {
  readonly listen: ListenModel;
  readonly settings: SettingsModel;
  readonly rack: RackModel;
  readonly arrival: ArrivalModel;
  readonly offline: OfflineModel;
  /** Something that was measured or written is on no disk yet, because the phone could not save it. */
  readonly isUnsaved: ReadonlySignal<boolean>;
  readonly now: () => Instant;
}

/** What only the other screens use: made when the first of them opens. */
export interface LateModels {
  readonly pan: PanModel;
  readonly round: RoundModel;
  readonly bench: BenchModel;
  readonly practiceBench: PracticeBenchModel;
  readonly results: ResultsModel;
  readonly note: NoteModel;
  readonly answers: AnswersModel;
  readonly backup: BackupModel;
  readonly knock: KnockModel;
  readonly inside: InsideModel;
  readonly targetTone: TargetTone;
  readonly blend: BlendModel;
  readonly several: SeveralModel;
  readonly player: SoundPlayer;
  readonly announcer: Announcer;
  readonly headset: Headset;
  readonly photos: Photos;
  readonly fileHandout: FileHandout;
  readonly printer: Printer;
  /** Whether the browser promises to keep the rack. */
  readonly durability: ReadonlySignal<Durability>;
  /** The practice pan comes when it is first wanted. */
  readonly practicePan: () => Promise<PracticeSource>;
}

export interface AppModels extends FirstModels, LateModels {}
