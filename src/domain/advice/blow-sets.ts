// What the kept sets of blows changed, each from its readings before and after.

import { median } from '../numbers/averages';
import type { ThreePartials } from '../numbers/three-partials';
import type { PanLayout } from '../pans/layout';
import { keptReading } from '../reading/kept-reading';
import type { Reading } from '../reading/reading';
import { type BlowFirmness, type BlowWhere, strengthOf } from '../records/blow-places';
import type { Blows, PanId, ReadingRecord, RecordId } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { standardA4 } from '../tuning/equal-temperament';
import { cents, type Instant, type MidiNote } from '../tuning/units';

/** A set of logged blows and what it did: what the response to blows is learned from. */
export interface BlowSet extends BlowWhere {
  readonly id: string;
  readonly at: Instant;
  /** That of its record. */
  readonly turn?: Instant;
  readonly note: MidiNote;
  readonly firmness: BlowFirmness;
  /** Strength: 1 for the usual number of light blows. */
  readonly strength: number;
  /** Change of each partial against its fixed target, cents; null where it was not measured both times. */
  readonly change: ThreePartials<number | null>;
  /** One standard error of each change, cents. */
  readonly sigma: ThreePartials;
}

/** The sets among `blows` that were logged and measured before and after, oldest first. `readings`: those they name. */
export function blowSetsOf(
  blows: readonly Blows[],
  readings: readonly ReadingRecord[],
): readonly BlowSet[] {
  const byId = new Map<RecordId, ReadingRecord>(readings.map((reading) => [reading.id, reading]));
  const readingOf = (id: RecordId | null, pan: PanId, note: MidiNote): Reading | null => {
    const record = id === null ? undefined : byId.get(id);
    if (record?.note !== note || record.pan !== pan) return null;
    // Any A4 will do: it cancels in the difference.
    const reading = keptReading(record, { a4: standardA4, offset: cents(0) });
    return reading.walking ? null : reading;
  };
  return [...blows].sort(olderFirst).flatMap((set) => {
    const { id, at, turn, pan, note, logged, count } = set;
    const before = readingOf(set.before, pan, note);
    const after = readingOf(set.after, pan, note);
    if (!logged || !before || !after) return [];
    const strength = strengthOf(logged.firmness, count);
    const inTurn = turn === undefined ? {} : { turn };
    return [{ id, at, ...inTurn, note, ...logged, strength, ...changeBetween(before, after) }];
  });
}

export type ChangedValues = Pick<Reading, 'fundamental' | 'octave' | 'octaveRival' | 'third'>;

/**
 * How far each partial moved between two readings of one note, and one standard error of it. Null where the octave
 * may be a partner's, or the third is of another kind than before.
 */
export function changeBetween(
  before: ChangedValues,
  after: ChangedValues,
): Pick<BlowSet, 'change' | 'sigma'> {
  const isOctaveSure = !before.octaveRival && !after.octaveRival;
  const isSameThird = before.third?.kind === after.third?.kind;
  const moved = (one: Measured | null, other: Measured | null): number | null =>
    one && other ? other.cents - one.cents : null;
  const error = (one: Measured | null, other: Measured | null): number =>
    Math.hypot(one?.sigmaCents ?? 0, other?.sigmaCents ?? 0);
  return {
    change: [
      moved(before.fundamental, after.fundamental),
      isOctaveSure ? moved(before.octave, after.octave) : null,
      isSameThird ? moved(before.third, after.third) : null,
    ],
    sigma: [
      error(before.fundamental, after.fundamental),
      error(before.octave, after.octave),
      error(before.third, after.third),
    ],
  };
}

interface Measured {
  readonly cents: number;
  readonly sigmaCents: number;
}

/** Ring and size of a note: notes alike in these are expected to respond alike. */
export interface NoteTraits {
  readonly ring: string | null;
  /** Logarithm of its width over the middle width of the pan's notes, in units of the usual spread. */
  readonly size: number;
}

/** About how much the logarithm of the width varies over the notes of a built-in lead (rounded). */
const usualSpread = 0.3;

/** Traits of every note of a layout. */
export function noteTraits(layout: PanLayout): ReadonlyMap<MidiNote, NoteTraits> {
  const places = layout.drums.flatMap((drum) => drum.notes);
  const widths = places.map(({ along, across }) => Math.log(along * across) / 2);
  const middle = median(widths) ?? 0;
  return new Map(
    places.map(({ note, ring }, k) => {
      const size = ((widths[k] ?? middle) - middle) / usualSpread;
      return [note, { ring, size }] as const;
    }),
  );
}
