// One line of a backup: which of its three kinds it is, and what it holds.
import { instant } from '../../tuning/units';
import type { PanId } from '../rack-records';
import { fitsDigest } from '../record-digest';
import { instantRule, panIdRule } from '../restore/record-head';
import { Repairs } from '../restore/repairs';
import { restoreAttachment } from '../restore/restore-attachment';
import { type LeftOutReason, restoreRecord } from '../restore/restore-record';
import { bad, cutText } from '../restore/value-rules';
import {
  type BackupCounts,
  type BackupHeader,
  type BackupPart,
  backupFormat,
  backupVersion,
  headerEnd,
  lastLineStart,
} from './backup-format';
import { fromBase64 } from './base64';
import { crc32Of } from './crc-32';

export type HeaderLine =
  | { readonly kind: 'header'; readonly header: BackupHeader }
  | { readonly kind: 'newer'; readonly version: number }
  | { readonly kind: 'none' };

/**
 * The header of a backup, or word that this is none. A header with a bad part counts as none: nothing depends on it.
 */
export function readHeaderLine(line: string): HeaderLine {
  const none: HeaderLine = { kind: 'none' };
  if (line.length > 2_000 || !line.endsWith(headerEnd)) return none;
  const fields = parsed(`${line}]}`);
  if (fields?.['format'] !== backupFormat) return none;
  const { version, made, app, pans } = fields as Record<string, unknown>;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return none;
  if (version > backupVersion) return { kind: 'newer', version };
  const time = instantRule(made, new Repairs());
  if (time === bad || typeof app !== 'string' || !isCount(pans)) return none;
  return { kind: 'header', header: { made: instant(time), app: cutText(app, 64), pans } };
}

export interface LastLine {
  readonly counts: BackupCounts;
  readonly sum: string;
}

/** What the last line of a backup says, or null if this is no such line. */
export function readLastLine(line: string): LastLine | null {
  if (line.length > 200 || !line.startsWith(lastLineStart)) return null;
  const fields = parsed(`{"records":[${line}`);
  const counts = fields?.['counts'] as Partial<BackupCounts> | null | undefined;
  const sum = fields?.['sum'];
  if (!isCount(counts?.records) || !isCount(counts.attachments) || typeof sum !== 'string') {
    return null;
  }
  return { counts: { records: counts.records, attachments: counts.attachments }, sum };
}

/**
 * Why a line was left out. `unreadable`: it has not the form of a line; `changed`: its text does not fit its
 * sum; `altered`: it fits its sum and not the digest that the record itself carries; `nested`: brackets in brackets, deeper than any record.
 */
export type LineFault =
  | LeftOutReason
  | 'unreadable'
  | 'changed'
  | 'altered'
  | 'nested'
  | 'too-long';

export type PartLine =
  | { readonly kind: 'part'; readonly part: BackupPart; readonly repairs: readonly string[] }
  | { readonly kind: 'left-out'; readonly why: LineFault; readonly parts: readonly string[] };

/** Deeper brackets than any record has (chosen, no source). */
const deepest = 32;
const sumLength = 8;
/** `["`, the sum, `",`. */
const textStart = 2 + sumLength + 2;

/** The record or attachment on a line of a backup, or why there is none. */
export function readPartLine(line: string): PartLine {
  const isFollowed = line.endsWith(',');
  const end = line.length - (isFollowed ? 2 : 1);
  const hasForm =
    line.startsWith('["') &&
    line.startsWith('",{', textStart - 2) &&
    line.startsWith('}]', end - 1);
  if (!hasForm) return leftOut('unreadable');
  const text = line.slice(textStart, end);
  if (crc32Of(text) !== line.slice(2, 2 + sumLength)) return leftOut('changed');
  if (isDeeperThan(deepest, text)) return leftOut('nested');
  const data = parsed(text);
  return data === null ? leftOut('unreadable') : partOf(data);
}

function partOf(data: Record<string, unknown>): PartLine {
  const { kind, bytes } = data;
  if (kind === 'photo' || kind === 'sound') {
    const restored = restoreAttachment({
      ...data,
      bytes: typeof bytes === 'string' ? fromBase64(bytes) : null,
    });
    if (restored.kind === 'left-out') return restored;
    const { attachment, repairs } = restored;
    return { kind: 'part', part: { kind: 'attachment', attachment }, repairs };
  }
  if (!fitsDigest(data)) return leftOut('altered');
  const restored = restoreRecord(data);
  if (restored.kind === 'left-out') return restored;
  const { record, repairs } = restored;
  return { kind: 'part', part: { kind: 'record', record }, repairs };
}

/** Which pan a line that was left out seems to belong to, as far as that can still be read. */
export function panOfLine(line: string): PanId | null {
  const found = /"pan":"([^"\\]{1,64})"/.exec(line)?.[1];
  const pan = panIdRule(found, new Repairs());
  return pan === bad ? null : pan;
}

/** The object that a JSON text holds, or null. */
function parsed(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    // Not JSON: that is an answer, not a failure.
    return null;
  }
}

function isDeeperThan(limit: number, json: string): boolean {
  let depth = 0;
  let isText = false;
  for (let k = 0; k < json.length; k++) {
    switch (json.charCodeAt(k)) {
      case 0x22: // "
        isText = !isText;
        break;
      case 0x5c: // \
        k++;
        break;
      case 0x5b: // [
      case 0x7b: // {
        if (!isText && ++depth > limit) return true;
        break;
      case 0x5d: // ]
      case 0x7d: // }
        if (!isText) depth--;
        break;
    }
  }
  return false;
}

const isCount = (value: unknown): value is number =>
  Number.isSafeInteger(value) && Number(value) >= 0;

const leftOut = (why: LineFault): PartLine => ({ kind: 'left-out', why, parts: [] });
