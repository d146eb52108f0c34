// The readings that a pan is judged by: those of its newest rounds, back to one that is not of few notes.
import type { PanLayout } from '../../domain/pans/layout';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import {
  type Erasure,
  type ReadingRecord,
  type RoundStart,
  roundOf,
} from '../../domain/records/rack-records';
import { readingsWithoutErased } from '../../domain/records/standing/without-erased';
import { isOfFewNotes, mostLookedThrough } from '../../domain/rounds/base-round';

export interface Wanted {
  /** Finished ones, newest first. */
  readonly rounds: readonly RoundStart[];
  readonly layout: PanLayout;
  readonly erasures: readonly Erasure[];
  /** How many rounds of many notes are wanted. */
  readonly full: number;
}

export type ReadBack =
  | { readonly kind: 'read'; readonly readings: readonly ReadingRecord[] }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

/** Reads round after round, newest first, until there are as many of many notes as wanted; without erased readings. */
export async function readBack(
  store: Pick<PanStore, 'readingsOfRound'>,
  { rounds, layout, erasures, full }: Wanted,
): Promise<ReadBack> {
  const readings: ReadingRecord[] = [];
  let found = 0;
  for (const start of rounds.slice(0, mostLookedThrough)) {
    if (found === full) break;
    const read = await store.readingsOfRound(roundOf(start));
    if (read.kind === 'trouble') return read;
    readings.push(...readingsWithoutErased(read.value, erasures));
    if (!isOfFewNotes(start, readings, layout)) found++;
  }
  return { kind: 'read', readings };
}
