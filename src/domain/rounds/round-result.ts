// What a round found: a document of its day.

import type { PanLayout } from '../pans/layout';
import {
  type MarkKind,
  type ReadingRecord,
  type RoundConditions,
  type RoundId,
  type RoundStart,
  type RoundWay,
  roundOf,
} from '../records/rack-records';
import { newestPerNote } from '../records/record-order';
import type { Hertz, Instant, MidiNote } from '../tuning/units';
import { type JudgedPan, type Judging, judgedPan } from './judged-pan';

export interface RoundFindings {
  readonly start: RoundStart;
  /** Readings of this round without erased ones, in any order; the newest of a note holds. */
  readonly readings: readonly ReadingRecord[];
  /** The mark that holds for each marked note (`standingMarks`). */
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  readonly layout: PanLayout;
  /** The pan's own A4, or the band's. */
  readonly a4: Hertz;
}

/** What is known of a round without its readings. */
export interface RoundHead {
  readonly round: RoundId;
  readonly at: Instant;
  /** That of its beginning. */
  readonly turn?: Instant;
  readonly way: RoundWay;
  readonly conditions: RoundConditions;
  /** Taken while the pan had not settled: just unloaded, or in the sun. */
  readonly isProvisional: boolean;
}

export interface RoundResult extends RoundHead, JudgedPan {}

/** The result of a round, whole or in part; readings of notes the layout no longer has are left out. */
export function roundResult(findings: RoundFindings, judging: Judging): RoundResult {
  const { start, readings, marks, layout, a4 } = findings;
  const isQuick = () => start.way === 'quick';
  return {
    ...roundHead(start),
    ...judgedPan({ readings: newestPerNote(readings), marks, layout, a4, isQuick }, judging),
  };
}

export const roundHead = (start: RoundStart): RoundHead => ({
  round: roundOf(start),
  at: start.at,
  ...(start.turn === undefined ? {} : { turn: start.turn }),
  way: start.way,
  conditions: start.conditions,
  isProvisional: isUnsettled(start.conditions),
});

/** Whether the pan is known to be cooling or warming; false where nobody said how it had been standing. */
export const isUnsettled = ({ standing }: RoundConditions): boolean =>
  standing === 'unloaded' || standing === 'sun';
