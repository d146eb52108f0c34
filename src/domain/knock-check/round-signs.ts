// The signs of damage that the readings of a kept round show.
import type { Strike } from '../measurement/strike';
import type { PanLayout } from '../pans/layout';
import { wishOf } from '../reading/judge-note';
import { strikesOf } from '../reading/reading-values';
import {
  type KnockCheck,
  type PanRecords,
  type ReadingRecord,
  type RoundId,
  type RoundStart,
  roundOf,
} from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { currentPan } from '../records/standing/current-pan';
import { withoutErased } from '../records/standing/without-erased';
import { refusedInRound } from '../rounds/refused-in-round';
import { cents, type MidiNote } from '../tuning/units';
import type { DamageSign } from './damage-evidence';
import { newestSoftRound } from './knock-rounds';
import { panDamageSigns } from './pan-damage-signs';

export type SignsByNote = ReadonlyMap<MidiNote, readonly DamageSign[]>;
export type ReadingsByRound = ReadonlyMap<RoundId, readonly ReadingRecord[]>;

/** The signs in `round`, compared with `before`; `readings` hold those of both, without erased ones. */
export function roundSigns(
  records: PanRecords,
  { round, before }: { readonly round: RoundStart; readonly before: RoundStart | null },
  readings: ReadingsByRound,
  highestWithPartials: MidiNote,
): SignsByNote {
  const { layout } = currentPan(records).fields;
  return panDamageSigns({
    layout,
    strikes: strikesIn(layout, round, readings),
    refused: refusedInRound(
      roundOf(round),
      readings.get(roundOf(round)) ?? [],
      withoutErased(records).marks,
    ),
    ...(before ? { before: strikesIn(layout, before, readings) } : {}),
    highestWithPartials,
  });
}

/** What the soft round of a knock check showed. */
export interface KnockSigns {
  readonly check: KnockCheck;
  readonly round: RoundId;
  /** Notes without any are left out. */
  readonly signs: SignsByNote;
}

/** Those of `newestSoftRound`; null without one, and while `readings` lack one of its two rounds. */
export function knockSigns(
  records: PanRecords,
  readings: ReadingsByRound,
  highestWithPartials: MidiNote,
): KnockSigns | null {
  const soft = newestSoftRound(records);
  if (!soft) return null;
  const { check, round, before } = soft;
  if (!readings.has(roundOf(round)) || (before && !readings.has(roundOf(before)))) return null;
  return {
    check,
    round: roundOf(round),
    signs: roundSigns(records, soft, readings, highestWithPartials),
  };
}

/** The strikes of the newest reading of each note in a round. */
function strikesIn(
  layout: PanLayout,
  round: RoundStart,
  readings: ReadingsByRound,
): ReadonlyMap<MidiNote, readonly Strike[]> {
  return new Map(
    [...(readings.get(roundOf(round)) ?? [])].sort(olderFirst).map((reading) => {
      const offset = wishOf(layout, reading.note).offset ?? cents(0);
      return [reading.note, strikesOf(reading, { a4: round.a4, offset })] as const;
    }),
  );
}
