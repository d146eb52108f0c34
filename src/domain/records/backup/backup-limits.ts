// Limits against files that are made to fill the phone; the usual ones hold the largest rack many times over.

export interface BackupLimits {
  /** Longest line, characters: the largest attachment fits. */
  readonly line: number;
  /** Longest file, characters. */
  readonly characters: number;
  readonly parts: number;
  /** Twice the largest rack that was measured; nobody owns more. */
  readonly pans: number;
  /** Records and attachments of one pan: a round of 30 notes on every day of nine years stays below. */
  readonly partsOfPan: number;
  /** Of these, all that are no readings: a round with ten marks on every day of four years stays below. */
  readonly othersOfPan: number;
  /** How many more lines may be damaged or empty than good before the file no longer counts as a backup. */
  readonly damaged: number;
  /** The same for lines that are whole, but of a kind or shape that this version does not know. */
  readonly unknown: number;
  /** A file that has shown no header and no good line by this many lines is foreign. */
  readonly foreignAfter: number;
  /** This many left-out lines and repairs are listed one by one; further ones are only counted. */
  readonly listed: number;
}

export const backupLimits: BackupLimits = {
  line: 6e6,
  characters: 8e9,
  parts: 1e7,
  pans: 2_000,
  partsOfPan: 100_000,
  othersOfPan: 20_000,
  damaged: 20_000,
  unknown: 100_000,
  foreignAfter: 1.2e7,
  listed: 100,
};
