// The file that holds a whole rack, or one pan: one JSON document that can be written and read line by line.
//
//   {"format":"ringwright-rack","version":1,"made":…,"app":"…","pans":2,"records":[
//   ["c0ffee01",{…}],            one record or attachment a line, after the CRC-32 of its own text;
//   ["1badcafe",{…}]             of an attachment the bytes are base64
//   ],"counts":{"records":1,"attachments":1},"sum":"…"}
//
// All of it is ASCII (other characters are escaped), so no program on the way can change what a byte means. The
// sums of the lines say which lines were damaged, the last one (of everything before the last line) and the
// counts say whether anything is missing. The way from and to gzip is not part of it.
import type { Instant } from '../../tuning/units';
import type { Attachment, RackRecord } from '../rack-records';

export const backupFormat = 'ringwright-rack';
export const backupVersion = 1;

export interface BackupHeader {
  /** When the file was made. */
  readonly made: Instant;
  /** Version of the app that made it. */
  readonly app: string;
  /** How many pans it holds. */
  readonly pans: number;
}

export interface BackupCounts {
  readonly records: number;
  readonly attachments: number;
}

export type BackupPart =
  | { readonly kind: 'record'; readonly record: RackRecord }
  | { readonly kind: 'attachment'; readonly attachment: Attachment };

/** How the header line ends, and how the last line begins. */
export const headerEnd = '"records":[';
export const lastLineStart = '],"counts":';
