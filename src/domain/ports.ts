// What the app needs from the world outside, in the words of the trade. Adapters implement these; tests fake them.
import type { CutSound } from './measurement/cut-sound';
import type { Heard, ListeningContext } from './measurement/strike';
import type { PanLayout } from './pans/layout';
import type { BackupCounts } from './records/backup-format';
import type { BackupReport } from './records/backup-verdict';
import type { PanCard } from './records/pan-card';
import type {
  Attachment,
  AttachmentId,
  PanId,
  PanRecords,
  RackRecord,
  ReadingRecord,
  RoundId,
} from './records/rack-records';
import type { Settings } from './records/settings';
import type { Instant, MidiNote, Seconds } from './tuning/units';

/** Call to stop listening to a port. */
export type Unsubscribe = () => void;

export type MicrophoneState =
  | { readonly kind: 'idle' }
  /** The permission question is on screen. */
  | { readonly kind: 'asking' }
  /** Granted; the first half second is thrown away and checked. */
  | { readonly kind: 'priming' }
  /** `processing`: phone processing that could not be switched off, in plain words ("noise suppression"). */
  | {
      readonly kind: 'listening';
      readonly processing: readonly string[];
      readonly sampleRate: number;
    }
  /** A call, another app or the lock screen took the sound away. */
  | { readonly kind: 'interrupted' }
  /** Granted and running, but nothing except exact zeros arrives. */
  | { readonly kind: 'silent' }
  /** Blocks stopped arriving, or the device was unplugged. */
  | { readonly kind: 'lost' }
  | { readonly kind: 'denied' }
  | { readonly kind: 'absent' }
  | { readonly kind: 'busy' }
  /** Another window of the app listens. */
  | { readonly kind: 'other-window' }
  | { readonly kind: 'failed'; readonly why: MicrophoneFailure };

/**
 * `insecure`: the page did not come over https, and browsers give such pages no microphone.
 * `wrong-rate`: samples come faster or slower than the phone says, so every pitch would be wrong.
 */
export type MicrophoneFailure = 'insecure' | 'wrong-rate' | 'unknown';

/** The phone's microphone. Blocks go straight to the analysis; the page only sees state and level. */
export interface Microphone {
  onState(listener: (state: MicrophoneState) => void): Unsubscribe;
  /** Must be called inside a tap. Stops and rebuilds everything if it was already running. */
  start(): Promise<void>;
  stop(): Promise<void>;
}

export type EarState =
  | { readonly kind: 'ready' }
  | { readonly kind: 'failed'; readonly detail: string };

/** The analysis, on its own thread. */
export interface Ear {
  onHeard(listener: (heard: Heard) => void): Unsubscribe;
  /** Input level of the newest block, dB relative to full scale (for "is the microphone alive?"). */
  onLevel(listener: (levelDb: number) => void): Unsubscribe;
  onState(listener: (state: EarState) => void): Unsubscribe;
  setContext(context: ListeningContext): void;
  /** Start a new listening at this sample rate: forget all earlier sound. */
  begin(sampleRate: number): void;
  /** Samples −1…1, one channel; the array is transferred and unusable afterwards. */
  feed(samples: Float32Array<ArrayBuffer>): void;
  /**
   * The sound from `from` (s since listening began) on, `length` s of it, once all of it has been heard; null if
   * it is forgotten (a few seconds are remembered) or another listening has begun.
   */
  cut(from: Seconds, length: Seconds): Promise<CutSound | null>;
  /** No more sound will come: report what is still open. Resolves when all of it has been reported. */
  finish(): Promise<void>;
}

/** A sound file as samples. */
export interface OpenedSound {
  /** One channel, −1…1, at the file's own rate unless `resampled`. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  /** True if the browser's decoder had to be used and may have changed the rate. */
  readonly resampled: boolean;
}

export type OpenSoundResult =
  | { readonly kind: 'opened'; readonly sound: OpenedSound }
  | { readonly kind: 'unreadable'; readonly why: 'empty' | 'not-sound' | 'too-long' };

/** Opens sound files the user picked. `file` is the browser's File. */
export interface SoundFiles {
  open(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<OpenSoundResult>;
}

/** The phone's speaker. Never throws: a phone that cannot play is simply silent. */
export interface Speaker {
  play(samples: Float32Array<ArrayBuffer>, sampleRate: number): void;
}

/** Tells without the screen. Never throws: a phone that cannot is silent. */
export interface Announcer {
  /** True if the phone has a voice of its own: voices from the network are never used. */
  hasVoice(): boolean;
  /** Resolves when it has been said, or could not be. */
  say(text: string): Promise<void>;
  /** Two short high beeps, above the notes of any pan. Resolves when they are over. */
  beep(): Promise<void>;
  /** Ends what is being said. */
  hush(): void;
}

/** Keeps the screen on while `on`; asks again by itself after the app was hidden. */
export interface ScreenLight {
  keepOn(on: boolean): void;
}

export type OfflineState =
  | { readonly kind: 'not-ready' }
  /** Everything the app needs is on the phone and this page is served from there. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'update-waiting' }
  | { readonly kind: 'unsupported' };

export interface AppUpdates {
  onState(listener: (state: OfflineState) => void): Unsubscribe;
  /** Apply the waiting update and reload. Call only when nothing is being measured. */
  apply(): void;
}

export type SettingsLoad =
  | { readonly kind: 'loaded'; readonly settings: Settings; readonly repairs: readonly string[] }
  | { readonly kind: 'unavailable' };

export interface SettingsStore {
  load(): Promise<SettingsLoad>;
  /** Resolves true once it is on disk. */
  save(settings: Settings): Promise<boolean>;
}

/** A simulated pan that can be struck. */
export interface PracticeSource {
  readonly layout: PanLayout;
  /** The sound of one strike, −1…1, about 1.4 s; loudness 0…1. */
  strike(note: MidiNote, loudness: number, sampleRate: number): Float32Array<ArrayBuffer>;
}

/** A photo small enough to keep: JPEG, at most 960 px on its longer side. */
export interface Photos {
  /** Null if the file is no picture that this phone can read. `file` is the browser's File. */
  scaled(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<Uint8Array<ArrayBuffer> | null>;
}

export interface Clock {
  now(): Instant;
}

/** Makes names for new records that no other phone will ever make. */
export interface Identities {
  next(): string;
}

/** Why nothing could be read or written; each has its own sentence on the screen. */
export type StoreTrouble =
  /** No storage at all: a private window, or storage refused. */
  | 'unavailable'
  | 'full'
  /** The stored rack was written by a newer version of the app. */
  | 'newer'
  /** Another window of the app holds an older version of the database open. */
  | 'other-window'
  | 'failed';

export type Loaded<T> =
  | { readonly kind: 'loaded'; readonly value: T; readonly repairs: readonly string[] }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

export type Kept =
  | { readonly kind: 'kept' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

/** The cards that are kept, and the pans whose card is missing or older than their records. */
export interface KeptCards {
  readonly cards: readonly PanCard[];
  readonly stale: readonly PanId[];
}

/**
 * The rack's memory. Records are only added; adding one that is already there changes nothing. Nothing here
 * throws or rejects. A card is derived: `keep` throws away those of the pans it writes to.
 */
export interface PanStore {
  cards(): Promise<Loaded<KeptCards>>;
  /**
   * `madeFrom` is what `pan` had answered before the readings were read. A card that is older than its records
   * by now, because another window wrote meanwhile, is let go: the pan stays stale.
   */
  keepCard(card: PanCard, madeFrom: PanRecords): Promise<Kept>;
  pan(pan: PanId): Promise<Loaded<PanRecords>>;
  readingsOfRound(round: RoundId): Promise<Loaded<readonly ReadingRecord[]>>;
  /** All readings of one note of a pan, oldest first. */
  readingsOfNote(pan: PanId, note: MidiNote): Promise<Loaded<readonly ReadingRecord[]>>;
  /** Resolves `kept` once all of it is on disk, in one transaction: all of it or nothing. */
  keep(records: readonly RackRecord[], attachments?: readonly Attachment[]): Promise<Kept>;
  attachment(id: AttachmentId): Promise<Loaded<Attachment | null>>;
  /** How much is kept: number of readings, and bytes of kept sound. */
  size(): Promise<Loaded<{ readonly readings: number; readonly soundBytes: number }>>;
  /** Something was written, here or in another window of the app. */
  onChange(listener: (pans: readonly PanId[]) => void): Unsubscribe;
}

/** `persistent`: the browser has promised not to clear it by itself. `best-effort`: it may, when the phone runs full. */
export type Durability = 'persistent' | 'best-effort' | 'unknown';

export interface StorageState {
  readonly durability: Durability;
  /** Of everything the app keeps, its own offline copy included; null where the browser does not say. */
  readonly usedBytes: number | null;
  /** How much the app may use in all. */
  readonly mostBytes: number | null;
}

/** How safe what is kept is on this phone. Never throws. */
export interface StorageHealth {
  look(): Promise<StorageState>;
  /**
   * Asks the browser not to clear what is kept, if it has not promised so already. Some browsers ask the user in
   * turn: call it after the first saved reading, when there is something to lose.
   */
  askToKeep(): Promise<Durability>;
}

/** The microphone belongs to one window of the app at a time. */
export interface MicrophoneTurn {
  /** Takes it for this window until `release`; taking it twice is taking it once. */
  take(): Promise<'ours' | 'other-window'>;
  release(): void;
}

/** A file that is ready to go out or has been picked: the browser's File. */
export interface FileOnHand {
  readonly name: string;
  readonly size: number;
}

/** What a backup holds: everything on the rack, or one pan. `name` is for the name of the file. */
export type BackupScope =
  | { readonly kind: 'rack' }
  | { readonly kind: 'pan'; readonly pan: PanId; readonly name: string };

export type BackupMade =
  /** `leftOut`: records in the store that could not be read any more and are not in the file. */
  | {
      readonly kind: 'made';
      readonly file: FileOnHand;
      readonly counts: BackupCounts;
      readonly leftOut: number;
    }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

/** A backup that was read from end to end and can be taken in. */
export interface CheckedBackup {
  readonly file: FileOnHand;
  /** Whole as it was made, or damaged and good in part (`report` lists what is left out). */
  readonly isWhole: boolean;
  readonly report: BackupReport;
  readonly pans: readonly PanId[];
  readonly readings: number;
}

/**
 * `foreign`: no backup of this app. `newer`: of a newer version of it. `nothing`: nothing in it can be used.
 * `too-large`: larger than any rack, or packed so as to fill the phone. `unreadable`: the phone could not read
 * the file. `packed`: this browser is too old to unpack it.
 */
export type BackupRefusal = 'foreign' | 'newer' | 'nothing' | 'too-large' | 'unreadable' | 'packed';

export type BackupCheck =
  | { readonly kind: 'fine'; readonly backup: CheckedBackup }
  | { readonly kind: 'refused'; readonly why: BackupRefusal };

export type BackupTakenIn =
  /** On disk, all of it. `added`: what was not there before. */
  | { readonly kind: 'taken-in'; readonly added: BackupCounts }
  /** The store failed, or the file changed since it was checked; what is in already is good, and all can be tried again. */
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble | 'file-changed' };

/** Told how much is done, 0…1. */
export type Progress = (part: number) => void;

/** The rack as a file and back. Nothing here throws or rejects. */
export interface BackupFiles {
  /** Makes the file, to be handed out in the next tap. */
  make(scope: BackupScope, onProgress?: Progress): Promise<BackupMade>;
  /** Reads a file from end to end without touching anything that is kept. */
  check(file: FileOnHand, onProgress?: Progress): Promise<BackupCheck>;
  /** Adds what a checked file holds to the rack; what is there already stays, so it can be done any number of times. */
  takeIn(backup: CheckedBackup, onProgress?: Progress): Promise<BackupTakenIn>;
}

/** `dismissed`: closed by the user, who knows it. `again`: the browser wants another tap for it. */
export type HandedOut = 'shared' | 'downloaded' | 'dismissed' | 'again' | 'failed';

/** The way out of the app for files: the share sheet where there is one, else a download. */
export interface FileHandout {
  /** A file of text, ready to be handed out. `type` is its media type. */
  textFile(name: string, type: string, text: string): FileOnHand;
  /** Must be called inside a tap, with a file that was made before it: the browser forgets the tap after seconds. */
  handOut(file: FileOnHand): Promise<HandedOut>;
}
