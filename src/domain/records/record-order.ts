// The one order of records, the same on every phone.
import type { Instant, MidiNote } from '../tuning/units';

interface Ordered {
  readonly id: string;
  readonly at: Instant;
}

/** Compares by time, then by id: the older one first. */
export const olderFirst = (one: Ordered, other: Ordered): number =>
  one.at - other.at || compareText(one.id, other.id);

/** Compares by code units: no language has a say in it. */
export const compareText = (one: string, other: string): number =>
  one < other ? -1 : one > other ? 1 : 0;

/** The newest of some records, or null if there are none. */
export const newestOf = <T extends Ordered>(records: readonly T[]): T | null =>
  records.reduce<T | null>(
    (newest, each) => (newest === null || olderFirst(newest, each) < 0 ? each : newest),
    null,
  );

/** The newest record of each key, keys in the order in which they first appear in time. */
export const newestPer = <Key, T extends Ordered>(
  records: readonly T[],
  keyOf: (record: T) => Key,
): ReadonlyMap<Key, T> =>
  new Map([...records].sort(olderFirst).map((record) => [keyOf(record), record]));

/** The newest record of each note. */
export const newestPerNote = <T extends Ordered & { readonly note: MidiNote }>(
  records: readonly T[],
): ReadonlyMap<MidiNote, T> => newestPer(records, ({ note }) => note);
