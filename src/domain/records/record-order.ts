// The one order of records, the same on every phone.
import type { Instant, MidiNote } from '../tuning/units';

/** What has a turn in the order. */
export interface InTurn {
  readonly at: Instant;
  /**
   * The time, or one millisecond after the latest turn that was known of the pan where the clock was behind that (a
   * hybrid logical clock: Kulkarni and others, 2014). So what takes something back always comes after it, whatever
   * the clock said.
   */
  readonly turn?: Instant;
}

interface Ordered extends InTurn {
  readonly id: string;
}

/**
 * The last turn there is: thousands of years, in milliseconds, after the last moment a record can have, and still a
 * number that can be counted on.
 */
export const lastTurn = 9e15;

/** The turn of a record in the order: where more is known, the clock, which may be wrong, does not decide. */
export const turnOf = ({ at, turn }: InTurn): Instant => turn ?? at;

/** Whether `one` was made before `other`. */
export const isBefore = (one: InTurn, other: InTurn): boolean => turnOf(one) < turnOf(other);

/** Compares by turn, then by id: the older one first. */
export const olderFirst = (one: Ordered, other: Ordered): number =>
  turnOf(one) - turnOf(other) || compareText(one.id, other.id);

/** Compares by code units, so that no language has a say in it. */
export const compareText = (one: string, other: string): number =>
  one < other ? -1 : one > other ? 1 : 0;

/** The newest of some records, or null if there are none. */
export const newestOf = <T extends Ordered>(records: readonly T[]): T | null =>
  records.reduce<T | null>(
    (newest, each) => (newest === null || olderFirst(newest, each) < 0 ? each : newest),
    null,
  );

/** The newest record of each key, keys in the order in which they first appear. */
export const newestPer = <Key, T extends Ordered>(
  records: readonly T[],
  keyOf: (record: T) => Key,
): ReadonlyMap<Key, T> =>
  new Map([...records].sort(olderFirst).map((record) => [keyOf(record), record]));

/** The newest record of each note. */
export const newestPerNote = <T extends Ordered & { readonly note: MidiNote }>(
  records: readonly T[],
): ReadonlyMap<MidiNote, T> => newestPer(records, ({ note }) => note);
