// What a kept reading says, computed anew from its strikes.
import type { Strike } from '../measurement/strike';
import type { ReadingRecord } from '../records/rack-records';
import { strikeOf } from '../records/strike-record';
import type { Cents, Hertz } from '../tuning/units';
import { matchedLines } from './matched-lines';
import { ownOctaves } from './own-octave';
import { type ReadingValues, summarise } from './summarise';

/** What a kept reading is judged against: the pitch of A4, and how far from equal temperament its note is meant to be. */
export interface ReadingAim {
  readonly a4: Hertz;
  readonly offset: Cents;
}

/** The strikes of a reading as the ear would report them, oldest first and numbered from 1. */
export const strikesOf = ({ note, strikes }: ReadingRecord, aim: ReadingAim): readonly Strike[] =>
  strikes.map((strike, k) => strikeOf(strike, { note, ...aim }, k + 1));

/** The values of a kept reading (a valid one: it has a strike). */
export function readingValues(reading: ReadingRecord, aim: ReadingAim): ReadingValues {
  const { strikes, isOpen } = ownOctaves(matchedLines(strikesOf(reading, aim)));
  return summarise(strikes, isOpen);
}
