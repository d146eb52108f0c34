// The memory of the rack, and what can go wrong with it.
import type { PanCard } from '../rack/pan-card';
import type {
  Attachment,
  AttachmentId,
  PanId,
  PanRecords,
  RackRecord,
  ReadingRecord,
  RoundId,
} from '../records/rack-records';
import type { InTurn } from '../records/record-order';
import type { MidiNote } from '../tuning/units';
import type { Unsubscribe } from './unsubscribe';

/** Why nothing could be read or written; each has its own sentence on the screen. */
export type StoreTrouble =
  /** No storage at all: a private window, or storage refused. */
  | 'unavailable'
  | 'full'
  /** The stored rack was written by a newer version of the app. */
  | 'newer'
  /** Another window of the app holds an older version of the database open. */
  | 'other-window'
  /** The browser has deleted the rack while the app was open; the next writing begins a new one. */
  | 'deleted'
  | 'failed';

export type Loaded<T> =
  | { readonly kind: 'loaded'; readonly value: T; readonly repairs: readonly string[] }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

export type Kept =
  | { readonly kind: 'kept' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

/** The cards kept, and the pans whose card is missing or older than their records. */
export interface KeptCards {
  readonly cards: readonly PanCard[];
  readonly stale: readonly PanId[];
}

/** Something was written to the rack. */
export interface RackChange {
  readonly pans: readonly PanId[];
  /**
   * The records, where this window wrote them: whoever made them need not read them back. Null where another window
   * wrote, or a backup was taken in: then only the store knows what is new.
   */
  readonly own: readonly RackRecord[] | null;
}

/** How much is kept. */
export interface RackSize {
  readonly readings: number;
  /** Bytes of kept sound. */
  readonly soundBytes: number;
  /** How often anything was written to any pan, readings and all. */
  readonly changes: number;
}

/**
 * The rack's memory. Records are only added; adding one that is already there changes nothing. Nothing here
 * throws or rejects. A card is derived: `keep` throws away those of the pans it writes to.
 */
export interface PanStore {
  cards(): Promise<Loaded<KeptCards>>;
  /**
   * `madeFrom` is what `pan` had answered before the readings were read. A card that is older than its records
   * by then, because another window wrote meanwhile, is dropped: the pan stays stale.
   */
  keepCard(card: PanCard, madeFrom: PanRecords): Promise<Kept>;
  pan(pan: PanId): Promise<Loaded<PanRecords>>;
  readingsOfRound(round: RoundId): Promise<Loaded<readonly ReadingRecord[]>>;
  /** All readings of one note of a pan, oldest first. */
  readingsOfNote(pan: PanId, note: MidiNote): Promise<Loaded<readonly ReadingRecord[]>>;
  /** Readings of a pan that were taken outside of rounds together with `since` or later, or ever; oldest first. */
  readingsOutside(pan: PanId, since: InTurn | null): Promise<Loaded<readonly ReadingRecord[]>>;
  /** Resolves `kept` once all of it is on disk, in one transaction: all of it or nothing. */
  keep(records: readonly RackRecord[], attachments?: readonly Attachment[]): Promise<Kept>;
  attachment(id: AttachmentId): Promise<Loaded<Attachment | null>>;
  size(): Promise<Loaded<RackSize>>;
  /** Something was written, here or in another window of the app. */
  onChange(listener: (change: RackChange) => void): Unsubscribe;
}

/** A photo small enough to keep: JPEG, at most 960 px on its longer side. */
export interface Photos {
  /** Null if the file is no picture that this phone can read. `file` is the browser's File. */
  scaled(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<Uint8Array<ArrayBuffer> | null>;
}
