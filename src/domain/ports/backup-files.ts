// The rack as a file and back.
import type { PanContents } from '../records/backup/backup-contents';
import type { BackupCounts } from '../records/backup/backup-format';
import type { BackupReport } from '../records/backup/backup-verdict';
import type { Differing } from '../records/merging/differing';
import type { FileEffects } from '../records/merging/file-effects';
import type { PanId } from '../records/rack-records';
import type { FileForm, FileOnHand } from './file-handout';
import type { Kept, StoreTrouble } from './pan-store';

/** What a backup holds: everything on the rack, one pan, or several. `name` is for the name of the file. */
export type BackupScope =
  | { readonly kind: 'rack' }
  | { readonly kind: 'pan'; readonly pan: PanId; readonly name: string }
  | { readonly kind: 'pans'; readonly pans: readonly PanId[] };

export type BackupMade =
  /** `leftOut`: records in the store that could not be read any more and are not in the file. */
  | {
      readonly kind: 'made';
      readonly file: FileOnHand;
      readonly counts: BackupCounts;
      readonly contents: readonly PanContents[];
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
  /** The same, pan by pan. */
  readonly contents: readonly PanContents[];
  /** What taking it in would do to what is here. */
  readonly effects: FileEffects;
}

/**
 * `foreign`: no backup of this app. `newer`: of a newer version of it. `nothing`: nothing in it can be used.
 * `too-large`: larger than any rack, or packed so as to fill the phone. `unreadable`: the phone could not read
 * the file. `packed`: this browser is too old to unpack it. `damaged`: more of it is damaged than good.
 */
export type BackupRefusal =
  | 'foreign'
  | 'newer'
  | 'nothing'
  | 'too-large'
  | 'unreadable'
  | 'packed'
  | 'damaged';

export type BackupCheck =
  | { readonly kind: 'fine'; readonly backup: CheckedBackup }
  | { readonly kind: 'refused'; readonly why: BackupRefusal };

export type BackupTakenIn =
  /** On disk, all of it. `added`: what was not there before; `pans`: those that have something new. */
  | {
      readonly kind: 'taken-in';
      readonly added: BackupCounts;
      readonly pans: readonly PanId[];
      /** Damaged entries that were replaced by intact ones. */
      readonly healed: number;
      /** What differs from what is here. What is here stays; the other is kept beside it, for the user to choose. */
      readonly differing: readonly Differing[];
      readonly differingCount: number;
    }
  /**
   * The store failed, or the file changed since it was checked; what was taken in is good, and it can all be tried
   * again.
   */
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble | 'file-changed' };

/** Told how much is done, 0…1. */
export type Progress = (part: number) => void;

/** The rack as a file and back. Nothing here throws or rejects. */
export interface BackupFiles {
  /** Makes the file, to be handed out in the next tap. */
  make(scope: BackupScope, onProgress?: Progress, form?: FileForm): Promise<BackupMade>;
  /** Reads a file from end to end without touching anything that is kept. */
  check(file: FileOnHand, onProgress?: Progress): Promise<BackupCheck>;
  /** Which of two entries of one name is in place (`Differing.key`): the one that was here, or the one of a file. */
  settle(key: string, whose: 'yours' | 'theirs'): Promise<Kept>;
  /** Adds what a checked file holds to the rack; what is there already stays, so it can be done any number of times. */
  takeIn(backup: CheckedBackup, onProgress?: Progress): Promise<BackupTakenIn>;
}
