// A kept reading as a reading again: what settled, what walked and what was left out follow from its strikes.

import type { ReadingRecord } from '../records/rack-records';
import { addStrike, type Reading } from './reading';
import { type ReadingAim, strikesOf } from './reading-values';

/** The reading that the strikes of a valid record make, one after the other; cents are against `aim`. */
export function keptReading(record: ReadingRecord, aim: ReadingAim): Reading {
  let reading: Reading | null = null;
  for (const strike of strikesOf(record, aim)) reading = addStrike(reading, strike).reading;
  if (!reading) throw new Error('a reading needs a strike');
  return reading;
}
