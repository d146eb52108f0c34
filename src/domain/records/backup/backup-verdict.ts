// What a backup turned out to be once it was read to its end.

import type { PanId } from '../rack-records';
import type { BackupCounts, BackupHeader } from './backup-format';
import type { LineFault } from './read-backup-line';

export interface LeftOutLine {
  /** Number of the line in the file, from 1. */
  readonly line: number;
  readonly why: LineFault;
  readonly pan: PanId | null;
}

/** A record that was taken, with some of its parts left out or cut. */
export interface RepairedLine {
  readonly line: number;
  readonly pan: PanId;
  readonly parts: readonly string[];
}

/** What is wrong with a file as a whole. `changed`: something differs, though each line taken is good by its own sum. */
export type FileFault =
  | 'no-header'
  | 'no-end'
  | 'lines-missing'
  | 'changed'
  | 'too-long'
  | 'too-many'
  | 'too-damaged';

export interface BackupReport {
  readonly header: BackupHeader | null;
  /** What was good and has been given out. */
  readonly taken: BackupCounts;
  readonly faults: readonly FileFault[];
  readonly leftOut: readonly LeftOutLine[];
  readonly leftOutCount: number;
  readonly repaired: readonly RepairedLine[];
  readonly repairedCount: number;
}

export type BackupVerdict =
  /** All that was written is there and unchanged. */
  | { readonly kind: 'whole'; readonly report: BackupReport }
  /** Damaged, or with records of a newer version; what was given out is good. */
  | { readonly kind: 'in-part'; readonly report: BackupReport }
  /** A backup without anything in it that can be taken, or an empty file. */
  | { readonly kind: 'nothing'; readonly report: BackupReport }
  | { readonly kind: 'newer'; readonly version: number }
  | { readonly kind: 'foreign' };
