// Checks every record that comes from storage or from a file: it becomes a valid record or is left out with a reason.
import type { RackRecord } from '../rack-records';
import { Repairs } from './repairs';
import { blowsRule } from './restore-blows';
import { knockCheckRule, stopgapRule } from './restore-knock-check';
import { erasureRule, markRule } from './restore-mark';
import { panEditRule } from './restore-pan-edit';
import { readingRule } from './restore-reading';
import { roundEndRule, roundStartRule } from './restore-round';
import { tunerVisitRule } from './restore-tuner-visit';
import { bad, type Rule } from './value-rules';

/** Why something is not taken: it is no record at all, a newer version wrote it, or a part it needs is bad. */
export type LeftOutReason = 'no-record' | 'newer' | 'unknown-kind' | 'damaged';

export interface LeftOut {
  readonly kind: 'left-out';
  readonly why: LeftOutReason;
  /** The parts that were bad, last the one that it cannot do without; empty unless `damaged`. */
  readonly parts: readonly string[];
}

export type RestoredRecord =
  | {
      readonly kind: 'restored';
      readonly record: RackRecord;
      /** Parts that were left out or replaced by a default, or cut. */
      readonly repairs: readonly string[];
    }
  | LeftOut;

const rules: Readonly<Record<RackRecord['kind'], Rule<RackRecord>>> = {
  'pan-edit': panEditRule,
  round: roundStartRule,
  'round-end': roundEndRule,
  reading: readingRule,
  mark: markRule,
  blows: blowsRule,
  'knock-check': knockCheckRule,
  stopgap: stopgapRule,
  'tuner-visit': tunerVisitRule,
  erasure: erasureRule,
};

const isKind = (kind: unknown): kind is RackRecord['kind'] =>
  typeof kind === 'string' && Object.hasOwn(rules, kind);

/** A valid record of plain data from anywhere, or why there is none. Never throws; fields it does not know stay. */
export function restoreRecord(stored: unknown): RestoredRecord {
  if (typeof stored !== 'object' || stored === null) return leftOut('no-record');
  const { shape, kind } = stored as { readonly shape?: unknown; readonly kind?: unknown };
  if (isNewerShape(shape)) return leftOut('newer');
  if (typeof kind !== 'string') return leftOut('no-record');
  if (!isKind(kind)) return leftOut('unknown-kind');
  const repairs = new Repairs();
  const record = rules[kind](stored, repairs);
  if (record === bad) return leftOut('damaged', repairs.list);
  // The digest was that of the whole record.
  const isWhole = repairs.list.length === 0 || record.digest === undefined;
  return {
    kind: 'restored',
    record: isWhole ? record : withoutDigest(record),
    repairs: repairs.list,
  };
}

function withoutDigest(record: RackRecord): RackRecord {
  const { digest: _, ...rest } = record;
  return rest;
}

export const isNewerShape = (shape: unknown): boolean =>
  Number.isInteger(shape) && Number(shape) > 1;

export const leftOut = (why: LeftOutReason, parts: readonly string[] = []): LeftOut => ({
  kind: 'left-out',
  why,
  parts,
});
