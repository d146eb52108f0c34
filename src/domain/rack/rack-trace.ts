// A small trace of the rack outside its database: it tells a rack that the browser has deleted from one that never was.
import { type Instant, instant } from '../tuning/units';

export interface RackTrace {
  readonly pans: number;
  readonly readings: number;
  /** When so much was last seen. */
  readonly at: Instant;
  /** When anything was first seen; missing in traces of older apps. */
  readonly since?: Instant;
}

/**
 * True if less is there than once was. Records are only ever added, so somebody else has deleted them: the browser
 * when the phone ran full or its database was damaged, or the phone after weeks in which the app was not opened.
 */
export const isLost = (
  trace: RackTrace | null,
  now: Pick<RackTrace, 'pans' | 'readings'>,
): trace is RackTrace => trace !== null && (now.pans < trace.pans || now.readings < trace.readings);

export const traceText = ({ pans, readings, at, since }: RackTrace): string =>
  JSON.stringify({ pans, readings, at, since });

/** The trace that `traceText` wrote; null for anything else. */
export function restoreTrace(text: string | null): RackTrace | null {
  let value: unknown;
  try {
    value = JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
  if (typeof value !== 'object' || value === null) return null;
  const { pans, readings, at, since } = value as Readonly<Record<string, unknown>>;
  if (!isCount(pans) || !isCount(readings) || !isCount(at)) return null;
  return { pans, readings, at: instant(at), ...(isCount(since) ? { since: instant(since) } : {}) };
}

const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
